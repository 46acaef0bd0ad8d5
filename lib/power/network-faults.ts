import { type IndexedNetwork, ownRoots } from './indexed-network.ts';
import type { Network, NetworkElement, NetworkFault } from './network-types.ts';

/** Under this a resistance counts as none: at 1,000 A it drops 10 microvolt. */
export const noOhm = 1e-8;

type Fault = Omit<NetworkFault, 'nodes' | 'elements'> & Partial<NetworkFault>;
const fault = (given: Fault): NetworkFault => ({ elements: [], nodes: [], ...given });

const largest = 1e12;

/** Reports each number of an element that is none, is endless, or is below what it may be. */
function numberFaults(element: NetworkElement, report: (found: NetworkFault) => void): void {
  const check = (name: string, value: number | undefined, least: number): void => {
    if (value === undefined || (value >= least && value <= largest)) return;
    const elements = [element.id];
    if (!Number.isFinite(value) || Math.abs(value) > largest)
      report(
        fault({ kind: 'not-a-number', elements, message: `the ${name} of ${element.id} is not a number` }),
      );
    else
      report(
        fault({
          kind: 'negative-value',
          elements,
          message: `the ${name} of ${element.id} is ${value}, which must be ${least > 0 ? 'above zero' : 'zero or more'}`,
        }),
      );
  };
  if (element.kind === 'load') check('cut-out', element.cutoutV, 0);
  switch (element.model) {
    case 'emf':
      check('electromotive force', element.emfV, 0);
      check('resistance', element.ohm, 0);
      check('current limit', element.limitA, 0);
      check('charge acceptance', element.acceptA, 0);
      return;
    case 'resistance':
      check('resistance', element.ohm, element.kind === 'load' ? noOhm : 0);
      return;
    case 'power':
      check('power', element.powerW, 0);
      return;
    case 'square-law':
      check('power', element.powerW, 0);
      check('rated voltage', element.ratedV, noOhm);
      return;
    case 'current':
      check('current', element.givenA, 0);
  }
}

function nameFaults({ referenceNode, elements, nodes }: Network, indexed: IndexedNetwork): NetworkFault[] {
  const faults: NetworkFault[] = [];
  const seen = new Set<string>();
  const known = nodes && new Set(nodes);
  for (const element of elements) {
    if (seen.has(element.id))
      faults.push(
        fault({
          kind: 'duplicate-id',
          elements: [element.id],
          message: `two elements are called ${element.id}`,
        }),
      );
    seen.add(element.id);
    for (const node of [element.from, element.to]) {
      if (known && !known.has(node))
        faults.push(
          fault({
            kind: 'unknown-node',
            elements: [element.id],
            nodes: [node],
            message: `${element.id} ends at ${node}, which does not exist`,
          }),
        );
    }
    if (element.from === element.to)
      faults.push(
        fault({
          kind: 'joined-to-itself',
          elements: [element.id],
          nodes: [element.from],
          message: `both ends of ${element.id} are at ${element.from}`,
        }),
      );
  }
  if (indexed.reference < 0)
    faults.push(
      fault({
        kind: 'unknown-node',
        nodes: [referenceNode],
        message: `nothing is connected to ${referenceNode}, the node that counts as 0 V`,
      }),
    );
  return faults;
}

/**
 * Nodes with no way to the reference through sources, conductors, fuses and joints. A way through a load
 * does not count: a device without a ground, or without a feed, is wired wrong even where the numbers allow it.
 */
function floatingFaults({ elements, referenceNode }: Network, indexed: IndexedNetwork): NetworkFault[] {
  const group = ownRoots(indexed.nodes.length);
  const rootOf = (node: number): number => {
    let root = node;
    for (let up = group[root] ?? root; up !== root; up = group[root] ?? root) {
      group[root] = group[up] ?? up;
      root = up;
    }
    return root;
  };
  elements.forEach((element, k) => {
    if (element.kind !== 'load' && element.model !== 'current')
      group[rootOf(indexed.from[k] ?? 0)] = rootOf(indexed.to[k] ?? 0);
  });
  const islands = new Map<number, string[]>();
  const mainland = rootOf(indexed.reference);
  indexed.nodes.forEach((id, node) => {
    const root = rootOf(node);
    if (root !== mainland) islands.set(root, [...(islands.get(root) ?? []), id]);
  });
  return [...islands.values()].map((nodes) => floating(nodes, elements, referenceNode));
}

function floating(nodes: string[], elements: readonly NetworkElement[], referenceNode: string): NetworkFault {
  const island = new Set(nodes);
  const touching = elements.filter(({ from, to }) => island.has(from) || island.has(to)).map(({ id }) => id);
  return fault({
    kind: 'floating',
    nodes,
    elements: touching,
    message: `${nodes.join(', ')} has no way to ${referenceNode} but through a load: ${touching.join(', ')}`,
  });
}

/** All that makes a network impossible to compute, short of its loops (see `joinStiff`). Empty where it is sound. */
export function networkFaults(network: Network, indexed: IndexedNetwork): readonly NetworkFault[] {
  const faults = nameFaults(network, indexed);
  for (const element of network.elements) numberFaults(element, (found) => faults.push(found));
  return faults.length > 0 ? faults : floatingFaults(network, indexed);
}
