import { describe, expect, test } from 'vitest';
import { everyFinding } from '../../../lib/model/finding.ts';
import { judge } from '../../../lib/rules/index.ts';
import { inJob, partsFile } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { byId, jobOf } from '../plan-small-shop.ts';

/** The feed of the small shop in 4 AWG of an insulation, behind a given fuse: its limits and the finding about it. */
function feedOf(insulationC: number, fuseA: number) {
  const changes: Change[] = [
    [
      partsFile,
      'size: 4 AWG, insulation: 105 C, colour: RD',
      `size: 4 AWG, insulation: ${insulationC} C, colour: RD`,
    ],
    inJob('to: amp.B+ }', 'to: amp.B+, wire: red-4 }'),
    inJob('holder-a, in: bay', `holder-a, in: bay, fuse: ${fuseA} A`),
  ];
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  const { limits } = byId(plan.power.conductors, 'feed');
  const found = (rule: string) => everyFinding(judge(job, plan, remarks)).find((one) => one.rule === rule);
  return {
    of: (level: string) => limits.filter((one) => one.zone === 'engine-bay' && one.level === level),
    found,
  };
}

describe('a limit carries the mark of the weakest factor on the way to it', () => {
  // The engine-space factor of 105 C was confirmed against a published chart, those of 90 C and others were not.
  test.each([
    [105, undefined],
    [90, 'mem'],
  ])('the published figure at %i C: %s', (insulationC, mark) => {
    expect(feedOf(insulationC, 60).of('stop')).toEqual([
      expect.objectContaining({ limit: expect.any(Number) }),
    ]);
    expect(feedOf(insulationC, 60).of('stop')[0]?.mark).toBe(mark);
    expect(feedOf(insulationC, 200).found('fuse-over-conductor')?.mark).toBe(mark);
  });

  test('the figure at the true ambient and under loom is common practice', () => {
    const { of, found } = feedOf(105, 80);
    expect(of('caution')[0]).toMatchObject({ mark: 'cp', what: 'ampacity, lowered by ambient, covered' });
    expect(of('stop')[0]?.what).toBe('ampacity, lowered by engine-space');
    expect(found('fuse-over-warm-conductor')).toMatchObject({ level: 'caution', mark: 'cp' });
  });
});
