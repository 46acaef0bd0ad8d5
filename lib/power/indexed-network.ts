import type { Network, NetworkElement } from './network-types.ts';
import { WholeRoom } from './room.ts';

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

const [fromRoom, toRoom] = [new WholeRoom(), new WholeRoom()];

/** Numbers the nodes in the order in which the elements name them. */
export function indexNetwork({ elements, referenceNode }: Network): IndexedNetwork {
  const numbers = new Map<string, number>();
  const from = fromRoom.of(elements.length);
  const to = toRoom.of(elements.length);
  let k = 0;
  for (const element of elements) {
    from[k] = numberOf(element.from, numbers);
    to[k] = numberOf(element.to, numbers);
    k += 1;
  }
  return { elements, nodes: [...numbers.keys()], from, to, reference: numbers.get(referenceNode) ?? -1 };
}

function numberOf(node: string, numbers: Map<string, number>): number {
  const known = numbers.get(node);
  if (known !== undefined) return known;
  const number = numbers.size;
  numbers.set(node, number);
  return number;
}

/** Makes each of `count` nodes the root of a tree of its own, to be joined. */
export function plantRoots(roots: Int32Array, count: number): Int32Array {
  for (let node = 0; node < count; node += 1) roots[node] = node;
  return roots;
}

/** The root of a node's tree; the way to it is shortened in passing. */
export function rootOf(roots: Int32Array, node: number): number {
  let root = node;
  for (let up = roots[root] ?? root; up !== root; up = roots[root] ?? root) {
    roots[root] = roots[up] ?? up;
    root = up;
  }
  return root;
}
