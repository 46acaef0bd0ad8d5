import type { PlanBoard } from '../../model/plan/index.ts';
import { wholeSteps } from '../../model/quantity/safe-rounding.ts';
import type { Units } from '../../model/vocabulary.ts';
import { counted } from '../words/words.ts';

/** No corner of a rectangle is farther off than this, metres. */
const nearM = 0.0005;

/** What the outline of a board is, in words: `Rectangle`, `Straight edges, 6 corners`, `Curved edges`, and whether it has cut-outs. */
export function outlineWords({
  outline,
  cutouts,
  widthM,
  heightM,
}: Pick<PlanBoard, 'outline' | 'widthM' | 'heightM'> & {
  readonly cutouts: readonly unknown[];
}): string {
  const left = Math.min(...outline.map(({ xM }) => xM));
  const low = Math.min(...outline.map(({ yM }) => yM));
  const isCurved = outline.some(({ bulge }) => bulge !== 0);
  const isAtCorner = ({ xM, yM }: { readonly xM: number; readonly yM: number }): boolean =>
    [left, left + widthM].some((x) => Math.abs(xM - x) < nearM) &&
    [low, low + heightM].some((y) => Math.abs(yM - y) < nearM);
  const isRectangle = !isCurved && outline.length === 4 && outline.every(isAtCorner);
  const shape = isCurved
    ? 'Curved edges'
    : isRectangle
      ? 'Rectangle'
      : `Straight edges, ${counted(outline.length, 'corner')}`;
  return cutouts.length === 0 ? shape : `${shape}, with cut-outs`;
}

const stepM = { inch: 0.0254, millimetre: 0.01 } as const satisfies Record<Units, number>;

/** The upright rectangle that a board fits in, rounded up to whole inches or centimetres: `34 by 18 in`, `870 by 460 mm`. */
export function sizeWords({ widthM, heightM }: Pick<PlanBoard, 'widthM' | 'heightM'>, units: Units): string {
  const [wide, high] = [widthM, heightM].map((sideM) => wholeSteps(sideM / stepM[units], 'up'));
  return units === 'inch' ? `${wide} by ${high} in` : `${(wide ?? 0) * 10} by ${(high ?? 0) * 10} mm`;
}

/** Thicknesses by which sheets are sold, inches, and by how much less one may measure: common practice, no source. */
const soldIn = [0.25, 0.375, 0.5, 0.625, 0.75, 1];
const lessIn = 1 / 16;

/**
 * The thickness as which a sheet is sold by the inch: 18 mm is called 3/4 in. For search alone; pages tell what was measured.
 * Null where none is near.
 */
export function soldThicknessIn(thicknessM: number): number | null {
  const measuredIn = thicknessM / 0.0254;
  const fits = soldIn.filter((one) => one - measuredIn <= lessIn && measuredIn - one < 1e-6 + 0.005);
  return fits.at(0) ?? null;
}
