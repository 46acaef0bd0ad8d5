import type { BuildPlan, PlanRoute, PlanWire } from '../../model/plan/index.ts';
import { type Bending, bentPoints, beside, directionOf, distanceMm, withoutRepeats } from '../bent-line.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { easedJogs } from '../eased-line.ts';
import { at, type PaperPoint } from '../paper.ts';
import { lengthOnPaper, onPaper, type PlanView } from '../sheet/scale.ts';
import { leastWidthMm } from './conductor-body.ts';
import { type ConductorEnd, endsAt, wiresAlong } from './route-ends.ts';
import { cableDiameterM, routeBendM, wireDiameterM } from './true-sizes.ts';

/** One body of a route: a conductor, or the sheath of a cable. */
export interface Strand {
  /** The wire; of a sheath the first that lies in it. */
  readonly subject: string;
  readonly letters: string | null;
  readonly points: readonly PaperPoint[];
  readonly widthMm: number;
  readonly bending: Bending;
}

/** A route as it lies on the board, its conductors beside each other at their true diameters. */
export interface LaidRoute {
  readonly route: PlanRoute;
  readonly wires: readonly PlanWire[];
  /** The middle of it, corner by corner; the same as it is bent; and how wide all of it is. */
  readonly axis: readonly PaperPoint[];
  readonly line: readonly PaperPoint[];
  readonly widthMm: number;
  readonly strands: readonly Strand[];
  readonly ends: readonly ConductorEnd[];
}

/** How wide a body is on paper: true to scale, but no thinner than it can be drawn. */
function widthOf(view: PlanView, diameterM: number | null): number {
  return Math.max(leastWidthMm, lengthOnPaper(view, diameterM ?? 0));
}

/** Lays a route: a cable in its sheath up to where its conductors part, any other wires side by side. */
export function laidRoute(
  plan: Pick<BuildPlan, 'wires' | 'cables' | 'rules'>,
  view: PlanView,
  items: readonly ItemOnBoard[],
  route: PlanRoute,
): LaidRoute {
  const wires = wiresAlong(plan, route);
  const radiusMm = lengthOnPaper(view, routeBendM(plan, route, wires));
  const square = withoutRepeats(route.points.map((point) => onPaper(view, point)));
  const axis = easedJogs(square, radiusMm);
  const [first, last] = [axis[0], axis.at(-1)];
  const start = first ? endsAt(first, wires, items) : [];
  const end = last && axis.length > 1 ? endsAt(last, wires, items) : [];
  const cable = plan.cables.find(({ id }) => id === wires[0]?.cable);
  const laying = { view, wires, axis, start, end, radiusMm };
  const sheathMm = cable ? widthOf(view, cableDiameterM(cable, route, wires)) : null;
  const strands = sheathMm === null ? sideBySide(laying) : sheathed(laying, sheathMm);
  const widthMm = sheathMm ?? strands.reduce((sum, strand) => sum + strand.widthMm, 0);
  const line = bentPoints(axis, { radiusMm, offMm: 0 });
  return { route, wires, axis, line, widthMm, strands, ends: [...start, ...end] };
}

interface Laying {
  readonly view: PlanView;
  readonly wires: readonly PlanWire[];
  readonly axis: readonly PaperPoint[];
  /** Ends of conductors at the first and at the last point of the axis. */
  readonly start: readonly ConductorEnd[];
  readonly end: readonly ConductorEnd[];
  readonly radiusMm: number;
}

function sideBySide({ view, wires, axis, start, end, radiusMm }: Laying): Strand[] {
  const sorted = inTerminalOrder(wires, axis, start, end);
  const widths = sorted.map((wire) => widthOf(view, wireDiameterM(wire)));
  const allMm = widths.reduce((sum, width) => sum + width, 0);
  let takenMm = 0;
  return sorted.map((wire, index): Strand => {
    const widthMm = widths[index] ?? leastWidthMm;
    // The first lies farthest left.
    const offMm = allMm / 2 - takenMm - widthMm / 2;
    takenMm += widthMm;
    const line = beside(axis, offMm);
    const points = toTerminals(line, start.find(isOf(wire)), end.find(isOf(wire)));
    return { subject: wire.id, letters: wire.colour, points, widthMm, bending: { radiusMm, offMm } };
  });
}

const isOf =
  (wire: PlanWire) =>
  (end: ConductorEnd): boolean =>
    end.wire.id === wire.id;

/** Conductors from left to right as their terminals lie at the end where that shows, so that none crosses another there. */
function inTerminalOrder(
  wires: readonly PlanWire[],
  axis: readonly PaperPoint[],
  start: readonly ConductorEnd[],
  end: readonly ConductorEnd[],
): PlanWire[] {
  const ends = start.length > 1 ? start : end;
  const away = start.length > 1 ? directionOf(axis[0], axis[1]) : directionOf(axis.at(-2), axis.at(-1));
  if (!away || ends.length < 2) return [...wires];
  const leftOf = (wire: PlanWire): number => {
    const point = ends.find(isOf(wire))?.point;
    return point ? point.xMm * away.yMm - point.yMm * away.xMm : 0;
  };
  return wires.toSorted((a, b) => leftOf(b) - leftOf(a));
}

/** How far before its terminal a conductor leaves the others at least, and which share of the last leg it may take for it. */
const leastPartMm = 1.5;
const mostShare = 0.7;

/** A line that leaves the others of its route shortly before its own terminal. */
function toTerminals(
  line: readonly PaperPoint[],
  start: ConductorEnd | undefined,
  end: ConductorEnd | undefined,
): PaperPoint[] {
  const begun = start ? [start.point, ...partedFrom(line, start.point)] : [...line];
  if (!end) return begun;
  const back = begun.toReversed();
  return [end.point, ...partedFrom(back, end.point)].toReversed();
}

/** A line without its first stretch, which a conductor takes to its terminal by itself. */
function partedFrom(line: readonly PaperPoint[], terminal: PaperPoint): PaperPoint[] {
  const [first, second, ...rest] = line;
  const away = directionOf(first, second);
  if (!first || !second || !away) return [...line];
  const asideMm = distanceMm(first, terminal);
  if (asideMm < 0.05) return [second, ...rest];
  const reachMm = Math.min(distanceMm(first, second) * mostShare, Math.max(leastPartMm, asideMm));
  return [at(first.xMm + away.xMm * reachMm, first.yMm + away.yMm * reachMm), second, ...rest];
}

/** How far the conductors of a cable show out of its sheath, at least. */
const bareMm = 2;

function sheathed({ view, wires, axis, start, end, radiusMm }: Laying, widthMm: number): Strand[] {
  const bending = { radiusMm, offMm: 0 };
  const straight = { radiusMm: 0, offMm: 0 };
  const begun = start.length > 0 ? cutBack(axis, start) : axis;
  const both = end.length > 0 ? cutBack(begun.toReversed(), end).toReversed() : begun;
  const [first, last] = [both[0], both.at(-1)];
  const out = (at: PaperPoint | undefined, ends: readonly ConductorEnd[]): Strand[] =>
    ends.flatMap(({ wire, point }): Strand[] =>
      at
        ? [
            {
              ...{ subject: wire.id, letters: wire.colour, points: [at, point], bending: straight },
              widthMm: Math.min(widthMm, widthOf(view, wireDiameterM(wire))),
            },
          ]
        : [],
    );
  const whole: Strand = { subject: wires[0]?.id ?? '', letters: null, points: both, widthMm, bending };
  return [...out(first, start), ...out(last, end), whole];
}

/** A line that ends where conductors leave it for their terminals. */
function cutBack(line: readonly PaperPoint[], ends: readonly ConductorEnd[]): PaperPoint[] {
  const [first, second, ...rest] = line;
  const away = directionOf(first, second);
  if (!first || !second || !away) return [...line];
  const asideMm = Math.max(...ends.map(({ point }) => distanceMm(first, point)));
  const reachMm = Math.min(distanceMm(first, second) * mostShare, asideMm + bareMm);
  return [at(first.xMm + away.xMm * reachMm, first.yMm + away.yMm * reachMm), second, ...rest];
}
