import type { PlanPower } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import { solveNetwork } from '../power/network.ts';
import type { NetworkElement } from '../power/network-types.ts';
import type { CircuitEdge, CircuitSource } from './circuit.ts';
import { neighboursOf, reachable } from './circuit-graph.ts';
import { batteryOhm, type NetworkInput } from './operating-points.ts';
import { passiveElements } from './passive-elements.ts';

/** Conductors before anyone drove (C): the colder, the larger the share that a link carries. */
const coldC = 20;

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
 * laws, solved as a network). On the safe side: conductors cold, contacts closed unless the relay opens while cranking,
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
    ...helpers.map((one) => storeElement(job, one)),
    starter,
  ];
  const result = solveNetwork({ referenceNode: to, elements });
  if (result.state !== 'solved') return null;
  const through = new Map(result.elements.map((one) => [one.id, Math.abs(one.currentA)]));
  const shares = edges.flatMap(({ id, kind, closed }) => {
    const ownA = through.get(kind === 'fuse' ? `${id}:fuse` : id) ?? 0;
    const kept = kind === 'fuse' || closed !== undefined;
    return kept && ownA > 1 ? [{ id, currentA: Math.ceil(ownA - 1e-6) }] : [];
  });
  return { currentA, seconds, measured, shares };
}

function opensWhileCranking({ device, closed }: CircuitEdge): boolean {
  const { spec } = device ?? {};
  return closed !== undefined && spec?.kind === 'isolating-relay' && spec['opens-while-cranking'];
}

function isStore({ type }: CircuitSource): boolean {
  return type === 'battery' || type === 'capacitor-bank';
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
    .flatMap((edge) => passiveElements(input, edge, coldC));
}

function storeElement(job: Job, { device, positive, negative }: CircuitSource): NetworkElement {
  const { spec } = device;
  const ohm =
    spec?.kind === 'battery'
      ? batteryOhm(job, spec)
      : spec?.kind === 'capacitor-bank'
        ? spec.resistance
        : job.rules['battery-resistance-agm'].value;
  const emfV = job.rules['voltage-rested'].value;
  return { id: `${device.id}:emf`, kind: 'source', model: 'emf', from: positive, to: negative, emfV, ohm };
}
