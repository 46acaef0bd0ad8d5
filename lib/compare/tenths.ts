import type { OutlinePoint } from '../model/plan/index.ts';

/** A length in whole tenths of a millimetre: less is rounding. */
export function tenths(lengthM: number): number {
  return Math.round(lengthM * 10_000) + 0;
}

/** A corner of an outline by its place in tenths of a millimetre and its bulge: what reads alike is alike. */
export function cornerText({ xM, yM, bulge }: OutlinePoint): string {
  return `${tenths(xM)} ${tenths(yM)} ${(bulge + 0).toFixed(4)}`;
}
