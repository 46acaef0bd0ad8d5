import { entry, partIn } from '../../case.ts';
import type { Written } from '../../content.ts';
import type { RuleCases } from '../../rule-case.ts';
import { highPass, measured, onOneChannel, plannedCase, stereo, withLead } from '../../stereo.ts';

const filtered = (left: ReturnType<typeof highPass>[], right: ReturnType<typeof highPass>[]) =>
  stereo(({ job }) => {
    entry(job.devices, 'dsp').filters = { OUT1: left, OUT2: right };
  });

/** What the second channel gives into 4 ohm. */
const secondGives = (power: string) =>
  stereo((content) => {
    entry(partIn(content, 'two-channel', 'amplifier').channels, '2').powers = [{ load: '4 ohm', power }];
  });

const mixed = (left: string, right: string) =>
  stereo(({ job }) => {
    entry(job.devices, 'dsp').mix = { OUT1: [left], OUT2: [right] };
  });

/** The first channel adds a second input, which the second output of the processor feeds. */
const summed = (second: string) =>
  stereo((content) => {
    entry(partIn(content, 'two-channel', 'amplifier').channels, '1').summed = ['IN2'];
    onOneChannel(content);
    entry(content.job.devices, 'dsp').filters = { OUT1: [highPass('3 kHz')], OUT2: [highPass(second)] };
  });

const withSubs = (content: Written) => {
  const tweeter = partIn(content, 'tweeter', 'speaker');
  tweeter.band = 'subwoofer';
};

/** Common practice, no source. */
export const leftAndRightCases = {
  'pair-filtered-differently': {
    fires: [
      {
        name: 'another corner on the right',
        about: () => filtered([highPass('3 kHz')], [highPass('3.5 kHz')]),
        level: 'caution',
        subject: 'amp.1',
        path: '/devices/dsp/filters/OUT1',
        says: /left and right are a pair .* amp\.1 has high-pass at 3000 Hz .* where amp\.2 has high-pass at 3500 Hz/,
      },
      {
        name: 'one that the right lacks altogether',
        about: () => filtered([highPass('3 kHz')], []),
        level: 'caution',
        subject: 'amp.1',
        says: /where amp\.2 has no filter/,
      },
      {
        name: 'the same filter twice on the right',
        about: () => filtered([highPass('3 kHz')], [highPass('3 kHz'), highPass('3 kHz')]),
        level: 'caution',
        subject: 'amp.1',
        path: '/devices/dsp/filters/OUT2',
      },
    ],
    quiet: [
      { name: 'like filters', about: () => stereo() },
      {
        name: 'two of one kind, neither of them on the other side',
        about: () =>
          stereo(({ job, vehicle }) => {
            entry(vehicle.places, 'right-door').side = 'left';
            entry(job.devices, 'dsp').filters = { OUT1: [highPass('3 kHz')], OUT2: [highPass('4 kHz')] };
          }),
      },
      {
        name: 'speakers of two kinds',
        about: () =>
          stereo((content) => {
            content.parts.other = { ...partIn(content, 'tweeter', 'speaker') };
            entry(content.job.devices, 'right').part = 'other';
            entry(content.job.devices, 'dsp').filters = {
              OUT1: [highPass('3 kHz')],
              OUT2: [highPass('4 kHz')],
            };
          }),
      },
    ],
  },
  // 10 log10(75 / 66) is 0.555 dB, 10 log10(75 / 67) 0.490 dB.
  'pair-levels-differ': {
    fires: [
      {
        name: '66 W beside 75 W',
        about: () => secondGives('66 W'),
        level: 'caution',
        subject: 'amp.1',
        says: /amp\.1 17\.32 V \(75 W into 4 ohm\).* 0\.6 dB apart/,
      },
      {
        name: 'a channel of a third of the power',
        about: () => secondGives('25 W'),
        level: 'caution',
        subject: 'amp.1',
      },
    ],
    quiet: [
      { name: 'like channels', about: () => stereo() },
      { name: '67 W beside 75 W', about: () => secondGives('67 W') },
      { name: 'both on one channel', about: () => stereo(onOneChannel) },
    ],
  },
  'summed-inputs-differ': {
    fires: [
      {
        name: 'another corner on the second input',
        about: () => summed('4 kHz'),
        level: 'caution',
        subject: 'amp.1',
        path: '/devices/dsp/filters/OUT2',
        says: /adds dsp\.OUT1 and dsp\.OUT2/,
      },
    ],
    quiet: [
      { name: 'like filters', about: () => summed('3 kHz') },
      { name: 'one input', about: () => stereo() },
    ],
  },
  'sides-swapped': {
    fires: [
      {
        name: 'left and right exchanged in the processor: one finding for both',
        about: () => mixed('IN-B', 'IN-A'),
        level: 'caution',
        subject: 'amp.1',
        says: /the sides are swapped: left on the left plays the right signal of radio\.RIGHT; right on the right plays the left/,
      },
      {
        name: 'left and right exchanged at the source',
        about: () =>
          stereo(({ job }) => {
            entry(job.links, 'in-left').from = 'radio.RIGHT';
            entry(job.links, 'in-right').from = 'radio.LEFT';
            entry(job.devices, 'dsp').mix = { OUT1: ['IN-A'], OUT2: ['IN-B'] };
          }),
        level: 'caution',
        subject: 'amp.1',
      },
      {
        name: 'both on the left signal',
        about: () => mixed('IN-A', 'IN-A'),
        level: 'caution',
        subject: 'amp.2',
        says: /a side is swapped: right on the right plays the left signal/,
      },
      {
        name: 'the speakers exchanged at the amplifier',
        about: () =>
          stereo(({ job }) => {
            entry(job.links, 'to-left').to = 'right.T';
            entry(job.links, 'to-right').to = 'left.T';
            entry(job.devices, 'dsp').mix = { OUT1: ['IN-A'], OUT2: ['IN-B'] };
          }),
        level: 'caution',
        subject: 'amp.1',
      },
      {
        name: 'the conductor of the other side at the input of the amplifier',
        about: () => stereo((content) => withLead(content, { 'signal-1': 'red', 'signal-2': 'white' })),
        level: 'caution',
        subject: 'amp.1',
        path: '/links/signal-1',
        says: /the right signal of lead\.red/,
      },
    ],
    quiet: [
      { name: 'each its own', about: () => mixed('IN-A', 'IN-B') },
      { name: 'a processor that does not say what it mixes', about: () => stereo() },
      {
        name: 'both sides added',
        about: () =>
          stereo(({ job }) => {
            entry(job.devices, 'dsp').mix = { OUT1: ['IN-A', 'IN-B'], OUT2: ['IN-A', 'IN-B'] };
          }),
      },
      {
        name: 'bass on the other side',
        about: () =>
          stereo((content) => {
            withSubs(content);
            entry(content.job.devices, 'dsp').mix = { OUT1: ['IN-B'], OUT2: ['IN-A'] };
          }),
      },
      {
        name: 'a lead whose conductors go to their own sides',
        about: () => stereo((content) => withLead(content, { 'signal-1': 'white', 'signal-2': 'red' })),
      },
    ],
  },
} satisfies RuleCases;

/** A way of 340 mm is 0.991 ms at 20 C (ISO 9613-1: 343.2 m/s); a quarter of a period at 20 kHz is 0.0125 ms. */
export const speakerDelayCases = {
  'delay-shared': {
    fires: [
      {
        name: 'two tweeters on one channel, 340 mm apart: each is 17 cm off',
        about: () =>
          stereo((content) => {
            onOneChannel(content);
            measured(content, '1 m', '1340 mm');
          }),
        level: 'caution',
        subject: 'dsp.OUT1',
        path: '/devices/dsp',
        says: /left and right share the channel amp\.1, which dsp\.OUT1 drives, and a channel has one delay: .* it leaves left 0\.50 ms, 170 mm \(6 11\/16 in\) of the way, early and right 0\.50 ms, 170 mm .* late/,
      },
      {
        name: 'two channels behind one output',
        about: () =>
          stereo((content) => {
            delete content.job.links['signal-2'];
            content.job.links['signal-2'] = { from: 'dsp.OUT1', to: 'amp.IN2' };
            measured(content, '1 m', '1340 mm');
          }),
        level: 'caution',
        subject: 'dsp.OUT1',
        says: /share the output dsp\.OUT1, and an output has one delay/,
      },
      {
        // A quarter of a period at 80 Hz is 3.1 ms.
        name: 'two subwoofers that play to 80 Hz',
        about: () =>
          stereo((content) => {
            withSubs(content);
            onOneChannel(content);
            measured(content, '1 m', '1340 mm');
            entry(content.job.devices, 'dsp').filters = {
              OUT1: [{ pass: 'low-pass', type: 'linkwitz-riley', order: 4, corner: '80 Hz' }],
            };
          }),
        level: 'note',
        subject: 'dsp.OUT1',
        says: /lie 0\.99 ms apart, and up to 3\.1\d ms, a quarter of a period at 80 Hz/,
      },
    ],
    quiet: [
      {
        name: 'an output each',
        about: () => stereo((content) => measured(content, '1 m', '1340 mm')),
      },
      {
        // 10 mm are 0.029 ms, less than the 0.03 ms that count as one.
        name: 'a centimetre apart',
        about: () =>
          stereo((content) => {
            onOneChannel(content);
            measured(content, '1 m', '1010 mm');
          }),
      },
      { name: 'not measured', about: () => stereo(onOneChannel) },
    ],
  },
} satisfies RuleCases;

const routed = (change: (content: Written) => void) => stereo(change);
/** The tweeters' links exchanged between the runs of the two sides. */
function crossed({ job }: Written): void {
  job.runs = {
    left: { route: 'left-sill', links: ['main', 'to-right'] },
    right: { route: 'right-sill', links: ['in-left', 'in-right', 'to-left'] },
  };
}
const ends = ({ vehicle }: Written, left: string[], right: string[]) => {
  entry(vehicle.routes, 'left-sill').ends = left;
  entry(vehicle.routes, 'right-sill').ends = right;
};

export const routeEndCases = {
  'route-ends-elsewhere': {
    fires: [
      {
        name: "a right speaker's wires by the left door's route",
        about: () =>
          routed((content) => {
            ends(content, ['bay', 'door', 'boot'], ['right-door', 'dash', 'boot']);
            content.job.runs = {
              left: { route: 'left-sill', links: ['main', 'to-left', 'to-right'] },
              right: { route: 'right-sill', links: ['in-left', 'in-right'] },
            };
          }),
        level: 'caution',
        subject: 'right',
        path: '/runs/left',
        says: /the wires of right go by left-sill, which ends at bay, door and boot, and it is in right-door/,
      },
      {
        name: 'the source is at no end of the route',
        about: () => routed((content) => ends(content, ['bay', 'door', 'boot'], ['right-door', 'boot'])),
        level: 'caution',
        subject: 'radio',
      },
      {
        name: 'both doors exchanged, and the routes do not say where they end: one finding for both',
        about: () => routed(crossed),
        level: 'caution',
        subject: 'left',
        says: /the two are swapped/,
      },
      {
        name: 'one speaker by a route of the other side',
        about: () =>
          routed((content) => {
            content.job.runs = {
              left: { route: 'left-sill', links: ['main', 'to-left', 'to-right'] },
              right: { route: 'right-sill', links: ['in-left', 'in-right'] },
            };
          }),
        level: 'note',
        subject: 'right',
      },
    ],
    quiet: [
      { name: 'each by its side', about: () => routed(() => {}) },
      {
        name: 'each to where its route ends, over to the other side too',
        about: () =>
          routed((content) => {
            crossed(content);
            ends(content, ['bay', 'right-door', 'boot'], ['door', 'dash', 'boot']);
          }),
      },
    ],
  },
} satisfies RuleCases;

/** A way with a fourth-order Linkwitz-Riley filter at each corner that it has. */
const band = (highHz: number | null, lowHz: number | null) => [
  ...(highHz === null ? [] : [highPass(`${highHz} Hz`)]),
  ...(lowHz === null ? [] : [{ ...highPass(`${lowHz} Hz`), pass: 'low-pass' as const }]),
];

/** A tweeter and a subwoofer with their corners; the tweeter on a side. */
const twoWay = (tweeterHz: number, subHz: number, more: (content: Written) => void = () => {}) =>
  plannedCase((content) => {
    entry(content.job.devices, 'dsp').filters = { OUT1: band(tweeterHz, null), OUT2: band(null, subHz) };
    more(content);
  });

/**
 * Two tweeters on the left and a subwoofer: the first meets it, the second begins far above. A third channel is made for
 * it.
 */
const withRear = (frontHz: number, rearHz: number, subHz: number) =>
  twoWay(frontHz, subHz, (content) => {
    const amp = partIn(content, 'two-channel', 'amplifier');
    amp.channels['3'] = { ...entry(amp.channels, '1'), positive: 'CH3+', negative: 'CH3-', input: 'IN3' };
    Object.assign(amp.terminals, {
      'CH3+': { role: 'speaker-out-positive' },
      'CH3-': { role: 'speaker-out-negative' },
      IN3: { role: 'signal-in', joint: 'phono', signal: '2 V' },
    });
    partIn(content, 'dsp', 'processor').terminals.OUT3 = {
      role: 'signal-out',
      joint: 'phono',
      signal: '4 V',
    };
    content.job.devices.rear = { part: 'tweeter', in: 'door' };
    content.job.links['signal-3'] = { from: 'dsp.OUT3', to: 'amp.IN3' };
    content.job.links['speaker-3'] = { from: 'amp.CH3', to: 'rear.T' };
    Object.assign(entry(content.job.devices, 'dsp').filters ?? {}, { OUT3: band(rearHz, null) });
  });

export const playedOctaveCases = {
  /*
   * By hand, for corners a ratio r apart: midway each fourth-order Linkwitz-Riley filter is 20 log10(1 + r^2) down, and
   * two in step are 6.02 dB above one. r = 200 / 70: 19.2 - 6.0 = 13.2 dB. r = 1.7293: 12.02 - 6.02 = 6 dB.
   */
  'octaves-unplayed': {
    fires: [
      {
        name: 'a high-pass at 200 Hz above a low-pass at 70 Hz',
        about: () => twoWay(200, 70),
        level: 'caution',
        subject: 'amp.1',
        path: '/devices/dsp/filters/OUT1',
        says: /nothing plays the 1\.5 octaves between the low-pass of amp\.2 at 70 Hz and the high-pass of amp\.1 at 200 Hz: together they are 13\.2 dB down/,
      },
      {
        name: 'six octaves between a tweeter and a subwoofer',
        about: () => twoWay(3500, 80),
        level: 'caution',
        subject: 'amp.1',
      },
      {
        name: 'a ratio of the corners just above 1.7293',
        about: () => twoWay(100 * 1.732, 100),
        level: 'caution',
        subject: 'amp.1',
      },
      {
        name: 'a group that begins far above the bass, where another plays',
        about: () => withRear(80, 300, 80),
        level: 'note',
        subject: 'amp.3',
        says: /amp\.3 and what is below leave open/,
      },
    ],
    quiet: [
      { name: 'one corner', about: () => twoWay(80, 80) },
      { name: 'a ratio of the corners just below 1.7293', about: () => twoWay(100 * 1.727, 100) },
      { name: 'ways that overlap', about: () => twoWay(60, 100) },
      { name: 'both groups meet the bass', about: () => withRear(80, 100, 80) },
      {
        name: 'the source itself drives a speaker in between',
        about: () =>
          twoWay(3500, 80, (content) => {
            Object.assign(partIn(content, 'radio', 'source-unit').terminals, {
              'SP+': { role: 'speaker-out-positive' },
              'SP-': { role: 'speaker-out-negative' },
            });
            content.parts.door = { ...partIn(content, 'tweeter', 'speaker'), band: 'full-range' };
            content.job.devices.doors = { part: 'door', in: 'door' };
            content.job.links['to-doors'] = { from: 'radio.SP', to: 'doors.T' };
          }),
      },
    ],
  },
} satisfies RuleCases;
