import { at, type PaperBox, type PaperPoint, sharesInBox } from '../paper.ts';

/** The pieces of a line that lie inside a box (clipping after Liang and Barsky, stroke by stroke). */
export function clippedLine(points: readonly PaperPoint[], box: PaperBox | null): PaperPoint[][] {
  if (box === null) return points.length > 1 ? [[...points]] : [];
  const pieces: PaperPoint[][] = [];
  points.slice(1).forEach((to, index) => {
    const from = points[index];
    const piece = from ? clippedStroke(from, to, box) : null;
    if (!piece) return;
    const last = pieces.at(-1);
    const end = last?.at(-1);
    if (last && end && same(end, piece[0])) last.push(piece[1]);
    else pieces.push([...piece]);
  });
  return pieces;
}

function same(a: PaperPoint, b: PaperPoint): boolean {
  return Math.abs(a.xMm - b.xMm) < 1e-9 && Math.abs(a.yMm - b.yMm) < 1e-9;
}

function clippedStroke(from: PaperPoint, to: PaperPoint, box: PaperBox): [PaperPoint, PaperPoint] | null {
  const inside = sharesInBox({ from, to }, box, true);
  if (!inside || inside.enters >= inside.leaves) return null;
  const point = (share: number): PaperPoint =>
    at(from.xMm + (to.xMm - from.xMm) * share, from.yMm + (to.yMm - from.yMm) * share);
  return [point(inside.enters), point(inside.leaves)];
}

/** True where a point lies in a box, edges included; where there is no box, always. */
export function pointIn({ xMm, yMm }: PaperPoint, box: PaperBox | null): boolean {
  return box === null || (xMm >= box.leftMm && xMm <= box.rightMm && yMm >= box.topMm && yMm <= box.bottomMm);
}

/** A line without the pieces that lie inside any of the boxes: so a line makes way for the texts upon it. */
export function interrupted(points: readonly PaperPoint[], boxes: readonly PaperBox[]): PaperPoint[][] {
  let pieces: PaperPoint[][] = points.slice(1).flatMap((to, index) => {
    const from = points[index];
    return from ? [[from, to]] : [];
  });
  for (const box of boxes)
    if (pieces.some((piece) => mayTouch(piece, box))) pieces = pieces.flatMap((piece) => without(piece, box));
  return joinedPieces(pieces);
}

/** False where a piece lies wholly on one side of a box, as most do. */
function mayTouch(
  [from, to]: readonly PaperPoint[],
  { leftMm, topMm, rightMm, bottomMm }: PaperBox,
): boolean {
  if (!from || !to) return false;
  return (
    Math.max(from.xMm, to.xMm) >= leftMm &&
    Math.min(from.xMm, to.xMm) <= rightMm &&
    Math.max(from.yMm, to.yMm) >= topMm &&
    Math.min(from.yMm, to.yMm) <= bottomMm
  );
}

function without(piece: readonly PaperPoint[], box: PaperBox): PaperPoint[][] {
  const [from, to] = piece;
  const inside = from && to ? clippedStroke(from, to, box) : null;
  if (!from || !to || !inside) return [[...piece]];
  const [enters, leaves] = inside;
  return [
    [from, enters],
    [leaves, to],
  ].filter(([a, b]) => a !== undefined && b !== undefined && !same(a, b));
}

function joinedPieces(pieces: readonly (readonly PaperPoint[])[]): PaperPoint[][] {
  const lines: PaperPoint[][] = [];
  for (const piece of pieces) {
    const end = lines.at(-1)?.at(-1);
    const [start, ...rest] = piece;
    if (end && start && same(end, start)) lines.at(-1)?.push(...rest);
    else lines.push([...piece]);
  }
  return lines;
}
