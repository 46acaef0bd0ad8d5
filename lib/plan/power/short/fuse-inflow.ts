import { onceEach } from '../../once-each.ts';
import { type Circuit, type CircuitEdge, type CircuitSource, limitA } from '../circuit/circuit.ts';
import { neighboursOf, reachable } from '../circuit/circuit-graph.ts';

/** What can flow into a node that is shorted to ground, while one conductor at it is cut. */
export interface Inflow {
  /** True where some source reaches the node without a fuse: nothing bounds what that one gives. */
  readonly bare: boolean;
  /** The fuses nearest to the node that let a source's current in; together they carry all that arrives. */
  readonly fuses: readonly CircuitEdge[];
  /**
   * The most that the fuses let through for long (A), by their ratings: the least cut between the node and all sources
   * that do not reach it bare. Of fuses in a row the least counts, of fuses side by side their sum.
   */
  mostA(ratingA: (fuse: string) => number): number;
}

/** A fuse between two regions that no fuse divides. */
interface Arc {
  readonly fuse: CircuitEdge;
  readonly from: number;
  readonly to: number;
}

/** What flows into the nodes of one circuit when they are shorted. */
export interface Inflows {
  /** The inflow of a node while the conductor `without` is cut; an empty id cuts none. */
  into(node: string, without: string): Inflow;
  /**
   * The most (A) that the fuses let through for long to several nodes together: the least cut between them and all
   * sources. What a source feeds without a fuse is left out.
   */
  jointA(nodes: readonly string[], ratingA: (fuse: string) => number): number;
}

/** Prepares the answers for one circuit. */
export function inflowsOf(circuit: Circuit): Inflows {
  const regions = onceEach(
    (without: string) => regionsOf(circuit, without),
    (without) => without,
  );
  return {
    into: onceEach(
      (node: string, without: string) => inflow(circuit, regions(without), node),
      (node, without) => `${without}\n${node}`,
    ),
    jointA: (nodes, ratingA) => jointInflowA(circuit, regions(''), nodes, ratingA),
  };
}

/** The number of each node's region: nodes that are joined without a fuse. */
type Regions = ReadonlyMap<string, number>;

function inflow(circuit: Circuit, regions: Regions, node: string): Inflow {
  const region = (id: string) => regions.get(id) ?? -1;
  const feeds = feedsOf(circuit, region);
  const arcs = [...arcsOf(circuit, region), ...feeds.limited];
  const { starts } = feeds;
  const end = region(node);
  const bare = starts.delete(end);
  return {
    bare,
    fuses: enteringFuses(arcs, starts, end),
    mostA: (ratingA) => greatestFlowA(arcs, starts, end, withLimits(circuit, ratingA)),
  };
}

function jointInflowA(
  circuit: Circuit,
  regions: Regions,
  nodes: readonly string[],
  ratingA: (fuse: string) => number,
): number {
  const ends = new Set(nodes.flatMap((node) => regions.get(node) ?? []));
  const [end] = ends;
  if (end === undefined) return 0;
  const region = (id: string) => {
    const own = regions.get(id) ?? -1;
    return ends.has(own) ? end : own;
  };
  const { starts, limited } = feedsOf(circuit, region);
  starts.delete(end);
  const arcs = [...arcsOf(circuit, region), ...limited];
  return greatestFlowA(arcs, starts, end, withLimits(circuit, ratingA));
}

/**
 * Where current comes from: the regions of the sources that nothing bounds, and for one that limits itself a region of
 * its own, behind an arc that lets no more through than its limit, as a fuse would.
 */
function feedsOf(
  { sources }: Circuit,
  region: (node: string) => number,
): { readonly starts: Set<number>; readonly limited: readonly Arc[] } {
  const starts = new Set<number>();
  const limited: Arc[] = [];
  for (const [k, source] of sources.entries()) {
    const to = region(source.positive);
    if (to === -1) continue;
    const from = limitA(source) === null ? to : -2 - k;
    starts.add(from);
    if (from !== to) limited.push({ fuse: limitEdge(source), from, to });
  }
  return { starts, limited };
}

function limitEdge({ device, positive }: CircuitSource): CircuitEdge {
  return { id: device.id, kind: 'fuse', from: device.id, to: positive, link: null, device, way: '' };
}

/** The ratings of the fuses, and by the name of each source that limits itself the limit (A). */
function withLimits({ sources }: Circuit, ratingA: (fuse: string) => number): (fuse: string) => number {
  const limits = new Map(sources.map((source) => [source.device.id, limitA(source)]));
  return (id) => limits.get(id) ?? ratingA(id);
}

/** The fuses, each with the regions at its ends; one that a conductor passes by has the same at both. */
function arcsOf({ edges }: Circuit, region: (node: string) => number): Arc[] {
  return edges
    .filter(({ kind }) => kind === 'fuse')
    .map((fuse): Arc => ({ fuse, from: region(fuse.from), to: region(fuse.to) }));
}

function regionsOf({ edges }: Circuit, without: string): Regions {
  const neighbours = neighboursOf(edges);
  const closed = new Set(edges.filter(({ kind }) => kind === 'fuse').map(({ id }) => id)).add(without);
  const regions = new Map<string, number>();
  let count = 0;
  for (const start of neighbours.keys()) {
    if (regions.has(start)) continue;
    for (const node of reachable(neighbours, start, closed)) regions.set(node, count);
    count += 1;
  }
  return regions;
}

/** Fuses at the border of a region beyond which a source is reached without crossing the region again. */
function enteringFuses(arcs: readonly Arc[], starts: ReadonlySet<number>, end: number): CircuitEdge[] {
  const live = new Set(starts);
  for (const region of live)
    for (const { from, to } of arcs) {
      const other = from === region ? to : to === region ? from : end;
      if (other !== end) live.add(other);
    }
  return arcs.flatMap(({ fuse, from, to }) =>
    (from === end && live.has(to)) || (to === end && live.has(from)) ? [fuse] : [],
  );
}

/** Greatest flow from any start to the end, by shortest augmenting ways (Edmonds and Karp, 1972). */
function greatestFlowA(
  arcs: readonly Arc[],
  starts: ReadonlySet<number>,
  end: number,
  ratingA: (fuse: string) => number,
): number {
  // What each fuse may still let through, along its arc and against it.
  const left = arcs.map(({ fuse }) => ({ alongA: ratingA(fuse.id), againstA: ratingA(fuse.id) }));
  let sumA = 0;
  for (let way = openWay(arcs, left, starts, end); way; way = openWay(arcs, left, starts, end)) {
    const roomA = Math.min(...way.map(({ along, room }) => (along ? room.alongA : room.againstA)));
    for (const { along, room } of way) {
      room.alongA += along ? -roomA : roomA;
      room.againstA += along ? roomA : -roomA;
    }
    sumA += roomA;
  }
  return sumA;
}

interface Room {
  alongA: number;
  againstA: number;
}

interface Step {
  readonly along: boolean;
  readonly room: Room;
}

/** The shortest way from a start to the end on which every fuse has room; null where there is none. */
function openWay(
  arcs: readonly Arc[],
  left: readonly Room[],
  starts: ReadonlySet<number>,
  end: number,
): readonly Step[] | null {
  const ways = new Map<number, readonly Step[]>([...starts].map((region) => [region, []]));
  for (const [region, way] of ways) {
    if (region === end) return way;
    for (const [k, { from, to }] of arcs.entries()) {
      const room = left[k];
      if (!room || (from !== region && to !== region)) continue;
      const along = from === region;
      const other = along ? to : from;
      if ((along ? room.alongA : room.againstA) > 0 && !ways.has(other))
        ways.set(other, [...way, { along, room }]);
    }
  }
  return null;
}
