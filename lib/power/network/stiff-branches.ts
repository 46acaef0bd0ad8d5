import { hasOhm, type IndexedNetwork, plantRoots } from './indexed-network.ts';
import { type NetworkFault, networkFault } from './network-fault.ts';
import { noOhm } from './network-faults.ts';
import type { NetworkElement, SourceRegime } from './network-types.ts';
import { RealRoom, WholeRoom } from './scratch-arrays.ts';
import type { Regimes } from './source-regimes.ts';

/** Nodes that stiff branches tie together count as one; each keeps its fixed offset from the root of its group. */
export interface StiffGroups {
  /** The root of each node's group. */
  readonly root: number[];
  /** V(node) - V(root) of each node. */
  readonly offsetV: number[];
  /** By element: 1 where it fixes the voltage between its nodes. */
  readonly tied: number[];
  /** Numbers of the stiff elements that tie the groups; they form no loop. */
  readonly branches: readonly number[];
  /** Bounded sources that a stiffer one in parallel overrules, and where that pushes them. */
  readonly overruled: ReadonlyMap<string, SourceRegime>;
  readonly faults: readonly NetworkFault[];
}

const isLimited = (element: NetworkElement): boolean =>
  element.model === 'emf' && element.limitA !== undefined;
const rank = (element: NetworkElement): number =>
  element.kind !== 'source' ? 0 : isLimited(element) ? 2 : 1;
const emfOf = (element: NetworkElement): number => ('emfV' in element ? element.emfV : 0);

const tiedRoom = new WholeRoom();
const nothing: StiffGroups['overruled'] = new Map();

/**
 * Numbers of the elements that fix the voltage between their nodes, those that others overrule last; each is marked in
 * `tied`. They have no resistance; a source only while it holds its voltage.
 */
function stiffOf(network: IndexedNetwork, regimes: Regimes, tied: number[]): number[] {
  const { elements, ohm } = network;
  const stiff: { readonly at: number; readonly rank: number }[] = [];
  for (let at = 0; at < elements.length; at += 1) {
    tied[at] = 0;
    if (!hasOhm(network, at) || (ohm[at] ?? 0) >= noOhm) continue;
    const element = elements[at];
    if (!element || (regimes.get(element.id) ?? 'set-point') !== 'set-point') continue;
    tied[at] = 1;
    stiff.push({ at, rank: rank(element) });
  }
  return stiff.length === 0 ? [] : stiff.sort((a, b) => a.rank - b.rank).map((one) => one.at);
}

const [rootRoom, offsetRoom] = [new WholeRoom(), new RealRoom()];

/**
 * Joins the nodes of all stiff branches. A loop of them leaves its currents undetermined and is a fault, except
 * that a bounded source (an alternator) gives way to a stiff battery: above it, it runs at its limit; below, idle.
 */
export function joinStiff(network: IndexedNetwork, regimes: Regimes): StiffGroups {
  const { elements, nodes } = network;
  const up = plantRoots(rootRoom.of(nodes.length), nodes.length);
  const byV = offsetRoom.zeros(nodes.length);
  const tied = tiedRoom.of(elements.length);
  const stiff = stiffOf(network, regimes, tied);
  if (stiff.length === 0)
    return { root: up, offsetV: byV, tied, branches: [], overruled: nothing, faults: [] };
  const branches: number[] = [];
  const overruled = new Map<string, SourceRegime>();
  const faults: NetworkFault[] = [];
  for (const k of stiff) {
    const element = elements[k];
    if (!element) continue;
    const from = find(up, byV, network.from[k] ?? 0);
    const to = find(up, byV, network.to[k] ?? 0);
    if (from.root !== to.root) {
      up[from.root] = to.root;
      byV[from.root] = to.byV + emfOf(element) - from.byV;
      branches.push(k);
      continue;
    }
    const excessV = emfOf(element) - (from.byV - to.byV);
    const tied = branches.flatMap((at) => elements[at] ?? []);
    const loop = [element, ...pathBetween(tied, element.from, element.to)];
    const againstSource = loop.some((other) => other !== element && other.kind === 'source');
    if (isLimited(element) && excessV !== 0 && againstSource)
      overruled.set(element.id, excessV > 0 ? 'limited' : 'accepting');
    else faults.push(loopFault(loop));
  }
  flatten(up, byV, nodes.length);
  return { root: up, offsetV: byV, tied, branches, overruled, faults };
}

function find(up: number[], byV: number[], node: number): { root: number; byV: number } {
  let root = node;
  let sum = 0;
  for (let next = up[root] ?? root; next !== root; next = up[root] ?? root) {
    sum += byV[root] ?? 0;
    root = next;
  }
  return { root, byV: sum };
}

/** Hangs every node on the root of its group, with the whole offset to it. */
function flatten(up: number[], byV: number[], count: number): void {
  for (let node = 0; node < count; node += 1) {
    if (up[node] === node) continue;
    const found = find(up, byV, node);
    up[node] = found.root;
    byV[node] = found.byV;
  }
}

/** The branches of a loop-free set that lead from one node to another. */
function pathBetween(branches: readonly NetworkElement[], start: string, end: string): NetworkElement[] {
  const ways = new Map<string, NetworkElement[]>([[start, []]]);
  const open = [start];
  for (const node of open) {
    for (const branch of branches) {
      if (branch.from !== node && branch.to !== node) continue;
      const next = branch.from === node ? branch.to : branch.from;
      if (ways.has(next)) continue;
      ways.set(next, [...(ways.get(node) ?? []), branch]);
      open.push(next);
    }
  }
  return ways.get(end) ?? [];
}

function loopFault(loop: readonly NetworkElement[]): NetworkFault {
  const elements = loop.map(({ id }) => id);
  const nodes = [...new Set(loop.flatMap(({ from, to }) => [from, to]))];
  const sources = loop.filter(({ kind }) => kind === 'source').map(({ id }) => id);
  const names = elements.join(', ');
  if (sources.length > 1) {
    const message = `${sources.join(' and ')} are sources without resistance in parallel: how they share the current is undetermined`;
    return networkFault('network-stiff-sources-in-parallel', { elements, nodes }, message);
  }
  if (sources.length === 1)
    return networkFault('network-short-circuit', { elements, nodes }, `${names} short-circuit ${sources[0]}`);
  const message = `${names} form a loop without resistance: its current is undetermined`;
  return networkFault('network-zero-resistance-loop', { elements, nodes }, message);
}
