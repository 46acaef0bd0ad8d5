import { describe, expect, test } from 'vitest';
import { judge } from '../../lib/rules/index.ts';
import { planKept } from '../plan/plan-kept.ts';
import { entry, jobOf, partIn } from './case.ts';
import { withHighPass } from './cases/audio/filters-in-path.ts';
import { type Written, withoutBoard, written } from './content.ts';
import { stereo } from './stereo.ts';

/** Findings on filters, each with what is folded under it. */
function toldOf(
  { job, plan }: Pick<ReturnType<typeof stereo>, 'job' | 'plan'>,
  remarks = planKept(job).remarks,
) {
  return judge(job, plan, remarks)
    .filter(({ rule }) => /^(filter-not-made|pair-filtered|subwoofer-high)/.test(rule))
    .map(({ rule, follows = [] }) => [rule, ...follows.map((one) => one.rule)]);
}

const butterworth = (corner: string) =>
  [{ pass: 'high-pass', type: 'butterworth', order: 2, corner }] as const;

const corners = (left: string, right: string) => (content: Written) => {
  withHighPass(content, { order: 2, corner: left }, ['1', '2']);
  Object.assign(entry(content.job.devices, 'amp').filters ?? {}, { 'CH2+': [...butterworth(right)] });
};

describe('a filter that the amplifier does not make', () => {
  test('leaves the speaker that it was to guard without one, and is told as the cause', () => {
    const content = written();
    delete partIn(content, 'dsp', 'processor')['filter-orders'];
    entry(content.job.devices, 'amp').filters = {
      'CH1+': [...butterworth('3000 Hz')],
      'CH2+': [{ ...butterworth('80 Hz')[0], pass: 'low-pass' }],
    };
    withoutBoard(content);
    const job = jobOf(content);
    const { plan, remarks } = planKept(job);
    expect(plan.audio.channels.map(({ filters }) => filters)).toEqual([[], []]);
    const found = judge(job, plan, remarks).filter(({ rule }) => rule === 'filter-not-made');
    expect(found.map(({ level, follows = [] }) => [level, follows.map(({ rule }) => rule)])).toEqual([
      ['stop', ['small-speaker-without-high-pass']],
      ['stop', expect.arrayContaining(['subwoofer-without-low-pass'])],
    ]);
  });

  test('is the cause where one knob is asked for two corners of a pair', () => {
    expect(toldOf(stereo(corners('200 Hz', '400 Hz')))).toEqual([
      ['filter-not-made', 'pair-filtered-differently'],
    ]);
    expect(toldOf(stereo(corners('200 Hz', '200 Hz')))).toEqual([]);
  });

  test('stands under a high-pass that was written for a subwoofer, and for itself on any other channel', () => {
    const onSub = (more: (content: Written) => void) => {
      const content = written();
      withHighPass(content, { order: 2, corner: '80 Hz' });
      more(content);
      withoutBoard(content);
      const job = jobOf(content);
      return toldOf({ job, plan: planKept(job).plan });
    };
    const asked = (channel: string) => (content: Written) =>
      Object.assign(entry(content.job.devices, 'amp').filters ?? {}, {
        [channel]: [...butterworth('80 Hz')],
      });
    expect(onSub(() => {})).toEqual([]);
    // No part makes it there, so that it is in no path, and takes no bass.
    expect(onSub(asked('CH2+'))).toEqual([['filter-not-made', 'ported-without-subsonic']]);
    const otherOrder = (content: Written) => {
      withHighPass(content, { order: 2, corner: '80 Hz' }, ['1', '2']);
      Object.assign(entry(content.job.devices, 'amp').filters ?? {}, {
        'CH2+': [{ ...butterworth('80 Hz')[0], order: 4 }],
      });
    };
    expect(onSub(otherOrder)).toEqual([['subwoofer-high-passed', 'filter-not-made']]);
  });
});
