import { describe, expect, test } from 'vitest';
import { placeText } from '../../lib/model/place.ts';
import { planJob } from '../../lib/plan/plan-job.ts';
import { readContent } from '../../lib/read/read-content.ts';
import { judge } from '../../lib/rules/index.ts';
import { expectProblem, inJob, partsFile } from '../read/problem-case.ts';
import { type Change, mark, smallShop, withoutMark } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';

/** What is found in the small shop with changes: rule, subjects and path of each stop; and every number of its plan. */
function stopsOf(...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planJob(job);
  const text = JSON.stringify(plan, (_, value) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error('The plan holds no number.');
    return value;
  });
  const stops = judge(job, plan, remarks).filter(({ level }) => level === 'stop');
  return {
    text,
    plan,
    stops: stops.map(({ rule, related, where, message }) => ({ rule, related, where, message })),
  };
}

const inParts = (found: string, instead: string): Change => [partsFile, found, instead];
const inVehicle = (found: string, instead: string): Change => ['content/vehicles/wagon.yaml', found, instead];
const inShop = (found: string, instead: string): Change => ['content/shop.yaml', found, instead];
const secondBattery = inJob(
  'links:\n',
  'links:\n  second: { from: other.POS, to: battery.POS, length: 0 m }\n  second-return: { from: other.NEG, to: battery.NEG, length: 0 m }\n',
);
const other = inJob('  sub: {', '  other: { part: battery-a, in: boot }\n  sub: {');
const noJoints = inShop('stock:\n', 'rules: { lug-resistance: 0 mohm, joint-resistance: 0 mohm }\nstock:\n');

describe('what can not be read is told at its place', () => {
  test('a negative length', () => {
    expectProblem({
      name: 'negative length',
      changes: [inJob('length: 12 in', `length: ${mark}-12 in`)],
      says: /length/,
    });
  });

  test('an unknown port', () => {
    expectProblem({
      name: 'unknown port',
      changes: [inJob('to: main-fuse.IN', `to: ${mark}main-fuse.INN`)],
      says: /INN/,
    });
  });
});

describe('what nothing can be computed from is refused', () => {
  test.each([
    [
      'a battery without capacity',
      inParts('capacity: 70 Ah', `capacity: ${mark}0 Ah`),
      /capacity is not above zero/,
    ],
    [
      'a battery that gives nothing',
      inParts('cold-cranking: 600 A', `cold-cranking: ${mark}0 A`),
      /not above zero/,
    ],
    [
      'an alternator of no current',
      inParts('rating: 150 A', `rating: ${mark}0 A`),
      /rating is not above zero/,
    ],
    [
      'a supply of no voltage',
      inShop('stock:\n', `rules: { voltage-sizing: ${mark}0 V }\nstock:\n`),
      /voltage-sizing is not above zero/,
    ],
    [
      'an efficiency of nothing',
      inShop('stock:\n', `rules: { efficiency-class-d: ${mark}0 % }\nstock:\n`),
      /efficiency-class-d is not above zero/,
    ],
    [
      'clad aluminium that does not conduct',
      inShop('stock:\n', `rules: { clad-conductivity: ${mark}0 % }\nstock:\n`),
      /clad-conductivity is not above zero/,
    ],
    [
      'a conductor below any cold',
      inShop('stock:\n', `rules: { conductor-temperature: ${mark}-300 C }\nstock:\n`),
      /conductor-temperature is not above -40/,
    ],
  ])('%s', (name, change, says) => {
    const { files, place } = withoutMark(smallShop(change));
    const told = readContent(files).problems.map(({ where, message }) => `${placeText(where)} ${message}`);
    expect(told, name).toContainEqual(expect.stringMatching(says));
    expect(told.some((text) => text.startsWith(place))).toBe(true);
  });
});

describe('what can be read but not computed is a stop that names it', () => {
  test('a device with no ground', () => {
    const { stops } = stopsOf(inJob('  ground: { from: amp.GND, to: body.cargo, length: 12 in }\n', ''));
    expect(stops).toContainEqual(
      expect.objectContaining({
        rule: 'network-floating',
        related: ['amp', 'rated-power', 'full-rating', 'music', 'engine-off'],
        where: expect.objectContaining({ path: '/devices/amp' }),
        message: 'amp.GND has no way to battery.NEG but through a device that draws current',
      }),
    );
    // Told once, by what is wrong, and not once more for each operating point.
    expect(stops.map(({ rule }) => rule)).not.toContain('supply-collapse');
    expect(stops).toContainEqual(expect.objectContaining({ related: ['amp.GND', 'amp'] }));
  });

  test('a battery whose negative post is joined to nothing: no drop of the ground is told, but why', () => {
    const { plan, stops } = stopsOf(
      inVehicle('  strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }\n', ''),
    );
    const floating = stops.find(({ rule }) => rule === 'network-floating');
    expect(floating?.message).toMatch(/^amp\.GND, body\.cargo, .* and body have no way to battery\.NEG/);
    const rated = plan.power.drops.find(({ point }) => point === 'rated-power');
    expect(rated).toMatchObject({
      groundDropV: null,
      share: null,
      unknown: 'the drop of the ground is not known, since no conductor joins amp.GND to battery.NEG',
    });
    expect(rated?.feedDropV).toBeGreaterThan(0);
    const told = plan.measurements.map(({ id }) => id);
    expect(told).toContain('amp.feed-drop.rated-power');
    expect(told).not.toContain('amp.ground-drop.rated-power');
  });

  test('a loop without resistance', () => {
    const { stops } = stopsOf(
      noJoints,
      inJob(
        '  turn-on: {',
        '  ring-a: { from: amp.GND, to: body.cargo, length: 0 m }\n  ring-b: { from: amp.GND, to: body.cargo, length: 0 m }\n  turn-on: {',
      ),
    );
    const loop = stops.find(({ rule }) => rule === 'network-zero-resistance-loop');
    expect(loop?.related).toEqual(expect.arrayContaining(['ring-a', 'ring-b']));
  });

  test('a fuse of no current', () => {
    const { stops } = stopsOf(inJob('in: bay }', 'in: bay, fuse: 0 A }'));
    expect(stops).toContainEqual(expect.objectContaining({ rule: 'fuse-without-rating' }));
  });

  test('two stiff sources in parallel', () => {
    const { stops } = stopsOf(
      noJoints,
      inParts('cold-cranking: 600 A', 'cold-cranking: 600 A\n    resistance: 0 mohm'),
      other,
      secondBattery,
    );
    const stiff = stops.find(({ rule }) => rule === 'network-stiff-sources-in-parallel');
    expect(stiff?.related).toEqual(expect.arrayContaining(['other', 'battery']));
    expect(stiff?.where.path).toMatch(/^\/(links|devices)\//);
  });

  test('an alternator beside its battery is none of them', () => {
    expect(stopsOf().stops).toEqual([]);
  });
});
