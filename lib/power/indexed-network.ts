import type { EmfSource, Network, NetworkElement } from './network-types.ts';
import { RealRoom, WholeRoom } from './room.ts';

/** What an element is to the solver. Most are plain resistances, which need no more of their element than its name. */
export const elementLaws = { resistance: 0, emf: 1, other: 2 } as const;

/** A network with its nodes numbered, so that what follows works on arrays. Arrays may be longer than what they hold. */
export interface IndexedNetwork {
  readonly elements: readonly NetworkElement[];
  readonly nodes: readonly string[];
  /** Node numbers of each element's ends. */
  readonly from: Int32Array;
  readonly to: Int32Array;
  /** By element, one of `elementLaws`: `resistance` for conductors, fuses and joints, `emf` for sources that hold a voltage. */
  readonly law: Int32Array;
  /** Resistance of each of these (ohm); what it says of others means nothing. */
  readonly ohm: Float64Array;
  /** Sources that may leave their set-point. */
  readonly bounded: readonly EmfSource[];
  /** The number of the reference node; -1 where nothing is connected to it. */
  readonly reference: number;
}

const [fromRoom, toRoom, lawRoom, ohmRoom] = [
  new WholeRoom(),
  new WholeRoom(),
  new WholeRoom(),
  new RealRoom(),
];

/** Numbers the nodes in the order in which the elements name them. */
export function indexNetwork({ elements, referenceNode }: Network): IndexedNetwork {
  const numbers = new Map<string, number>();
  const from = fromRoom.of(elements.length);
  const to = toRoom.of(elements.length);
  const law = lawRoom.of(elements.length);
  const ohm = ohmRoom.of(elements.length);
  const bounded: EmfSource[] = [];
  let k = 0;
  for (const element of elements) {
    from[k] = numberOf(element.from, numbers);
    to[k] = numberOf(element.to, numbers);
    if (element.model === 'resistance' && element.kind !== 'load') {
      law[k] = elementLaws.resistance;
      ohm[k] = element.ohm;
    } else if (element.model === 'emf') {
      law[k] = elementLaws.emf;
      ohm[k] = element.ohm;
      if (isBounded(element)) bounded.push(element);
    } else law[k] = elementLaws.other;
    k += 1;
  }
  const nodes = [...numbers.keys()];
  return { elements, nodes, from, to, law, ohm, bounded, reference: numbers.get(referenceNode) ?? -1 };
}

/** True for a source that may leave its set-point: past its limit, or when it is to take back more than it accepts. */
export function isBounded({ limitA, acceptA }: EmfSource): boolean {
  return limitA !== undefined || acceptA !== undefined;
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
