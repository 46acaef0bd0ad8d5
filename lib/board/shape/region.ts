import clipping from 'polygon-clipping';
import { type Box, boxOf, insideRing, type Point, pointToRing, type Ring, ringArea } from './point.ts';

/** One piece of material with straight edges: its outer ring, then the rings of its openings. */
export interface Piece {
  readonly outer: Ring;
  readonly openings: readonly Ring[];
}

/** Any number of pieces. */
export type Region = readonly Piece[];

type Pairs = [number, number][][][];

/** Grid that coordinates are set on before each operation, metres: finer ones first, coarser ones if it fails. */
const grids = [1e-9, 1e-8, 1e-7, 1e-6];

/** The region of one ring. */
export function regionOf(...rings: Ring[]): Region {
  return rings.map((outer) => ({ outer, openings: [] }));
}

/** The box round a region. */
export function regionBox(region: Region): Box {
  return boxOf(region.flatMap(({ outer }) => outer));
}

/** Material of the first that is not in the others. */
export function difference(from: Region, ...cuts: Region[]): Region {
  return operate((first, rest) => clipping.difference(first, ...rest), [from, ...cuts]);
}

/** Material of any. */
export function union(...regions: Region[]): Region {
  return operate((first, rest) => clipping.union(first, ...rest), regions);
}

/** Material common to all. */
export function intersection(...regions: Region[]): Region {
  return operate((first, rest) => clipping.intersection(first, ...rest), regions);
}

function operate(work: (first: Pairs, rest: Pairs[]) => Pairs, regions: readonly Region[]): Region {
  let failure: unknown;
  for (const gridM of grids) {
    try {
      const [first, ...rest] = regions.map((region) => toPairs(region, gridM));
      return first ? fromPairs(work(first, rest)) : [];
    } catch (cause) {
      // The library can lose its way on nearly coincident edges; a coarser grid makes them coincide.
      failure = cause;
    }
  }
  throw new Error('Boolean geometry failed on every grid.', { cause: failure });
}

function toPairs(region: Region, gridM: number): Pairs {
  const per = Math.round(1 / gridM);
  const snap = (value: number) => Math.round(value * per) / per;
  const ring = (points: Ring) => points.map(({ xM, yM }): [number, number] => [snap(xM), snap(yM)]);
  return region.map(({ outer, openings }) => [outer, ...openings].map(ring));
}

function fromPairs(pairs: Pairs): Region {
  return pairs.flatMap((rings) => {
    const [outer, ...openings] = rings.map((ring): Ring => ring.slice(0, -1).map(([xM, yM]) => ({ xM, yM })));
    return outer ? [{ outer, openings }] : [];
  });
}

/** Area of a region, m2. */
export function regionArea(region: Region): number {
  const size = (ring: Ring) => Math.abs(ringArea(ring));
  return region.reduce(
    (sum, { outer, openings }) => sum + size(outer) - openings.reduce((all, ring) => all + size(ring), 0),
    0,
  );
}

/** True where a point lies in material. */
export function insideRegion(p: Point, region: Region): boolean {
  return region.some(
    ({ outer, openings }) => insideRing(p, outer) && !openings.some((ring) => insideRing(p, ring)),
  );
}

/** Distance from a point to the nearest line of a region, metres; no region is infinitely far. */
export function pointToRegionLine(p: Point, region: Region): number {
  return Math.min(
    ...region.flatMap(({ outer, openings }) => [outer, ...openings].map((ring) => pointToRing(p, ring))),
  );
}
