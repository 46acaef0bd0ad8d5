import type { BoardShape, RoundHole } from './outline.ts';
import { distance, edgesOf, nearestOnSegment, type Point, type Ring } from './point.ts';
import { sideOf } from './side-of.ts';
import { boundsOf, runsInMaterial, type Web } from './web.ts';

/**
 * The webs of one hole that are narrower than told, metres, the narrowest first, each from the middle of the hole: to
 * every side of the edge that it is near to, to each cut-out and to each other hole once, where that is nearest.
 */
export function holeWebs(shape: BoardShape, hole: RoundHole, underM: number): readonly Web[] {
  const websTo = (to: Point, name: string, radiusM: number): Web => {
    const widthM = distance(hole, to) - hole.diameterM / 2 - radiusM;
    return { from: { xM: hole.xM, yM: hole.yM }, to, widthM, between: [hole.id, name] };
  };
  const all = [
    ...boundsOf(shape).flatMap(({ name, ring }) => nearFeet(hole, ring).map((to) => websTo(to, name, 0))),
    ...shape.holes
      .filter(({ id }) => id !== hole.id)
      .map(({ xM, yM, id, diameterM }) => websTo({ xM, yM }, id, diameterM / 2)),
  ];
  const near = all
    .filter((web) => web.widthM < underM - 1e-9 && runsInMaterial(web, shape.region))
    .toSorted((a, b) => a.widthM - b.widthM);
  return near.filter((web, at) => near.findIndex((one) => liesAt(one) === liesAt(web)) === at);
}

/** What a web runs to: a side of the edge, or the other opening. */
function liesAt({ between: [, name], from, to }: Web): string {
  return name === 'edge' ? `edge ${sideOf(from, to)}` : name;
}

/** The points of a line that are nearer than those on both sides of them. */
function nearFeet(p: Point, ring: Ring): Point[] {
  const edges = edgesOf(ring).map(([a, b]) => ({ a, b, foot: nearestOnSegment(p, a, b) }));
  return edges.flatMap(({ a, b, foot }, at) => {
    const before = edges.at(at - 1);
    if (distance(foot, b) < 1e-9) return [];
    if (distance(foot, a) < 1e-9 && before && distance(before.foot, a) >= 1e-9) return [];
    return [foot];
  });
}
