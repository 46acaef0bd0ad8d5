import { LdlPattern, symbolicLdl } from './elimination-order.ts';
import { elementLaws, type IndexedNetwork } from './indexed-network.ts';
import type { Load, NetworkElement } from './network-types.ts';
import type { LinearBranches, LoadBranch, NodalSystem } from './newton.ts';
import { RealRoom, WholeRoom } from './room.ts';
import type { Regimes, StiffGroups } from './stiff-branches.ts';

/** The system with what is needed to read its answer back. */
export interface CompiledNetwork {
  readonly system: NodalSystem;
  /** The row of each node; the last one, whose voltage is 0, for those tied to the reference. */
  readonly row: Int32Array;
  /** V(node) less the voltage of its row. */
  readonly plusV: Float64Array;
}

/** Voltage of a node at the unknowns x. */
export function nodeV({ row, plusV }: CompiledNetwork, node: number, x: Float64Array): number {
  return (plusV[node] ?? 0) + (x[row[node] ?? 0] ?? 0);
}

const rowRoom = new WholeRoom();
const [plusRoom, conductanceRoom, matrixRoom, rightRoom] = [
  new RealRoom(),
  new RealRoom(),
  new RealRoom(),
  new RealRoom(),
];

/** Reduces a network to the voltages of its stiff groups against the group of the reference node. */
export function compileNetwork(
  network: IndexedNetwork,
  regimes: Regimes,
  groups: StiffGroups,
): CompiledNetwork {
  const { elements, nodes, law, ohm, reference } = network;
  const { size, row, plusV } = placeNodes(nodes.length, reference, groups);
  const pattern = new LdlPattern(size, 2 * elements.length);
  const linear = new LinearColumns(elements.length);
  const loads: LoadBranch[] = [];
  let startV = 0;
  for (let element = 0; element < elements.length; element += 1) {
    const plus = network.from[element] ?? 0;
    const minus = network.to[element] ?? 0;
    let from = row[plus] ?? size;
    let to = row[minus] ?? size;
    // A branch inside one group adds nothing: what leaves the group enters it again.
    if (from === to) from = to = size;
    const offsetV = (plusV[plus] ?? 0) - (plusV[minus] ?? 0);
    const spec = law[element] === elementLaws.resistance ? undefined : elements[element];
    if (spec?.model === 'emf' && spec.emfV > startV) startV = spec.emfV;
    if (spec !== undefined && isShared(spec)) {
      const givenA = spec.model === 'current' ? spec.givenA : 0;
      const powerW = spec.model === 'power' ? spec.powerW : 0;
      loads.push({ element, from, to, slot: pattern.join(from, to), offsetV, givenA, powerW });
    } else if (groups.tied[element] !== 1) {
      linear.offsetV[linear.count] = offsetV;
      linear.siemens[linear.count] = spec === undefined ? 1 / (ohm[element] ?? 0) : 0;
      linear.addEnds(element, from, to, pattern.join(from, to));
      if (spec !== undefined) linear.addLaw(spec, regimes);
    }
  }
  const symbolic = symbolicLdl(pattern);
  const conductanceS = linear.conductanceS(symbolic.slots);
  const matrix = matrixRoom.of(symbolic.slots);
  const right = rightRoom.of(size + 1);
  return { row, plusV, system: { size, symbolic, linear, loads, startV, conductanceS, matrix, right } };
}

/** Loads that count by their share: those that do not follow the voltage in a straight line from nothing. */
type SharedLoad = Extract<Load, { readonly model: 'power' | 'current' }>;
type LinearElement = Exclude<NetworkElement, SharedLoad>;

function isShared(element: NetworkElement): element is SharedLoad {
  return element.kind === 'load' && (element.model === 'power' || element.model === 'current');
}

function placeNodes(
  count: number,
  reference: number,
  { root, offsetV }: StiffGroups,
): { size: number; row: Int32Array; plusV: Float64Array } {
  const ground = root[reference] ?? -1;
  const groundV = offsetV[reference] ?? 0;
  const row = rowRoom.of(count);
  const plusV = plusRoom.of(count);
  let size = 0;
  for (let node = 0; node < count; node += 1) {
    row[node] = size;
    if (root[node] === node && node !== ground) size += 1;
  }
  for (let node = 0; node < count; node += 1) {
    const own = root[node] ?? node;
    plusV[node] = (offsetV[node] ?? 0) - (own === ground ? groundV : 0);
    if (own === ground) row[node] = size;
    else if (own !== node) row[node] = row[own] ?? size;
  }
  return { size, row, plusV };
}

const columns = {
  element: new WholeRoom(),
  from: new WholeRoom(),
  to: new WholeRoom(),
  slot: new WholeRoom(),
  offsetV: new RealRoom(),
  siemens: new RealRoom(),
  fixedA: new RealRoom(),
};

/** The linear branches as they are found. */
class LinearColumns implements LinearBranches {
  count = 0;
  readonly element: Int32Array;
  readonly from: Int32Array;
  readonly to: Int32Array;
  readonly offsetV: Float64Array;
  readonly siemens: Float64Array;
  readonly fixedA: Float64Array;
  readonly #slot: Int32Array;

  constructor(most: number) {
    this.element = columns.element.of(most);
    this.from = columns.from.of(most);
    this.to = columns.to.of(most);
    this.#slot = columns.slot.of(most);
    this.offsetV = columns.offsetV.of(most);
    this.siemens = columns.siemens.of(most);
    this.fixedA = columns.fixedA.of(most);
  }

  addEnds(element: number, from: number, to: number, slot: number): void {
    const k = this.count;
    this.count += 1;
    this.fixedA[k] = 0;
    this.element[k] = element;
    this.from[k] = from;
    this.to[k] = to;
    this.#slot[k] = slot;
  }

  /** The law of the branch whose ends were added last; its `offsetV` is that of the groups that it lies between. */
  addLaw(spec: LinearElement, regimes: Regimes): void {
    const k = this.count - 1;
    switch (spec.model) {
      case 'resistance':
        this.siemens[k] = 1 / spec.ohm;
        break;
      case 'square-law':
        this.siemens[k] = spec.powerW / (spec.ratedV * spec.ratedV);
        break;
      case 'current':
        this.fixedA[k] = -spec.givenA;
        break;
      case 'emf': {
        const regime = regimes.get(spec.id) ?? 'set-point';
        if (regime === 'limited') this.fixedA[k] = -(spec.limitA ?? 0);
        if (regime === 'accepting') this.fixedA[k] = spec.acceptA ?? 0;
        if (regime !== 'set-point') break;
        this.siemens[k] = 1 / spec.ohm;
        this.offsetV[k] = (this.offsetV[k] ?? 0) - spec.emfV;
      }
    }
  }

  /** The Jacobian of these branches, by slot. */
  conductanceS(slots: number): Float64Array {
    const { count, from, to, siemens } = this;
    const slotOf = this.#slot;
    const sum = conductanceRoom.zeros(slots);
    for (let k = 0; k < count; k += 1) {
      const own = siemens[k] ?? 0;
      const i = from[k] ?? 0;
      const j = to[k] ?? 0;
      const slot = slotOf[k] ?? 0;
      sum[i] = (sum[i] ?? 0) + own;
      sum[j] = (sum[j] ?? 0) + own;
      sum[slot] = (sum[slot] ?? 0) - own;
    }
    return sum;
  }
}
