import { describe, expect, test } from 'vitest';
import { everyFinding } from '../../../lib/model/finding.ts';
import { judge } from '../../../lib/rules/index.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';
import { inParts, inVehicle } from '../shop-changes.ts';

/** What is found in the small shop with changes: rule, subjects and path of each stop; and every number of its plan. */
function stopsOf(...changes: readonly Change[]) {
  const job = jobOf(smallShop(...changes));
  const { plan, remarks } = planKept(job);
  const text = JSON.stringify(plan, (_, value) => {
    if (typeof value === 'number' && !Number.isFinite(value)) throw new Error('The plan holds no number.');
    return value;
  });
  const findings = everyFinding(judge(job, plan, remarks));
  const stops = findings.filter(({ level }) => level === 'stop');
  return {
    text,
    plan,
    findings,
    stops: stops.map(({ rule, related, where, message }) => ({ rule, related, where, message })),
  };
}

const other = inJob('  sub: {', '  other: { part: battery-a, in: boot }\n  sub: {');
describe('what can be read but not computed is a stop that names it', () => {
  test('a device with no ground', () => {
    const { stops } = stopsOf(inJob('  ground: { from: amp.GND, to: body.cargo, length: 12 in }\n', ''));
    expect(stops).toContainEqual(
      expect.objectContaining({
        rule: 'network-floating',
        related: ['amp', 'rated-power', 'full-rating', 'music', 'engine-off', 'cruise', 'idle', 'rest'],
        where: expect.objectContaining({ path: '/devices/amp' }),
        message: 'amp.GND has no way to battery.NEG but through a device that draws current',
      }),
    );
    // Told once, by what is wrong, and not once more for each operating point.
    expect(stops.map(({ rule }) => rule)).not.toContain('supply-collapse');
    expect(stops).toContainEqual(expect.objectContaining({ related: ['amp.GND', 'amp'] }));
  });

  const strap = inVehicle(
    '  strap: { from: battery.NEG, to: body.engine, size: 4 AWG, length: 300 mm }\n',
    '',
  );
  const charge = inVehicle(
    '  charge: { from: alternator.B+, to: battery.POS, size: 4 AWG, length: 1 m }\n',
    '',
  );
  const itsCase = inVehicle(
    '  case: { from: alternator.CASE, to: body.engine, size: 4 AWG, length: 300 mm }\n',
    '',
  );
  test.each([
    ['a battery without its strap', [strap], 'battery'],
    ['an alternator without its charge lead', [charge], 'alternator'],
    ['an alternator that is linked to nothing', [charge, itsCase], 'alternator'],
  ] as const)('%s is one stop at its line, and nothing else changes', (_, left, subject) => {
    const whole = stopsOf();
    const { plan, stops } = stopsOf(...left);
    const added = stops.filter(({ rule }) => !whole.stops.some((one) => one.rule === rule));
    expect(added.map(({ rule, related, where }) => [rule, related[0], where.path])).toEqual([
      ['fitted-source-not-linked', subject, `/fitted/${subject}`],
    ]);
    expect(plan.power.points.map(({ state }) => state)).toEqual(
      whole.plan.power.points.map(({ state }) => state),
    );
  });

  test('a fuse of no current', () => {
    const { stops } = stopsOf(inJob('in: bay }', 'in: bay, fuse: 0 A }'));
    expect(stops).toContainEqual(expect.objectContaining({ rule: 'fuse-without-rating' }));
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

  test('a turn-on current that its maker does not tell, from an output of the vehicle: its part is told', () => {
    const { stops, plan, findings } = stopsOf(inParts(', turn-on-draw: 20 mA', ''));
    expect(stops).toEqual([]);
    expect(findings).toContainEqual(
      expect.objectContaining({
        rule: 'turn-on-draw-assumed',
        level: 'note',
        message: expect.stringContaining('0.1 A is reckoned, by the house rule turn-on-draw'),
        where: expect.objectContaining({ file: 'content/parts/all.yaml', path: '/parts/amp-a' }),
      }),
    );
    const [turnOn] = plan.power.turnOn;
    expect(turnOn?.loads).toContainEqual({ item: 'amp', currentA: 0.1 });
    expect(Object.values(plan.traces).map(({ citation }) => citation)).toContain(
      "Kirchhoff's current law; the parts' data; house rule turn-on-draw",
    );
  });

  test('an output of the vehicle whose limit is not told stands in the file of its part', () => {
    const { stops } = stopsOf(
      inParts('REM: { role: turn-on-out, current: 300 mA }', 'REM: { role: turn-on-out }'),
    );
    const unknown = stops.find(({ rule }) => rule === 'turn-on-limit-unknown');
    expect(unknown?.where).toMatchObject({ file: 'content/parts/all.yaml', path: '/parts/radio-a' });
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
