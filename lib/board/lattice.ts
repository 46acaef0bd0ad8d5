import { flatten } from './bulge.ts';
import { type Item, type TurnDeg, turnedSize, turns } from './item.ts';
import type { BoardShape } from './outline.ts';
import { type Box, boxOf, distanceToBox, edgesOf, insideRing, type Point, type Ring } from './point.ts';
import { roomInsideM } from './ring-gap.ts';

/** A place on the lattice where an item may stand, and its column and row. */
export interface Site extends Point {
  readonly turnDeg: TurnDeg;
  readonly column: number;
  readonly row: number;
  /** Underside of the item over the board's face, metres. */
  readonly heightM: number;
}

/** All places where an item may stand at one height. */
export interface Sites {
  readonly heightM: number;
  readonly list: readonly Site[];
  /** By turn, column and row. */
  at(turnDeg: TurnDeg, column: number, row: number): Site | undefined;
  /** The one whose corner is nearest to a point, were the lattice without end; undefined where that is off the board. */
  nearest(turnDeg: TurnDeg, corner: Point): Site | undefined;
}

/** The lines of a board that no item may stand across. */
export interface Grounds {
  readonly box: Box;
  readonly outer: Ring;
  readonly openings: readonly Ring[];
  readonly edges: readonly (readonly [Point, Point])[];
  readonly holes: BoardShape['holes'];
}

/** The grounds of a board, arcs flattened to a tenth of a millimetre. */
export function groundsOf({ outline, cutouts, holes }: BoardShape): Grounds {
  const [outer = [], ...openings] = [outline, ...cutouts].map((loop) => flatten(loop, 0.0001));
  return { box: boxOf(outer), outer, openings, edges: [outer, ...openings].flatMap(edgesOf), holes };
}

/**
 * Every place of a square lattice (from the lower left corner of the board's box) where an item stands on
 * board all over: inside the outline and, unless it is raised, off openings and holes. At most 200 by 200.
 */
export function sitesOf(grounds: Grounds, item: Item, heightM: number, wantedStepM: number): Sites {
  const { box } = grounds;
  const stepM = usableStepM(box, wantedStepM);
  const outerEdges = edgesOf(grounds.outer);
  const upright = ([0, 90] as const).map((turnDeg) => {
    const size = turnedSize(item, turnDeg);
    const columns = Math.floor((box.maxX - box.minX - size.xM) / stepM + 1e-9) + 1;
    const rows = Math.floor((box.maxY - box.minY - size.yM) / stepM + 1e-9) + 1;
    return Array.from({ length: Math.max(0, columns) * Math.max(0, rows) }, (_, at) => {
      const [column, row] = [Math.floor(at / rows), at % rows];
      return { column, row, xM: box.minX + column * stepM, yM: box.minY + row * stepM };
    }).filter((site) =>
      standsOn(grounds, heightM > 0 ? outerEdges : grounds.edges, boxAt(site, size), heightM > 0),
    );
  });
  const list = turns.flatMap((turnDeg) =>
    (upright[(turnDeg / 90) % 2] ?? []).map((site): Site => ({ ...site, turnDeg, heightM })),
  );
  return indexed(list, heightM, (corner) => ({
    column: Math.round((corner.xM - box.minX) / stepM),
    row: Math.round((corner.yM - box.minY) / stepM),
  }));
}

type LatticeOf = (corner: Point) => { readonly column: number; readonly row: number };

function indexed(list: readonly Site[], heightM: number, latticeOf: LatticeOf): Sites {
  const index = new Map(list.map((site) => [siteKey(site.turnDeg, site.column, site.row), site]));
  const at: Sites['at'] = (turnDeg, column, row) => index.get(siteKey(turnDeg, column, row));
  const nearest: Sites['nearest'] = (turnDeg, corner) => {
    const { column, row } = latticeOf(corner);
    return at(turnDeg, column, row);
  };
  return { heightM, list, at, nearest };
}

/** The same places, the item raised to a height on rails that stand where it would. */
export function raisedSites(sites: Sites, heightM: number): Sites {
  const list = sites.list.map((site): Site => ({ ...site, heightM }));
  const raised = new Map(sites.list.map((site, at) => [site, list[at]]));
  const up = (site: Site | undefined): Site | undefined => site && raised.get(site);
  return {
    heightM,
    list,
    at: (turnDeg, column, row) => up(sites.at(turnDeg, column, row)),
    nearest: (turnDeg, corner) => up(sites.nearest(turnDeg, corner)),
  };
}

/** A step that leaves at most 200 places along the longer side, so that no input makes the search endless. */
function usableStepM(box: Box, stepM: number): number {
  const least = Math.max(box.maxX - box.minX, box.maxY - box.minY) / 200;
  return Math.max(stepM, least);
}

function siteKey(turnDeg: TurnDeg, column: number, row: number): number {
  return ((turnDeg / 90) * 65536 + column) * 65536 + row;
}

function boxAt(at: Point, size: Point): Box {
  return { minX: at.xM, minY: at.yM, maxX: at.xM + size.xM, maxY: at.yM + size.yM };
}

function standsOn(grounds: Grounds, edges: Grounds['edges'], box: Box, raised: boolean): boolean {
  const middle = { xM: (box.minX + box.maxX) / 2, yM: (box.minY + box.maxY) / 2 };
  if (!insideRing(middle, grounds.outer)) return false;
  for (const [a, b] of edges) if (runsThrough(a, b, box)) return false;
  if (raised) return true;
  return (
    !grounds.openings.some((ring) => insideRing(middle, ring)) &&
    !grounds.holes.some((hole) => distanceToBox(hole, box) < hole.diameterM / 2)
  );
}

/** True where a segment runs through the inside of a box (clipping by Liang and Barsky). */
function runsThrough(a: Point, b: Point, box: Box): boolean {
  const hair = 1e-7;
  const [minX, maxX, minY, maxY] = [box.minX + hair, box.maxX - hair, box.minY + hair, box.maxY - hair];
  if (Math.max(a.xM, b.xM) <= minX || Math.min(a.xM, b.xM) >= maxX) return false;
  if (Math.max(a.yM, b.yM) <= minY || Math.min(a.yM, b.yM) >= maxY) return false;
  const [dx, dy] = [b.xM - a.xM, b.yM - a.yM];
  const [x1, x2] = dx === 0 ? [0, 1] : ordered((minX - a.xM) / dx, (maxX - a.xM) / dx);
  const [y1, y2] = dy === 0 ? [0, 1] : ordered((minY - a.yM) / dy, (maxY - a.yM) / dy);
  return Math.max(0, x1, y1) < Math.min(1, x2, y2);
}

function ordered(one: number, other: number): readonly [number, number] {
  return one < other ? [one, other] : [other, one];
}

/** By how much an item that has no site is too large, metres: the least that it reaches out, over all turns. */
export function tooLargeByM(grounds: Grounds, item: Item, wantedStepM: number): number {
  const { box } = grounds;
  const stepM = usableStepM(box, wantedStepM);
  const [spanX, spanY] = [box.maxX - box.minX, box.maxY - box.minY];
  const excess = ([0, 90] as const).map((turnDeg) => {
    const size = turnedSize(item, turnDeg);
    const overM = Math.max(size.xM - spanX, size.yM - spanY);
    if (overM > 1e-9) return overM;
    const steps = (free: number) => Math.min(24, Math.floor(free / stepM + 1e-9) + 1);
    const [nx, ny] = [steps(spanX - size.xM), steps(spanY - size.yM)];
    const reaches = Array.from({ length: nx * ny }, (_, at) => {
      const share = (index: number, n: number) => (n > 1 ? index / (n - 1) : 0.5);
      const corner = {
        xM: box.minX + share(at % nx, nx) * (spanX - size.xM),
        yM: box.minY + share(Math.floor(at / nx), ny) * (spanY - size.yM),
      };
      return -roomInsideM(ringOf(boxAt(corner, size)), grounds.outer);
    });
    return Math.max(0, Math.min(...reaches));
  });
  return Math.min(...excess);
}

function ringOf(box: Box): Ring {
  return [
    { xM: box.minX, yM: box.minY },
    { xM: box.maxX, yM: box.minY },
    { xM: box.maxX, yM: box.maxY },
    { xM: box.minX, yM: box.maxY },
  ];
}
