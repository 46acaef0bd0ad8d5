import { describe, expect, test } from 'vitest';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId, smallPlan } from '../plan-small-shop.ts';
import { addParts, inParts } from '../shop-changes.ts';

const ties = addParts(
  'tie-short: { kind: fixing, title: Tie, form: tie, length: 200 mm }',
  'tie-hot: { kind: fixing, title: "Heat-stable tie", form: tie, length: 300 mm, withstands: 105 C }',
);
const openCovering = inJob(', covering: loom-a }', ' }');

describe('a run through the vehicle', () => {
  // Common practice, no source: a tie each 12 in, 0.3048 m: 2 on 0.5 m, 10 on 3 m.
  test('has a tie every foot, one that stands the heat in the engine bay', () => {
    const { plan } = smallPlan(ties);
    const passes = byId(plan.runs, 'power').passes ?? [];
    expect(passes.map(({ zone, tie, ties: count }) => [zone, tie, count])).toEqual([
      ['engine-bay', 'tie-hot', 2],
      ['sill', 'tie-short', 10],
    ]);
    expect(plan.pick.find(({ part }) => part === 'tie-hot')?.quantity).toBe(2);
  });

  test('keeps the covering that the job gives, all along', () => {
    const { plan } = smallPlan();
    const passes = byId(plan.runs, 'power').passes ?? [];
    expect(passes.map(({ covering, chosen }) => [covering, chosen])).toEqual([
      ['loom-a', 'given'],
      ['loom-a', 'given'],
    ]);
    expect(plan.pick.find(({ part }) => part === 'loom-a')?.quantity).toBe(3.5);
  });

  test('left open, is covered against heat in the engine bay and bare behind the sill trim, with the reason', () => {
    const { plan } = smallPlan(openCovering);
    const passes = byId(plan.runs, 'power').passes ?? [];
    expect(passes.map(({ covering, chosen }) => [covering, chosen])).toEqual([
      ['loom-a', 'computed'],
      [null, 'computed'],
    ]);
    expect(passes[0]?.reason).toMatch(/heat and wear at 85 C/);
    expect(passes[1]?.reason).toMatch(/sill trim/);
    expect(plan.pick.find(({ part }) => part === 'loom-a')?.quantity).toBe(0.5);
    // Bare on most of its way, so its wire does not count as sheathed.
    expect(byId(plan.wires, 'feed').covering).toEqual([]);
  });

  test('left open with nothing on the shelf that goes over it, says so', () => {
    const { plan, remarks } = smallPlan(openCovering, inParts('bore: 13 mm', 'bore: 5 mm'));
    expect(byId(plan.runs, 'power').passes?.[0]?.covering).toBeNull();
    expect(remarks.map(({ rule }) => rule)).toContain('covering-none-fits');
  });
});

describe('service loops', () => {
  test('are in a length that was measured, and not added to one that was given or made', () => {
    const { plan } = smallPlan();
    const loops = (id: string) => byId(plan.wires, id).ends.map(({ loopM }) => loopM);
    // Common practice, no source: 12 in in the vehicle.
    expect(loops('feed')).toEqual([12 * 0.0254, 12 * 0.0254]);
    expect(byId(plan.wires, 'feed').lengthM).toBeCloseTo(3.5 + 2 * 0.3048, 9);
    expect(loops('tail')).toEqual([0, 0]);
    expect(byId(plan.wires, 'tail').lengthM).toBeCloseTo(6 * 0.0254, 9);
    expect(loops('signal')).toEqual([0, 0]);
  });
});

describe('the end of a wire', () => {
  const shrink = addParts(
    'shrink-a: { kind: covering, title: Shrink, form: heat-shrink, bore: 12 mm, shrunk-bore: 4 mm, withstands: 110 C }',
    'shrink-b: { kind: covering, title: "Loose shrink", form: heat-shrink, bore: 30 mm, shrunk-bore: 15 mm, withstands: 110 C }',
  );

  test('on a stud has heat-shrink that slides over it and closes on it', () => {
    const { plan } = smallPlan(shrink);
    const [post] = byId(plan.wires, 'tail').ends;
    expect(post.prep).toMatch(/^ring lug M8/);
    expect(post.shrink?.part).toBe('shrink-a');
    // The barrel, and an inch of insulation.
    expect(post.shrink?.lengthM).toBeCloseTo((post.stripM ?? 0) + 0.0254, 9);
    expect(plan.pick.find(({ part }) => part === 'shrink-a')?.unit).toBe('m');
  });

  // 16 mm by the ferrule's own part, 15 mm by the maker of the port that it goes into.
  test('in a set screw is stripped as its port asks, and else as its ferrule does', () => {
    const ferrule = addParts(
      'ferrule-a: { kind: terminal, title: Ferrule, form: ferrule, takes: { from: 4 AWG, to: 4 AWG }, strip: 16 mm }',
    );
    const asked = inParts(
      'B+: { role: supply-positive, joint: set-screw, takes',
      'B+: { role: supply-positive, joint: set-screw, strip: 15 mm, takes',
    );
    const stripM = (...changes: readonly Change[]) =>
      byId(smallPlan(...changes).plan.wires, 'feed').ends[1].stripM;
    expect(stripM(ferrule)).toBe(0.016);
    expect(stripM(ferrule, asked)).toBe(0.015);
    expect(stripM(asked)).toBe(0.015);
  });

  test('has none in a set screw', () => {
    const { plan } = smallPlan(shrink);
    expect(byId(plan.wires, 'feed').ends[1].shrink).toBeUndefined();
  });

  test('with no heat-shrink that fits is remarked', () => {
    const { remarks } = smallPlan();
    expect(remarks.map(({ rule }) => rule)).toContain('heat-shrink-none-fits');
  });

  const smallPort = inParts(
    'B+: { role: supply-positive, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
    'B+: { role: supply-positive, joint: set-screw, takes: { from: 10 AWG, to: 8 AWG } }',
  );
  const given = inJob('to: amp.B+ }', 'to: amp.B+, size: 4 AWG }');
  const reducer = addParts(
    'reducer-a: { kind: terminal, title: Reducer, form: reducer, takes: { from: 4 AWG, to: 4 AWG }, pin: 8 AWG, strip: 15 mm }',
  );

  test('too thick for its port is refused where no reducer brings it in', () => {
    const { plan, remarks } = smallPlan(smallPort, given);
    expect(byId(plan.wires, 'feed').ends[1].prep).toBe('refused');
    expect(remarks.map(({ rule }) => rule)).toContain('port-refuses-conductor');
  });

  test('gets the reducer of the catalogue that fits both, and the pick list counts it', () => {
    const { plan, remarks } = smallPlan(smallPort, given, reducer);
    expect(byId(plan.wires, 'feed').ends[1]).toMatchObject({ part: 'reducer-a', stripM: 0.015 });
    expect(remarks.map(({ rule }) => rule)).not.toContain('port-refuses-conductor');
    expect(plan.pick.find(({ part }) => part === 'reducer-a')?.quantity).toBe(1);
  });

  test('gets none whose pin the port does not take', () => {
    const { plan } = smallPlan(smallPort, given, reducer, inParts('pin: 8 AWG', 'pin: 6 AWG'));
    expect(byId(plan.wires, 'feed').ends[1].prep).toBe('refused');
  });
});

describe('the key-off draw', () => {
  test('leaves out a device whose maker does not tell, and names it', () => {
    const { plan } = smallPlan();
    expect(plan.power.keyOff).toMatchObject({ drawA: 0, items: [{ item: 'amp', drawA: null }] });
  });

  test('is the sum, with its working', () => {
    const { plan } = smallPlan(inParts('fuse: 60 A, amp', 'fuse: 60 A, key-off: 60 mA, amp'));
    expect(plan.power.keyOff?.drawA).toBeCloseTo(0.06, 12);
    expect(plan.traces['power.keyOff.drawA']).toMatchObject({ mark: 'cp', formula: 'amp' });
  });
});
