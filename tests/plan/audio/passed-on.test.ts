import { describe, expect, test } from 'vitest';
import { partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedAudio } from './planned-audio.ts';

type Passes = NonNullable<ReturnType<typeof amplifierIn>['passes']>;
const amplifierIn = (content: Written) => partIn(content, 'two-channel', 'amplifier');

/** A second amplifier plays from a line output of the first one, which takes 4 V from the processor. */
const inTurn = (passes: Passes | undefined, more: (content: Written) => void = () => {}) =>
  plannedAudio((content) => {
    content.parts.second = structuredClone(amplifierIn(content));
    const first = amplifierIn(content);
    Object.assign(first.terminals, { OUT: { role: 'signal-out', signal: '5 V' } });
    if (passes) first.passes = passes;
    Object.assign(partIn(content, 'dsp', 'processor').terminals.OUT1 ?? {}, { signal: '4 V' });
    Object.assign(partIn(content, 'second', 'amplifier').terminals.IN2 ?? {}, {
      'signal-range': { from: '0.2 V', to: '6 V' },
    });
    content.job.devices.second = { part: 'second', in: 'boot' };
    content.job.links['speaker-2'] = { from: 'second.CH2', to: 'sub.C' };
    content.job.links['line-out'] = { from: 'amp.OUT', to: 'second.IN2' };
    more(content);
  });

const levelAt = ({ audio }: ReturnType<typeof inTurn>) =>
  audio.inputs.find(({ input }) => input === 'second.IN2');

describe('the level at an amplifier that plays from another one', () => {
  // By hand: half of 4 V is 2 V; 5 V, the most that the output gives, is no level.
  test('is the share of what arrives at the first one, traced to it', () => {
    const found = inTurn({ OUT: { of: { IN1: 0.5 }, tap: 'inputs' } });
    expect(levelAt(found)).toMatchObject({ sourceV: 2, verdict: 'within' });
    expect(found.traces['audio.inputs.second.IN2.sourceV']).toMatchObject({ rule: 'passed-voltage' });
  });

  test.each([
    ['the part does not say what it passes on', undefined],
    ['it is taken behind the gain', { OUT: { of: { IN1: 0.5 }, tap: 'gain' } }],
    ['it is taken behind the filters', { OUT: { of: { IN1: 0.5 }, tap: 'filters' } }],
    ['it carries two inputs that both play', { OUT: { of: { IN1: 0.5, IN2: 0.5 }, tap: 'inputs' } }],
    ['the input that it carries has nothing', { OUT: { of: { IN9: 0.5 }, tap: 'inputs' } }],
  ] as const)('is not known where %s', (_, passes) => {
    const isBare = passes !== undefined && 'IN9' in passes.OUT.of;
    const found = inTurn(passes, (content) => {
      if (isBare) Object.assign(amplifierIn(content).terminals, { IN9: { role: 'signal-in' } });
    });
    expect(levelAt(found)).toMatchObject({ sourceV: null, verdict: 'unknown' });
  });

  test('is not known where the two feed each other in a ring', () => {
    const ring = { OUT: { of: { IN1: 1 }, tap: 'inputs' } } as const;
    const found = inTurn(ring, ({ parts, job }) => {
      Object.assign(parts.second ?? {}, { passes: ring });
      Object.assign(partIn({ parts } as Written, 'second', 'amplifier').terminals, {
        OUT: { role: 'signal-out' },
      });
      job.links['signal-1'] = { from: 'second.OUT', to: 'amp.IN1' };
      job.links['line-out'] = { from: 'amp.OUT', to: 'second.IN1' };
    });
    expect(found.audio.inputs.map(({ sourceV }) => sourceV)).not.toContain(Number.NaN);
    expect(found.audio.inputs.find(({ input }) => input === 'second.IN1')?.sourceV).toBeNull();
  });
});

describe('the filters on the way to an amplifier that plays from another one', () => {
  const cornersAt = (tap: 'inputs' | 'gain' | 'filters') => {
    const { audio } = inTurn({ OUT: { of: { IN1: 1 }, tap } }, (content) => {
      const { job } = content;
      Object.assign(amplifierIn(content), { 'filter-orders': [2] });
      Object.assign(job.devices.amp ?? {}, {
        filters: { CH1: [{ pass: 'high-pass', type: 'butterworth', order: 2, corner: '120 Hz' }] },
      });
      Object.assign(job.devices.dsp ?? {}, {
        filters: { OUT1: [{ pass: 'subsonic', type: 'butterworth', order: 2, corner: '22 Hz' }] },
      });
    });
    return audio.channels.find(({ id }) => id === 'second.2')?.filters.map(({ cornerHz }) => cornerHz);
  };

  test('are those before the first one, whose own come in where it is taken behind them', () => {
    expect(cornersAt('inputs')).toContain(22);
    expect(cornersAt('inputs')).not.toContain(120);
    expect(cornersAt('gain')).not.toContain(120);
    expect(cornersAt('filters')).toEqual(expect.arrayContaining([22, 120]));
  });
});
