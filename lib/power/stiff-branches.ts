import { noOhm } from './network-faults.ts';
import type { EmfSource, Network, NetworkElement, NetworkFault, SourceRegime } from './network-types.ts';

export type Regimes = ReadonlyMap<string, SourceRegime>;

/** True for an element that fixes the voltage between its nodes: no resistance, or a source without any. */
export function isStiff(element: NetworkElement, regimes: Regimes): boolean {
  if (element.kind === 'load' || element.model === 'current') return false;
  return element.ohm < noOhm && (regimes.get(element.id) ?? 'set-point') === 'set-point';
}

/** A source that may leave its set-point: past its limit, or when it is to take back more than it accepts. */
export function isBounded(element: NetworkElement): element is EmfSource {
  return element.model === 'emf' && (element.limitA !== undefined || element.acceptA !== undefined);
}

/** Nodes that stiff branches tie together count as one; each keeps its fixed offset from the root of its group. */
export interface StiffGroups {
  rootOf(node: string): string;
  /** V(node) - V(root). */
  offsetV(node: string): number;
  /** The stiff branches, which form no loop. */
  readonly branches: readonly NetworkElement[];
  /** Bounded sources that a stiffer one in parallel overrules, and where that pushes them. */
  readonly overruled: ReadonlyMap<string, SourceRegime>;
  readonly faults: readonly NetworkFault[];
}

const rank = (element: NetworkElement): number =>
  element.kind !== 'source' ? 0 : isBounded(element) ? 2 : 1;
const emfOf = (element: NetworkElement): number => (element.model === 'emf' ? element.emfV : 0);

/**
 * Joins the nodes of all stiff branches. A loop of them leaves its currents undetermined and is a fault, except
 * that a bounded source (an alternator) gives way to a stiff battery: above it, it runs at its limit; below, idle.
 */
export function joinStiff(network: Network, regimes: Regimes): StiffGroups {
  const parent = new Map<string, { up: string; byV: number }>();
  const find = (node: string): { root: string; byV: number } => {
    let root = node;
    let byV = 0;
    for (let step = parent.get(root); step; step = parent.get(root)) {
      byV += step.byV;
      root = step.up;
    }
    return { root, byV };
  };
  const branches: NetworkElement[] = [];
  const overruled = new Map<string, SourceRegime>();
  const faults: NetworkFault[] = [];
  const stiff = network.elements.filter((element) => isStiff(element, regimes));
  for (const element of stiff.toSorted((a, b) => rank(a) - rank(b))) {
    const from = find(element.from);
    const to = find(element.to);
    if (from.root !== to.root) {
      parent.set(from.root, { up: to.root, byV: to.byV + emfOf(element) - from.byV });
      branches.push(element);
      continue;
    }
    const excessV = emfOf(element) - (from.byV - to.byV);
    const loop = [element, ...pathBetween(branches, element.from, element.to)];
    if (
      isBounded(element) &&
      excessV !== 0 &&
      loop.some((other) => other !== element && other.kind === 'source')
    )
      overruled.set(element.id, excessV > 0 ? 'limited' : 'accepting');
    else faults.push(loopFault(loop));
  }
  return {
    rootOf: (node) => find(node).root,
    offsetV: (node) => find(node).byV,
    branches,
    overruled,
    faults,
  };
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
    return { kind: 'stiff-sources-in-parallel', elements, nodes, message };
  }
  if (sources.length === 1)
    return { kind: 'short-circuit', elements, nodes, message: `${names} short-circuit ${sources[0]}` };
  return {
    kind: 'zero-resistance-loop',
    elements,
    nodes,
    message: `${names} form a loop without resistance: its current is undetermined`,
  };
}
