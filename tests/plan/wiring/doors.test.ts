import { describe, expect, test } from 'vitest';
import { hingesOf } from '../../../lib/model/content/vehicle-route.ts';
import type { ZoneKind } from '../../../lib/model/vocabulary.ts';
import { inJob } from '../../read/problem-case.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inVehicle } from '../shop-changes.ts';

/** The way of the power begins in a door of half a metre behind its own sleeve, or in half a metre of another zone. */
const beginsIn = (zone: ZoneKind) =>
  smallPlan(
    inVehicle(
      'passes: [{ zone: engine-bay, length: 500 mm }, ',
      `passes: [{ zone: ${zone}, length: 400 mm }, { zone: ${zone}, length: 100 mm, own-grommet: true, through-hole: 60 mm }, `,
    ),
    inJob(', covering: loom-a }', ' }'),
  );

describe('a way that goes through a door', () => {
  test('passes a hinge wherever it goes into one or out of it', () => {
    const hinges = (...zones: readonly ZoneKind[]) => hingesOf({ passes: zones.map((zone) => ({ zone })) });
    expect(hinges('cabin', 'door', 'door')).toEqual([1]);
    expect(hinges('door', 'cabin', 'sill')).toEqual([1]);
    expect(hinges('cabin', 'door', 'cabin')).toEqual([1, 2]);
    expect(hinges('cabin', 'sill')).toEqual([]);
  });

  const door = beginsIn('door');
  const cabin = beginsIn('cabin');

  // The house rule for the slack is common practice, no source: 2 in, 50.8 mm.
  test('has its wires longer by the slack at the hinge, where they are not written', () => {
    const lengthM = ({ plan }: typeof door) => byId(plan.wires, 'feed').lengthM;
    expect(lengthM(door) - lengthM(cabin)).toBeCloseTo(0.0508, 9);
  });

  test('is covered there against water, and told how it lies where it is laid', () => {
    const step = byId(door.plan.steps, 'run-power');
    expect(step.text).toMatch(/in the door tied clear of the way of the window.*drains.*drip loop/);
    expect(step.proof).toMatch(/the door opens wide and shuts/);
    expect(byId(cabin.plan.steps, 'run-power').text).not.toContain('door');
    const reasons = (byId(door.plan.runs, 'power').passes ?? []).map(({ zone, reason }) => [zone, reason]);
    expect(reasons[0]).toEqual(['door', expect.stringMatching(/against wear and water/)]);
  });
});

test('what is let into a door is told to keep clear of its window, and the sheet behind it is closed again', () => {
  const mount = (zone: ZoneKind) =>
    byId(
      smallPlan(inVehicle('boot: { title: Boot, zone: cargo', `boot: { title: Boot, zone: ${zone}`)).plan
        .steps,
      'mount-boot',
    ).text;
  expect(mount('door')).toMatch(/window down and clear of it .*closed again round every wire/);
  expect(mount('cargo')).not.toMatch(/window down/);
});
