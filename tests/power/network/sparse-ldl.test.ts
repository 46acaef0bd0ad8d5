import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LdlPattern, symbolicLdl } from '../../../lib/power/network/elimination-order.ts';
import { factorSymmetric, substitute } from '../../../lib/power/network/sparse-ldl.ts';

interface Joined {
  readonly size: number;
  /** Two nodes, and the conductance between them; beyond the last node is the reference. */
  readonly branches: readonly (readonly [number, number, number])[];
}

/** The conductance matrix of a network of branches, in the slots of its pattern and as a table. */
function matrixOf({ size, branches }: Joined) {
  const pattern = new LdlPattern(size, 2);
  const slots = branches.map(([i, j]) => pattern.join(i, j));
  const table = Array.from({ length: size }, () => Array.from({ length: size }, () => 0));
  const add = (i: number, j: number, value: number) => {
    const row = table[i];
    if (row && j < size) row[j] = (row[j] ?? 0) + value;
  };
  for (const [i, j, siemens] of branches) {
    add(i, i, siemens);
    add(j, j, siemens);
    add(i, j, -siemens);
    add(j, i, -siemens);
  }
  const symbolic = symbolicLdl(pattern);
  const values = Array.from({ length: symbolic.slots }, (_, slot) => table[slot]?.[slot] ?? 0);
  branches.forEach(([i, j, siemens], k) => {
    const slot = slots[k] ?? 0;
    if (i < size && j < size) values[slot] = (values[slot] ?? 0) - siemens;
  });
  return { symbolic, values, table };
}

/** Solves for what times the table is the right side; null where the matrix is not positive definite. */
function solved(joined: Joined, wanted: readonly number[]): number[] | null {
  const { symbolic, values, table } = matrixOf(joined);
  const right = table.map((row) => row.reduce((sum, value, k) => sum + value * (wanted[k] ?? 0), 0));
  right.push(0);
  if (!factorSymmetric(symbolic, values)) return null;
  substitute(symbolic, values, right);
  return right.slice(0, joined.size);
}

const expectSolved = (joined: Joined, wanted: readonly number[]) => {
  const found = solved(joined, wanted);
  expect(found).not.toBeNull();
  for (const [k, value] of (found ?? []).entries()) expect(value).toBeCloseTo(wanted[k] ?? Number.NaN, 6);
};

describe('the solver of the network finds what was put in', () => {
  test('in a line, a star, a ring, and where everything is joined to everything', () => {
    const grounded = (size: number, pairs: readonly (readonly [number, number])[]): Joined => ({
      size,
      branches: [...pairs.map(([i, j], k) => [i, j, 1 + k] as const), [0, size, 2], [size - 1, size, 3]],
    });
    const wanted = [3, -1, 4, 1, -5];
    const line = [0, 1, 2, 3].map((k) => [k, k + 1] as const);
    expectSolved(grounded(5, line), wanted);
    expectSolved(
      grounded(
        5,
        [1, 2, 3, 4].map((k) => [0, k] as const),
      ),
      wanted,
    );
    expectSolved(grounded(5, [...line, [4, 0]]), wanted);
    const all = wanted.flatMap((_, i) => wanted.flatMap((__, j) => (i < j ? [[i, j] as const] : [])));
    expectSolved(grounded(5, all), wanted);
  });

  test('in whatever is joined somehow to the reference, several branches side by side too', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9 }),
        fc.array(fc.tuple(fc.nat(9), fc.nat(9), fc.integer({ min: 1, max: 50 })), { maxLength: 24 }),
        fc.array(fc.integer({ min: -20, max: 20 }), { minLength: 9, maxLength: 9 }),
        (size, drawn, wanted) => {
          const within = drawn
            .map(([i, j, siemens]) => [i % (size + 1), j % (size + 1), siemens] as const)
            .filter(([i, j]) => i !== j);
          // A way from each node to the one before it holds all of them.
          const held = Array.from({ length: size }, (_, k) => [k, k === 0 ? size : k - 1, 5] as const);
          expectSolved({ size, branches: [...within, ...held] }, wanted);
        },
      ),
    );
  });

  // Not the size of the conductances counts, but whether they lead to the reference.
  test('whatever the unit of its conductances', () => {
    for (const siemens of [1e-9, 1e-3, 1, 1e9]) {
      const ring = [0, 1, 2, 3].map((k) => [k, (k + 1) % 4, siemens * (1 + k)] as const);
      expectSolved({ size: 4, branches: [...ring, [0, 4, siemens]] }, [4, -3, 2, 1]);
      expect(solved({ size: 4, branches: ring }, [4, -3, 2, 1])).toBeNull();
    }
  });

  test('in a ring larger than any that room was made for before', () => {
    const size = 400;
    const ring = Array.from({ length: size }, (_, k) => [k, (k + 1) % size, 1 + (k % 3)] as const);
    expectSolved(
      { size, branches: [...ring, [0, size, 1]] },
      Array.from({ length: size }, (_, k) => k % 7),
    );
  });

  test('and nothing where no branch leads to the reference, or a conductance is below zero', () => {
    for (const siemens of [1, 1000 / 3, 1000 / 7, 3000 / 11, 1e4 / 13]) {
      const ring = [0, 1, 2, 3].map((k) => [k, (k + 1) % 4, siemens * (1 + k / 7)] as const);
      expect(solved({ size: 4, branches: [...ring, [0, 2, siemens / 3]] }, [1, 2, 3, 4])).toBeNull();
      expect(solved({ size: 4, branches: [...ring.slice(1), [0, 4, -siemens]] }, [1, 2, 3, 4])).toBeNull();
    }
  });
});
