import { createHash } from 'node:crypto';
import type { MutantResult } from '@stryker-mutator/api/core';
import { keyOf } from './change-key.js';

/** A change of the code, its place counted from 0, and what became of it. */
export type Change = Pick<MutantResult, 'id' | 'fileName' | 'location' | 'replacement' | 'status'>;

/** Draws so many of all, in an order that the keys alone give: what one file gains moves no draw in another. */
export function drawn(changes: readonly Change[], size: number): Change[] {
  const rank = (change: Change) => createHash('sha256').update(keyOf(change)).digest('hex');
  return changes
    .map((change) => ({ change, rank: rank(change) }))
    .toSorted((a, b) => (a.rank < b.rank ? -1 : 1))
    .slice(0, size)
    .map(({ change }) => change);
}
