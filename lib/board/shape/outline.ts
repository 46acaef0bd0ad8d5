import type { Cut, HolePurpose, Outline } from '../../model/outline.ts';
import { inPieces, notResolved, outside, overlap } from '../cut/cut-fault.ts';
import { type Removal, removalsOf, sizeFault } from '../cut/cuts.ts';
import type { BoardRemark } from '../remark.ts';
import { recoverArcs } from './arc-recovery.ts';
import { type Base, baseOf, measured } from './base.ts';
import { arcOf, flatten, type Loop, loopEdges } from './bulge.ts';
import { cleanRing } from './clean-ring.ts';
import { flattenM } from './flatten.ts';
import { type Point, pointToRing, type Ring } from './point.ts';
import {
  difference,
  insideRegion,
  intersection,
  pointToRegionLine,
  type Region,
  regionArea,
  regionOf,
} from './region.ts';

/** A round hole through a board. */
export interface RoundHole {
  readonly id: string;
  readonly xM: number;
  readonly yM: number;
  readonly diameterM: number;
  readonly purpose: HolePurpose;
}

/** A board as it leaves the saw: arcs kept as bulges, and the same flattened for boolean work. */
export interface BoardShape {
  /** Counter-clockwise. */
  readonly outline: Loop;
  /** Openings other than round holes, clockwise. */
  readonly cutouts: readonly Loop[];
  readonly holes: readonly RoundHole[];
  /** Outline and cut-outs (round holes left out), flattened to `flattenM`. */
  readonly region: Region;
}

/** A board's shape, null where the base shape itself is wrong, and everything that is wrong with it. */
export interface DrawnOutline {
  readonly shape: BoardShape | null;
  readonly faults: readonly BoardRemark[];
}

/** The name that findings call a cut by: its own, or its kind and its place in the list. */
export function cutName(cut: Cut, index: number): string {
  return cut.id ?? `${cut.cut}-${index + 1}`;
}

/**
 * Draws an outline: base shape less its cuts, in the order written, origin at the datum, x right, y up, seen
 * from the mounting side. A cut that cannot be made is reported and left out; all others are made.
 */
export function drawOutline(outline: Outline): DrawnOutline {
  const base = baseOf(outline);
  if ('rule' in base) return { shape: null, faults: [base] };
  const cuts = (outline.cuts ?? []).map((cut, at) => ({ cut, name: cutName(cut, at) }));
  const faults: BoardRemark[] = [];
  const removals: Removal[] = [];
  const holes: RoundHole[] = [];
  for (const { cut, name } of cuts) {
    const made = cut.cut === 'hole' ? makeHole(base, name, cut) : removalsOf(base, name, cut);
    if ('rule' in made) faults.push(made);
    else if ('diameterM' in made) holes.push(made);
    else removals.push(...made);
  }
  const cutOut = cutAll(base, removals);
  const kept = holes.map((hole) => ({ hole, fault: holeFault(hole, cutOut.region) }));
  faults.push(...cutOut.faults, ...kept.flatMap(({ fault }) => (fault ? [fault] : [])));
  const whole = kept.flatMap(({ hole, fault }) => (fault ? [] : [hole]));
  return { shape: shapeOf(cutOut.region, cutOut.made, whole), faults };
}

function makeHole(base: Base, name: string, cut: Extract<Cut, { cut: 'hole' }>): RoundHole | BoardRemark {
  const fault = sizeFault(name, cut);
  if (fault) return fault;
  const centre = measured(base, cut.from, cut.x, cut.y);
  return { id: name, ...centre, diameterM: cut.diameter, purpose: cut.purpose };
}

/** A hole whose rim is not in material all round. */
function holeFault(hole: RoundHole, region: Region): BoardRemark | null {
  const toLineM = pointToRegionLine(hole, region) * (insideRegion(hole, region) ? 1 : -1);
  const byM = hole.diameterM / 2 - toLineM;
  return byM > 1e-9 ? outside(hole.id, byM) : null;
}

interface CutOut {
  readonly region: Region;
  readonly made: readonly Removal[];
  readonly faults: readonly BoardRemark[];
}

function cutAll(base: Base, removals: readonly Removal[]): CutOut {
  const whole = regionOf(base.ring);
  const faults: BoardRemark[] = [];
  const made: (Removal & { ring: Ring })[] = [];
  let region = whole;
  for (const removal of removals) {
    const ring = flatten(removal.loop, flattenM);
    const result = cutOne(base, removal, ring, region);
    if ('rule' in result) faults.push(result);
    else {
      faults.push(...overlaps(removal, ring, made, whole));
      region = result.left;
      made.push({ ...removal, ring });
    }
  }
  return { region, made, faults };
}

/** What one cut leaves, or why it can't be made. */
function cutOne(base: Base, removal: Removal, ring: Ring, region: Region): { left: Region } | BoardRemark {
  try {
    const fault = removal.open ? openFault(base, removal, ring) : closedFault(base, removal, ring);
    if (fault) return fault;
    const left = solid(difference(region, regionOf(ring)));
    return left.length === 1 ? { left } : inPieces(removal.cut, left.length);
  } catch {
    // The geometry library throws where it can't tell nearly coincident lines apart, on any of our grids.
    return notResolved(removal.cut);
  }
}

/** Pieces without slivers that rounding leaves (below 1 mm2). */
function solid(region: Region): Region {
  return region.filter((piece) => regionArea([piece]) > 1e-6);
}

function closedFault(base: Base, { cut }: Removal, ring: Ring): BoardRemark | null {
  const outsideM = reach(ring, base.ring);
  if (outsideM > 1e-9) return outside(cut, outsideM);
  const lost = regionArea(regionOf(ring)) - regionArea(intersection(regionOf(ring), regionOf(base.ring)));
  return lost > 1e-8 ? outside(cut, Math.sqrt(lost)) : null;
}

/** A cut that starts at an edge has its far points inside the board. */
function openFault(base: Base, { cut }: Removal, ring: Ring): BoardRemark | null {
  const outsideM = reach(ring, base.ring);
  return outsideM > 0.0002 ? outside(cut, outsideM) : null;
}

/** How far the farthest of some points stands outside a ring, metres; 0 where all are inside. */
function reach(points: readonly Point[], ring: Ring): number {
  const out = points.filter((p) => !insideRegion(p, regionOf(ring)));
  return out.reduce((most, p) => Math.max(most, pointToRing(p, ring)), 0);
}

function overlaps(
  removal: Removal,
  ring: Ring,
  made: readonly (Removal & { ring: Ring })[],
  whole: Region,
): BoardRemark[] {
  return made.flatMap((other) => {
    if (other.cut === removal.cut) return [];
    const common = regionArea(intersection(regionOf(ring), regionOf(other.ring), whole));
    return common > 1e-8 ? [overlap(removal.cut, other.cut, common)] : [];
  });
}

function shapeOf(region: Region, made: readonly Removal[], holes: readonly RoundHole[]): BoardShape {
  const circles = made.flatMap(({ loop }) =>
    loopEdges(loop).flatMap(({ from, to }) => {
      const arc = arcOf(from, to);
      return arc ? [arc] : [];
    }),
  );
  const clean = region.map(({ outer, openings }) => ({
    outer: cleanRing(outer, 1),
    openings: openings.filter((ring) => regionArea(regionOf(ring)) > 1e-8).map((ring) => cleanRing(ring, -1)),
  }));
  const draw = (ring: Ring) => recoverArcs(ring, circles, flattenM);
  return {
    outline: draw(clean[0]?.outer ?? []),
    cutouts: clean.flatMap(({ openings }) => openings.map(draw)),
    holes,
    region: clean,
  };
}
