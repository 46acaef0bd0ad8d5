import { expect, test } from 'vitest';
import { fuseChooser } from '../../../../lib/plan/power/sizing/fuse-chooser.ts';
import type { FuseDuty } from '../../../../lib/power/fuse-choice.ts';
import { jobOf } from '../../../rules/case.ts';
import { written } from '../../../rules/content.ts';

const duty: FuseDuty = {
  ratedA: 20,
  ceilingA: 60,
  protects: [],
  form: 'maxi-blade',
  interruptNeedA: null,
};

test('duties that differ in one figure alone are answered each for itself, in whatever order they are asked', () => {
  const duties: readonly FuseDuty[] = [
    duty,
    { ...duty, ratedA: 30 },
    { ...duty, ceilingA: null },
    { ...duty, ceilingA: 20 },
    { ...duty, makerA: 50 },
    { ...duty, ceilingFuses: 2, makerA: 30 },
    { ...duty, protects: [{ id: 'a lead', ampacityA: 22 }] },
    { ...duty, protects: [{ id: 'a lead', ampacityA: 22, sideBySide: 2 }] },
    { ...duty, form: null },
    { ...duty, holderLargestA: 10 },
    { ...duty, interruptNeedA: 5000 },
    { ...duty, interruptNeedA: Number.POSITIVE_INFINITY },
  ];
  const job = jobOf(written());
  const alone = duties.map((one) => fuseChooser(job)(one));
  const choose = fuseChooser(job);
  expect(duties.map(choose)).toEqual(alone);
  expect(duties.toReversed().map(choose).toReversed()).toEqual(alone);
  expect(new Set(alone.map((one) => JSON.stringify(one))).size).toBeGreaterThan(6);
});
