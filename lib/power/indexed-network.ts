import type { Network, NetworkElement } from './network-types.ts';

/** A network with its nodes numbered, so that what follows works on arrays. */
export interface IndexedNetwork {
  readonly elements: readonly NetworkElement[];
  readonly nodes: readonly string[];
  /** Node numbers of each element's ends. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** The number of the reference node; -1 where nothing is connected to it. */
  readonly reference: number;
}

/** Numbers the nodes in the order in which the elements name them. */
export function indexNetwork({ elements, referenceNode }: Network): IndexedNetwork {
  const numbers = new Map<string, number>();
  const nodes: string[] = [];
  const numberOf = (node: string): number => {
    const known = numbers.get(node);
    if (known !== undefined) return known;
    numbers.set(node, nodes.length);
    nodes.push(node);
    return nodes.length - 1;
  };
  const from = new Int32Array(elements.length);
  const to = new Int32Array(elements.length);
  elements.forEach((element, k) => {
    from[k] = numberOf(element.from);
    to[k] = numberOf(element.to);
  });
  return { elements, nodes, from, to, reference: numbers.get(referenceNode) ?? -1 };
}

/** A forest in which each node is a root of its own, to be joined. */
export function ownRoots(count: number): Int32Array {
  const roots = new Int32Array(count);
  for (let node = 0; node < count; node += 1) roots[node] = node;
  return roots;
}
