import { type Box, ringOfBox } from '../../board/shape/point.ts';
import { gapM, roomInsideM } from '../../board/shape/ring-gap.ts';
import type { VehicleSpace } from '../../model/content/vehicle-space.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { Part } from '../../model/kinds/index.ts';
import { boltHoleM } from './bolts.ts';
import { keptSpaceOf } from './mounting-space.ts';

const hairM = 1e-9;

/** How many millimetres more than it needs a board is tried on, for what the shelf makes. */
export const mostMoreMm = 20;

/**
 * Whether a rectangle at a height off the panel (m) is inside a space, clear of its walls, of what stands out so far and of
 * what has to be reached.
 */
export function freeInSpace(
  rules: Pick<HouseRules, 'space-clearance'>,
  space: VehicleSpace,
  spacerM: number,
): (box: Box) => boolean {
  const clearanceM = rules['space-clearance'].value;
  const { outline, obstacles } = keptSpaceOf(space, ({ must }) => must);
  const inWay = obstacles.filter(({ toM }) => toM + clearanceM > spacerM + hairM);
  return (box) => {
    const ring = ringOfBox(box);
    return (
      roomInsideM(ring, outline) >= clearanceM - hairM &&
      inWay.every((one) => gapM(ring, one.outline) >= clearanceM - hairM)
    );
  };
}

/** From the middle of a sound point to an edge of the board that it holds: the least, and a good one. Metres. */
export function roomAtPoint(
  { parts, rules }: { readonly parts: Readonly<Record<string, Part>>; readonly rules: HouseRules },
  point: Parameters<typeof boltHoleM>[1],
): { readonly leastM: number; readonly goodM: number } {
  const { 'hole-edge': edge, 'hole-corner': corner, 'web-good': good } = rules;
  const rimM = boltHoleM(parts, point) / 2;
  // At so much from both edges the corner is as far as is asked for.
  const leastM = Math.max(rimM + edge.value, (rimM + corner.value) / Math.SQRT2);
  return { leastM, goodM: Math.max(leastM, rimM + good.value) };
}
