import { solveNetwork } from './network/network.ts';
import type { EmfSource, NetworkElement } from './network/network-types.ts';

/** A dead short in a network of sources of one voltage, each behind a resistance. */
export interface ShortCircuit {
  readonly currentA: number;
  /** What each source drives into it, and the voltage that is left at its posts, by the element's id. */
  readonly sources: readonly { readonly id: string; readonly currentA: number; readonly postsV: number }[];
  /** By which elements it arrives at the shorted node, by what they stand for. */
  readonly ways: readonly { readonly of: string; readonly currentA: number }[];
  /** Every other element that carries a part of it, with its current against the whole. */
  readonly shares: readonly { readonly of: string; readonly ohm: number; readonly share: number }[];
}

/**
 * The current (A) that flows where `node` is joined to `ground` without any resistance: Kirchhoff's and Ohm's laws. What
 * is joined to nothing is left out. Null where no source drives a current, or one has no resistance to limit it.
 */
export function shortCircuit(
  elements: readonly NetworkElement[],
  node: string,
  ground: string,
): ShortCircuit | null {
  // The short has no resistance of its own: both nodes become one.
  const joined = (id: string) => (id === node ? ground : id);
  const merged = elements
    .map((element) => ({ ...element, from: joined(element.from), to: joined(element.to) }))
    .filter(({ from, to }) => from !== to);
  const live = joinedTo(ground, merged);
  const result = solveNetwork({ referenceNode: ground, elements: live });
  if (result.state !== 'solved') return null;
  const flows = new Map(result.elements.map((flow) => [flow.id, flow]));
  const currentA = (id: string) => flows.get(id)?.currentA ?? 0;
  const isLive = new Set(live.map(({ id }) => id));
  const arriving = elements.flatMap(({ id, of = id, from, to }) =>
    isLive.has(id) && (from === node || to === node)
      ? [{ of, currentA: to === node ? currentA(id) : -currentA(id) }]
      : [],
  );
  const sumA = arriving.reduce((sum, way) => sum + way.currentA, 0);
  if (!(sumA > 0)) return null;
  return {
    currentA: sumA,
    ways: arriving,
    sources: live.filter(isEmf).map(({ id }) => {
      const flow = flows.get(id);
      return { id, currentA: -(flow?.currentA ?? 0), postsV: flow?.dropV ?? 0 };
    }),
    shares: live.flatMap((element) =>
      'ohm' in element
        ? [{ of: element.of ?? element.id, ohm: element.ohm, share: currentA(element.id) / sumA }]
        : [],
    ),
  };
}

const isEmf = (element: NetworkElement): element is EmfSource => element.model === 'emf';

/** The elements that hang together with a node. */
function joinedTo(ground: string, elements: readonly NetworkElement[]): NetworkElement[] {
  const nodes = new Set([ground]);
  for (let before = 0; before !== nodes.size; ) {
    before = nodes.size;
    for (const { from, to } of elements) if (nodes.has(from) || nodes.has(to)) nodes.add(from).add(to);
  }
  return elements.filter(({ from }) => nodes.has(from));
}
