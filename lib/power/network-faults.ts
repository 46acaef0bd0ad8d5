import type { Network, NetworkElement, NetworkFault } from './network-types.ts';

/** Under this a resistance counts as none: at 1,000 A it drops 10 microvolt. */
export const noOhm = 1e-8;

type Fault = Omit<NetworkFault, 'nodes' | 'elements'> & Partial<NetworkFault>;
const fault = (given: Fault): NetworkFault => ({ elements: [], nodes: [], ...given });

/** The numbers of an element with their names, and whether zero is allowed. */
function numbersOf(element: NetworkElement): [name: string, value: number, zero: boolean][] {
  const cutout: [string, number, boolean][] =
    element.kind === 'load' && element.cutoutV !== undefined ? [['cut-out', element.cutoutV, true]] : [];
  switch (element.model) {
    case 'emf':
      return [
        ['electromotive force', element.emfV, true],
        ['resistance', element.ohm, true],
        ['current limit', element.limitA ?? 0, true],
        ['charge acceptance', element.acceptA ?? 0, true],
      ];
    case 'resistance':
      return [['resistance', element.ohm, element.kind !== 'load'], ...cutout];
    case 'power':
      return [['power', element.powerW, true], ...cutout];
    case 'square-law':
      return [['power', element.powerW, true], ['rated voltage', element.ratedV, false], ...cutout];
    case 'current':
      return [['current', element.givenA, true], ...cutout];
  }
}

function numberFaults(element: NetworkElement): NetworkFault[] {
  const elements = [element.id];
  return numbersOf(element).flatMap(([name, value, zero]) => {
    if (!Number.isFinite(value) || Math.abs(value) > 1e12)
      return fault({
        kind: 'not-a-number',
        elements,
        message: `the ${name} of ${element.id} is not a number`,
      });
    if (value < 0 || (value === 0 && !zero))
      return fault({
        kind: 'negative-value',
        elements,
        message: `the ${name} of ${element.id} is ${value}, which must be ${zero ? 'zero or more' : 'above zero'}`,
      });
    return [];
  });
}

function nameFaults({ referenceNode, elements, nodes }: Network): NetworkFault[] {
  const faults: NetworkFault[] = [];
  const seen = new Set<string>();
  const known = nodes && new Set(nodes);
  const used = new Set<string>();
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
      used.add(node);
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
  if (!used.has(referenceNode))
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
function floatingFaults({ referenceNode, elements }: Network): NetworkFault[] {
  const near = new Map<string, string[]>();
  const link = (a: string, b: string) => near.set(a, [...(near.get(a) ?? []), b]);
  for (const element of elements) {
    if (element.kind === 'load' || element.model === 'current') continue;
    link(element.from, element.to);
    link(element.to, element.from);
  }
  const reached = new Set<string>();
  const reach = (start: string): string[] => {
    const found = [start];
    reached.add(start);
    for (let at = 0; at < found.length; at += 1)
      for (const next of near.get(found[at] ?? '') ?? []) {
        if (reached.has(next)) continue;
        reached.add(next);
        found.push(next);
      }
    return found;
  };
  reach(referenceNode);
  return elements.flatMap((element) =>
    [element.from, element.to]
      .filter((node) => !reached.has(node))
      .map((node) => floating(reach(node), elements, referenceNode)),
  );
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
export function networkFaults(network: Network): readonly NetworkFault[] {
  const faults = [...nameFaults(network), ...network.elements.flatMap(numberFaults)];
  return faults.length > 0 ? faults : floatingFaults(network);
}
