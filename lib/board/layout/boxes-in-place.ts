/** Sides of a box, metres. */
export type Sides = readonly [number, number, number];

const hairM = 1e-9;

/** True where a box goes into a room, turned whichever way. */
export function goesInto(box: Sides, room: Sides): boolean {
  const [a, b] = [box.toSorted((p, q) => p - q), room.toSorted((p, q) => p - q)];
  return a.every((side, at) => side <= (b[at] ?? 0) + hairM);
}

const ways = [
  [0, 1, 2],
  [0, 2, 1],
  [1, 0, 2],
  [1, 2, 0],
  [2, 0, 1],
  [2, 1, 0],
] as const;

/**
 * True where boxes go into a room beside and over each other, each turned whichever way: one is put into a corner, the
 * room that is left is cut into three along its faces in every order, and the others go into these. (Guillotine cuts; a
 * way that interlocks boxes is not found, nor would it be built.)
 */
export function goTogether(boxes: readonly Sides[], rooms: readonly Sides[]): boolean {
  const [first, ...rest] = boxes.toSorted((a, b) => volume(b) - volume(a));
  if (!first) return true;
  return rooms.some((room, at) => {
    const others = rooms.filter((_, index) => index !== at);
    return ways.some((way) => {
      const box: Sides = [first[way[0]], first[way[1]], first[way[2]]];
      if (!box.every((side, axis) => side <= (room[axis] ?? 0) + hairM)) return false;
      return ways.some((order) => goTogether(rest, [...others, ...leftOver(room, box, order)]));
    });
  });
}

function volume([a, b, c]: Sides): number {
  return a * b * c;
}

/** What is left of a room beside a box in its corner: cut off axis by axis, in some order. */
function leftOver(room: Sides, box: Sides, order: readonly number[]): Sides[] {
  const left: Sides[] = [];
  const rest = [...room];
  for (const axis of order) {
    const cut = rest.map((side, at) => (at === axis ? side - (box[at] ?? 0) : side));
    const [a = 0, b = 0, c = 0] = cut;
    if (Math.min(a, b, c) > hairM) left.push([a, b, c]);
    rest[axis] = box[axis] ?? 0;
  }
  return left;
}
