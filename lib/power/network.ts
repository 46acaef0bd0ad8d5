import { branchV } from './branches.ts';
import { hasOhm, type IndexedNetwork, indexNetwork } from './indexed-network.ts';
import { raiseLoads } from './load-continuation.ts';
import { networkFaults } from './network-faults.ts';
import { type NetworkFlows, networkFlows } from './network-flows.ts';
import type {
  EmfSource,
  FaultyNetwork,
  Network,
  NetworkFault,
  NetworkResult,
  SourceRegime,
  UnsolvableNetwork,
} from './network-types.ts';
import { compileNetwork } from './nodal-system.ts';
import { joinStiff, type StiffGroups } from './stiff-branches.ts';

/**
 * Solves a direct-current network by Newton's method on its nodal equations: the voltage of every node, and
 * current (A, from `from` to `to`), drop (V) and heat (W) of every element. Of two solutions that constant-power
 * loads allow, it is the one of high voltage, which is reached from above.
 *
 * Bounded sources (an alternator, a battery that accepts little charge) hold their voltage within their limits
 * and are current sources at them; which applies is found by trying, wrong guesses being turned over in order.
 *
 * `no-solution` where the loads can't be fed; `cut-out` where a load sees less than its cut-out voltage (the
 * voltages are those with it on); `fault` where the network as written can't be computed. Formulas: Kirchhoff's
 * laws and Ohm's law; see `newton` for the argument on uniqueness.
 */
export function solveNetwork(network: Network): NetworkResult {
  const indexed = indexNetwork(network);
  const faults = networkFaults(network, indexed);
  if (faults.length > 0) return faulty(network, faults);
  const { bounded } = indexed;
  const regimes = new Map<string, SourceRegime>();
  for (const source of bounded) regimes.set(source.id, firstRegime(source));
  const mostPasses = 8 * bounded.length + 16;
  for (let pass = 0; pass < mostPasses; pass += 1) {
    const groups = joinStiff(indexed, regimes);
    if (groups.faults.length > 0) return faulty(network, groups.faults);
    if (groups.overruled.size > 0) {
      for (const [id, regime] of groups.overruled) regimes.set(id, regime);
      continue;
    }
    const outcome = solveRegime(network, indexed, regimes, groups);
    if ('state' in outcome) {
      if (!releaseBatteries(regimes)) return outcome;
      continue;
    }
    const turned = wrongRegimes(bounded, outcome, regimes);
    if (turned.length === 0) return judged(network, indexed, outcome);
    for (const [id, regime] of pass < mostPasses / 2 ? turned : turned.slice(0, 1)) regimes.set(id, regime);
  }
  const reason = 'the sources with a limit settle on no common state';
  return { state: 'no-solution', referenceNode: network.referenceNode, reason };
}

/** A battery is first taken to be charging, an alternator to hold its voltage: the state of highest voltage. */
const firstRegime = (source: EmfSource): SourceRegime =>
  source.limitA === undefined ? 'accepting' : 'set-point';

function faulty(network: Network, faults: readonly NetworkFault[]): FaultyNetwork {
  return { state: 'fault', referenceNode: network.referenceNode, faults };
}

/** Where charging batteries leave the loads unfed, they must help: true if there was one to turn. */
function releaseBatteries(regimes: Map<string, SourceRegime>): boolean {
  const charging = [...regimes].filter(([, regime]) => regime === 'accepting');
  for (const [id] of charging) regimes.set(id, 'set-point');
  return charging.length > 0;
}

function solveRegime(
  network: Network,
  indexed: IndexedNetwork,
  regimes: ReadonlyMap<string, SourceRegime>,
  groups: StiffGroups,
): NetworkFlows | UnsolvableNetwork {
  const compiled = compileNetwork(indexed, regimes, groups);
  const { share, x, weakest } = raiseLoads(compiled.system, 1);
  const common = { state: 'no-solution', referenceNode: network.referenceNode } as const;
  if (x && share === 1) {
    const flows = networkFlows(indexed, compiled, groups, regimes, x);
    const bounded = flows.elements.every(({ currentA, heatW }) => Number.isFinite(currentA + heatW));
    // A load at a voltage next to none would draw more than a number can hold.
    return bounded && Number.isFinite(flows.residualA)
      ? flows
      : { ...common, reason: 'the loads cannot be fed: the voltage is next to none' };
  }
  if (!x) return { ...common, reason: 'no source holds the voltage of the network' };
  const { loads } = compiled.system;
  const load = weakest === null ? undefined : indexed.elements[loads.element[weakest] ?? 0];
  if (weakest === null || !load)
    return { ...common, reason: 'the loads cannot be fed', greatestShare: share };
  const lowV = branchV(loads, weakest, x);
  return {
    ...common,
    greatestShare: share,
    weakestLoad: load.id,
    reason:
      share === 0
        ? `no voltage of the right polarity reaches ${load.id}`
        : `the loads cannot be fed: at ${(100 * share).toFixed(1)} % of them the voltage collapses, first at ${load.id} (${lowV.toFixed(2)} V there)`,
  };
}

/** The bounded sources whose state contradicts the solution, with the state that follows from it. */
function wrongRegimes(
  bounded: readonly EmfSource[],
  flows: NetworkFlows,
  regimes: ReadonlyMap<string, SourceRegime>,
): [id: string, regime: SourceRegime][] {
  return bounded.flatMap((source): [string, SourceRegime][] => {
    const flow = flows.elements.find(({ id }) => id === source.id);
    const limitA = source.limitA ?? Number.POSITIVE_INFINITY;
    const acceptA = source.acceptA ?? 0;
    if (!flow) return [];
    switch (regimes.get(source.id)) {
      case 'limited':
        return flow.dropV > source.emfV - source.ohm * limitA + 1e-9 ? [[source.id, 'set-point']] : [];
      case 'accepting':
        return flow.dropV < source.emfV + source.ohm * acceptA - 1e-9 ? [[source.id, 'set-point']] : [];
      default:
        if (-flow.currentA > limitA + 1e-7) return [[source.id, 'limited']];
        return flow.currentA > acceptA + 1e-7 ? [[source.id, 'accepting']] : [];
    }
  });
}

function judged(network: Network, indexed: IndexedNetwork, flows: NetworkFlows): NetworkResult {
  const low: { readonly id: string; readonly dropV: number; readonly cutoutV: number }[] = [];
  for (let k = 0; k < flows.elements.length; k += 1) {
    if (hasOhm(indexed, k)) continue;
    const element = network.elements[k];
    const cutoutV = element?.kind === 'load' ? element.cutoutV : undefined;
    const dropV = flows.elements[k]?.dropV ?? 0;
    if (element && cutoutV !== undefined && dropV < cutoutV) low.push({ id: element.id, dropV, cutoutV });
  }
  const { referenceNode } = network;
  const { nodes, elements, residualA } = flows;
  if (low.length === 0) return { state: 'solved', referenceNode, nodes, elements, residualA };
  return {
    state: 'cut-out',
    cutOut: low.map(({ id }) => id),
    reason: low
      .map(({ id, dropV, cutoutV }) => `${id} sees ${dropV.toFixed(2)} V, below its cut-out of ${cutoutV} V`)
      .join('; '),
    referenceNode,
    nodes,
    elements,
    residualA,
  };
}
