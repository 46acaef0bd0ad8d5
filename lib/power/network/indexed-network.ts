import { NameTable } from './name-table.ts';
import type { Network, NetworkElement, VoltageSource } from './network-types.ts';
import { RealRoom, WholeRoom } from './scratch-arrays.ts';

/**
 * What an element is to the solver: a resistance of the wiring, a source that holds a voltage, a branch whose current
 * follows its voltage in a straight line (other sources and loads), or a load of which a share can be on.
 */
export const elementLaws = { resistance: 0, emf: 1, linear: 2, load: 3 } as const;

/** A network with its nodes numbered, so that what follows works on arrays. Arrays may be longer than what they hold. */
export interface IndexedNetwork {
  readonly elements: readonly NetworkElement[];
  readonly nodes: readonly string[];
  /** Node numbers of each element's ends. */
  readonly from: number[];
  readonly to: number[];
  /** By element, one of `elementLaws`. */
  readonly law: number[];
  /** Of `resistance` and `emf`; 0 of others. */
  readonly ohm: number[];
  /** Of `emf`; what it says of others means nothing. */
  readonly emfV: number[];
  /** Of `linear`, what it takes for each volt beside its `givenA`; 0 of others. */
  readonly siemens: number[];
  /** Of `linear` and `load`; 0 of others. */
  readonly givenA: number[];
  /** Of `load`; 0 of others. */
  readonly powerW: number[];
  /** Sources that may leave their set-point. */
  readonly bounded: readonly VoltageSource[];
  /** True where some load is the side of a converter that draws. */
  readonly hasConverter: boolean;
  /** The number of the reference node; -1 where nothing is connected to it. */
  readonly reference: number;
  /** How many different ids the elements have. */
  readonly distinctIds: number;
}

const [fromRoom, toRoom, lawRoom] = [new WholeRoom(), new WholeRoom(), new WholeRoom()];
const [ohmRoom, emfRoom, siemensRoom, givenRoom, powerRoom] = [
  new RealRoom(),
  new RealRoom(),
  new RealRoom(),
  new RealRoom(),
  new RealRoom(),
];

const [nodeTable, idTable] = [new NameTable(), new NameTable()];

/** What the elements say, column by column. */
type Columns = Pick<IndexedNetwork, 'from' | 'to' | 'law' | 'ohm' | 'emfV' | 'siemens' | 'givenA' | 'powerW'>;

/** Numbers the nodes in the order in which the elements name them, and writes what the elements say into columns. */
export function indexNetwork({ elements, referenceNode }: Network): IndexedNetwork {
  const columns = columnsFor(elements.length);
  const nodes: string[] = [];
  const bounded: VoltageSource[] = [];
  let hasConverter = false;
  nodeTable.begin();
  idTable.begin();
  for (let k = 0; k < elements.length; k += 1) {
    const element = elements[k];
    if (element === undefined) continue;
    columns.from[k] = numberOf(element.from, nodes);
    columns.to[k] = numberOf(element.to, nodes);
    idTable.numberOf(element.id);
    writeElement(columns, k, element);
    if (element.model === 'converter') hasConverter = true;
    else if ((element.model === 'emf' || element.model === 'two-slope') && isBounded(element))
      bounded.push(element);
  }
  return {
    elements,
    nodes,
    ...columns,
    bounded,
    hasConverter,
    reference: nodeTable.find(referenceNode),
    distinctIds: idTable.count,
  };
}

function columnsFor(count: number): Columns {
  return {
    from: fromRoom.of(count),
    to: toRoom.of(count),
    law: lawRoom.of(count),
    ohm: ohmRoom.of(count),
    emfV: emfRoom.of(count),
    siemens: siemensRoom.of(count),
    givenA: givenRoom.of(count),
    powerW: powerRoom.of(count),
  };
}

/** Writes the law of an element and its figures; whatever it has none of is 0. */
function writeElement(
  { law, ohm, emfV, siemens, givenA, powerW }: Columns,
  k: number,
  element: NetworkElement,
): void {
  ohm[k] = siemens[k] = givenA[k] = powerW[k] = 0;
  law[k] = elementLaws.linear;
  switch (element.model) {
    case 'resistance':
      if (element.kind === 'load') siemens[k] = 1 / element.ohm;
      else {
        law[k] = elementLaws.resistance;
        ohm[k] = element.ohm;
      }
      break;
    case 'emf':
    case 'two-slope':
      law[k] = elementLaws.emf;
      ohm[k] = element.ohm;
      emfV[k] = element.emfV;
      break;
    case 'square-law':
      siemens[k] = element.powerW / (element.ratedV * element.ratedV);
      break;
    case 'power':
      law[k] = elementLaws.load;
      powerW[k] = element.powerW;
      break;
    case 'converter':
      // What it draws follows from its other side: see `solveConverters`.
      law[k] = elementLaws.load;
      break;
    case 'current':
      if (element.kind === 'load') law[k] = elementLaws.load;
      givenA[k] = element.kind === 'load' ? element.givenA : -element.givenA;
  }
}

/** True for an element with an `ohm` of its own: conductors, fuses, joints and sources that hold a voltage. */
export function hasOhm({ law }: Pick<IndexedNetwork, 'law'>, element: number): boolean {
  return law[element] === elementLaws.resistance || law[element] === elementLaws.emf;
}

/** True for a source that may leave its set-point: past its limit, or when it takes current back. */
export function isBounded(source: VoltageSource): boolean {
  return source.model === 'two-slope' || source.limitA !== undefined;
}

function numberOf(node: string, nodes: string[]): number {
  const number = nodeTable.numberOf(node);
  if (number === nodes.length) nodes.push(node);
  return number;
}

/** Makes each of `count` nodes the root of a tree of its own, to be joined. */
export function plantRoots(roots: number[], count: number): number[] {
  for (let node = 0; node < count; node += 1) roots[node] = node;
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
