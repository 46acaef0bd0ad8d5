import type { IndexedNetwork } from './indexed-network.ts';
import type { EmfSource, NetworkElement, SourceRegime } from './network-types.ts';
import type { NodalSystem } from './newton.ts';
import { symbolicLdl } from './sparse-ldl.ts';
import { isStiff, type Regimes, type StiffGroups } from './stiff-branches.ts';

/** The system with what is needed to read its answer back. */
export interface CompiledNetwork {
  readonly system: NodalSystem;
  /** Numbers of the elements that are branches of the system, in its order. */
  readonly branches: readonly number[];
  /** The unknown of each node, -1 for those tied to the reference. */
  readonly unknown: Int32Array;
  /** V(node) less its unknown, or less nothing where it is tied to the reference. */
  readonly plusV: Float64Array;
}

/** Voltage of a node at the unknowns x. */
export function nodeV(compiled: CompiledNetwork, node: number, x: Float64Array): number {
  const at = compiled.unknown[node] ?? -1;
  return (compiled.plusV[node] ?? 0) + (at < 0 ? 0 : (x[at] ?? 0));
}

/** Reduces a network to the voltages of its stiff groups against the group of the reference node. */
export function compileNetwork(
  network: IndexedNetwork,
  regimes: Regimes,
  groups: StiffGroups,
): CompiledNetwork {
  const { size, unknown, plusV } = placeNodes(network, groups);
  const branches: number[] = [];
  network.elements.forEach((element, k) => {
    if (!isStiff(element, regimes)) branches.push(k);
  });
  const count = branches.length;
  const ends = { from: new Int32Array(count), to: new Int32Array(count), offsetV: new Float64Array(count) };
  const columns = {
    siemens: new Float64Array(count),
    fixedA: new Float64Array(count),
    givenA: new Float64Array(count),
    powerW: new Float64Array(count),
  };
  const pairs: [number, number][] = [];
  branches.forEach((at, k) => {
    const from = network.from[at] ?? 0;
    const to = network.to[at] ?? 0;
    const i = unknown[from] ?? -1;
    const j = unknown[to] ?? -1;
    ends.from[k] = i;
    ends.to[k] = j;
    ends.offsetV[k] = (plusV[from] ?? 0) - (plusV[to] ?? 0);
    if (i >= 0 && j >= 0 && i !== j) pairs.push([i, j]);
    const element = network.elements[at];
    if (element) stamp(element, k, ends.offsetV, columns, regimes.get(element.id));
  });
  const symbolic = symbolicLdl(size, pairs);
  const slots = branchSlots(ends.from, ends.to, symbolic.pairSlots);
  return { branches, unknown, plusV, system: { size, symbolic, ...ends, ...columns, slots } };
}

/** Slots of each branch in the matrix; its pairs were announced in the same order. */
function branchSlots(from: Int32Array, to: Int32Array, pairSlots: readonly number[]): NodalSystem['slots'] {
  const none = () => new Int32Array(from.length).fill(-1);
  const slots = [none(), none(), none()] as const;
  let pair = 0;
  for (let k = 0; k < from.length; k += 1) {
    const i = from[k] ?? -1;
    const j = to[k] ?? -1;
    // A branch inside one group adds nothing: what leaves the group enters it again.
    if (i === j) continue;
    slots[0][k] = i;
    slots[1][k] = j;
    if (i < 0 || j < 0) continue;
    slots[2][k] = pairSlots[pair] ?? -1;
    pair += 1;
  }
  return slots;
}

function placeNodes(
  { nodes, reference }: IndexedNetwork,
  { root, offsetV }: StiffGroups,
): { size: number; unknown: Int32Array; plusV: Float64Array } {
  const ground = root[reference] ?? -1;
  const groundV = offsetV[reference] ?? 0;
  const unknown = new Int32Array(nodes.length).fill(-1);
  const plusV = offsetV.slice();
  let size = 0;
  for (let node = 0; node < nodes.length; node += 1)
    if (root[node] === node && node !== ground) {
      unknown[node] = size;
      size += 1;
    }
  for (let node = 0; node < nodes.length; node += 1) {
    const own = root[node] ?? node;
    unknown[node] = unknown[own] ?? -1;
    if (own === ground) plusV[node] = (plusV[node] ?? 0) - groundV;
  }
  return { size, unknown, plusV };
}

type Columns = Record<'siemens' | 'fixedA' | 'givenA' | 'powerW', Float64Array>;

/** Writes what the element adds to the nodal equations into row k; see NodalSystem. */
function stamp(
  element: NetworkElement,
  k: number,
  offsetV: Float64Array,
  columns: Columns,
  regime: SourceRegime | undefined,
): void {
  switch (element.model) {
    case 'emf':
      stampSource(element, k, offsetV, columns, regime);
      return;
    case 'resistance':
      columns.siemens[k] = 1 / element.ohm;
      return;
    case 'power':
      columns.powerW[k] = element.powerW;
      return;
    case 'square-law':
      columns.siemens[k] = element.powerW / (element.ratedV * element.ratedV);
      return;
    case 'current':
      if (element.kind === 'source') columns.fixedA[k] = -element.givenA;
      else columns.givenA[k] = element.givenA;
  }
}

function stampSource(
  source: EmfSource,
  k: number,
  offsetV: Float64Array,
  columns: Columns,
  regime: SourceRegime | undefined,
): void {
  if (regime === 'limited') columns.fixedA[k] = -(source.limitA ?? 0);
  else if (regime === 'accepting') columns.fixedA[k] = source.acceptA ?? 0;
  else {
    columns.siemens[k] = 1 / source.ohm;
    offsetV[k] = (offsetV[k] ?? 0) - source.emfV;
  }
}
