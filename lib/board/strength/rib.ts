import type { RibForm } from '../../model/vocabulary.ts';
import type { Point, Ring } from '../shape/point.ts';
import { difference, intersection, type Region, regionArea, regionBox, regionOf } from '../shape/region.ts';

/** Which face of a board a rib stands on: the mounting side, where the parts are, or the rear. */
export type RibFace = 'rear' | 'mounting';

/** A straight rib on a board: its centre line in the board's axes, and its section over the face. Metres. */
export interface LaidRib {
  readonly id: string;
  readonly face: RibFace;
  readonly from: Point;
  readonly to: Point;
  /** Across the rib, along the face. */
  readonly widthM: number;
  /** How far it stands out from the face. */
  readonly heightM: number;
}

/** A section is whole layers of its sheet to this much, metres. */
const wholeLayersM = 0.0005;

/** How a rib's section is cut: strips on their edge beside each other, or flat strips on each other. */
export interface RibSection {
  readonly form: RibForm;
  readonly strips: number;
  /** Width that the saw is set to. */
  readonly cutWidthM: number;
}

/**
 * The strips of a sheet that make a section: on edge where its width is whole layers of the sheet, flat where its
 * height is; of both, the fewer strips. Null where neither is: it can't be cut from that sheet.
 */
export function ribSection(widthM: number, heightM: number, thicknessM: number): RibSection | null {
  const layers = (sizeM: number): number => {
    const whole = Math.round(sizeM / thicknessM);
    return whole > 0 && Math.abs(whole * thicknessM - sizeM) <= wholeLayersM ? whole : 0;
  };
  const [across, upward] = [layers(widthM), layers(heightM)];
  if (across > 0 && (upward === 0 || across <= upward))
    return { form: 'on-edge', strips: across, cutWidthM: heightM };
  return upward > 0 ? { form: 'flat', strips: upward, cutWidthM: widthM } : null;
}

/** Length of a rib along its centre line, metres. */
export function ribLengthM({ from, to }: Pick<LaidRib, 'from' | 'to'>): number {
  return Math.hypot(to.xM - from.xM, to.yM - from.yM);
}

/** A point of a rib: so far along its centre line from where it starts, and so far to its left. */
export function onRib({ from, to }: Pick<LaidRib, 'from' | 'to'>, alongM: number, leftM = 0): Point {
  const lengthM = ribLengthM({ from, to });
  const [c, s] = lengthM > 0 ? [(to.xM - from.xM) / lengthM, (to.yM - from.yM) / lengthM] : [1, 0];
  return { xM: from.xM + alongM * c - leftM * s, yM: from.yM + alongM * s + leftM * c };
}

/** The rectangle that a rib covers on its face, counter-clockwise. */
export function ribRing(rib: Pick<LaidRib, 'from' | 'to' | 'widthM'>): Ring {
  const [lengthM, halfM] = [ribLengthM(rib), rib.widthM / 2];
  return [
    onRib(rib, 0, -halfM),
    onRib(rib, lengthM, -halfM),
    onRib(rib, lengthM, halfM),
    onRib(rib, 0, halfM),
  ];
}

/** A rib cut across into so many like pieces, the rectangle of each. */
export function ringsAlong(rib: Pick<LaidRib, 'from' | 'to' | 'widthM'>, pieces: number): Ring[] {
  const pieceM = ribLengthM(rib) / pieces;
  return Array.from({ length: pieces }, (_, nth) =>
    ribRing({ from: onRib(rib, nth * pieceM), to: onRib(rib, (nth + 1) * pieceM), widthM: rib.widthM }),
  );
}

/**
 * Width of the board that works as the flange of a glued rib, metres: a tenth of its span beside the rib's own width,
 * the least of the effective widths for shear lag in EN 1995-1-1, 9.1.2 (quoted from memory), and no more than the
 * material there on average. The span is the greatest stretch of the rib between its ends and the feet of fixings.
 */
export function flangeWidthM(
  rib: Pick<LaidRib, 'from' | 'to' | 'widthM'>,
  supports: readonly Point[],
  region: Region,
): number {
  const lengthM = ribLengthM(rib);
  const widthM = rib.widthM + 0.1 * spanM(rib, supports);
  if (!(lengthM > 0)) return 0;
  const inMaterialM2 = regionArea(intersection(regionOf(ribRing({ ...rib, widthM })), region));
  return Math.min(widthM, inMaterialM2 / lengthM);
}

function spanM(rib: Pick<LaidRib, 'from' | 'to'>, supports: readonly Point[]): number {
  const lengthM = ribLengthM(rib);
  const [c, s] = [(rib.to.xM - rib.from.xM) / lengthM, (rib.to.yM - rib.from.yM) / lengthM];
  const feet = supports
    .map(({ xM, yM }) => (xM - rib.from.xM) * c + (yM - rib.from.yM) * s)
    .filter((alongM) => alongM > 0 && alongM < lengthM);
  const stops = [0, ...feet.toSorted((a, b) => a - b), lengthM];
  return Math.max(...stops.slice(1).map((stop, at) => stop - (stops[at] ?? 0)));
}

/** Something on a face that a rib keeps off: a fixing, a hole, a part, another rib, an obstacle of the space. */
export interface RibObstacle {
  readonly of: string;
  /** In the words of a message: `the pad of f1`. */
  readonly what: string;
  readonly ring: Ring;
}

/**
 * The longest stretch of a line across a board on which a rib of a width finds material below the whole of it and
 * keeps the clearance to everything in its way; its ends keep the clearance to the edge too. Null where there is none.
 */
export function freeStretch(
  line: Pick<LaidRib, 'from' | 'to' | 'widthM'>,
  region: Region,
  obstacles: readonly RibObstacle[],
  clearanceM: number,
): { readonly from: Point; readonly to: Point } | null {
  const lengthM = ribLengthM(line);
  if (!(lengthM > 0)) return null;
  // A hair narrower, so that a rib flush with an edge finds its material.
  const band = regionOf(ribRing({ ...line, widthM: line.widthM - 2e-6 }));
  const wide = regionOf(ribRing({ ...line, widthM: line.widthM + 2 * clearanceM }));
  const onLine = (points: Ring): readonly [number, number] => {
    const along = points.map(({ xM, yM }) => alongOf(line, { xM, yM }));
    return [Math.min(...along) - clearanceM, Math.max(...along) + clearanceM];
  };
  const bare = difference(band, region).map(({ outer }) => onLine(outer));
  const blocked = obstacles.flatMap(({ ring }) =>
    intersection(wide, regionOf(ring)).map(({ outer }) => onLine(outer)),
  );
  const ends = [[-1, clearanceM] as const, [lengthM - clearanceM, lengthM + 1] as const];
  const free = longestGap([...bare, ...blocked, ...ends]);
  return free && free[1] - free[0] > 1e-6 ? { from: onRib(line, free[0]), to: onRib(line, free[1]) } : null;
}

function alongOf({ from, to }: Pick<LaidRib, 'from' | 'to'>, p: Point): number {
  const lengthM = ribLengthM({ from, to });
  return ((p.xM - from.xM) * (to.xM - from.xM) + (p.yM - from.yM) * (to.yM - from.yM)) / lengthM;
}

/** The longest gap that intervals leave between each other; the first of two that are as long. */
function longestGap(blocked: readonly (readonly [number, number])[]): readonly [number, number] | null {
  let best: readonly [number, number] | null = null;
  let reached = Number.NEGATIVE_INFINITY;
  for (const [start, end] of blocked.toSorted((a, b) => a[0] - b[0])) {
    if (Number.isFinite(reached) && start > reached && (!best || start - reached > best[1] - best[0] + 1e-9))
      best = [reached, start];
    reached = Math.max(reached, end);
  }
  return best;
}

/** The line across the whole of a board that is level or upright at an offset, from left to right or upwards. */
export function lineAcross(
  region: Region,
  way: 'level' | 'upright',
  atM: number,
): Pick<LaidRib, 'from' | 'to'> {
  const { minX, minY, maxX, maxY } = regionBox(region);
  return way === 'level'
    ? { from: { xM: minX, yM: atM }, to: { xM: maxX, yM: atM } }
    : { from: { xM: atM, yM: minY }, to: { xM: atM, yM: maxY } };
}
