import { describe, expect, test } from 'vitest';
import { planWirings } from '../../../lib/plan/audio/channel-wirings.ts';
import { byId, entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { joinCoils, withTwoCoils } from '../planned.ts';
import { knownOutput, plannedAudio } from './planned-audio.ts';

type Change = (content: Written) => void;
const amp = (content: Written) => partIn(content, 'two-channel', 'amplifier');
const speaker = (id: string, change: Change) => byId(plannedAudio(change).audio.speakers, id);
const rules = (change: Change) => plannedAudio(change).remarks.map(({ rule, of }) => `${rule} ${of[0]}`);
const ofRule = (rule: string, change: Change) =>
  plannedAudio(change).remarks.filter((remark) => remark.rule === rule);

describe('a channel and its speaker', () => {
  // The part says 75 W into 4 ohm, which one coil of 4 ohm is.
  test('have the load of the coil, and the power that the amplifier gives into it', () => {
    const { audio } = plannedAudio();
    expect(byId(audio.channels, 'amp.1')).toMatchObject({ loadOhm: 4, powerW: 75, speakers: ['tweeter'] });
    expect(byId(audio.channels, 'amp.1').gainVoltageV).toBeGreaterThan(0);
    expect(byId(audio.speakers, 'tweeter')).toMatchObject({
      channel: 'amp.1',
      powerW: 75,
      polarity: 'normal',
      reversedCoils: [],
      distanceM: null,
    });
  });

  test('are so far from the listener as the place of the speaker says', () => {
    const { distanceM } = speaker('sub', ({ vehicle }) => {
      entry(vehicle.places, 'boot').distance = '1.7 m';
    });
    expect(distanceM).toBe(1.7);
  });

  test('are reversed where plus goes to minus, and only the coils that are so are named', () => {
    const crossed = speaker('tweeter', ({ job }) => {
      delete job.links['speaker-1'];
      job.links.plus = { from: 'amp.CH1+', to: 'tweeter.T-' };
      job.links.minus = { from: 'amp.CH1-', to: 'tweeter.T+' };
    });
    expect(crossed).toMatchObject({ polarity: 'reversed', reversedCoils: ['tweeter.T'] });
    const one = speaker('sub', (content) => {
      withTwoCoils(content);
      joinCoils(content, 'parallel');
      Object.assign(content.job.links, {
        first: { from: 'sub.C+', to: 'sub.D-' },
        second: { from: 'sub.C-', to: 'sub.D+' },
      });
    });
    expect(one).toMatchObject({ polarity: 'opposed', reversedCoils: ['sub.D'] });
    const unwired = speaker('sub', ({ job }) => {
      delete job.links['speaker-2'];
    });
    expect(unwired).toMatchObject({ polarity: 'unwired', powerW: null, channel: null });
  });

  test('are told where only one of the two terminals of a coil is wired, and not where none is', () => {
    const half = rules(({ job }) => {
      delete job.links['speaker-2'];
      job.links.half = { from: 'amp.CH2+', to: 'sub.C+' };
    });
    expect(half).toContain('speaker-without-channel sub');
    const none = rules(({ job }) => {
      delete job.links['speaker-2'];
    });
    expect(none.filter((one) => one.endsWith(' sub'))).toEqual([]);
  });

  test.each(['from the source', 'to the source'])(
    'are not asked of an amplifier that the source drives itself, %s',
    (way) => {
      const told = rules((content) => {
        const { job } = content;
        Object.assign(partIn(content, 'radio', 'source-unit').terminals, {
          'SP+': { role: 'speaker-out-positive' },
          'SP-': { role: 'speaker-out-negative' },
        });
        delete job.links['speaker-2'];
        job.links.direct =
          way === 'from the source' ? { from: 'radio.SP', to: 'sub.C' } : { from: 'sub.C', to: 'radio.SP' };
      });
      expect(told.filter((one) => one.startsWith('speaker-without-channel'))).toEqual([]);
    },
  );
});

describe('a load below what the amplifier may drive', () => {
  const low = (minimum: `${number} ohm`, how: 'parallel' | 'series') => (content: Written) => {
    withTwoCoils(content);
    joinCoils(content, how);
    entry(amp(content).channels, '2').minimum = minimum;
  };

  test('is told with the way of wiring that it may', () => {
    expect(ofRule('load-below-minimum', low('4 ohm', 'parallel'))[0]?.remedy).toMatch(
      /^wire them as series\(sub\.C, sub\.D\): 8 ohm/,
    );
  });

  test('is told to have none where none reaches it', () => {
    expect(ofRule('load-below-minimum', low('16 ohm', 'series'))[0]?.remedy).toMatch(/^no way of wiring/);
  });
});

describe('a coil that goes back over the body', () => {
  const overBody: Change = ({ job }) => {
    delete job.links['speaker-2'];
    job.links.plus = { from: 'amp.CH2+', to: 'sub.C+' };
    job.links.minus = { from: 'sub.C-', to: 'body.cargo' };
  };

  test('is told with the link that is wrong and the terminal that it belongs to', () => {
    const [told] = ofRule('coil-to-body', overBody);
    expect(told?.remedy).toBe('take it to amp.CH2-, and to nothing else');
    expect(told?.of).toEqual(['amp.2', 'amp.CH2-', 'sub', 'sub.C', 'minus']);
    const [bare] = ofRule('coil-to-body', ({ job }) => {
      delete job.links['speaker-2'];
      job.links.minus = { from: 'sub.C-', to: 'body.cargo' };
    });
    expect(bare?.remedy).toBe('take it to the negative output of its channel, and to nothing else');
  });

  test('is told once: its channel and its speaker are not said to lack each other', () => {
    expect(rules(overBody)).toEqual(['coil-to-body amp.2']);
  });

  test('may belong to a bridge: both ways are named, or the one that is not left open', () => {
    const bridged = (leftOpen: Readonly<Record<string, string>>) =>
      ofRule('coil-to-body', (content) => {
        overBody(content);
        delete content.job.links['speaker-1'];
        amp(content).bridges = {
          '1+2': {
            positive: 'CH2+',
            negative: 'CH1-',
            input: 'IN1',
            minimum: '4 ohm',
            powers: [{ load: '4 ohm', power: '150 W' }],
          },
        };
        content.job['left-open'] = leftOpen;
      })[0]?.remedy;
    expect(bridged({})).toBe('take it to amp.CH1- (1+2 bridged), or to amp.CH2-, and to nothing else');
    expect(bridged({ 'amp.CH1-': 'not used' })).toBe('take it to amp.CH2-, and to nothing else');
    expect(bridged({ 'amp.CH2-': 'not used' })).toBe(
      'take it to amp.CH1- (1+2 bridged), and to nothing else',
    );
  });
});

describe('a coil between two channels that are no bridge', () => {
  const between: Change = ({ job }) => {
    delete job.links['speaker-2'];
    job.links.plus = { from: 'amp.CH1+', to: 'sub.C+' };
    job.links.other = { from: 'amp.CH2+', to: 'sub.C-' };
  };

  test('is told at the link that must change, and the other speaker of the channel keeps its load', () => {
    const { audio, placed } = plannedAudio(between);
    const told = placed.filter(({ remark }) => remark.rule === 'pair-not-bridged');
    expect(told).toHaveLength(1);
    expect(told[0]?.remark.of).toContain('sub');
    // What hangs on the first channel keeps its place: the wire to the second is the one to move.
    expect(told[0]?.path).toBe('/links/other');
    expect(byId(audio.channels, 'amp.1')).toMatchObject({ loadOhm: 4, speakers: ['tweeter'] });
  });
});

describe('a channel that plays both sides', () => {
  const handsOver = (places: readonly ['left' | 'right', 'left' | 'right']) => {
    const { audio } = plannedAudio((content) => {
      const { job, vehicle } = content;
      partIn(content, 'woofer', 'speaker').band = 'midbass';
      Object.assign(vehicle.places ?? {}, {
        'right-door': { title: 'Right door', zone: 'cabin', side: 'right' },
      });
      const [first, second] = places.map((side) => (side === 'left' ? 'door' : 'right-door'));
      Object.assign(job.devices, {
        tweeter: { part: 'tweeter', in: first },
        twin: { part: 'tweeter', in: second },
        sub: { part: 'woofer', in: 'door' },
      });
      Object.assign(job.links, {
        plus: { from: 'amp.CH1+', to: 'twin.T+' },
        minus: { from: 'amp.CH1-', to: 'twin.T-' },
      });
      const filter = { type: 'linkwitz-riley', order: 4, corner: '2500 Hz' } as const;
      entry(job.devices, 'dsp').filters = {
        OUT1: [{ pass: 'high-pass', ...filter }],
        OUT2: [{ pass: 'low-pass', ...filter }],
      };
    });
    return audio.curves.sums.map(({ channels }) => channels);
  };

  test('is heard in the middle: it hands over to no way of one side alone', () => {
    expect(handsOver(['left', 'left'])).toEqual([['amp.1', 'amp.2']]);
    expect(handsOver(['left', 'right'])).toEqual([]);
    expect(handsOver(['right', 'right'])).toEqual([]);
  });
});

describe('the ways of wiring on a sheet', () => {
  const coils = Array.from({ length: 5 }, (_, k) => ({
    ...{ id: `s${k}.C`, speaker: `s${k}`, part: 'woofer', nominalOhm: 4 },
  }));
  const wired = (as: 'series' | 'parallel') =>
    planWirings({
      channel: 'amp.1',
      coils,
      mode: { mode: 'stereo', minimumOhm: 4, rated: [{ loadOhm: 4, powerW: 75 }] },
      chosen: { kind: as, members: coils.map(({ id }) => ({ kind: 'coil', coil: id })) },
    });

  // Networks of five like coils: 24 (the series-parallel networks of MacMahon; 1, 2, 4, 10, 24, 66 ...).
  test.each(['series', 'parallel'] as const)(
    'are twelve at most, and the one that is linked is always among them: all in %s',
    (as) => {
      const { wirings, wiringsInAll } = wired(as);
      expect(wiringsInAll).toBe(24);
      expect(wirings).toHaveLength(12);
      const chosen = wirings.filter((one) => one.chosen);
      expect(chosen.map(({ loadOhm }) => loadOhm)).toEqual([as === 'series' ? 20 : 0.8]);
      expect(new Set(wirings.map(({ text }) => text)).size).toBe(12);
    },
  );
});

describe('what is to be found out of an output that came with the vehicle', () => {
  const asked = {
    bandwidth: 'bandwidth',
    polarity: 'polarity',
    'clean-voltage': 'greatest clean voltage',
    offset: 'direct-current offset',
    equalising: 'equalising that moves with the level',
    'load-sensing': 'load sensing',
    'noise-cancelling': 'noise cancelling',
    chimes: 'chimes',
  };
  const outputs = (known: object, feeds = true) =>
    plannedAudio(({ job, vehicle }) => {
      vehicle.fitted.head = { part: 'radio', zone: 'cabin', outputs: { OUT: known } };
      if (feeds) job.links['radio-signal'] = { from: 'head.OUT', to: 'dsp.IN' };
    }).audio.outputs;

  test.each(Object.entries(asked))('is %s, where nobody wrote it', (name, what) => {
    const known = Object.fromEntries(Object.entries(knownOutput).filter(([key]) => key !== name));
    expect(outputs(known)).toEqual([
      expect.objectContaining({ id: 'head.OUT', item: 'head', feeds: ['dsp.IN'], missing: [what] }),
    ]);
  });

  test('is nothing where all is known, or where the output feeds nothing of the job', () => {
    expect(outputs(knownOutput)[0]?.missing).toEqual([]);
    expect(outputs({}, false)[0]).toMatchObject({ feeds: [], missing: [] });
  });
});

describe('what arrives at an input', () => {
  test('is held against its range: 4 V into 0.5 V to 2 V is 6.02 dB too much, of 18.06 dB', () => {
    const { audio } = plannedAudio((content) => {
      entry(partIn(content, 'dsp', 'processor').terminals, 'IN')['signal-range'] = {
        from: '0.5 V',
        to: '2 V',
      };
    });
    const found = audio.inputs.find(({ input }) => input === 'dsp.IN');
    expect(found).toMatchObject({ sourceV: 4, leastV: 0.5, greatestV: 2, level: 'low', verdict: 'too-high' });
    expect(found?.headroomDb).toBeCloseTo(-6.0206, 3);
    expect(found?.reserveDb).toBeCloseTo(18.0618, 3);
    expect(audio.inputs.find(({ input }) => input === 'amp.IN1')?.verdict).toBe('unknown');
  });
});
