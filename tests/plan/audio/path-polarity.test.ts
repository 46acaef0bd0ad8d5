import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { byId, entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedCase } from '../../rules/stereo.ts';
import { knownOutput, plannedAudio } from './planned-audio.ts';

type Change = (content: Written) => void;

/** Two second-order ways in one polarity cancel at their corner (Linkwitz, Riley, 1976); one turned over they add to 3.01 dB. */
const ways = (content: Written, change: Change): void => {
  const own = { type: 'butterworth', order: 2, corner: '2500 Hz' } as const;
  entry(content.job.devices, 'dsp').filters = {
    OUT1: [{ pass: 'high-pass', ...own }],
    OUT2: [{ pass: 'low-pass', ...own }],
  };
  change(content);
};
const sumOf = (change: Change) => {
  const { audio } = plannedAudio((content) => ways(content, change));
  return audio.curves.sums[0]?.handovers[0]?.sumDb;
};
const cancels = expect.closeTo(-100, 0);
const adds = expect.closeTo(3.01, 2);

const phase = { what: 'phase', form: 'switch', panel: 'left', safe: '0', why: 'known polarity' } as const;
/** A switch for the second channel of the amplifier. */
const onSecond: Change = (content) => {
  const { controls } = partIn(content, 'two-channel', 'amplifier');
  Object.assign(controls ?? {}, { PHASE: { ...phase, positions: ['0', '180'], channels: ['2'] } });
};
const inMenu =
  (more: object): Change =>
  (content) => {
    partIn(content, 'dsp', 'processor').controls = {
      ...partIn(content, 'dsp', 'processor').controls,
      TURN: { ...phase, form: 'menu', ...more },
    };
  };
const commissioned =
  (device: string, states: Readonly<Record<string, string>>): Change =>
  ({ job }) => {
    entry(job.devices, device)['after-commissioning'] = { ...states };
  };
const all =
  (...changes: readonly Change[]): Change =>
  (content) => {
    for (const change of changes) change(content);
  };

describe('two ways at one corner', () => {
  test('cancel as their switches stand, and add once one of the amplifier stands at 180', () => {
    expect(sumOf(onSecond)).toEqual(cancels);
    expect(sumOf(all(onSecond, commissioned('amp', { PHASE: '180' })))).toEqual(adds);
  });

  test('and once the processor turns one over, by the position that its part names, or that reads 180', () => {
    const named = inMenu({ positions: ['NOR', 'INV'], safe: 'NOR', channels: ['OUT2'] });
    expect(sumOf(named)).toEqual(cancels);
    expect(sumOf(all(named, commissioned('dsp', { TURN: 'INV' })))).toEqual(adds);
    const odd = inMenu({ positions: ['180', '0'], safe: '180', channels: ['OUT2'] });
    expect(sumOf(odd)).toEqual(adds);
    const told = inMenu({ positions: ['A', 'B'], safe: 'B', reverses: ['B'], channels: ['OUT2'] });
    expect(sumOf(told)).toEqual(adds);
  });

  test('cancel still where both are turned over, by one switch or by one each', () => {
    const both = inMenu({ positions: ['0', '180'] });
    expect(sumOf(all(both, commissioned('dsp', { TURN: '180' })))).toEqual(cancels);
    const first = inMenu({ positions: ['0', '180'], channels: ['OUT1'] });
    const turned = all(commissioned('dsp', { TURN: '180' }), commissioned('amp', { PHASE: '180' }));
    expect(sumOf(all(first, onSecond, turned))).toEqual(cancels);
  });
});

describe('an output of the source that is turned over', () => {
  const fitted =
    (polarity: 'normal' | 'reversed', link: string): Change =>
    ({ job, vehicle }) => {
      job.runs = { left: { route: 'left-sill', links: ['main'] } };
      vehicle.fitted.head = {
        ...{ part: 'radio', zone: 'cabin' },
        outputs: { OUT: { ...knownOutput, polarity } },
      };
      delete job.links[link];
      job.links['head-signal'] = { from: 'head.OUT', to: link === 'signal-2' ? 'amp.IN2' : 'dsp.IN' };
    };
  const low: Change = ({ job }) => {
    entry(job.devices, 'amp').filters = {
      CH2: [{ pass: 'low-pass', type: 'butterworth', order: 2, corner: '2500 Hz' }],
    };
  };
  const makes: Change = (content) => {
    partIn(content, 'two-channel', 'amplifier')['filter-orders'] = [2];
  };

  test('turns over what it feeds alone, and the whole sum where it feeds all', () => {
    expect(sumOf(all(makes, low, fitted('normal', 'signal-2')))).toEqual(cancels);
    expect(sumOf(all(makes, low, fitted('reversed', 'signal-2')))).toEqual(adds);
    expect(sumOf(fitted('reversed', 'radio-signal'))).toEqual(cancels);
    const { audio } = plannedAudio(fitted('reversed', 'radio-signal'));
    expect(byId(audio.channels, 'amp.1').turnedBy).toEqual(['head.OUT']);
  });
});

describe('what is told of ways that cancel', () => {
  const remedyOf = (change: Change) => {
    const { job, plan } = plannedCase((content) => ways(content, change));
    return judge(job, plan, []).find(({ rule }) => rule === 'crossover-cancels')?.remedy ?? null;
  };

  test('names the switch of the amplifier before the wiring, with the position and the line', () => {
    expect(remedyOf(onSecond)).toMatch(
      /^set PHASE of amp to 180: at amp write after-commissioning: \{ PHASE: "180" \}; or turn sub over/,
    );
    expect(remedyOf(all(onSecond, commissioned('amp', { PHASE: '180' })))).toBeNull();
  });

  test('names none that turns both over, or whose positions tell nothing', () => {
    expect(remedyOf(() => {})).toMatch(/^turn sub over/);
    const shared: Change = (content) => {
      const { controls } = partIn(content, 'two-channel', 'amplifier');
      Object.assign(controls ?? {}, { PHASE: { ...phase, positions: ['0', '180'] } });
    };
    expect(remedyOf(shared)).toMatch(/^turn sub over/);
  });
});
