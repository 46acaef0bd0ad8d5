import { wholeSteps } from '../quantity/safe-rounding.ts';
import { drillBits, type HoleFit } from '../tables/drills.ts';

/** The bits that do for a hole, the shop's own system first: `11/32 in or 8.5 mm`. */
export function printedBit(diameterM: number, fit: HoleFit, system: 'inch' | 'mm'): string {
  const bits = drillBits(diameterM, fit, system);
  return bits.length === 0 ? 'not known' : bits.map(({ name }) => name).join(' or ');
}

/** The hole of a lug or of a part as it is made, to the tenth of a millimetre: it is recognised, not drilled. */
export function printedMade(diameterM: number): string {
  return `${madeMm(diameterM)} mm`;
}

/** The same as a number of millimetres. */
export function madeMm(diameterM: number): number {
  return wholeSteps(diameterM * 1e4, 'nearest') / 10;
}
