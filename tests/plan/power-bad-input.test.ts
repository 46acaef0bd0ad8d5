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
      /voltage-sizing is below 10 V/,
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
      inShop('stock:\n', `rules: { conductor-temperature: ${mark}-50 C }\nstock:\n`),
      /conductor-temperature is not above -40/,
    ],
    // Each of these would have made a conductor too thin or a fuse too large without a word.
    [
      'clad aluminium that conducts better than copper',
      inShop('stock:\n', `rules: { clad-conductivity: ${mark}500 % }\nstock:\n`),
      /clad-conductivity is above 100 %/,
    ],
    [
      'loom that cools',
      inShop('stock:\n', `rules: { loom-factor: ${mark}800 % }\nstock:\n`),
      /loom-factor is above 100 %/,
    ],
    [
      'a supply of another voltage',
      inShop('stock:\n', `rules: { voltage-sizing: ${mark}48 V }\nstock:\n`),
      /voltage-sizing is above 18 V/,
    ],
    [
      'an alternator of another voltage',
      inParts('rating: 150 A', `rating: 150 A\n    set-point: ${mark}28 V`),
      /set-point is above 18 V/,
    ],
    [
      'a fuse under what it carries',
      inShop('stock:\n', `rules: { fuse-margin: ${mark}80 % }\nstock:\n`),
      /fuse-margin is below 100 %/,
    ],
    [
      'a battery that lasts the longer the harder it is run',
      inShop('stock:\n', `rules: { peukert-agm: ${mark}10 % }\nstock:\n`),
      /peukert-agm is below 100 %/,
    ],
    [
      'an amplifier that gives more than it takes',
      inParts(
        'amplifier-class: class-d',
        `amplifier-class: class-d, efficiency: { full: ${mark}150 %, eighth: 50 % }`,
      ),
      /full is above 100 %/,
    ],
    [
      'an amplifier that gives nothing of what it takes',
      inParts(
        'amplifier-class: class-d',
        `amplifier-class: class-d, efficiency: { full: 75 %, eighth: ${mark}0 % }`,
      ),
      /eighth is not above zero/,
    ],
    ['a device with a fuse of nothing', inParts('fuse: 60 A', `fuse: ${mark}0 A`), /fuse is not above zero/],
    ['a fuse of nothing', inParts('rating: 60 A', `rating: ${mark}0 A`), /rating is not above zero/],
    [
      'a wire without resistance',
      inParts(
        'size: 8 AWG, insulation: 105 C, colour: RD',
        `size: 8 AWG, measured: ${mark}0 mohm/m, colour: RD`,
      ),
      /measured is not above zero/,
    ],
    ['a coil of nothing', inParts('nominal: 4 ohm', `nominal: ${mark}0 ohm`), /nominal is not above zero/],
    ['a rated power of nothing', inParts('power: 300 W', `power: ${mark}0 W`), /power is not above zero/],
    [
      'a port for no conductor',
      inParts(
        'GND: { role: supply-negative, joint: set-screw,',
        `GND: { role: supply-negative, conductors: ${mark}0, joint: set-screw,`,
      ),
      /conductors is not above zero/,
    ],
    [
      'a port whose largest conductor is smaller than its smallest',
      inParts(
        'OUT1: { role: feed-out, joint: set-screw, takes: { from: 8 AWG, to: 4 AWG } }',
        `OUT1: { role: feed-out, joint: set-screw, takes: ${mark}{ from: 4 AWG, to: 8 AWG } }`,
      ),
      /takes runs downwards: write the smaller value under from:/,
    ],
    [
      'a battery of no resistance by the house rules',
      inShop('stock:\n', `rules: { battery-resistance-agm: ${mark}0 ohm }\nstock:\n`),
      /battery-resistance-agm is not above zero/,
    ],
    [
      'a battery that gives no current',
      inParts('cold-cranking: 600 A', `cold-cranking: 600 A\n    resistance: ${mark}4 ohm`),
      /resistance is above 1 ohm/,
    ],
    [
      'a strip length below zero',
      inParts(
        'OUT1: { role: feed-out, joint: set-screw,',
        `OUT1: { role: feed-out, strip: ${mark}-5 mm, joint: set-screw,`,
      ),
      /strip: "-5 mm" is below zero/,
    ],
    [
      'a conductor as thick as an arm',
      inJob('to: amp.B+ }', `to: amp.B+, size: ${mark}5000 mm2 }`),
      /size: "5000 mm2" is not a conductor size made here/,
    ],
    [
      'a length that reaches the moon',
      inJob('length: 12 in', `length: ${mark}1000000000 m`),
      /"1000000000 m" is more than 1000 m, beyond anything in a vehicle: check the number and its unit/,
    ],
    [
      'an amplifier of a power station',
      inParts('power: 300 W', `power: ${mark}1000000 W`),
      /is more than 100000 W/,
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

  test('a second battery whose negative post is open: the rest is computed as if it were not there', () => {
    const joined = inJob('links:\n', 'links:\n  second: { from: other.POS, to: battery.POS, length: 1 m }\n');
    const open = inJob('left-open:\n', 'left-open:\n  other.NEG: joined later\n');
    const { plan, stops } = stopsOf(other, joined, open);
    expect(stops.map(({ rule }) => rule)).toContain('battery-without-ground');
    expect(stops.map(({ rule }) => rule)).not.toContain('supply-collapse');
    const without = stopsOf().plan;
    for (const [k, { state, elements }] of plan.power.points.entries()) {
      expect(state).toBe('solved');
      const amp = elements.find(({ id }) => id === 'amp:load');
      const alone = without.power.points[k]?.elements.find(({ id }) => id === 'amp:load');
      expect(amp?.currentA).toBeCloseTo(alone?.currentA ?? Number.NaN, 6);
    }
  });

  test('a turn-on current that its maker does not tell, from an output of the vehicle: the device is told where it stands', () => {
    const { stops } = stopsOf(inParts(', turn-on-draw: 20 mA', ''));
    expect(stops).toContainEqual(
      expect.objectContaining({
        rule: 'turn-on-load-unknown',
        where: expect.objectContaining({ file: 'content/jobs/demo.yaml', path: '/devices/amp' }),
      }),
    );
  });

  test('an output of the vehicle whose limit is not told stands in the file of the vehicle', () => {
    const { stops } = stopsOf(
      inParts('REM: { role: turn-on-out, current: 300 mA }', 'REM: { role: turn-on-out }'),
    );
    const unknown = stops.find(({ rule }) => rule === 'turn-on-limit-unknown');
    expect(unknown?.where).toMatchObject({ file: 'content/vehicles/wagon.yaml', path: '/fitted/radio' });
  });

  test('an alternator that is set below the voltage for sizing: currents are reckoned at its own', () => {
    const usual = stopsOf().plan.power.loads.find(({ item }) => item === 'amp');
    const low = stopsOf(inParts('rating: 150 A', 'rating: 150 A\n    set-point: 12.5 V')).plan.power.loads;
    // A regulated supply takes the same power, so that I = P / V: 13.8 V of the house rules against 12.5 V.
    const ratio = (low.find(({ item }) => item === 'amp')?.ratedA ?? 0) / (usual?.ratedA ?? 0);
    expect(ratio).toBeCloseTo(13.8 / 12.5, 9);
  });

  test('an alternator beside its battery is none of them', () => {
    expect(stopsOf().stops).toEqual([]);
  });
});
