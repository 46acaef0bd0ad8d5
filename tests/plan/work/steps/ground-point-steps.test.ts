import { describe, expect, test } from 'vitest';
import { withBoard } from '../../../read/problem-case.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { onTheBoard } from '../../power/four-points.ts';
import { addParts, inVehicle } from '../../shop-changes.ts';
import { allBefore } from './step-order.ts';

const nut =
  'nut-m8: { kind: fixing, title: Rivet nut, form: rivet-nut, thread: M8, length: 18 mm, pilot: 11 mm }';
const toMake = (point: string) =>
  inVehicle(
    `  ${point}: { zone: ${point === 'cargo' ? 'cargo' : 'engine-bay'},`,
    `  ${point}: { there: false, behind: nothing, zone: ${point === 'cargo' ? 'cargo' : 'engine-bay'},`,
  );

describe('a ground point that is still to be made', () => {
  const { plan } = smallPlan(withBoard(), ...onTheBoard, toMake('cargo'), addParts(nut));
  const step = plan.steps.find(({ id }) => id === 'ground-points');

  test('is drilled with the battery off, after a look behind it, and before anything is grounded', () => {
    expect(step?.text).toMatch(/drill .*11 mm.* and set nut-m8 at cargo\. First look and feel behind each/);
    expect(step?.after).toEqual(['battery-off']);
    expect(allBefore(plan.steps, 'connect-ground')).toContain('ground-points');
  });

  test('has its rivet nut fetched, and a bolt that is not of the vehicle', () => {
    expect(plan.pick).toContainEqual(expect.objectContaining({ part: 'nut-m8', quantity: 1 }));
  });

  test('asks for nothing where it is there, or where no wire of the job ends at it', () => {
    for (const changes of [[], [toMake('engine')]]) {
      const made = smallPlan(withBoard(), ...onTheBoard, ...changes, addParts(nut)).plan;
      expect(made.steps.map(({ id }) => id)).not.toContain('ground-points');
      expect(made.pick.map(({ part }) => part)).not.toContain('nut-m8');
    }
  });
});
