import { expect, test } from 'vitest';
import { withBoard } from '../../../read/problem-case.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { onTheBoard } from '../../power/four-points.ts';
import { inVehicle } from '../../shop-changes.ts';

const fan = (written: string) => inVehicle('    air: 60 L', `    air: 60 L\n    fan: ${written}`);

test('a fan that a space with a board counts on is fitted, and proved to blow before the hand-over', () => {
  const { steps } = smallPlan(withBoard(), ...onTheBoard, fan('20.2 m3/h')).plan;
  const fit = steps.find(({ id }) => id === 'fan-well');
  // Rounded up: with less air it gets warmer than was counted on.
  expect(fit?.text).toMatch(
    /^See that well has a fan that moves 21 m3\/h or more, or fit one\. .*not planned here/,
  );
  expect(fit?.after).toEqual(['battery-off']);
  const proof = steps.find(({ id }) => id === 'fan-blows-well');
  expect(proof?.text).toMatch(/^With the system on, prove that the fan of well blows/);
  expect(steps.find(({ id }) => id === 'hand-over')?.after).toEqual(['fan-blows-well']);
  expect(steps.findIndex(({ id }) => id === 'fan-well')).toBeLessThan(
    steps.findIndex(({ id }) => id === 'first-power'),
  );
});

test('a space without one, or with one that moves nothing, has no such step', () => {
  for (const changes of [[], [fan('0 m3/h')]])
    expect(
      smallPlan(withBoard(), ...onTheBoard, ...changes).plan.steps.filter(({ id }) => id.startsWith('fan')),
    ).toEqual([]);
});
