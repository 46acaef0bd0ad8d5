import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { NetworkElement } from '../../lib/power/network/network-types.ts';
import { type ShortCircuit, shortCircuit } from '../../lib/power/short-circuit.ts';
import { outsideCheck } from '../outside-check.ts';
import { Spice } from './network/ngspice.ts';

const inSpice = outsideCheck('short-in-ngspice');

const battery = (id: string, from: string, emfV: number, ohm: number): NetworkElement => {
  return { id, kind: 'source', model: 'emf', from, to: `${id}-`, emfV, ohm };
};
const line = (id: string, from: string, to: string, ohm: number): NetworkElement => {
  return { id, kind: 'conductor', model: 'resistance', from, to, ohm };
};
function shorted(elements: readonly NetworkElement[], node: string): ShortCircuit {
  const short = shortCircuit(elements, node, 'body');
  if (!short) throw new Error('No current flows.');
  return short;
}

/**
 * Two batteries and a fuse between `in` and `out`, which the prospective current leaves out (IEC 60269: the fuse is
 * replaced by a link of negligible resistance). By hand: the first by 4 + 1 + 1 = 6 mohm, 12 V / 6 mohm = 2,000 A; the
 * second by 2 + 5 + 1 = 8 mohm, 1,500 A; nothing of their ways is common, so 3,500 A in all.
 */
const two: readonly NetworkElement[] = [
  battery('one', 'one+', 12, 0.004),
  line('tail', 'one+', 'in', 0.001),
  line('strap', 'one-', 'body', 0.001),
  battery('two', 'two+', 12, 0.002),
  line('link', 'two+', 'in', 0.005),
  line('ground', 'two-', 'body', 0.001),
];

describe('a dead short fed by two batteries', () => {
  test('draws what both drive, each told, by each of its ways', () => {
    const short = shorted(two, 'in');
    expect(short.currentA).toBeCloseTo(3500, 6);
    const given = Object.fromEntries(short.sources.map(({ id, currentA }) => [id, Math.round(currentA)]));
    expect(given).toEqual({ one: 2000, two: 1500 });
    const ways = Object.fromEntries(short.ways.map(({ of, currentA }) => [of, Math.round(currentA)]));
    expect(ways).toEqual({ tail: 2000, link: 1500 });
    // 12 V less 2,000 A in 4 mohm leave 4 V at the posts of the first.
    expect(short.sources.find(({ id }) => id === 'one')?.postsV).toBeCloseTo(4, 9);
  });

  test('on a common way is bounded by it: in parallel 6 and 8 mohm, and 4 mohm in common', () => {
    // 6 * 8 / 14 + 4 = 7.428571 mohm: 1,615.385 A, of which 8 / 14 come from the first.
    const short = shorted([...two, line('feed', 'in', 'out', 0.004)], 'out');
    expect(short.currentA).toBeCloseTo(12 / (0.048 / 14 + 0.004), 6);
    expect(short.sources.find(({ id }) => id === 'one')?.currentA).toBeCloseTo(923.0769, 3);
  });

  test('leaves out what hangs on nothing', () => {
    expect(shorted([...two, line('loose', 'nowhere', 'else', 0.001)], 'in').currentA).toBeCloseTo(3500, 6);
    expect(shortCircuit(two, 'nowhere', 'body')).toBeNull();
    expect(shortCircuit([], 'in', 'body')).toBeNull();
  });
});

const milliohm = fc.integer({ min: 1, max: 40 }).map((m) => m / 1000);
const anyBatteries = fc.array(fc.record({ ohm: milliohm, tail: milliohm, strap: milliohm }), {
  minLength: 1,
  maxLength: 4,
});

/** Batteries in a row, each on a bar between two links, and a feed at the end of them. */
function rowOf(batteries: readonly { ohm: number; tail: number; strap: number }[], linkOhm: number) {
  return batteries.flatMap(({ ohm, tail, strap }, k) => [
    battery(`b${k}`, `b${k}+`, 14.8, ohm),
    line(`t${k}`, `b${k}+`, `bar${k}`, tail),
    line(`s${k}`, `b${k}-`, 'body', strap),
    line(`l${k}`, `bar${k}`, `bar${k + 1}`, linkOhm),
  ]);
}

test('the sources, and the ways, each add up to the whole; one more source never takes any away', () => {
  fc.assert(
    fc.property(anyBatteries, milliohm, (batteries, linkOhm) => {
      const end = `bar${batteries.length}`;
      const short = shorted(rowOf(batteries, linkOhm), end);
      const sum = (list: readonly { currentA: number }[]) =>
        list.reduce((all, { currentA }) => all + currentA, 0);
      expect(sum(short.sources)).toBeCloseTo(short.currentA, 4);
      expect(sum(short.ways)).toBeCloseTo(short.currentA, 4);
      const more = [
        ...rowOf(batteries, linkOhm),
        battery('x', end, 14.8, 0.01),
        line('xs', 'x-', 'body', 0.001),
      ];
      expect(shorted(more, end).currentA).toBeGreaterThan(short.currentA);
    }),
    { numRuns: 100 },
  );
});

// Outside reference: ngspice, as carried by the npm package eecircuit-engine, the short a source of 0 V.
test('ngspice finds the same current in the short', async () => {
  const spice = new Spice();
  for (const count of [1, 2, 3, 4]) {
    const batteries = Array.from({ length: count }, (_, k) => ({
      ohm: 0.002 + 0.0013 * k,
      tail: 0.0004 * (k + 1),
      strap: 0.0007,
    }));
    const elements = rowOf(batteries, 0.0031);
    const end = `bar${count}`;
    const joint: NetworkElement = {
      id: 'short',
      kind: 'joint',
      model: 'resistance',
      ohm: 1e-9,
      from: end,
      to: 'body',
    };
    const answer = await spice.solve({ referenceNode: 'body', elements: [...elements, joint] }, new Map());
    if ('errors' in answer) throw new Error(answer.errors.join('\n'));
    const own = shorted(elements, end);
    // What arrives over the last link, by the voltages that ngspice found.
    const voltageV = answer.voltages.get(`bar${count - 1}`) ?? Number.NaN;
    expect(inSpice.differs(own.currentA, voltageV / 0.0031)).toBeCloseTo(voltageV / 0.0031, 1);
  }
});
