import { linearA, loadA } from './element-currents.ts';
import { elementLaws, type IndexedNetwork } from './indexed-network.ts';
import type { ElementFlow, NodeVoltage } from './network-types.ts';
import type { NodalSystem } from './newton.ts';
import { type CompiledNetwork, nodeV } from './nodal-system.ts';
import { RealRoom } from './scratch-arrays.ts';
import type { Regimes } from './source-regimes.ts';
import type { StiffGroups } from './stiff-branches.ts';

/** Everything that flows at one solution. */
export interface NetworkFlows {
  readonly nodes: readonly NodeVoltage[];
  readonly elements: readonly ElementFlow[];
  readonly residualA: number;
}

const [currentRoom, leavingRoom, voltageRoom] = [new RealRoom(), new RealRoom(), new RealRoom()];

/** The current of each element at the unknowns x (A); 0 for a stiff branch, which has no resistance to tell it from its drop. */
function currentsOf(count: number, { linear, loads }: NodalSystem, x: number[], share: number): number[] {
  const currentsA = currentRoom.zeros(count);
  for (let k = 0; k < linear.count; k += 1) currentsA[linear.element[k] ?? 0] = linearA(linear, k, x);
  for (let k = 0; k < loads.count; k += 1) currentsA[loads.element[k] ?? 0] = share * loadA(loads, k, x);
  return currentsA;
}

/** What leaves each node through its elements (A): nothing, but for the stiff branches. */
function leavingOf({ elements, nodes, from, to }: IndexedNetwork, currentsA: number[]): number[] {
  const leavingA = leavingRoom.zeros(nodes.length);
  for (let k = 0; k < elements.length; k += 1) {
    const currentA = currentsA[k] ?? 0;
    const start = from[k] ?? 0;
    const end = to[k] ?? 0;
    leavingA[start] = (leavingA[start] ?? 0) + currentA;
    leavingA[end] = (leavingA[end] ?? 0) - currentA;
  }
  return leavingA;
}

/**
 * Voltages, currents, drops and heat at the unknowns x, with a share of the loads that can be shared. A stiff branch carries what Kirchhoff's current law leaves to
 * it.
 */
export function networkFlows(
  network: IndexedNetwork,
  compiled: CompiledNetwork,
  groups: StiffGroups,
  regimes: Regimes,
  x: number[],
  share: number,
): NetworkFlows {
  const { nodes, from, to, law, ohm } = network;
  const currentsA = currentsOf(network.elements.length, compiled.system, x, share);
  const leavingA = leavingOf(network, currentsA);
  if (groups.branches.length > 0) peel({ network, currentsA, leavingA }, groups.branches);
  const voltagesV = voltageRoom.of(nodes.length);
  let residualA = 0;
  for (let node = 0; node < nodes.length; node += 1) {
    voltagesV[node] = nodeV(compiled, node, x);
    residualA = Math.max(residualA, Math.abs(leavingA[node] ?? 0));
  }
  return {
    nodes: nodes.map((id, node) => ({ id, voltageV: voltagesV[node] ?? 0 })),
    elements: network.elements.map((element, k): ElementFlow => {
      const { id } = element;
      const currentA = currentsA[k] ?? 0;
      const dropV = (voltagesV[from[k] ?? 0] ?? 0) - (voltagesV[to[k] ?? 0] ?? 0);
      const heatW =
        element.model === 'two-slope'
          ? currentA * (dropV - element.emfV)
          : currentA * currentA * (ohm[k] ?? 0);
      const regime = law[k] === elementLaws.emf ? regimes.get(id) : undefined;
      return regime === undefined ? { id, currentA, dropV, heatW } : { id, currentA, dropV, heatW, regime };
    }),
    residualA,
  };
}

/** What flows so far: the current of each element, and what leaves each node. */
interface Carried {
  readonly network: IndexedNetwork;
  readonly currentsA: number[];
  readonly leavingA: number[];
}

function carry({ network, currentsA, leavingA }: Carried, element: number, currentA: number): void {
  const from = network.from[element] ?? 0;
  const to = network.to[element] ?? 0;
  currentsA[element] = currentA;
  leavingA[from] = (leavingA[from] ?? 0) + currentA;
  leavingA[to] = (leavingA[to] ?? 0) - currentA;
}

/** Works a forest of branches from its tips to its roots, each branch carrying what its tip lacks. */
function peel(carried: Carried, forest: readonly number[]): void {
  const { network, leavingA } = carried;
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
      const lacking = leavingA[tip] ?? 0;
      // The tip's sum must become zero: what leaves it otherwise arrives over the branch.
      carry(carried, branch, network.to[branch] === tip ? lacking : -lacking);
    }
  }
}
