import { describe, expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { entry, partIn } from '../../rules/case.ts';
import type { Written } from '../../rules/content.ts';
import { plannedCase } from '../../rules/stereo.ts';
import { knownOutput } from '../audio/planned-audio.ts';

const face = { panel: 'face', form: 'menu' } as const;
const flat = { type: 'butterworth', order: 2, passes: { 'HPF 80': 'high-pass' }, corner: '80 Hz' } as const;

/** The source of the vehicle feeds the processor; its part tells a volume, a switch for its bass output, tone and a filter. */
function fitted(content: Written, more: object = {}): void {
  const { job, vehicle } = content;
  const radio = partIn(content, 'radio', 'source-unit');
  radio.controls = {
    VOLUME: { ...face, form: 'knob', what: 'gain', safe: 'lowest', why: 'nothing plays yet' },
    'BASS-OUT': {
      ...{ ...face, what: 'other', positions: ['OFF', 'ON'], safe: 'OFF', final: 'ON' },
      why: 'nothing plays yet',
    },
    TONE: { ...face, what: 'other', safe: 'flat', why: 'gains are set through it' },
    FILTER: {
      ...{ ...face, what: 'crossover-mode', positions: ['HPF 80', 'FLAT'], safe: 'HPF 80', filter: flat },
      why: 'small cones',
    },
    ...more,
  };
  vehicle.fitted.head = {
    ...{ part: 'radio', zone: 'cabin' },
    outputs: { OUT: { ...knownOutput, 'clean-at': 'volume 26 of 30' } },
  };
  job.runs = { left: { route: 'left-sill', links: ['main'] } };
  delete job.links['radio-signal'];
  job.links['head-signal'] = { from: 'head.OUT', to: 'dsp.IN' };
  job['left-open'] = { 'radio.OUT': 'not used' };
}

describe("the vehicle's own source, where its part tells its controls", () => {
  const { job, plan } = plannedCase(fitted);
  const own = plan.controls.filter(({ item }) => item === 'head');
  const finalOf = (name: string) => own.find(({ control }) => control === name)?.final;

  test('stands on the settings sheet: filters flat, bass output on, tone as it is, volume where its voltage was read', () => {
    expect(finalOf('FILTER')?.state).toBe('FLAT');
    expect(finalOf('BASS-OUT')?.state).toBe('ON');
    expect(finalOf('TONE')?.state).toBe('flat');
    expect(finalOf('VOLUME')).toMatchObject({ state: 'at most volume 26 of 30', during: 'gains' });
  });

  test('is set with power on, before any filter is loaded, each control once', () => {
    const setBy = (act: string) => plan.steps.filter(({ acts }) => acts.includes(act)).map(({ id }) => id);
    for (const { control } of own) expect(setBy(`set:head.${control}`)).toEqual(['filters']);
    expect(plan.steps.find(({ id }) => id === 'filters')?.text).toContain('First set head');
    expect(setBy('finish:head.VOLUME')).toEqual(['gains']);
  });

  test('is no matter of the sheet where it feeds nothing', () => {
    const alone = plannedCase((content) => {
      fitted(content);
      delete content.job.links['head-signal'];
      content.job.links['radio-signal'] = { from: 'radio.OUT', to: 'dsp.IN' };
      delete content.job['left-open'];
    });
    expect(alone.plan.controls.filter(({ item }) => item === 'head')).toEqual([]);
  });

  test('is told in its part, which alone can say how a control of it stands', () => {
    const open = plannedCase((content) =>
      fitted(content, {
        CROSSOVER: { ...face, what: 'crossover', safe: '80 Hz', why: 'small cones' },
      }),
    );
    const told = judge(open.job, open.plan, []).find(({ related }) => related[0] === 'head.CROSSOVER');
    expect(told).toMatchObject({ rule: 'control-final-unknown', where: { file: 'parts.yaml' } });
    expect(told?.remedy).toBe('write final: at CROSSOVER in the part');
    expect(judge(job, plan, []).filter(({ related }) => related[1] === 'head')).toEqual([]);
  });

  test('has a volume without a mark where nobody read one', () => {
    const unread = plannedCase((content) => {
      fitted(content);
      delete entry(content.vehicle.fitted, 'head').outputs?.OUT?.['clean-at'];
    });
    const volume = unread.plan.controls.find(({ control }) => control === 'VOLUME');
    expect(volume?.final.state).toBe('as far up as its outputs stay clean');
  });
});
