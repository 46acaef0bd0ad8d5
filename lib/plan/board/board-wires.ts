import { quartersOff } from '../../board/layout/facing.ts';
import {
  type Item,
  type Placement,
  type Side,
  sides,
  terminalOnBoard,
  type WireLayer,
} from '../../board/layout/item.ts';
import type { LinkEnd as LayoutEnd, Link as LayoutLink } from '../../board/layout/score.ts';
import type { RouteEnd, RouteWire } from '../../board/route/route.ts';
import type { BoardShape } from '../../board/shape/outline.ts';
import { boxOf } from '../../board/shape/point.ts';
import {
  type Board,
  type Job,
  type Link,
  type LinkEnd,
  terminalId,
} from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import { bundleDiameterM, outsideDiameterM } from '../../power/conductor/bundle.ts';
import type { CableCandidate } from '../../power/conductor/conductor-choice.ts';
import { trunkOf } from '../wiring/branches.ts';
import { layerOfRole } from './wire-layer.ts';

/**
 * Wires that lie together on a board: the two of a pair, those of one cable between the same two items, or those that
 * go together from a shared terminal until they part in the vehicle.
 */
export interface BoardWire {
  /** The first of them: the route bears its name, and is laid between the ends of the one that asks for most. */
  readonly link: Link;
  readonly along: readonly Link[];
  readonly layer: WireLayer;
}

/** The wires of a board, pairs and cables taken together, in the order of the file. */
export function boardWires(job: Job, board: Board, roles: ReadonlyMap<string, ConductorRole>): BoardWire[] {
  const groups = new Map<string, Link[]>();
  for (const link of job.links) {
    if (!isOn(job, board, link.from) && !isOn(job, board, link.to)) continue;
    const key = link.cable
      ? `${link.cable.id} ${link.from.device} ${link.to.device}`
      : pathTogether(job, link);
    groups.set(key, [...(groups.get(key) ?? []), link]);
  }
  return [...groups.values()].flatMap((along): BoardWire[] => {
    const [link] = along;
    return link ? [{ link, along, layer: layerOfRole[roles.get(link.id) ?? 'control'] }] : [];
  });
}

/** What a link is laid with: of a branch the link that it leaves, which is tied to it from their terminal on. */
function pathTogether(job: Job, link: Link): string {
  const branch = link.given?.branch;
  return (branch && trunkOf(job, link, branch.from)?.path) ?? link.path;
}

function isOn(job: Job, board: Board, end: LinkEnd): boolean {
  return job.devices.find(({ id }) => id === end.device)?.board === board.id;
}

/** The edge at which a wire leaves: where its run reaches the board; none where it has no run that does. */
function exitEdge(job: Job, board: Board, link: Link): Side | null {
  const reaches = job.runs.find(({ id }) => id === link.run)?.route.reaches;
  return reaches?.space === board.spaceId ? reaches.edge : null;
}

/** The wires as the layout search sees them. One that leaves without a run may leave anywhere, so it pulls nowhere. */
export function layoutLinks(job: Job, board: Board, wires: readonly BoardWire[]): LayoutLink[] {
  return wires.flatMap(({ link, along, layer }): LayoutLink[] => {
    const [from, to] = [link.from, link.to].map((end): LayoutEnd | null => {
      if (isOn(job, board, end)) return { item: end.device, terminal: terminalId(end) };
      const exit = exitEdge(job, board, link);
      return exit ? { exit } : null;
    });
    const made = along.flatMap((one) => madeLengthM(job, one) ?? []);
    const longest = made.length > 0 ? { longestM: Math.min(...made) } : {};
    return from && to ? [{ id: link.id, from, to, layer, ...longest }] : [];
  });
}

/** How long a link is that is not cut to its way: as given, or as its cable is made; undefined for any other. Metres. */
export function madeLengthM(job: Job, link: Link): number | undefined {
  const cable = link.cable ? job.parts[link.cable.part] : undefined;
  return link.given?.length ?? (cable?.kind === 'cable' ? cable['made-length'] : undefined);
}

/** What is laid out where: enough to say where a terminal of an item is, and how far the edges are. */
export interface Standing {
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
}

/**
 * The wires as the router sees them; those whose item has no place yet are left out. What lies together is routed
 * between the ends of the one that has the longest way, whichever was written first: what is cut to it reaches for all.
 */
export function routeWiresOf(
  job: Job,
  board: Board,
  wires: readonly BoardWire[],
  standing: Standing,
  cableOf: (link: string) => CableCandidate | undefined,
): RouteWire[] {
  return wires.flatMap(({ link, along, layer }): RouteWire[] => {
    const [longest] = along
      .flatMap((one) => endsOnBoard(job, board, one, standing) ?? [])
      .toSorted((a, b) => spanM(standing, b) - spanM(standing, a) || (a.link < b.link ? -1 : 1));
    if (!longest) return [];
    const { from, to } = longest;
    return [{ id: link.id, from, to, layer, ...thickness(job, along, cableOf) }];
  });
}

interface Ends {
  readonly link: string;
  readonly from: RouteEnd;
  readonly to: RouteEnd;
}

/** Where a link begins and ends on its board, or leaves it; null where an item of it has no place. */
function endsOnBoard(job: Job, board: Board, link: Link, standing: Standing): Ends | null {
  const [first, second] = [link.from, link.to].map((end) =>
    isOn(job, board, end) ? terminalEnd(standing, end) : 'leaves',
  );
  if (!first || !second) return null;
  const from = first === 'leaves' ? leaving(job, board, link, standing, second) : first;
  const to = second === 'leaves' ? leaving(job, board, link, standing, first) : second;
  return from && to ? { link: link.id, from, to } : null;
}

/** Level and upright distance between two ends, or from one straight to the edge at which it leaves (m). */
function spanM({ shape }: Standing, { from, to }: Ends): number {
  if ('exit' in from) return 'exit' in to ? 0 : toEdgesM(shape, to)[from.exit];
  if ('exit' in to) return toEdgesM(shape, from)[to.exit];
  return Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM);
}

/** From a point straight to each edge of a board (m). */
function toEdgesM({ outline }: BoardShape, at: { xM: number; yM: number }): Record<Side, number> {
  const { minX, minY, maxX, maxY } = boxOf(outline);
  return { right: maxX - at.xM, top: maxY - at.yM, left: at.xM - minX, bottom: at.yM - minY };
}

function terminalEnd({ items, placements }: Standing, end: LinkEnd): RouteEnd | null {
  const item = items.find(({ id }) => id === end.device);
  const at = placements.find(({ item: id }) => id === end.device);
  const terminal = item?.terminals.find(({ id }) => id === terminalId(end));
  return item && at && terminal ? terminalOnBoard(item, at, terminal) : null;
}

/** What turning a quarter counts for, in metres of wire, when the edge to leave by is chosen. House judgement. */
const quarterM = 0.08;

/** A wire without a run leaves the board by the nearest edge, the one that its terminal faces first. */
function leaving(
  job: Job,
  board: Board,
  link: Link,
  { shape }: Standing,
  other: RouteEnd | 'leaves',
): RouteEnd | null {
  const edge = exitEdge(job, board, link);
  if (edge) return { exit: edge };
  if (other === 'leaves' || !('faces' in other)) return null;
  const toEdgeM = toEdgesM(shape, other);
  const costM = (side: Side) => toEdgeM[side] + quarterM * quartersOff(other.faces, side);
  const [nearest] = sides.toSorted((a, b) => costM(a) - costM(b));
  return nearest ? { exit: nearest } : null;
}

/** How thick what lies together is, and how far it may be bent: by its thickest conductor. */
function thickness(job: Job, along: readonly Link[], cableOf: (link: string) => CableCandidate | undefined) {
  const thickestM = Math.max(
    0,
    ...along.flatMap(({ id }) => {
      const candidate = cableOf(id);
      return candidate ? [wireDiameterM(job, candidate)] : [];
    }),
  );
  const diameterM = bundleM(job, along, cableOf);
  return { diameterM, bendRadiusM: job.rules['bend-diameters'].value * thickestM };
}

/** Diameter of what lies together: of the cable where it has one, of a bundle of the conductors otherwise. */
function bundleM(
  job: Job,
  along: readonly Link[],
  cableOf: (link: string) => CableCandidate | undefined,
): number {
  const [first] = along;
  const cable = first?.cable ? job.parts[first.cable.part] : undefined;
  if (cable?.kind === 'cable' && cable['outside-diameter'] !== undefined) return cable['outside-diameter'];
  const diameters = along.flatMap(({ id }) => {
    const candidate = cableOf(id);
    return candidate ? [wireDiameterM(job, candidate)] : [];
  });
  const bundle = bundleDiameterM(diameters.length > 0 ? diameters : [0.002]);
  return isFault(bundle) ? 0.002 : bundle.value;
}

/** Outside diameter of a cut wire: by its part, or by the stated model of strands and wall. */
export function wireDiameterM(job: Job, cable: Pick<CableCandidate, 'part' | 'size'>): number {
  return wireDiameter(job, cable)?.value ?? 0.002;
}

/** The same with its working; null for a conductor without area. */
export function wireDiameter(
  job: Job,
  { part, size }: Pick<CableCandidate, 'part' | 'size'>,
): Traced<number> | null {
  const reel = job.parts[part];
  if (reel?.kind === 'wire' && reel['outside-diameter'] !== undefined)
    return traced(reel['outside-diameter'], 'm', {
      origin: 'given',
      rule: 'conductor-diameter',
      citation: "the part's data",
    });
  const model = outsideDiameterM(size.areaMm2);
  return isFault(model) ? null : model;
}
