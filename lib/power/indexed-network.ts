import type { Network, NetworkElement } from './network-types.ts';

/** A network with its nodes numbered, so that what follows works on arrays. */
export interface IndexedNetwork {
  readonly elements: readonly NetworkElement[];
  readonly nodes: readonly string[];
  /** Node numbers of each element's ends. */
  readonly from: readonly number[];
  readonly to: readonly number[];
  /** The number of the reference node; -1 where nothing is connected to it. */
  readonly reference: number;
}

/** Numbers the nodes in the order in which the elements name them. */
export function indexNetwork({ elements, referenceNode }: Network): IndexedNetwork {
  const numbers = new Map<string, number>();
  const nodes: string[] = [];
  const from: number[] = [];
  const to: number[] = [];
  for (const element of elements) {
    from.push(numberOf(element.from, numbers, nodes));
    to.push(numberOf(element.to, numbers, nodes));
  }
  return { elements, nodes, from, to, reference: numbers.get(referenceNode) ?? -1 };
}

function numberOf(node: string, numbers: Map<string, number>, nodes: string[]): number {
  const known = numbers.get(node);
  if (known !== undefined) return known;
  numbers.set(node, nodes.length);
  return nodes.push(node) - 1;
}

/** A forest in which each node is a root of its own, to be joined. */
export function ownRoots(count: number): number[] {
  const roots: number[] = [];
  for (let node = 0; node < count; node += 1) roots.push(node);
  return roots;
}

/** The root of a node's tree; the way to it is shortened in passing. */
export function rootOf(roots: number[], node: number): number {
  let root = node;
  for (let up = roots[root] ?? root; up !== root; up = roots[root] ?? root) {
    roots[root] = roots[up] ?? up;
    root = up;
  }
  return root;
}
