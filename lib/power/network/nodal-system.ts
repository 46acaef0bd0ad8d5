import { GrowingLinear, GrowingLoads, type LinearBranches } from './element-currents.ts';
import { LdlPattern, symbolicLdl } from './elimination-order.ts';
import { elementLaws, type IndexedNetwork } from './indexed-network.ts';
import type { NodalSystem } from './newton.ts';
import { RealRoom, WholeRoom } from './scratch-arrays.ts';
import { type Regimes, sourceLaw } from './source-regimes.ts';
import type { SymbolicLdl } from './sparse-ldl.ts';
import type { StiffGroups } from './stiff-branches.ts';

/** The system with what is needed to read its answer back. */
export interface CompiledNetwork {
  readonly system: NodalSystem;
  /** The row of each node; the last one, whose voltage is 0, for those tied to the reference. */
  readonly row: number[];
  /** V(node) less the voltage of its row. */
  readonly plusV: number[];
}

/** Voltage of a node at the unknowns x. */
export function nodeV({ row, plusV }: CompiledNetwork, node: number, x: number[]): number {
  return (plusV[node] ?? 0) + (x[row[node] ?? 0] ?? 0);
}

const rowRoom = new WholeRoom();
const plusRoom = new RealRoom();
const [sourceRoom, conductanceRoom] = [new RealRoom(), new RealRoom()];
const [matrixRoom, rightRoom, tangentRoom] = [new RealRoom(), new RealRoom(), new RealRoom()];

/**
 * Reduces a network to the voltages of its stiff groups against the group of the reference node. A source that is held
 * to a current gives way by `yieldS` for each volt: none, but where that leaves a part of the network without a voltage.
 */
export function compileNetwork(
  network: IndexedNetwork,
  regimes: Regimes,
  groups: StiffGroups,
  yieldS = 0,
): CompiledNetwork {
  const { elements, nodes, law, reference } = network;
  const { size, row, plusV } = placeNodes(nodes.length, reference, groups);
  const pattern = new LdlPattern(size, 2 * elements.length);
  const linear = new GrowingLinear(elements.length);
  const loads = new GrowingLoads(elements.length);
  let startV = 0;
  for (let element = 0; element < elements.length; element += 1) {
    const plus = network.from[element] ?? 0;
    const minus = network.to[element] ?? 0;
    let from = row[plus] ?? size;
    let to = row[minus] ?? size;
    // A branch inside one group adds nothing: what leaves the group enters it again.
    if (from === to) from = to = size;
    let offsetV = (plusV[plus] ?? 0) - (plusV[minus] ?? 0);
    const own = law[element];
    if (own === elementLaws.emf) startV = Math.max(startV, network.emfV[element] ?? 0);
    if (groups.tied[element] === 1) continue;
    const slot = pattern.join(from, to);
    const givenA = network.givenA[element] ?? 0;
    if (own === elementLaws.load) {
      loads.add({ element, from, to, slot, offsetV }, givenA, network.powerW[element] ?? 0);
    } else if (own === elementLaws.resistance) {
      linear.add({ element, from, to, slot, offsetV }, 1 / (network.ohm[element] ?? 0), 0);
    } else if (own === elementLaws.linear) {
      linear.add({ element, from, to, slot, offsetV }, network.siemens[element] ?? 0, givenA);
    } else {
      const source = elements[element];
      const held = source && 'emfV' in source && sourceLaw(source, regimes.get(source.id));
      if (!held) continue;
      offsetV -= 'ohm' in held ? (network.emfV[element] ?? 0) : held.bendV;
      const [siemens, fixedA] = 'ohm' in held ? [1 / held.ohm, 0] : [yieldS, held.heldA];
      linear.add({ element, from, to, slot, offsetV }, siemens, fixedA);
    }
  }
  const symbolic = symbolicLdl(pattern);
  const { conductanceS, sourceA } = sumLinear(linear, symbolic);
  const matrix = matrixRoom.of(symbolic.slots);
  const right = rightRoom.of(size + 1);
  const tangentV = tangentRoom.of(loads.count);
  const system = { size, symbolic, linear, loads, startV, conductanceS, sourceA, matrix, right, tangentV };
  return { row, plusV, system };
}

function placeNodes(
  count: number,
  reference: number,
  { root, offsetV }: StiffGroups,
): { size: number; row: number[]; plusV: number[] } {
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

/** The Jacobian of the linear branches, by slot, and what they carry into each row where all unknowns are 0. */
function sumLinear(
  { count, from, to, slot, offsetV, siemens, fixedA }: LinearBranches,
  { size, slots }: SymbolicLdl,
): Pick<NodalSystem, 'conductanceS' | 'sourceA'> {
  const conductanceS = conductanceRoom.zeros(slots);
  const sourceA = sourceRoom.zeros(size + 1);
  for (let k = 0; k < count; k += 1) {
    const own = siemens[k] ?? 0;
    const i = from[k] ?? 0;
    const j = to[k] ?? 0;
    const beside = slot[k] ?? 0;
    conductanceS[i] = (conductanceS[i] ?? 0) + own;
    conductanceS[j] = (conductanceS[j] ?? 0) + own;
    conductanceS[beside] = (conductanceS[beside] ?? 0) - own;
    const currentA = own * (offsetV[k] ?? 0) + (fixedA[k] ?? 0);
    sourceA[i] = (sourceA[i] ?? 0) - currentA;
    sourceA[j] = (sourceA[j] ?? 0) + currentA;
  }
  return { conductanceS, sourceA };
}
