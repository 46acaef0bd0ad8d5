import type { IndexedNetwork } from './indexed-network.ts';
import type { ElementFlow, NetworkElement, NodeVoltage } from './network-types.ts';
import { branchA, branchV } from './newton.ts';
import { type CompiledNetwork, nodeV } from './nodal-system.ts';
import { isBounded, type Regimes, type StiffGroups } from './stiff-branches.ts';

/** Everything that flows at one solution. */
export interface NetworkFlows {
  readonly nodes: readonly NodeVoltage[];
  readonly elements: readonly ElementFlow[];
  readonly residualA: number;
}

/**
 * Voltages, currents, drops and heat at the unknowns x. A stiff branch has no resistance to tell its current
 * from its drop: it carries what Kirchhoff's current law leaves to it.
 */
export function networkFlows(
  network: IndexedNetwork,
  compiled: CompiledNetwork,
  groups: StiffGroups,
  regimes: Regimes,
  x: Float64Array,
): NetworkFlows {
  const currents = new Float64Array(network.elements.length);
  /** Current that leaves each node so far. */
  const leaving = new Float64Array(network.nodes.length);
  const carry = (element: number, currentA: number) => {
    const from = network.from[element] ?? 0;
    const to = network.to[element] ?? 0;
    currents[element] = currentA;
    leaving[from] = (leaving[from] ?? 0) + currentA;
    leaving[to] = (leaving[to] ?? 0) - currentA;
  };
  compiled.branches.forEach((element, k) => {
    carry(element, branchA(compiled.system, k, branchV(compiled.system, x, k), 1));
  });
  if (groups.branches.length > 0) peel(network, groups.branches, leaving, carry);
  const voltages = new Float64Array(network.nodes.length);
  for (let node = 0; node < voltages.length; node += 1) voltages[node] = nodeV(compiled, node, x);
  const dropV = (k: number) => (voltages[network.from[k] ?? 0] ?? 0) - (voltages[network.to[k] ?? 0] ?? 0);
  return {
    nodes: network.nodes.map((id, node) => ({ id, voltageV: voltages[node] ?? 0 })),
    elements: network.elements.map((element, k) => flowOf(element, currents[k] ?? 0, dropV(k), regimes)),
    residualA: leaving.reduce((most, currentA) => Math.max(most, Math.abs(currentA)), 0),
  };
}

function flowOf(element: NetworkElement, currentA: number, dropV: number, regimes: Regimes): ElementFlow {
  const ohm = element.kind !== 'load' && element.model !== 'current' ? element.ohm : 0;
  const heatW = currentA * currentA * ohm;
  if (!isBounded(element)) return { id: element.id, currentA, dropV, heatW };
  return { id: element.id, currentA, dropV, heatW, regime: regimes.get(element.id) ?? 'set-point' };
}

/** Works a forest of branches from its tips to its roots, each branch carrying what its tip lacks. */
function peel(
  network: IndexedNetwork,
  forest: readonly number[],
  leaving: Float64Array,
  carry: (element: number, currentA: number) => void,
): void {
  const near = new Map<number, number[]>();
  for (const branch of forest)
    for (const node of [network.from[branch] ?? 0, network.to[branch] ?? 0])
      near.set(node, [...(near.get(node) ?? []), branch]);
  const seen = new Set<number>();
  for (const root of [network.reference, ...near.keys()]) {
    if (seen.has(root)) continue;
    seen.add(root);
    const outward: { branch: number; tip: number }[] = [];
    const open = [root];
    for (const node of open)
      for (const branch of near.get(node) ?? []) {
        const tip = (network.from[branch] === node ? network.to[branch] : network.from[branch]) ?? 0;
        if (seen.has(tip)) continue;
        seen.add(tip);
        outward.push({ branch, tip });
        open.push(tip);
      }
    for (const { branch, tip } of outward.reverse()) {
      const lacking = leaving[tip] ?? 0;
      // The tip's sum must become zero: what leaves it otherwise arrives over the branch.
      carry(branch, network.to[branch] === tip ? lacking : -lacking);
    }
  }
}
