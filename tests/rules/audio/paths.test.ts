import { describe, expect, test } from 'vitest';
import type { BuildPlan, PlanSpeaker } from '../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, entry, partIn } from '../case.ts';
import { channel, filter, filtered, speaker } from '../changes.ts';
import { found } from '../found.ts';
import { sized } from '../plan.ts';
import { plannedCase, stereo } from '../stereo.ts';
import { askOfKnob } from './low-pass-knob.ts';

describe('two ways that meet', () => {
  const handing = (sumDb: number, louderDb: number) =>
    aboutPlan((plan) => {
      channel(plan, 'amp.2').amplifier = 'dsp';
      plan.audio.curves.sums = [
        {
          id: 'amp.1',
          channels: ['amp.1', 'amp.2'],
          levelsDb: [],
          handovers: [{ upper: 'amp.1', lower: 'amp.2', frequencyHz: 80, sumDb, louderDb }],
        },
      ];
    });

  test('cancel from just past the limit of the house rule on, and are told at the amplifier of the upper one', () => {
    const limitDb = about().job.rules['ways-cancel'].value;
    expect(found('crossover-cancels', handing(-3 - limitDb, -3))).toEqual([]);
    expect(found('crossover-cancels', handing(-3.01 - limitDb, -3))).toEqual([
      expect.objectContaining({ of: ['amp.1', 'amp.2'], path: '/devices/amp/filters' }),
    ]);
  });
});

describe('a speaker wired with reversed polarity', () => {
  const told = (more: Partial<PlanSpeaker>) =>
    found(
      'polarity-reversed',
      aboutPlan((plan) => Object.assign(speaker(plan, 'sub'), { polarity: 'reversed', ...more })),
    ).length;

  test('is meant so where its mounting or the job asks for it, and not where both do', () => {
    expect(told({})).toBe(1);
    expect(told({ mounted: 'reversed' })).toBe(0);
    expect(told({ reversedWhy: 'the crossover asks for it' })).toBe(0);
    expect(told({ mounted: 'reversed', reversedWhy: 'the crossover asks for it' })).toBe(1);
  });
});

describe('a speaker that no channel drives', () => {
  const undriven = (
    leftOpen: Readonly<Record<string, string>>,
    change: (plan: BuildPlan) => void = () => {},
  ) =>
    found(
      'speaker-without-channel',
      about({
        content: ({ job }) => {
          delete job.links['speaker-2'];
          job['left-open'] = { ...leftOpen };
        },
        plan: (plan) => {
          Object.assign(speaker(plan, 'sub'), { channel: null, polarity: 'unwired' });
          change(plan);
        },
      }),
    ).length;

  test('is left out on purpose where each of its own coils is left open with a reason', () => {
    expect(undriven({ 'sub.C+': 'later', 'sub.C-': 'later' })).toBe(0);
    expect(undriven({ 'sub.C+': 'later' })).toBe(1);
    expect(undriven({})).toBe(1);
  });

  test('and not where a terminal is only said to be open, or another device has one of that name', () => {
    const open = (item: string, reason?: string) => (plan: BuildPlan) => {
      for (const terminal of plan.terminals)
        if (terminal.item === 'sub') Object.assign(terminal, { item, state: 'open', reason });
    };
    expect(undriven({}, open('sub', 'later'))).toBe(0);
    expect(undriven({}, open('sub'))).toBe(1);
    expect(undriven({}, open('tweeter', 'later'))).toBe(1);
  });
});

describe('a bass lead that is thin', () => {
  test('is told with its pair, its wires and its channel, thinnest first decides', () => {
    const [told] = found(
      'bass-lead-thin',
      aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1, minimumOhm: 1 })),
    );
    expect(told?.of).toEqual(['speaker-2', 'speaker-2.+', 'speaker-2.-', 'amp.2']);
  });

  test.each(['amp.CH2+', 'sub.C+'])('names what stands at its own end and takes no more: %s', (end) => {
    const at = about({
      plan: (plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1, minimumOhm: 1 }),
    });
    const [device = '', terminal = ''] = end.split('.');
    const job = {
      ...at.job,
      devices: at.job.devices.map((one) => {
        const spec = (name: string) => {
          const takes = { from: sized('18'), to: sized(one.id === device && name === terminal ? '12' : '8') };
          return { ...entry(one.facts.terminals, name), takes };
        };
        const names = Object.keys(one.facts.terminals);
        return {
          ...one,
          facts: { ...one.facts, terminals: Object.fromEntries(names.map((name) => [name, spec(name)])) },
        };
      }),
    };
    const [told] = found('bass-lead-thin', { ...at, job });
    expect(told?.remedy).toContain(`${end} takes at most 12 AWG: run speaker-2 in 10 AWG`);
    expect(told?.remedy.match(/takes at most/g)).toHaveLength(1);
  });

  test('runs thicker as it is where its ends take it, and says what the shelf lacks', () => {
    const [reel = ''] = Object.entries(about().job.parts).find(([, { kind }]) => kind === 'wire') ?? [];
    const stocked = about({
      content: (content) => {
        Object.assign(partIn(content, reel, 'wire'), { size: '10 AWG', for: ['speaker'] });
        content.shop.stock = { [reel]: { reels: ['10 m'] } };
      },
      plan: (plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1, minimumOhm: 1 }),
    });
    expect(found('bass-lead-thin', stocked)[0]?.remedy).toBe('run speaker-2 in 10 AWG');
    const [bare] = found(
      'bass-lead-thin',
      aboutPlan((plan) => Object.assign(channel(plan, 'amp.2'), { loadOhm: 1, minimumOhm: 1 })),
    );
    expect(bare?.remedy).toContain('no wire or cable of 10 AWG is on the shelf');
  });
});

describe('a subsonic filter', () => {
  test('is judged by the one that stands highest, in whatever order they are written', () => {
    const off = (...corners: readonly number[]) =>
      found('subsonic-off-tuning', filtered('amp.2', ...corners.map((hz) => filter('subsonic', hz)))).length;
    expect(off(20, 27)).toBe(0);
    expect(off(27, 20)).toBe(0);
    expect(off(20, 30)).toBe(1);
  });

  test('is off no tuning that nobody knows', () => {
    const untuned = aboutContent((content) => {
      delete partIn(content, 'vented', 'enclosure').tuning;
    });
    expect(found('subsonic-off-tuning', untuned)).toEqual([]);
  });
});

// Common practice, no source: the band that a full-range output has is 60 Hz to 15 kHz.
test('an output is full-range up to 15 kHz and from 60 Hz, and no less', () => {
  const told = (fromHz: number, toHz: number) =>
    found(
      'band-limited-output',
      aboutPlan(({ audio }) => {
        audio.outputs = [
          {
            ...{ id: 'radio.OUT', item: 'radio', feeds: ['dsp.IN'], form: 'analogue', fromHz, toHz },
            ...{ polarity: 'normal', cleanVoltageV: 4, offsetV: 0, equalising: 'none', loadSensing: false },
            ...{ noiseCancelling: false, chimes: false, missing: [] },
          },
        ];
      }),
    ).length;
  expect(told(60, 15_000)).toBe(0);
  expect(told(60.1, 15_000)).toBe(1);
  expect(told(60, 14_999)).toBe(1);
});

test('an amplifier with one knob for two channels tells by its name where it stands', () => {
  const [told] = found(
    'filter-not-made',
    aboutContent((content) => askOfKnob(content, '80 Hz', '100 Hz')),
  );
  expect(told?.message).toMatch(
    /but LPF stands at 80 Hz for channel 1, and it sets channels 1 and 2 together$/,
  );
});

describe('levels of a pair', () => {
  const gains = (rightV: number) => {
    const made = stereo();
    const channels = made.plan.audio.channels.map((one, k) =>
      one.gain ? { ...one, gain: { ...one.gain, targetV: k === 0 ? 10 : rightV } } : one,
    );
    return { ...made, plan: { ...made.plan, audio: { ...made.plan.audio, channels } } };
  };

  test('may differ by as much as the house rule says, and by no more', () => {
    const limitDb = about().job.rules['level-shift'].value;
    const apart = (db: number) => found('pair-levels-differ', gains(10 * 10 ** (db / 20))).length;
    expect(apart(limitDb)).toBe(0);
    expect(apart(-limitDb)).toBe(0);
    expect(apart(limitDb + 0.001)).toBe(1);
    expect(apart(-limitDb - 0.001)).toBe(1);
  });
});

describe('a negative of an output that is joined to ground', () => {
  test('is told once, however many wires end at it', () => {
    const told = found(
      'speaker-negative-to-common',
      aboutContent(({ job }) => {
        job.links['speaker-ground'] = { from: 'amp.CH2-', to: 'body.cargo' };
      }),
    );
    expect(told.map(({ of }) => of[0])).toEqual(['amp.CH2-']);
  });
});

describe('a source that came with the vehicle', () => {
  const factory = (
    missing: BuildPlan['audio']['outputs'][number]['missing'],
    feeds = ['dsp.IN'],
    item = 'head',
  ) =>
    about({
      content: ({ job, vehicle }) => {
        vehicle.fitted.head = { part: 'radio', zone: 'cabin' };
        job.links['radio-signal'] = { from: 'head.OUT', to: 'dsp.IN' };
        job['left-open'] = { 'radio.OUT': 'not used' };
      },
      plan: ({ audio }) => {
        audio.outputs = [
          {
            ...{ id: `${item}.OUT`, item, feeds, form: 'analogue', fromHz: 20, toHz: 20_000 },
            ...{ polarity: 'normal', cleanVoltageV: 4, offsetV: 0, equalising: 'none' },
            ...{ loadSensing: false, noiseCancelling: false, chimes: false, missing: [...missing] },
          },
        ];
      },
    });
  const fitted = (...given: Parameters<typeof factory>) =>
    found('factory-source-unmeasured', factory(...given)).length;

  test('needs no measuring where all is known of each output that feeds the system', () => {
    expect(fitted([])).toBe(0);
    expect(fitted(['polarity'])).toBe(1);
  });

  test('is told by what is still missing alone, with the line that it is written in', () => {
    const [told] = found('factory-source-unmeasured', factory(['polarity']));
    expect(told?.message).toMatch(/not measured in full: of OUT still polarity$/);
    expect(told?.remedy).toMatch(
      /^measure at each channel: polarity; and write it .*, such as OUT: \{ polarity: normal \}$/,
    );
    const [chimes] = found('factory-source-unmeasured', factory(['chimes']));
    expect(chimes?.remedy).toMatch(/^see that chimes .*OUT: \{ chimes: false \}$/);
    const [voltage] = found('factory-source-unmeasured', factory(['greatest clean voltage']));
    expect(voltage?.remedy).toContain('OUT: { clean-voltage: 8 V }');
  });

  test('is not known by an output that feeds nothing, or that another source has', () => {
    expect(fitted([], [])).toBe(1);
    expect(fitted([], ['dsp.IN'], 'radio')).toBe(1);
  });
});

/** A way with a fourth-order Linkwitz-Riley filter at each corner that it has. */
const band = (highHz: number | null, lowHz: number | null) => [
  ...(highHz === null
    ? []
    : [{ pass: 'high-pass', type: 'linkwitz-riley', order: 4, corner: `${highHz} Hz` } as const]),
  ...(lowHz === null
    ? []
    : [{ pass: 'low-pass', type: 'linkwitz-riley', order: 4, corner: `${lowHz} Hz` } as const]),
];

describe('octaves that nobody plays', () => {
  /** Tweeter, subwoofer, and a third speaker of a part on a channel that is made for it. */
  const threeWays = (part: string, ...bands: readonly ReturnType<typeof band>[]) =>
    plannedCase((content) => {
      const { job } = content;
      const amp = partIn(content, 'two-channel', 'amplifier');
      amp.channels['3'] = { ...entry(amp.channels, '1'), positive: 'CH3+', negative: 'CH3-', input: 'IN3' };
      Object.assign(amp.terminals, {
        'CH3+': { role: 'speaker-out-positive' },
        'CH3-': { role: 'speaker-out-negative' },
        IN3: { role: 'signal-in', joint: 'phono', signal: '2 V' },
      });
      const { terminals } = partIn(content, 'dsp', 'processor');
      terminals.OUT3 = { ...entry(terminals, 'OUT2') };
      content.parts.door = {
        ...partIn(content, 'tweeter', 'speaker'),
        band: 'midrange',
        'lowest-frequency': '100 Hz',
      };
      entry(job.devices, 'tweeter').in = 'dash';
      job.devices.third = { part, in: 'dash' };
      job.links['signal-3'] = { from: 'dsp.OUT3', to: 'amp.IN3' };
      job.links['speaker-3'] = { from: 'amp.CH3', to: part === 'woofer' ? 'third.C' : 'third.T' };
      const [tweeter = [], sub = [], third = []] = bands;
      entry(job.devices, 'dsp').filters = { OUT1: tweeter, OUT2: sub, OUT3: third };
    });

  test('are told for each pair of corners by themselves', () => {
    const told = found(
      'octaves-unplayed',
      threeWays('door', band(6000, null), band(null, 70), band(400, 1500)),
    );
    expect(told.map(({ of }) => of)).toEqual([
      ['amp.3', 'amp.2'],
      ['amp.1', 'amp.3'],
    ]);
  });

  // Bass is the foot of every group: what it leaves open below itself, where others play, is no group's affair.
  test('are none that bass leaves open below itself', () => {
    expect(
      found('octaves-unplayed', threeWays('woofer', band(null, null), band(80, null), band(null, 25))),
    ).toEqual([]);
  });
});
