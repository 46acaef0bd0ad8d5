import { describe, expect, test } from 'vitest';
import { hingesBetween } from '../../../lib/model/content/run-hinges.ts';
import { hingesOf } from '../../../lib/model/content/vehicle-route.ts';
import type { ZoneKind } from '../../../lib/model/vocabulary.ts';
import { inJob } from '../../read/problem-case.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { inVehicle } from '../shop-changes.ts';

/** The way of the power begins in a door of half a metre behind its own sleeve, or in half a metre of another zone. */
const beginsIn = (zone: ZoneKind) =>
  smallPlan(
    inVehicle(
      'bay: { title: Beside the battery, zone: engine-bay',
      `bay: { title: Beside the battery, zone: ${zone}`,
    ),
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

  test('passes one where it ends at what stands in a door, too, whichever way round it is told', () => {
    expect(hingesBetween(['cabin', 'sill'], 'door', 'cargo')).toBe(1);
    expect(hingesBetween(['cabin', 'sill'], 'cargo', 'door')).toBe(1);
    expect(hingesBetween(['sill', 'door'], 'door', 'cargo')).toBe(1);
    expect(hingesBetween(['door'], 'cabin', 'door')).toBe(1);
    expect(hingesBetween(['sill'], 'door', 'door')).toBe(2);
    expect(hingesBetween(['sill'], undefined, 'cabin')).toBe(0);
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

/** The house rule for the slack at a hinge, and for a loop in the vehicle: 2 in and 12 in, common practice, no source. */
const [slackM, loopM] = [0.0508, 0.3048];

/** The zones of a wire with the length in each, to a micrometre. */
const zonesOf = ({ plan }: ReturnType<typeof smallPlan>, id: string) =>
  byId(plan.wires, id).zones.map(({ zone, lengthM }) => [zone, Math.round(lengthM * 1e6) / 1e6]);

describe('a link that is joined to another one of its run, on a way through a door', () => {
  /** Two turn-ons from the radio in the cabin: the second leaves the wire of the first so far along. */
  const joinedAfter = (after: string, passes = 'cabin 1 m, door 1 m, sill 2 m') =>
    smallPlan(
      inVehicle('passes: [{ zone: sill, length: 3 m }] }', `passes: [${passes}] }`),
      inJob('  sub: {', '  amp-2: { part: amp-a, in: boot }\n  sub: {'),
      inJob(
        '  signal: {',
        `  second: { from: radio.REM, to: amp-2.REM, joint: { with: turn-on, after: ${after} } }\n  signal: {`,
      ),
      inJob('links: [turn-on] }', 'links: [turn-on, second] }'),
    );
  const lengthM = (found: ReturnType<typeof smallPlan>, id: string) => byId(found.plan.wires, id).lengthM;

  test.each([
    ['before the door', '500 mm', 3.5, 2],
    ['in the door', '1500 mm', 2.5, 1],
    ['behind it', '2500 mm', 1.5, 0],
  ])('has the slack of the hinges behind its joint alone: %s', (_, after, wayM, hinges) => {
    const found = joinedAfter(after);
    expect(lengthM(found, 'second')).toBeCloseTo(wayM + hinges * slackM + loopM, 6);
    expect(lengthM(found, 'turn-on')).toBeCloseTo(4 + 2 * slackM + 2 * loopM, 6);
  });

  test('lies in the zones behind it alone', () => {
    expect(zonesOf(joinedAfter('2500 mm'), 'second').slice(0, 1)).toEqual([['sill', 1.5]]);
    expect(zonesOf(joinedAfter('1500 mm'), 'second').slice(0, 2)).toEqual([
      ['door', 0.5],
      ['sill', 2],
    ]);
  });

  test('counts them from the end where the shared terminal is, where the way is told the other way round', () => {
    const found = joinedAfter('2500 mm', 'sill 2 m, door 1 m, cabin 1 m');
    expect(lengthM(found, 'second')).toBeCloseTo(1.5 + loopM, 6);
    expect(zonesOf(found, 'second').slice(0, 1)).toEqual([['sill', 1.5]]);
  });

  test('and the joint lies behind the slack of the hinges before it', () => {
    const joint = (after: string) => byId(joinedAfter(after).plan.joints ?? [], 'second').distanceM;
    expect(joint('500 mm')).toBeCloseTo(0.5 + loopM, 6);
    expect(joint('1500 mm')).toBeCloseTo(1.5 + slackM + loopM, 6);
  });

  test('has all zones and the more of the hinges where nothing tells at which end they begin', () => {
    const found = joinedAfter('500 mm', 'under-carpet 1 m, door 1 m, sill 2 m');
    expect(zonesOf(found, 'second').slice(0, 3)).toEqual([
      ['under-carpet', 1],
      ['door', 1],
      ['sill', 2],
    ]);
    expect(lengthM(found, 'second')).toBeCloseTo(3.5 + 2 * slackM + loopM, 6);
  });
});

describe('a branch whose leg goes into a door', () => {
  const branch = (zone: ZoneKind) =>
    smallPlan(
      inVehicle('boot: {', `door: { title: Door, zone: ${zone}, side: left }\n  boot: {`),
      inJob('  sub: {', '  amp-2: { part: amp-a, in: door }\n  sub: {'),
      inJob(
        '  speaker: {',
        '  second: { from: main-fuse.OUT, to: amp-2.B+, branch: { from: feed, after: 1 m, leg: 500 mm } }\n  speaker: {',
      ),
      inJob('links: [feed], covering', 'links: [feed, second], covering'),
    );

  test('is longer by the slack at its hinge, which lies in its own leg', () => {
    const [found, plain] = [branch('door'), branch('cabin')];
    expect(byId(plain.plan.wires, 'second').lengthM).toBeCloseTo(1.5 + 2 * loopM, 6);
    expect(byId(found.plan.wires, 'second').lengthM).toBeCloseTo(1.5 + slackM + 2 * loopM, 6);
    const legs = (of: typeof found) => byId(of.plan.branches, 'second').legs;
    expect(
      byId(
        legs(found).map(({ wire, ...leg }) => ({ id: wire, ...leg })),
        'second',
      ),
    ).toMatchObject({
      sharedM: expect.closeTo(1 + loopM, 6),
      ownM: expect.closeTo(0.5 + slackM + loopM, 6),
    });
    expect(byId(found.plan.wires, 'feed').lengthM).toBeCloseTo(byId(plain.plan.wires, 'feed').lengthM, 9);
    expect(byId(found.plan.steps, 'run-power').text).toMatch(/in the door tied clear/);
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
