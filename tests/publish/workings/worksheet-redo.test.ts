import { describe, expect, it } from 'vitest';
import type { Trace } from '../../../lib/model/trace.ts';
import { workingTables } from '../../../lib/publish/workings/index.ts';
import { outsideCheck } from '../../outside-check.ts';
import { demoJobs, demoPlan } from '../../plan/demo.ts';
import { redone } from './redo.ts';

const byCalculator = outsideCheck('redone-by-hand');
const balance = outsideCheck('balance-of-currents');

// The printed formula, with the printed inputs put into it, must give the printed value. The arithmetic is done here, by a
// calculator that knows nothing of the computations.

/** Read off a table, a shelf or a part: there is nothing to reckon. */
const readOff = (path: string, { origin, inputs }: Trace): boolean =>
  origin === 'given' || (origin === 'assumed' && inputs.length === 0) || path.endsWith('.ratingA');

const ofPower = (path: string): boolean => /^(power|runs|wires|cables)\./.test(path);

describe.each(demoJobs)('every number of power and wiring of %s can be redone by hand', (id) => {
  const { power, runs, wires, traces } = demoPlan(id);
  const reckoned = Object.entries(traces).filter(([path, trace]) => ofPower(path) && !readOff(path, trace));

  it('from the formula and the inputs of its working', () => {
    expect(reckoned.length).toBeGreaterThan(50);
    for (const [path, trace] of reckoned) {
      expect(trace.formula, path).toBeDefined();
      if (/^(fitted by|made length|greatest current of)/.test(trace.formula ?? '')) continue;
      const value = Number(trace.value);
      byCalculator.differs(value, redone(trace));
      expect(Math.abs(redone(trace) - value), path).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(value)));
    }
  });

  it('what flows into a terminal flows out of it, by the currents and directions of the network as printed', () => {
    const tables = workingTables(demoPlan(id)).filter(({ caption }) => caption.startsWith('Every element'));
    expect(tables).toHaveLength(power.points.length);
    for (const { caption, rows } of tables) {
      const sums = new Map<string, { sumA: number; ends: number }>();
      const add = (node: string, currentA: number) => {
        const { sumA, ends } = sums.get(node) ?? { sumA: 0, ends: 0 };
        sums.set(node, { sumA: sumA + currentA, ends: ends + 1 });
      };
      for (const { cells } of rows) {
        const [, , way, , current] = cells.map(({ text }) => text);
        const [from = '', to = ''] = (way ?? '').split(', ');
        const currentA = Number((current ?? '').replace(' A', ''));
        add(from, -currentA);
        add(to, currentA);
      }
      expect(sums.size, caption).toBeGreaterThan(20);
      // Each current is printed to 0.01 A, so each end at a terminal may be off by half of that.
      for (const [node, { sumA, ends }] of sums)
        expect(Math.abs(balance.differs(sumA, 0)), `${caption}: ${node}`).toBeLessThanOrEqual(
          0.005 * ends + 1e-9,
        );
    }
  });

  it('what lies before a fuse adds to the resistance that its fault current goes by', () => {
    for (const { id: fuse, faultA } of power.fuses) {
      const inputs = traces[`power.fuses.${fuse}.faultA`]?.inputs ?? [];
      if (faultA === null) continue;
      const [, line, ...parts] = inputs.filter(({ unit }) => unit === 'ohm');
      const sum = parts.reduce((ohm, { value }) => ohm + Number(value), 0);
      expect(parts.length, fuse).toBeGreaterThan(2);
      expect(Math.abs(sum - Number(line?.value)), fuse).toBeLessThan(1e-8);
      const given = inputs.filter(({ unit }) => unit === 'A');
      const givenA = given.reduce((all, { value }) => all + Number(value), 0);
      expect(givenA / Number(faultA), fuse).toBeCloseTo(1, 6);
    }
  });

  it('a rating is one that is made, carries the current and is within what it protects', () => {
    for (const { id: fuse } of power.fuses) {
      const trace = traces[`power.fuses.${fuse}.ratingA`];
      const input = (name: string) => trace?.inputs.find((one) => one.name === name)?.value;
      const made = String(input('made')).replace(' A', '').split(', ').map(Number);
      expect(made, fuse).toContain(trace?.value);
      expect(Number(trace?.value), fuse).toBeGreaterThanOrEqual(Number(input('I')));
      expect(Number(trace?.value), fuse).toBeLessThanOrEqual(Number(input('least ampacity') ?? Infinity));
    }
  });

  it('each has a working, and it is of the value that the sheets show', () => {
    const shown = [
      ...power.conductors.flatMap(({ id: at, ampacityA, cautionA, neededA }) =>
        Object.entries({ ampacityA, cautionA, neededA }).map(([name, value]) => [
          `conductors.${at}.${name}`,
          value,
        ]),
      ),
      ...power.fuses.flatMap(({ id: at, ratedA, ratingA, interruptA, needsInterruptA, faultA, distanceM }) =>
        Object.entries({ ratedA, ratingA, interruptA, needsInterruptA, faultA, distanceM }).map(
          ([name, value]) => [`fuses.${at}.${name}`, value],
        ),
      ),
      ...power.drops.flatMap(({ point, item, feedDropV, groundDropV, share }) =>
        Object.entries({ feedDropV, groundDropV, share }).map(([name, value]) => [
          `drops.${point}.${item}.${name}`,
          value,
        ]),
      ),
      ...power.charging.flatMap(({ name: at, recharges = [], ...regime }) => [
        ...Object.entries(regime).map(([name, value]) => [`charging.${at}.${name}`, value]),
        ...recharges.map(({ battery, minutes }) => [`charging.${at}.recharges.${battery}`, minutes]),
      ]),
      ...(power.sourceReadings ?? []).map(({ item, what, value }) => [
        `sourceReadings.${item}.${what}`,
        value,
      ]),
      ...power.loads.flatMap(({ item, ...load }) =>
        Object.entries(load).map(([name, value]) => [`loads.${item}.${name}`, value]),
      ),
    ].map(([path, value]) => [`power.${path}`, value] as const);
    const others = [
      ...runs.map(({ id: at, bundleM }) => [`runs.${at}.bundleM`, bundleM] as const),
      ...wires.map(({ id: at, lengthM }) => [`wires.${at}.lengthM`, lengthM] as const),
    ];
    for (const [path, value] of [...shown, ...others])
      if (value !== null) expect(traces[path]?.value, path).toBe(value);
  });
});
