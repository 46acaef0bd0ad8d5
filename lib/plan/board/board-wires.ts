import type { Item, Placement, Side, WireLayer } from '../../board/layout/item.ts';
import type { LinkEnd as LayoutEnd, Link as LayoutLink } from '../../board/layout/score/links.ts';
import { type WireOnBoard, wiresInPlace } from '../../board/propose/wires-in-place.ts';
import { bendRadiusM } from '../../board/route/bend-radius.ts';
import type { RouteWire } from '../../board/route/route.ts';
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
import type { ConductorRole } from '../../model/vocabulary.ts';
import { bundleDiameterM } from '../../power/conductor/bundle-diameter.ts';
import type { CableCandidate } from '../../power/conductor/conductor-choice.ts';
import { trunkOf } from '../wiring/branches.ts';
import { liesOnWay } from '../wiring/joints.ts';
import { wantedGround } from '../wiring/lengths/ground-lead.ts';
import { unknownDiameterM, wireDiameterM } from '../wiring/wire-diameter.ts';
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
    if (![link.from, link.to].some((end) => endsOn(job, board, link, end))) continue;
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

/** True for an end of a link that goes into a terminal on the board. */
function endsOn(job: Job, board: Board, link: Link, end: LinkEnd): boolean {
  const device = job.devices.find(({ id }) => id === end.device);
  return device?.board === board.id && !liesOnWay(job, link, end);
}

/** The edge at which a wire leaves: where its run reaches the board; none where it has no run that does. */
function exitEdge(job: Job, board: Board, link: Link): Side | null {
  const reaches = job.runs.find(({ id }) => id === link.run)?.route.reaches;
  return reaches?.space === board.spaceId ? reaches.edge : null;
}

/** The wires as the layout search sees them. One that leaves without a run goes over the nearest edge. */
export function layoutLinks(
  job: Job,
  board: Board,
  wires: readonly BoardWire[],
  cableOf: (link: string) => CableCandidate | undefined,
): LayoutLink[] {
  return wires.map(({ link, along, layer }): LayoutLink => {
    const [from, to] = [endOnBoard(job, board, link, link.from), endOnBoard(job, board, link, link.to)];
    const diameterM = bundleM(job, along, cableOf);
    return { id: link.id, from, to, layer, diameterM, ...reach(job, along), ...wanted(job, board, along) };
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

/** The wires as the router sees them, where their items stand; those whose item has no place yet are left out. */
export function routeWiresOf(
  job: Job,
  board: Board,
  wires: readonly BoardWire[],
  { shape, items, placements }: Standing,
  cableOf: (link: string) => CableCandidate | undefined,
): RouteWire[] {
  return wiresInPlace(
    { box: boxOf(shape.outline), items, placements },
    wiresOnBoard(job, board, wires, cableOf),
  );
}

/** The wires as thick as they are now, wherever their items stand. */
export function wiresOnBoard(
  job: Job,
  board: Board,
  wires: readonly BoardWire[],
  cableOf: (link: string) => CableCandidate | undefined,
): WireOnBoard[] {
  return wires.map(({ link, along, layer }): WireOnBoard => {
    return {
      id: link.id,
      along: along.map((one) => ({
        link: one.id,
        from: endOnBoard(job, board, one, one.from),
        to: endOnBoard(job, board, one, one.to),
      })),
      layer,
      ...(link.run === null ? {} : { run: link.run }),
      ...mate(link, layer, wires),
      ...thickness(job, along, cableOf),
      ...reach(job, along),
    };
  });
}

/** The other wire of a pair: of the two of one layer between the same two devices, such as minus beside plus. */
function mate(link: Link, layer: WireLayer, wires: readonly BoardWire[]): { readonly mate?: string } {
  const devices = (one: Link) => `${one.from.device} ${one.to.device}`;
  const pair = wires.filter((one) => one.layer === layer && devices(one.link) === devices(link));
  const other = pair.find((one) => one.link.id !== link.id);
  return other && pair.length === 2 ? { mate: other.link.id } : {};
}

/** How far what lies together reaches on its board: as far as the shortest of made lengths in it. */
function reach(job: Job, along: readonly Link[]): { readonly longestM?: number } {
  const made = along.flatMap((one) => madeLengthM(job, one) ?? []);
  return made.length > 0 ? { longestM: Math.min(...made) } : {};
}

/** How long what lies together is to be at most: as its ground lead to the body is, where that is cut to its way. */
function wanted(job: Job, board: Board, along: readonly Link[]): Pick<LayoutLink, 'wanted'> {
  const [first] = along
    .filter((one) => madeLengthM(job, one) === undefined)
    .flatMap((one) => wantedGround(job, board, one) ?? [])
    .toSorted((a, b) => a.lengthM - b.lengthM);
  return first ? { wanted: first } : {};
}

/** A terminal of the board, or the edge that a link leaves it by. */
function endOnBoard(job: Job, board: Board, link: Link, end: LinkEnd): LayoutEnd {
  if (endsOn(job, board, link, end)) return { item: end.device, terminal: terminalId(end) };
  return { exit: exitEdge(job, board, link) ?? 'nearest' };
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
  return {
    diameterM,
    bendRadiusM: bendRadiusM(thickestM, job.rules['bend-diameters'].value),
    kinkRadiusM: bendRadiusM(thickestM, job.rules['bend-diameters-limit'].value),
  };
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
  const bundle = bundleDiameterM(diameters.length > 0 ? diameters : [unknownDiameterM]);
  return isFault(bundle) ? unknownDiameterM : bundle.value;
}
