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

/** Prepares the answers for one circuit. */
export function circuitPaths(circuit: Circuit): CircuitPaths {
  const neighbours = neighboursOf(circuit.edges);
  const islands = islandsOf(circuit);
  const reach = (from: string, without: ReadonlySet<string>) => reachable(neighbours, from, without);
  const none: ReadonlySet<string> = new Set();
  const allFuses = new Set(circuit.edges.filter(({ kind }) => kind === 'fuse').map(({ id }) => id));
  const positives = circuit.sources.map(({ positive }) => positive);
  const fedNodes = new Set(positives.flatMap((node) => [...reach(node, none)]));
  const fed = circuit.loads.filter(({ from }) => fedNodes.has(from));
  const groundNodes = new Set(circuit.sources.flatMap(({ negative }) => [...reach(negative, none)]));
  const blocks = circuitBlocks(circuit.edges);
  const blockOf = ({ id }: CircuitEdge): ReadonlySet<string> => blocks.get(id) ?? new Set([id]);

  const downstream = (edge: CircuitEdge): readonly CircuitLoad[] => {
    // Conductors that share a ring may each have to carry everything when others are open.
    const without = blockOf(edge);
    const onGround = groundNodes.has(edge.from);
    return islands.flatMap(({ nodes, primary: { positive, negative } }) => {
      if (!onGround && !nodes.has(edge.from)) return [];
      const own = fed.filter(({ from }) => nodes.has(from));
      const near = own.length > 0 ? reach(onGround ? negative : positive, without) : none;
      return own.filter(({ from, to }) => !near.has(onGround ? to : from));
    });
  };
  const cutOff = (edge: CircuitEdge): readonly CircuitSource[] => {
    const island = islandAt(islands, edge.from);
    const near = island ? reach(island.primary.positive, blockOf(edge)) : none;
    return (island?.sources ?? []).filter(({ positive }) => !near.has(positive));
  };
  const returned = (edge: CircuitEdge): readonly CircuitSource[] => {
    const post = circuit.primary?.negative;
    const near = post === undefined ? none : reach(post, blockOf(edge));
    const joined = post === undefined ? none : reach(post, none);
    return circuit.sources.filter(({ negative }) => joined.has(negative) && !near.has(negative));
  };
  return {
    islands,
    fed,
    downstream,
    sourcesBehind: cutOff,
    returnsBehind: returned,
    fusesBetween: (source, edge) => fusesBetween(circuit, neighbours, source, edge),
    bareReach: ({ positive }, { id, from, to }) => {
      const closed = new Set([...allFuses, id]);
      const before = reach(positive, closed);
      const behind = [from, to].filter((node) => !before.has(node));
      // Leads side by side: each end stays live without it, and all beyond either may flow through it.
      return new Set((behind.length > 0 ? behind : [from, to]).flatMap((node) => [...reach(node, closed)]));
    },
    sourcesOf: (edge) =>
      circuit.sources.filter(({ positive }) => {
        const nodes = reach(positive, new Set([edge.id]));
        return nodes.has(edge.from) || nodes.has(edge.to);
      }),
    nodesBehind: (edge) => {
      const island = islandAt(islands, edge.from);
      if (!island) return none;
      const near = reach(island.primary.positive, blockOf(edge));
      return new Set([...island.nodes].filter((node) => !near.has(node)));
    },
    isBare: ({ positive }, { id, from, to }) => {
      const near = reach(positive, new Set([...allFuses, id]));
      return near.has(from) || near.has(to);
    },
    way: (source, edge, lengthM) => shortestWay(neighbours, source.positive, edge, lengthM),
    bareLengthM: (source, edge, lengthM) => bareLengthM(circuit, source, edge, lengthM),
  };
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
