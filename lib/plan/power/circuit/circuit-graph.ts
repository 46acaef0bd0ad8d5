import type { CircuitEdge } from './circuit.ts';

/** The edges at each node. */
export type Neighbours = ReadonlyMap<string, readonly CircuitEdge[]>;

export function neighboursOf(edges: readonly CircuitEdge[]): Neighbours {
  const map = new Map<string, CircuitEdge[]>();
  for (const edge of edges) {
    for (const node of [edge.from, edge.to]) {
      const list = map.get(node);
      if (list) list.push(edge);
      else map.set(node, [edge]);
    }
  }
  return map;
}

export function otherEnd(edge: CircuitEdge, node: string): string {
  return edge.from === node ? edge.to : edge.from;
}

/** Nodes that are reached from one, itself included, over all edges but some. */
export function reachable(
  neighbours: Neighbours,
  from: string,
  without: ReadonlySet<string>,
): ReadonlySet<string> {
  const seen = new Set([from]);
  const open = [from];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    for (const edge of neighbours.get(node) ?? []) {
      const other = otherEnd(edge, node);
      if (without.has(edge.id) || seen.has(other)) continue;
      seen.add(other);
      open.push(other);
    }
  }
  return seen;
}

/**
 * For each edge, the ids of all edges of its block, itself included: those that lie with it on some ring. In a block
 * current may take any way, so that each edge of it may have to carry everything when others are open. A block of one
 * edge is a bridge. (Biconnected components by depth-first search, Hopcroft and Tarjan, 1973.)
 */
export function circuitBlocks(edges: readonly CircuitEdge[]): ReadonlyMap<string, ReadonlySet<string>> {
  const neighbours = neighboursOf(edges);
  const blocks = new Map<string, ReadonlySet<string>>();
  const depths = new Map<string, number>();
  for (const root of neighbours.keys()) if (!depths.has(root)) searchBlocks(root, neighbours, depths, blocks);
  return blocks;
}

interface Visit {
  readonly node: string;
  /** The edge by which it was reached. */
  readonly by: CircuitEdge | null;
  readonly onward: readonly CircuitEdge[];
  next: number;
  /** The least depth that it and what lies below it are joined to. */
  low: number;
}

function searchBlocks(
  root: string,
  neighbours: Neighbours,
  depths: Map<string, number>,
  blocks: Map<string, ReadonlySet<string>>,
): void {
  const visits: Visit[] = [];
  const open: string[] = [];
  const enter = (node: string, by: CircuitEdge | null) => {
    depths.set(node, visits.length);
    visits.push({ node, by, onward: neighbours.get(node) ?? [], next: 0, low: visits.length });
  };
  enter(root, null);
  for (let here = visits.at(-1); here; here = visits.at(-1)) {
    const edge = here.onward[here.next];
    here.next += 1;
    if (!edge) {
      visits.pop();
      const above = visits.at(-1);
      if (!above || !here.by) continue;
      above.low = Math.min(above.low, here.low);
      if (here.low >= visits.length - 1) closeBlock(here.by.id, open, blocks);
      continue;
    }
    const other = otherEnd(edge, here.node);
    const depth = depths.get(other);
    if (edge === here.by || (depth !== undefined && depth > visits.length - 1)) continue;
    open.push(edge.id);
    if (depth === undefined) enter(other, edge);
    else here.low = Math.min(here.low, depth);
  }
}

/** All edges opened since the one that leads into a block belong to it. */
function closeBlock(first: string, open: string[], blocks: Map<string, ReadonlySet<string>>): void {
  const block = new Set(open.splice(open.lastIndexOf(first)));
  for (const id of block) blocks.set(id, block);
}
