import type { EmfSource, Network, NetworkElement } from './network-types.ts';
import type { NodalSystem } from './newton.ts';
import { symbolicLdl } from './sparse-ldl.ts';
import { isStiff, type Regimes, type StiffGroups } from './stiff-branches.ts';

/** What a branch adds to the nodal equations; see NodalSystem. */
interface Stamp {
  readonly siemens?: number;
  readonly fixedA?: number;
  readonly givenA?: number;
  readonly powerW?: number;
  /** Taken off the voltage between the nodes: the electromotive force. */
  readonly emfV?: number;
}

function sourceStamp(source: EmfSource, regimes: Regimes): Stamp {
  const regime = regimes.get(source.id);
  if (regime === 'limited') return { fixedA: -(source.limitA ?? 0) };
  if (regime === 'accepting') return { fixedA: source.acceptA ?? 0 };
  return { siemens: 1 / source.ohm, emfV: source.emfV };
}

function stampOf(element: NetworkElement, regimes: Regimes): Stamp {
  switch (element.model) {
    case 'emf':
      return sourceStamp(element, regimes);
    case 'resistance':
      return { siemens: 1 / element.ohm };
    case 'power':
      return { powerW: element.powerW };
    case 'square-law':
      return { siemens: element.powerW / (element.ratedV * element.ratedV) };
    case 'current':
      return element.kind === 'source' ? { fixedA: -element.givenA } : { givenA: element.givenA };
  }
}

/** The system with what is needed to read its answer back. */
export interface CompiledNetwork {
  readonly system: NodalSystem;
  /** The elements that are branches of the system, in its order. */
  readonly branches: readonly NetworkElement[];
  /** Voltage of a node at the unknowns x. */
  voltageV(node: string, x: Float64Array): number;
}

/** Reduces a network to the voltages of its stiff groups against the group of the reference node. */
export function compileNetwork(network: Network, regimes: Regimes, groups: StiffGroups): CompiledNetwork {
  const ground = groups.rootOf(network.referenceNode);
  const groundV = groups.offsetV(network.referenceNode);
  const unknowns = new Map<string, number>();
  const places = new Map<string, { at: number; plusV: number }>();
  const place = (node: string) => {
    const known = places.get(node);
    if (known) return known;
    const root = groups.rootOf(node);
    if (root !== ground && !unknowns.has(root)) unknowns.set(root, unknowns.size);
    const plusV = groups.offsetV(node) - (root === ground ? groundV : 0);
    const found = { at: unknowns.get(root) ?? -1, plusV };
    places.set(node, found);
    return found;
  };
  const branches = network.elements.filter((element) => !isStiff(element, regimes));
  const ends = branches.map(({ from, to }) => [place(from), place(to)] as const);
  for (const { from, to } of groups.branches) [place(from), place(to)];
  const stamps = branches.map((element) => stampOf(element, regimes));
  const column = (read: (stamp: Stamp, at: number) => number) => Float64Array.from(stamps, read);
  const from = Int32Array.from(ends, ([a]) => a.at);
  const to = Int32Array.from(ends, ([, b]) => b.at);
  const pairs = ends.flatMap(([a, b]) => (a.at >= 0 && b.at >= 0 ? [[a.at, b.at] as const] : []));
  const symbolic = symbolicLdl(unknowns.size, pairs);
  // A branch inside one group adds nothing: what leaves the group enters it again.
  const slots = (left: Int32Array, right: Int32Array) =>
    left.map((i, k) => (from[k] === to[k] ? -1 : slotOr(symbolic.slot, i, right[k] ?? -1)));
  return {
    branches,
    voltageV: (node, x) => {
      const { at, plusV } = place(node);
      return plusV + (at < 0 ? 0 : (x[at] ?? 0));
    },
    system: {
      size: unknowns.size,
      symbolic,
      from,
      to,
      offsetV: column(({ emfV = 0 }, k) => (ends[k]?.[0].plusV ?? 0) - (ends[k]?.[1].plusV ?? 0) - emfV),
      siemens: column(({ siemens = 0 }) => siemens),
      fixedA: column(({ fixedA = 0 }) => fixedA),
      givenA: column(({ givenA = 0 }) => givenA),
      powerW: column(({ powerW = 0 }) => powerW),
      slots: [slots(from, from), slots(to, to), slots(from, to)],
    },
  };
}

const slotOr = (slot: (i: number, j: number) => number, i: number, j: number): number =>
  i < 0 || j < 0 ? -1 : slot(i, j);
