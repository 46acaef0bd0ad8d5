import { codeDigest } from '../lib/kept/code-digest.ts';
import { once } from '../lib/plan/once-each.ts';

/** True in the long run (`npm run test:long`), which tries all cases; `npm test` tries some of each. */
export const isLongRun = process.env.LONG === '1';

/** How many cases are tried: `all` in the long run, otherwise the first `some` of the same ones. */
export function caseCount({ all, some }: { readonly all: number; readonly some: number }): number {
  return isLongRun ? all : Math.min(all, some);
}

/** The cases that are tried: every one in the long run, otherwise those that `some` picks. */
export function casesOf<T>(
  all: readonly T[],
  some: (one: T, index: number, all: readonly T[]) => boolean,
): readonly T[] {
  return isLongRun ? all : all.filter(some);
}

const codeNumber = once(() => Number.parseInt(codeDigest().slice(0, 8), 16));

/**
 * True for one in so many of like cases, of which the short run tries no more: the same on every run of this code, others
 * once the code is another. The long run asks nobody.
 */
export function isDrawn(index: number, { oneIn }: { readonly oneIn: number }): boolean {
  return index % oneIn === codeNumber() % oneIn;
}
