import { flatten } from '../../board/shape/bulge.ts';
import type { Point, Ring } from '../../board/shape/point.ts';
import { type Piece, type Region, regionOf, union } from '../../board/shape/region.ts';
import { ribRing } from '../../board/strength/rib.ts';
import type { BuildPlan, PlanBoard, PlanPlacement, PlanRoute } from '../../model/plan/index.ts';
import { type ConductorRole, conductorRoleSchema } from '../../model/vocabulary.ts';
import { railsBelow } from '../section/rails.ts';
import { wiresAlong } from '../wiring/route-ends.ts';
import { wireDiameterM } from '../wiring/true-sizes.ts';
import type { Prism } from './prism.ts';

/** What a body of a picture is: decides the line that it is drawn in. */
export type BodyKind = 'board' | 'part' | 'riser' | 'rib' | 'fixing' | 'loom';

/** A body of a picture. */
export interface Body extends Prism {
  readonly kind: BodyKind;
  /** What a loom carries. */
  readonly role?: ConductorRole;
}

/** No chord stands farther from its arc, metres. */
const chordM = 0.0001;

/** Every body of a finished board: the board, what stands on it and what raises that, its fixings, ribs and looms. */
export function boardBodies(plan: BuildPlan, board: PlanBoard): Body[] {
  return [
    boardBody(board),
    ...board.placements.flatMap((placement) => [...railsOf(board, placement), partBody(placement)]),
    ...board.ribs.map((rib): Body => {
      const { id, face, heightM } = rib;
      const [fromM, toM] =
        face === 'mounting' ? [0, heightM] : [-board.thicknessM - heightM, -board.thicknessM];
      return { kind: 'rib', subject: id, outline: bare(ribRing(rib)), fromM, toM };
    }),
    ...board.fixings.flatMap((fixing) => fixingBodies(board, fixing)),
    ...loomBodies(plan, board),
  ];
}

const bare = (outer: Ring): Piece => ({ outer, openings: [] });

function rectangle(xM: number, yM: number, widthM: number, depthM: number): Ring {
  const [right, top] = [xM + widthM, yM + depthM];
  return [
    { xM, yM },
    { xM: right, yM },
    { xM: right, yM: top },
    { xM, yM: top },
  ];
}

function boardBody({ id, outline, cutouts, thicknessM }: PlanBoard): Body {
  const openings = cutouts.map((loop) => flatten(loop, chordM));
  const piece = { outer: flatten(outline, chordM), openings };
  return { kind: 'board', subject: id, outline: piece, fromM: -thicknessM, toM: 0 };
}

function partBody({ item, xM, yM, widthM, depthM, heightM, raisedM }: PlanPlacement): Body {
  const outline = bare(rectangle(xM, yM, widthM, depthM));
  return { kind: 'part', subject: item, outline, fromM: raisedM, toM: raisedM + heightM };
}

/** The rails below a raised part. */
function railsOf(board: PlanBoard, placement: PlanPlacement): Body[] {
  const { yM, depthM } = placement;
  return railsBelow(board, placement).map(({ subject, fromXM, acrossM, toM }): Body => {
    return { kind: 'riser', subject, outline: bare(rectangle(fromXM, yM, acrossM, depthM)), fromM: 0, toM };
  });
}

/** Across the head of a fixing or its washer, in diameters of its hole: an ordinary washer (common practice, no source). */
const headDiameters = 2;
/** How far a head stands out, in diameters: ISO 4014, from memory. */
const headHeights = 0.65;
const headSides = 24;

/** The head of a fixing, and the spacer that holds the board off its panel. */
function fixingBodies(board: PlanBoard, fixing: PlanBoard['fixings'][number]): Body[] {
  const { id, spacerM } = fixing;
  const hole = board.holes.find(({ of }) => of === id);
  if (!hole || hole.diameterM <= 0) return [];
  const outline = bare(round(fixing, (headDiameters * hole.diameterM) / 2));
  const head = { fromM: 0, toM: headHeights * hole.diameterM };
  const spacer = { fromM: -board.thicknessM - spacerM, toM: -board.thicknessM };
  return [head, ...(spacerM > 0 ? [spacer] : [])].map((height) => {
    return { kind: 'fixing', subject: id, outline, ...height };
  });
}

function round({ xM, yM }: Point, radiusM: number): Ring {
  return Array.from({ length: headSides }, (_, step) => {
    const angle = (step * 2 * Math.PI) / headSides;
    return { xM: xM + radiusM * Math.cos(angle), yM: yM + radiusM * Math.sin(angle) };
  });
}

/** Conductors that lie nearer to each other are drawn as one loom, metres. */
const loomGapM = 0.003;
/** What tells the heights of looms apart that would be alike, metres. */
const overlayM = 0.0004;

/**
 * The conductors of each role as flat bodies round all that lie beside each other, as high as the thickest. Where
 * looms of two roles cross, the lower one is seen to pass below the higher.
 */
function loomBodies(plan: BuildPlan, board: PlanBoard): Body[] {
  return conductorRoleSchema.options.flatMap((role, layer) => {
    const routes = board.routes.filter((route) => route.layer === role);
    const widths = routes.map((route) => bundleWidthM(plan, route));
    const strips = routes.flatMap((route, index) => stripsOf(route, (widths[index] ?? 0) / 2 + loomGapM / 2));
    const [first, ...rest] = strips;
    if (!first) return [];
    const toM = Math.max(...widths) + layer * overlayM;
    return union(first, ...rest).map((outline): Body => {
      return { kind: 'loom', role, subject: role, outline, fromM: 0, toM };
    });
  });
}

/** The thickest conductor along a route: those of a pair or a cable lie on each other. */
function bundleWidthM(plan: BuildPlan, route: PlanRoute): number {
  const widths = wiresAlong(plan, route).map((wire) => wireDiameterM(wire) ?? 0);
  return Math.max(0, ...widths);
}

/** The strips that a route covers: one along each of its strokes, with a square end. */
function stripsOf({ points }: PlanRoute, halfM: number): Region[] {
  return points.slice(1).flatMap((to, index) => {
    const from = points[index];
    const length = from ? Math.hypot(to.xM - from.xM, to.yM - from.yM) : 0;
    if (!from || length === 0) return [];
    const [x, y] = [((to.xM - from.xM) / length) * halfM, ((to.yM - from.yM) / length) * halfM];
    const corner = (point: Point, ahead: 1 | -1, left: 1 | -1): Point => ({
      xM: point.xM + ahead * x - left * y,
      yM: point.yM + ahead * y + left * x,
    });
    return [regionOf([corner(from, -1, -1), corner(to, 1, -1), corner(to, 1, 1), corner(from, -1, 1)])];
  });
}
