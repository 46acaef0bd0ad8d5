import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  criticalPath,
  inOrder,
  ringOf,
  twoPersonStarts,
  type Waiting,
} from '../../../../lib/plan/work/steps/sort-steps.ts';

const step = (id: string, minutes: number, after = '', by: Waiting['by'] = 'board'): Waiting => ({
  ...{ id, minutes, by },
  after: after === '' ? [] : after.split(' '),
});

/** Worked by hand with both passes of the critical path method (Kelley and Walker, 1959). */
const network = [
  step('a', 3),
  step('b', 2),
  step('c', 4, 'a'),
  step('d', 5, 'b'),
  step('e', 7, 'a b'),
  step('f', 2, 'c d'),
  step('g', 3, 'e f'),
];

describe('the critical path', () => {
  const found = criticalPath(network);

  test('begins each step at the latest end of those that it waits for', () => {
    expect(Object.fromEntries(found.earliest)).toEqual({ a: 0, b: 0, c: 3, d: 2, e: 3, f: 7, g: 10 });
    expect(found.minutes).toBe(13);
  });

  test('has behind each step the longest chain, itself with it', () => {
    expect(Object.fromEntries(found.tail)).toEqual({ a: 13, b: 12, c: 9, d: 10, e: 10, f: 5, g: 3 });
  });

  test('is the chain without slack, from first to last', () => {
    // 3 + 7 + 3; over c it would be 3 + 4 + 2 + 3, over d 2 + 5 + 2 + 3.
    expect(found.path).toEqual(['a', 'e', 'g']);
    expect(criticalPath([]).path).toEqual([]);
  });
});

describe('two persons', () => {
  const starts = (...steps: readonly Waiting[]) => {
    const { starts: found, minutes } = twoPersonStarts(steps, criticalPath(steps));
    return { ...Object.fromEntries(found), minutes };
  };

  test('work beside each other, each at one thing at a time', () => {
    expect(starts(step('a', 10), step('b', 5), step('c', 8, '', 'vehicle'))).toEqual({
      ...{ a: 0, b: 10, c: 0 },
      minutes: 15,
    });
  });

  test('take of what is ready that with the longest chain behind it', () => {
    const end = step('end', 20, 'b', 'vehicle');
    expect(starts(step('a', 10), step('b', 5), end)).toEqual({ b: 0, a: 5, end: 5, minutes: 25 });
  });

  test('take first what can begin first, whatever is behind another', () => {
    // While c waits for a, d can begin.
    const late = step('c', 30, 'a', 'vehicle');
    expect(starts(step('a', 10), late, step('d', 5, '', 'vehicle'))).toEqual({
      ...{ a: 0, d: 0, c: 10 },
      minutes: 40,
    });
  });

  test('lend both their hands where a step asks for them', () => {
    expect(starts(step('a', 10), step('b', 4, '', 'both'), step('c', 8, '', 'vehicle'))).toMatchObject({
      minutes: 14,
    });
  });

  test('do not wait for what is no step', () => {
    expect(starts(step('a', 10, 'elsewhere'))).toEqual({ a: 0, minutes: 10 });
  });

  test('never do two things at once, never begin before what they wait for, and are no faster than the longest chain', () => {
    const hands = fc.constantFrom('board', 'vehicle', 'both' as const);
    const steps = fc
      .array(fc.tuple(fc.integer({ min: 1, max: 9 }), hands, fc.array(fc.nat(7), { maxLength: 2 })), {
        minLength: 1,
        maxLength: 8,
      })
      .map((list) =>
        list.map(([minutes, by, after], k): Waiting => {
          return { id: `s${k}`, minutes, by, after: after.filter((n) => n < k).map((n) => `s${n}`) };
        }),
      );
    fc.assert(
      fc.property(steps, (all) => {
        const timing = criticalPath(all);
        const { starts: at, minutes } = twoPersonStarts(all, timing);
        expect(at.size).toBe(all.length);
        const endOf = (one: Waiting) => (at.get(one.id) ?? Number.NaN) + one.minutes;
        for (const one of all) {
          for (const id of one.after) {
            const before = all.find((other) => other.id === id);
            if (before) expect(at.get(one.id)).toBeGreaterThanOrEqual(endOf(before));
          }
          for (const other of all) {
            const isSame = one === other;
            const isApart = one.by !== other.by && one.by !== 'both' && other.by !== 'both';
            if (isSame || isApart) continue;
            const start = at.get(one.id) ?? Number.NaN;
            expect(start >= endOf(other) || endOf(one) <= (at.get(other.id) ?? Number.NaN)).toBe(true);
          }
        }
        expect(minutes).toBe(Math.max(...all.map(endOf)));
        expect(minutes).toBeGreaterThanOrEqual(timing.minutes);
      }),
    );
  });
});

test('what waits comes after, otherwise all stand as given; what waits for itself is left over', () => {
  const sorted = inOrder([step('b', 1, 'a'), step('c', 1), step('a', 1, 'nothing')]);
  expect(sorted.ordered.map(({ id }) => id)).toEqual(['c', 'a', 'b']);
  expect(inOrder([step('x', 1, 'y'), step('y', 1, 'x')]).waitingForEachOther).toHaveLength(2);
  expect(
    ringOf(
      new Map([
        ['x', ['y']],
        ['y', ['z', 'x']],
        ['z', []],
      ]),
    ),
  ).toEqual(['x', 'y']);
  expect(
    ringOf(
      new Map([
        ['x', ['y']],
        ['y', ['z']],
        ['z', []],
      ]),
    ),
  ).toBeNull();
});
