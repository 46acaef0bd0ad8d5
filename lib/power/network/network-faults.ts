import { converterFaults } from './converters.ts';
import { elementLaws, hasOhm, type IndexedNetwork, plantRoots, rootOf } from './indexed-network.ts';
import { type NetworkFault, networkFault } from './network-fault.ts';
import type { Network, NetworkElement } from './network-types.ts';
import { WholeRoom } from './scratch-arrays.ts';

/** Under this a resistance counts as none: at 1,000 A it drops 10 microvolt. */
export const noOhm = 1e-8;

const largest = 1e12;
const leastEfficiency = 1e-6;

const mayBe = (value = Number.NaN, least: number): boolean => value >= least && value <= largest;

/** Reports a number of an element that is none, is endless, or is below what it may be. */
function check(
  faults: NetworkFault[],
  { id }: NetworkElement,
  name: string,
  value: number | undefined,
  least: number,
): void {
  if (value === undefined || mayBe(value, least)) return;
  const elements = [id];
  if (!Number.isFinite(value) || Math.abs(value) > largest)
    faults.push(networkFault('network-not-a-number', { elements }, `the ${name} of ${id} is not a number`));
  else
    faults.push(
      networkFault(
        'network-negative-value',
        { elements },
        `the ${name} of ${id} is ${value}, which must be ${least > 0 ? 'above zero' : 'zero or more'}`,
      ),
    );
}

function checkNumbers(faults: NetworkFault[], element: NetworkElement): void {
  if (element.kind === 'load') check(faults, element, 'cut-out', element.cutoutV, 0);
  switch (element.model) {
    case 'emf':
      check(faults, element, 'electromotive force', element.emfV, 0);
      check(faults, element, 'resistance', element.ohm, 0);
      check(faults, element, 'current limit', element.limitA, 0);
      return;
    case 'two-slope':
      check(faults, element, 'electromotive force', element.emfV, 0);
      check(faults, element, 'resistance', element.ohm, 0);
      check(faults, element, 'charging resistance', element.chargeOhm, noOhm);
      check(faults, element, 'charge acceptance', element.acceptA, 0);
      return;
    case 'converter':
      check(faults, element, 'efficiency', element.efficiency, leastEfficiency);
      return;
    case 'resistance':
      check(faults, element, 'resistance', element.ohm, element.kind === 'load' ? noOhm : 0);
      return;
    case 'power':
      check(faults, element, 'power', element.powerW, 0);
      return;
    case 'square-law':
      check(faults, element, 'power', element.powerW, 0);
      check(faults, element, 'rated voltage', element.ratedV, noOhm);
      return;
    case 'current':
      check(faults, element, 'current', element.givenA, 0);
  }
}

function checkNames(faults: NetworkFault[], { elements, nodes }: Network, distinctIds: number): void {
  if (distinctIds < elements.length) checkTwice(faults, elements);
  if (nodes) checkNodes(faults, elements, new Set(nodes));
}

function checkTwice(faults: NetworkFault[], elements: readonly NetworkElement[]): void {
  const ids = new Set<string>();
  for (const { id } of elements) {
    if (ids.has(id))
      faults.push(networkFault('network-duplicate-id', { elements: [id] }, `two elements are called ${id}`));
    ids.add(id);
  }
}

function checkNodes(
  faults: NetworkFault[],
  elements: readonly NetworkElement[],
  known: ReadonlySet<string>,
): void {
  for (const { id, from, to } of elements)
    for (const node of [from, to]) if (!known.has(node)) faults.push(unknownNode(id, node));
}

function joinedToItself({ id, from }: NetworkElement): NetworkFault {
  const message = `both ends of ${id} are at ${from}`;
  return networkFault('network-joined-to-itself', { elements: [id], nodes: [from] }, message);
}

function unknownNode(id: string, node: string): NetworkFault {
  const message = `${id} ends at ${node}, which does not exist`;
  return networkFault('network-unknown-node', { elements: [id], nodes: [node] }, message);
}

const groupRoom = new WholeRoom();

/**
 * Nodes with no way to the reference through sources, conductors, fuses and joints. A way through a load
 * does not count: a device without a ground, or without a feed, is wired wrong even where the numbers allow it.
 */
function floatingFaults({ elements, referenceNode }: Network, indexed: IndexedNetwork): NetworkFault[] {
  const { nodes, from, to, reference } = indexed;
  const group = plantRoots(groupRoom.of(nodes.length), nodes.length);
  for (let k = 0; k < elements.length; k += 1) {
    if (!hasOhm(indexed, k)) continue;
    group[rootOf(group, from[k] ?? 0)] = rootOf(group, to[k] ?? 0);
  }
  const mainland = rootOf(group, reference);
  const afloat: number[] = [];
  for (let node = 0; node < nodes.length; node += 1) if (rootOf(group, node) !== mainland) afloat.push(node);
  if (afloat.length === 0) return [];
  const islands = new Map<number, string[]>();
  for (const node of afloat) {
    const root = rootOf(group, node);
    islands.set(root, [...(islands.get(root) ?? []), nodes[node] ?? '']);
  }
  return [...islands.values()].map((island) => floating(island, elements, referenceNode));
}

function floating(nodes: string[], elements: readonly NetworkElement[], referenceNode: string): NetworkFault {
  const island = new Set(nodes);
  const touching = elements.filter(({ from, to }) => island.has(from) || island.has(to)).map(({ id }) => id);
  const message = `${nodes.join(', ')} has no way to ${referenceNode} but through a load: ${touching.join(', ')}`;
  return networkFault('network-floating', { nodes, elements: touching }, message);
}

/** All that makes a network impossible to compute, short of its loops (see `joinStiff`). Empty where it is sound. */
export function networkFaults(network: Network, indexed: IndexedNetwork): readonly NetworkFault[] {
  const { referenceNode } = network;
  const faults: NetworkFault[] = [];
  checkNames(faults, network, indexed.distinctIds);
  if (indexed.reference < 0)
    faults.push(
      networkFault(
        'network-unknown-node',
        { nodes: [referenceNode] },
        `nothing is connected to ${referenceNode}, the node that counts as 0 V`,
      ),
    );
  const { from, to, law, ohm } = indexed;
  let k = 0;
  for (const element of network.elements) {
    if (from[k] === to[k]) faults.push(joinedToItself(element));
    if (law[k] !== elementLaws.resistance || !mayBe(ohm[k], 0)) checkNumbers(faults, element);
    k += 1;
  }
  faults.push(...converterFaults(indexed));
  return faults.length > 0 ? faults : floatingFaults(network, indexed);
}
