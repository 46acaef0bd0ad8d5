import type { IndexedNetwork } from './indexed-network.ts';
import type { NetworkElement, SourceRegime } from './network-types.ts';
import type { BranchLaw, NodalBranch, NodalSystem } from './newton.ts';
import { LdlPattern, symbolicLdl } from './sparse-ldl.ts';
import { isStiff, type Regimes, type StiffGroups } from './stiff-branches.ts';

/** The system with what is needed to read its answer back. */
export interface CompiledNetwork {
  readonly system: NodalSystem;
  /** The unknown of each node, -1 for those tied to the reference. */
  readonly unknown: readonly number[];
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
  { elements, nodes, from, to, reference }: IndexedNetwork,
  regimes: Regimes,
  groups: StiffGroups,
): CompiledNetwork {
  const { size, unknown, plusV } = placeNodes(nodes.length, reference, groups);
  const pattern = new LdlPattern(size);
  const branches: NodalBranch[] = [];
  for (let element = 0; element < elements.length; element += 1) {
    const spec = elements[element];
    if (!spec || isStiff(spec, regimes)) continue;
    const plus = from[element] ?? 0;
    const minus = to[element] ?? 0;
    const i = unknown[plus] ?? -1;
    const j = unknown[minus] ?? -1;
    const regime = spec.kind === 'source' ? (regimes.get(spec.id) ?? 'set-point') : 'set-point';
    branches.push({
      element,
      from: i,
      to: j,
      slot: i < 0 || j < 0 || i === j ? -1 : pattern.join(i, j),
      offsetV: (plusV[plus] ?? 0) - (plusV[minus] ?? 0) - heldV(spec, regime),
      law: lawOf(spec, regime),
    });
  }
  const symbolic = symbolicLdl(pattern);
  const [matrix, right] = [new Float64Array(symbolic.slots), new Float64Array(size)];
  return { unknown, plusV, system: { size, symbolic, branches, matrix, right } };
}

function placeNodes(
  count: number,
  reference: number,
  { root, offsetV }: StiffGroups,
): { size: number; unknown: readonly number[]; plusV: Float64Array } {
  const ground = root[reference] ?? -1;
  const groundV = offsetV[reference] ?? 0;
  const unknown: number[] = [];
  const plusV = offsetV.slice();
  let size = 0;
  for (let node = 0; node < count; node += 1) {
    const isRoot = root[node] === node && node !== ground;
    unknown.push(isRoot ? size : -1);
    if (isRoot) size += 1;
  }
  for (let node = 0; node < count; node += 1) {
    const own = root[node] ?? node;
    unknown[node] = unknown[own] ?? -1;
    if (own === ground) plusV[node] = (plusV[node] ?? 0) - groundV;
  }
  return { size, unknown, plusV };
}

/** The voltage that a source holds behind its resistance; nothing while it is a source of current. */
function heldV(element: NetworkElement, regime: SourceRegime): number {
  return element.model === 'emf' && regime === 'set-point' ? element.emfV : 0;
}

const dead: BranchLaw = { siemens: 0, fixedA: 0, givenA: 0, powerW: 0 };

/** What an element adds to the nodal equations. */
function lawOf(element: NetworkElement, regime: SourceRegime): BranchLaw {
  switch (element.model) {
    case 'emf':
      if (regime === 'limited') return { ...dead, fixedA: -(element.limitA ?? 0) };
      if (regime === 'accepting') return { ...dead, fixedA: element.acceptA ?? 0 };
      return { ...dead, siemens: 1 / element.ohm };
    case 'resistance':
      return { ...dead, siemens: 1 / element.ohm };
    case 'power':
      return { ...dead, powerW: element.powerW };
    case 'square-law':
      return { ...dead, siemens: element.powerW / (element.ratedV * element.ratedV) };
    case 'current':
      return element.kind === 'source'
        ? { ...dead, fixedA: -element.givenA }
        : { ...dead, givenA: element.givenA };
  }
}
