import type { ElementFlow, Network, NetworkElement, NodeVoltage } from './network-types.ts';
import { branchA, branchV } from './newton.ts';
import type { CompiledNetwork } from './nodal-system.ts';
import { isBounded, type Regimes, type StiffGroups } from './stiff-branches.ts';

/** Everything that flows at one solution. */
export interface NetworkFlows {
  readonly nodes: readonly NodeVoltage[];
  readonly elements: readonly ElementFlow[];
  readonly residualA: number;
}

/** Current that leaves each node so far. */
type Balance = Map<string, number>;
const leave = (balance: Balance, node: string, currentA: number): void => {
  balance.set(node, (balance.get(node) ?? 0) + currentA);
};

/**
 * Voltages, currents, drops and heat at the unknowns x. A stiff branch has no resistance to tell its current
 * from its drop: it carries what Kirchhoff's current law leaves to it.
 */
export function networkFlows(
  network: Network,
  compiled: CompiledNetwork,
  groups: StiffGroups,
  regimes: Regimes,
  x: Float64Array,
): NetworkFlows {
  const currents = new Map<string, number>();
  const balance: Balance = new Map();
  const carry = (element: NetworkElement, currentA: number) => {
    currents.set(element.id, currentA);
    leave(balance, element.from, currentA);
    leave(balance, element.to, -currentA);
  };
  compiled.branches.forEach((element, k) => {
    carry(element, branchA(compiled.system, k, branchV(compiled.system, x, k), 1));
  });
  peel(groups.branches, network.referenceNode, balance, carry);
  const ids = [...new Set(network.elements.flatMap(({ from, to }) => [from, to]))];
  const voltages = new Map(ids.map((id) => [id, compiled.voltageV(id, x)]));
  return {
    nodes: ids.map((id) => ({ id, voltageV: voltages.get(id) ?? 0 })),
    elements: network.elements.map((element) =>
      flowOf(
        element,
        currents.get(element.id) ?? 0,
        (voltages.get(element.from) ?? 0) - (voltages.get(element.to) ?? 0),
        regimes,
      ),
    ),
    residualA: Math.max(0, ...ids.map((id) => Math.abs(balance.get(id) ?? 0))),
  };
}

function flowOf(element: NetworkElement, currentA: number, dropV: number, regimes: Regimes): ElementFlow {
  const ohm = element.kind !== 'load' && element.model !== 'current' ? element.ohm : 0;
  const flow = { id: element.id, currentA, dropV, heatW: currentA * currentA * ohm };
  return isBounded(element) ? { ...flow, regime: regimes.get(element.id) ?? 'set-point' } : flow;
}

/** Works a forest of branches from its tips to its roots, each branch carrying what its tip lacks. */
function peel(
  forest: readonly NetworkElement[],
  referenceNode: string,
  balance: Balance,
  carry: (element: NetworkElement, currentA: number) => void,
): void {
  const near = new Map<string, NetworkElement[]>();
  for (const branch of forest)
    for (const node of [branch.from, branch.to]) near.set(node, [...(near.get(node) ?? []), branch]);
  const seen = new Set<string>();
  for (const root of [referenceNode, ...near.keys()]) {
    if (seen.has(root)) continue;
    seen.add(root);
    const outward: { branch: NetworkElement; tip: string }[] = [];
    const open = [root];
    for (const node of open)
      for (const branch of near.get(node) ?? []) {
        const tip = branch.from === node ? branch.to : branch.from;
        if (seen.has(tip)) continue;
        seen.add(tip);
        outward.push({ branch, tip });
        open.push(tip);
      }
    for (const { branch, tip } of outward.reverse()) {
      const lacking = balance.get(tip) ?? 0;
      carry(branch, tip === branch.to ? lacking : -lacking);
    }
  }
}
