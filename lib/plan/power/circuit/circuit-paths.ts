import { onceEach } from '../../once-each.ts';
import { type Inflows, inflowsOf } from '../short/fuse-inflow.ts';
import type { Circuit, CircuitEdge, CircuitLoad, CircuitSource } from './circuit.ts';
import { circuitBlocks, type Neighbours, neighboursOf, otherEnd, reachable } from './circuit-graph.ts';
import { type Island, islandAt, islandsOf } from './circuit-islands.ts';

/**
 * Answers about a circuit with every contact closed: who is reached from where, through what. What "the primary source"
 * is follows from the island: behind a charger the battery there.
 */
export interface CircuitPaths {
  readonly islands: readonly Island[];
  /** Loads that are fed at all: their positive node is reached from a source. */
  readonly fed: readonly CircuitLoad[];
  /** What flows into nodes that are shorted. */
  readonly inflows: Inflows;
  /** Nodes that a node is joined to, itself included. */
  joinedTo(node: string): ReadonlySet<string>;
  /**
   * Loads whose current an edge carries, at most: those cut off from the primary source without it and, where it
   * lies in a ring or beside others, without the rest of these.
   */
  downstream(edge: CircuitEdge): readonly CircuitLoad[];
  /** Sources other than the primary one that an edge, or its ring, joins to it. */
  sourcesBehind(edge: CircuitEdge): readonly CircuitSource[];
  /** The same on the ground side: sources whose negative terminal an edge joins to the primary one's. */
  returnsBehind(edge: CircuitEdge): readonly CircuitSource[];
  /** Fuses that stand in every way from a source to an edge, the nearest to the edge first. */
  fusesBetween(source: CircuitSource, edge: CircuitEdge): readonly CircuitEdge[];
  /** Nodes behind an edge, seen from a source, that are reached without passing a fuse. */
  bareReach(source: CircuitSource, edge: CircuitEdge): ReadonlySet<string>;
  /** Sources whose positive terminal reaches an edge. */
  sourcesOf(edge: CircuitEdge): readonly CircuitSource[];
  /** Nodes that only an edge, or its ring, joins to the primary source. */
  nodesBehind(edge: CircuitEdge): ReadonlySet<string>;
  /** True for an edge that a source reaches without passing a fuse or the edge itself. */
  isBare(source: CircuitSource, edge: CircuitEdge): boolean;
  /** Conductors on the shortest way from a source to an edge, in order; null where there is none. */
  way(
    source: CircuitSource,
    edge: CircuitEdge,
    lengthM: (conductor: string) => number,
  ): readonly CircuitEdge[] | null;
  /** Edges on the way from a source to an edge that passes fewest; 0 where there is none. */
  hops(source: CircuitSource, edge: CircuitEdge): number;
  /**
   * Length of conductor (m) that a source reaches an edge by without passing a fuse. Of leads side by side any may be
   * the one that shorts: through each the shortest way counts, and of these the longest; null where there is none.
   */
  bareLengthM(
    source: CircuitSource,
    edge: CircuitEdge,
    lengthM: (conductor: string) => number,
  ): number | null;
}

/** A circuit made ready to be walked. */
interface Walks {
  readonly circuit: Circuit;
  readonly islands: readonly Island[];
  readonly neighbours: Neighbours;
  readonly fed: readonly CircuitLoad[];
  /** Nodes that the negative terminal of a source reaches. */
  readonly groundNodes: ReadonlySet<string>;
  readonly allFuses: ReadonlySet<string>;
  /** An edge with the others of its ring, or with those beside it. */
  blockOf(edge: CircuitEdge): ReadonlySet<string>;
  reach(from: string, without: ReadonlySet<string>): ReadonlySet<string>;
}

const none: ReadonlySet<string> = new Set();

/** Prepares the answers for one circuit. What does not go by lengths is worked out once, however often it is asked. */
export function circuitPaths(circuit: Circuit): CircuitPaths {
  const walks = walksOf(circuit);
  const { neighbours, reach, allFuses } = walks;
  return {
    islands: walks.islands,
    fed: walks.fed,
    inflows: inflowsOf(circuit),
    joinedTo: onceEach(
      (node: string) => reach(node, none),
      (node) => node,
    ),
    downstream: byEdge((edge) => downstream(walks, edge)),
    sourcesBehind: byEdge((edge) => cutOff(walks, edge)),
    returnsBehind: byEdge((edge) => returned(walks, edge)),
    fusesBetween: bySource((source, edge) => fusesBetween(circuit, neighbours, source, edge)),
    bareReach: bySource((source, edge) => bareReach(walks, source, edge)),
    sourcesOf: byEdge((edge) =>
      circuit.sources.filter(({ positive }) => {
        const nodes = reach(positive, new Set([edge.id]));
        return nodes.has(edge.from) || nodes.has(edge.to);
      }),
    ),
    nodesBehind: byEdge((edge) => nodesBehind(walks, edge)),
    isBare: bySource(({ positive }, { id, from, to }) => {
      const near = reach(positive, new Set([...allFuses, id]));
      return near.has(from) || near.has(to);
    }),
    way: (source, edge, lengthM) => shortestWay(neighbours, source.positive, edge, lengthM),
    hops: bySource(({ positive }, edge) => shortestWay(neighbours, positive, edge, () => 1)?.length ?? 0),
    bareLengthM: (source, edge, lengthM) => bareLengthM(circuit, source, edge, lengthM),
  };
}

/** Answers each edge once. */
function byEdge<R>(answer: (edge: CircuitEdge) => R): (edge: CircuitEdge) => R {
  return onceEach(answer, (edge) => edge);
}

/** Answers each edge once from each source. */
function bySource<R>(
  answer: (source: CircuitSource, edge: CircuitEdge) => R,
): (source: CircuitSource, edge: CircuitEdge) => R {
  const from = onceEach(
    (source: CircuitSource) => byEdge((edge) => answer(source, edge)),
    (source) => source,
  );
  return (source, edge) => from(source)(edge);
}

function walksOf(circuit: Circuit): Walks {
  const { edges, sources, loads } = circuit;
  const neighbours = neighboursOf(edges);
  const reach = (from: string, without: ReadonlySet<string>) => reachable(neighbours, from, without);
  const reachedFrom = (nodes: readonly string[]) => new Set(nodes.flatMap((node) => [...reach(node, none)]));
  const fedNodes = reachedFrom(sources.map(({ positive }) => positive));
  const blocks = circuitBlocks(edges);
  return {
    circuit,
    islands: islandsOf(circuit),
    neighbours,
    fed: loads.filter(({ from }) => fedNodes.has(from)),
    groundNodes: reachedFrom(sources.map(({ negative }) => negative)),
    allFuses: new Set(edges.filter(({ kind }) => kind === 'fuse').map(({ id }) => id)),
    blockOf: ({ id }) => blocks.get(id) ?? new Set([id]),
    reach,
  };
}

function downstream(
  { islands, fed, groundNodes, blockOf, reach }: Walks,
  edge: CircuitEdge,
): readonly CircuitLoad[] {
  // Conductors that share a ring may each have to carry everything when others are open.
  const without = blockOf(edge);
  const onGround = groundNodes.has(edge.from);
  return islands.flatMap(({ nodes, primary: { positive, negative } }) => {
    if (!onGround && !nodes.has(edge.from)) return [];
    const own = fed.filter(({ from }) => nodes.has(from));
    const near = own.length > 0 ? reach(onGround ? negative : positive, without) : none;
    return own.filter(({ from, to }) => !near.has(onGround ? to : from));
  });
}

function cutOff({ islands, blockOf, reach }: Walks, edge: CircuitEdge): readonly CircuitSource[] {
  const island = islandAt(islands, edge.from);
  const near = island ? reach(island.primary.positive, blockOf(edge)) : none;
  return (island?.sources ?? []).filter(({ positive }) => !near.has(positive));
}

function returned({ circuit, blockOf, reach }: Walks, edge: CircuitEdge): readonly CircuitSource[] {
  const post = circuit.primary?.negative;
  const near = post === undefined ? none : reach(post, blockOf(edge));
  const joined = post === undefined ? none : reach(post, none);
  return circuit.sources.filter(({ negative }) => joined.has(negative) && !near.has(negative));
}

function bareReach(
  { allFuses, reach }: Walks,
  { positive }: CircuitSource,
  { id, from, to }: CircuitEdge,
): ReadonlySet<string> {
  const closed = new Set([...allFuses, id]);
  const before = reach(positive, closed);
  const behind = [from, to].filter((node) => !before.has(node));
  // Leads side by side: each end stays live without it, and all beyond either may flow through it.
  return new Set((behind.length > 0 ? behind : [from, to]).flatMap((node) => [...reach(node, closed)]));
}

function nodesBehind({ islands, blockOf, reach }: Walks, edge: CircuitEdge): ReadonlySet<string> {
  const island = islandAt(islands, edge.from);
  if (!island) return none;
  const near = reach(island.primary.positive, blockOf(edge));
  return new Set([...island.nodes].filter((node) => !near.has(node)));
}

function bareLengthM(
  { edges }: Circuit,
  { positive }: CircuitSource,
  edge: CircuitEdge,
  lengthM: (conductor: string) => number,
): number | null {
  const bare = edges.filter((one) => one.kind !== 'fuse' && one !== edge);
  const sum = (way: readonly CircuitEdge[]) =>
    way.reduce((total, { kind, id }) => total + (kind === 'conductor' ? lengthM(id) : 0), 0);
  const shortest = shortestWay(neighboursOf(bare), positive, edge, lengthM);
  if (!shortest) return null;
  const through = bare.flatMap((lead) => {
    if (lead.kind !== 'conductor') return [];
    const others = neighboursOf(bare.filter((one) => one !== lead));
    return [lead.from, lead.to]
      .flatMap((near) => {
        const before = shortestWay(others, positive, endAt(near), lengthM);
        const onward = before && shortestWay(others, otherEnd(lead, near), edge, lengthM);
        return before && onward ? [sum(before) + lengthM(lead.id) + sum(onward)] : [];
      })
      .toSorted((a, b) => a - b)
      .slice(0, 1);
  });
  return Math.max(sum(shortest), ...through);
}

/** A stand-in for what ends at a node, to ask what lies before it. */
function endAt(node: string): CircuitEdge {
  return { id: `${node}:end`, kind: 'joint', from: node, to: node, link: null, device: null, way: '' };
}

function fusesBetween(
  circuit: Circuit,
  neighbours: Neighbours,
  source: CircuitSource,
  edge: CircuitEdge,
): readonly CircuitEdge[] {
  const dominating = circuit.edges.filter((fuse) => {
    if (fuse.kind !== 'fuse' || fuse.id === edge.id) return false;
    const nodes = reachable(neighbours, source.positive, new Set([fuse.id, edge.id]));
    return !nodes.has(edge.from) && !nodes.has(edge.to);
  });
  const hops = (fuse: CircuitEdge) => shortestWay(neighbours, source.positive, fuse, () => 1)?.length ?? 0;
  return dominating
    .map((fuse) => ({ fuse, hops: hops(fuse) }))
    .sort((a, b) => b.hops - a.hops)
    .map(({ fuse }) => fuse);
}

/** Dijkstra over the nodes; the edge itself is not passed. */
function shortestWay(
  neighbours: Neighbours,
  start: string,
  edge: CircuitEdge,
  lengthM: (conductor: string) => number,
): readonly CircuitEdge[] | null {
  const best = new Map<string, { readonly lengthM: number; readonly way: readonly CircuitEdge[] }>([
    [start, { lengthM: 0, way: [] }],
  ]);
  const open = new Set([start]);
  while (open.size > 0) {
    const node = nearest(open, (id) => best.get(id)?.lengthM ?? Number.POSITIVE_INFINITY);
    open.delete(node);
    const here = best.get(node);
    if (!here) continue;
    if (node === edge.from || node === edge.to) return here.way;
    for (const next of neighbours.get(node) ?? []) {
      if (next.id === edge.id) continue;
      const other = otherEnd(next, node);
      const total = here.lengthM + (next.kind === 'conductor' ? lengthM(next.id) : 0);
      if (total >= (best.get(other)?.lengthM ?? Number.POSITIVE_INFINITY)) continue;
      best.set(other, { lengthM: total, way: [...here.way, next] });
      open.add(other);
    }
  }
  return null;
}

function nearest(open: ReadonlySet<string>, lengthOf: (id: string) => number): string {
  let [chosen = ''] = open;
  for (const id of open) if (lengthOf(id) < lengthOf(chosen)) chosen = id;
  return chosen;
}
