import { distanceToBox } from '../../shape/point.ts';
import { type Beneath, type Body, type Raising, roomInFront, sides } from '../item.ts';
import { type PlacedItem, planGapM, sameHeight, shortfalls } from '../placed.ts';

/** Least room in front of a wire's end that is to be reached while a part stands over the rest, metres (common practice). */
const leastReachM = 0.02;

/** Free height between a part and one that the search raises over it, metres: the greater of what both ask for. */
export function clearanceOverM({ airM = 0 }: Beneath, raising: Raising | null | undefined): number {
  return Math.max(airM, raising?.clearanceM ?? 0);
}

/**
 * What speaks against `upper`, raised by the search, where `lower` stands, metres; 0 where nothing does. Beneath lies
 * only what may, raised itself or not, with the clearance and the air that it needs up to the upper part, off its
 * rails and screws. Controls at the sides of the lower part are reached from above: nothing stands over the room in
 * front of them. The ends of wires that come from the vehicle or from the upper part itself stay reachable: they are
 * made when the upper part is on already.
 */
export function stackBlockedM(lower: PlacedItem, upper: PlacedItem): number {
  const { raising } = upper;
  if (!raising) return 0;
  const { beneath, body } = lower;
  const coverM = -planGapM(body, upper.body);
  const besideM =
    railsBlockedM(lower, upper, raising.clearanceM, raising.railWidthM) +
    controlsCoveredM(lower, upper) +
    screwsOfEndsCoveredM(lower, upper);
  if (coverM <= 1e-9) return besideM;
  const freeM = upper.body.minZ - body.maxZ;
  // The upper one of two that are raised both: what speaks against it is asked for with the two the other way round.
  if (upper.body.maxZ <= body.minZ + 1e-9) return besideM;
  if (!beneath || freeM < clearanceOverM(beneath, raising) - 1e-9) return coverM + besideM;
  return besideM + screwsBlockedM(body, upper, raising.clearanceM);
}

/** How far a part stands over ends of a lower one that are made or tightened when it is on, metres. */
function screwsOfEndsCoveredM(lower: PlacedItem, upper: PlacedItem): number {
  const { body, rooms, beneath } = lower;
  if (upper.body.minZ < body.minZ + 1e-9) return 0;
  if (beneath) return endsCoveredM(lower, upper);
  // Nothing is known of when its wires are made: its set screws stay free.
  return sides.reduce((sum, side) => {
    const toolM = rooms[side]?.toolM ?? 0;
    return toolM > 0 ? sum + Math.max(0, -planGapM(roomInFront(body, side, toolM), upper.body)) : sum;
  }, 0);
}

/** How far a part stands over the room that a hand needs in front of the controls of one below it, metres. */
export function controlsCoveredM({ body, rooms }: PlacedItem, upper: PlacedItem): number {
  if (upper.body.minZ < body.minZ + 1e-9) return 0;
  let sum = 0;
  for (const side of sides) {
    const accessM = rooms[side]?.accessM ?? 0;
    if (accessM > 0) sum += Math.max(0, -planGapM(roomInFront(body, side, accessM), upper.body));
  }
  return sum;
}

/** The same, told of a part that stands higher: at one height the room in front of the controls is judged by itself. */
export function controlsOverheadM(lower: PlacedItem, upper: PlacedItem): number {
  return sameHeight(lower.body, upper.body) ? 0 : controlsCoveredM(lower, upper);
}

/** The two rails that carry a raised part, below its left and right sides and as long as it is deep. */
export function railsBelow({ body }: Pick<PlacedItem, 'body'>, railWidthM: number): readonly [Body, Body] {
  const widthM = Math.min(railWidthM, (body.maxX - body.minX) / 2);
  const upright = { ...body, minZ: 0, maxZ: body.minZ };
  return [
    { ...upright, maxX: body.minX + widthM },
    { ...upright, minX: body.maxX - widthM },
  ];
}

function railsBlockedM(lower: PlacedItem, upper: PlacedItem, clearanceM: number, railWidthM: number): number {
  let sum = 0;
  for (const rail of railsBelow(upper, railWidthM)) {
    if (sameHeight(lower.body, rail)) sum += Math.max(0, clearanceM - planGapM(lower.body, rail));
    for (const { freeM, neededM } of shortfalls(lower, { ...upper, body: rail })) sum += neededM - freeM;
  }
  return sum;
}

function screwsBlockedM(body: Body, { screws }: PlacedItem, clearanceM: number): number {
  return screws.reduce(
    (sum, screw) => sum + Math.max(0, clearanceM + screw.radiusM - distanceToBox(screw, body)),
    0,
  );
}

function endsCoveredM({ body, beneath, rooms }: PlacedItem, upper: PlacedItem): number {
  let sum = 0;
  for (const { side, from } of beneath?.wires ?? []) {
    if (from !== null && from !== upper.id) continue;
    const reachM = Math.max(leastReachM, rooms[side]?.toolM ?? 0, rooms[side]?.bendM ?? 0);
    sum += Math.max(0, -planGapM(roomInFront(body, side, reachM), upper.body));
  }
  return sum;
}
