import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanPower } from '../../model/plan/index.ts';
import { solveNetwork } from '../../power/network/network.ts';
import type { NetworkElement } from '../../power/network/network-types.ts';
import { batteryOhm } from './battery-resistance.ts';
import { type CircuitEdge, type CircuitSource, isStore } from './circuit/circuit.ts';
import { neighboursOf, reachable } from './circuit/circuit-graph.ts';
import { coldElements } from './circuit/cold-elements.ts';
import type { NetworkInput } from './operating-points.ts';
import { shortSources } from './short/short-sources.ts';

type PlanCranking = NonNullable<PlanPower['cranking']>;

/** What the starter draws (A), for how long (s), and whether both were measured. */
export function crankingOf({ vehicle, rules }: Pick<Job, 'vehicle' | 'rules'>) {
  const { cranking } = vehicle;
  if (cranking) return { currentA: cranking.current, seconds: cranking.seconds, measured: true };
  return {
    currentA: rules['cranking-current'].value,
    seconds: rules['cranking-time'].value,
    measured: false,
  };
}

/**
 * The share of a cranking current that every fuse and relay contact between batteries carries: the starter draws it at
 * the first battery, all that is joined to that one helps through its link, each behind its own resistance (Kirchhoff's
 * laws, solved as a network). On the safe side: conductors cold and without their joints, contacts closed unless the relay opens while cranking,
 * banks full, no other load. Null where nothing but one battery is joined, or the network has no answer.
 */
export function planCranking(input: NetworkInput): PlanCranking | null {
  const { circuit, job } = input;
  const { primary } = circuit;
  if (!primary) return null;
  const edges = circuit.edges.filter((edge) => !opensWhileCranking(edge));
  const joined = reachable(neighboursOf(edges), primary.positive, new Set());
  const helpers = circuit.sources.filter((one) => isStore(one) && joined.has(one.positive));
  if (helpers.length < 2) return null;
  const { currentA, seconds, measured } = crankingOf(job);
  const { positive: from, negative: to } = primary;
  const starter = { id: 'starter', kind: 'load', model: 'current', from, to, givenA: currentA } as const;
  const elements = [
    ...passivesBetween(input, edges, helpers),
    ...helpers.flatMap((one) => storeElement(input, one)),
    starter,
  ];
  const result = solveNetwork({ referenceNode: to, elements });
  if (result.state !== 'solved') return null;
  const through = new Map(result.elements.map((one) => [one.id, Math.abs(one.currentA)]));
  const shares = edges.flatMap(({ id, kind, closed }) => {
    const ownA = through.get(id) ?? 0;
    const kept = kind === 'fuse' || closed !== undefined;
    return kept && ownA > 1 ? [{ id, currentA: Math.ceil(ownA - 1e-6) }] : [];
  });
  return { currentA, seconds, measured, shares };
}

function opensWhileCranking({ device, closed }: CircuitEdge): boolean {
  const { spec } = device ?? {};
  return closed !== undefined && spec?.kind === 'isolating-relay' && spec['opens-while-cranking'];
}

/** What lies between the sources on the feed and on the ground side; what hangs on neither would only float. */
function passivesBetween(
  input: NetworkInput,
  edges: readonly CircuitEdge[],
  sources: readonly CircuitSource[],
): NetworkElement[] {
  const neighbours = neighboursOf(edges);
  const posts = sources.flatMap(({ positive, negative }) => [positive, negative]);
  const nodes = new Set(posts.flatMap((post) => [...reachable(neighbours, post, new Set())]));
  return edges
    .filter(({ from, to }) => nodes.has(from) && nodes.has(to))
    .flatMap((edge) => coldElements(input, edge));
}

/**
 * A battery or bank as the starter sees it. The one beside the starter stands behind the resistance that it is planned
 * with, those that help it behind the lowest that they may have: the more of the current comes through their links.
 */
function storeElement({ job, circuit }: NetworkInput, store: CircuitSource): NetworkElement[] {
  const { device, positive: from, negative: to } = store;
  const emfV = job.rules['voltage-rested'].value;
  const usualOhm = device.spec?.kind === 'battery' ? batteryOhm(job, device.spec) : Number.POSITIVE_INFINITY;
  const lowestOhm = shortSources(job, [store])[0]?.ohm ?? usualOhm;
  const ohm = store === circuit.primary ? usualOhm : Math.min(usualOhm, lowestOhm);
  return [{ id: `${device.id}:emf`, kind: 'source', model: 'emf', from, to, emfV, ohm }];
}
