import { percentKept, volts, voltsLeft } from '../../model/printed/told.ts';
import { solveConverters } from './converters.ts';
import { branchV } from './element-currents.ts';
import { hasOhm, type IndexedNetwork, indexNetwork } from './indexed-network.ts';
import { type LoadReach, raiseLoads } from './load-continuation.ts';
import type { NetworkFault } from './network-fault.ts';
import { networkFaults } from './network-faults.ts';
import { type NetworkFlows, networkFlows } from './network-flows.ts';
import type {
  FaultyNetwork,
  Network,
  NetworkResult,
  SourceRegime,
  UnsolvableNetwork,
  VoltageSource,
} from './network-types.ts';
import { type CompiledNetwork, compileNetwork } from './nodal-system.ts';
import { everyState, firstRegime, type Regimes, regimeAfter } from './source-regimes.ts';
import { joinStiff, type StiffGroups } from './stiff-branches.ts';

/**
 * Solves a direct-current network by Newton's method on its nodal equations: the voltage of every node, and
 * current (A, from `from` to `to`), drop (V) and heat (W) of every element. Of two solutions that constant-power
 * loads allow, it is the one of high voltage, which is reached from above.
 *
 * Bounded sources follow a bent line: an alternator holds its voltage up to its limit, where it is a current source;
 * a battery gives behind one resistance, charges behind another, and takes no more than it accepts. On which stretch of
 * its line each of them is, is found by trying; on that stretch the network is solved exactly. Wrong guesses are turned
 * over together; where that does not settle, near a collapse, every combination is tried in order.
 *
 * `no-solution` where the loads can't be fed; `cut-out` where a load sees less than its cut-out voltage (the
 * voltages are those with it on); `fault` where the network as written can't be computed. Formulas: Kirchhoff's
 * laws and Ohm's law; see `newton` for the argument on uniqueness.
 */
export function solveNetwork(network: Network): NetworkResult {
  const indexed = indexNetwork(network);
  const faults = networkFaults(network, indexed);
  if (faults.length > 0) return faulty(network, faults);
  const solve = () => solveIndexed(network, indexed);
  return indexed.hasConverter ? solveConverters(indexed, solve) : solve();
}

/** Passes in which wrong guesses are turned over, beside two for each source. */
const turnedPasses = 4;
/** Most sources of which every combination of states is tried where that does not settle. */
const mostCombined = 7;

function solveIndexed(network: Network, indexed: IndexedNetwork): NetworkResult {
  const { bounded } = indexed;
  const regimes = new Map<string, SourceRegime>();
  const highestV = bounded.reduce((high, { emfV }) => Math.max(high, emfV), 0);
  for (const source of bounded) regimes.set(source.id, firstRegime(source, highestV));
  let last: UnsolvableNetwork | null = null;
  for (let pass = 0; pass < turnedPasses + 2 * bounded.length; pass += 1) {
    const groups = joinStiff(indexed, regimes);
    if (groups.faults.length > 0) return faulty(network, groups.faults);
    if (groups.overruled.size > 0) {
      for (const [id, regime] of groups.overruled) regimes.set(id, regime);
      continue;
    }
    const { flows, lost } = solveRegime(network, indexed, regimes, groups);
    const turned = flows ? wrongRegimes(bounded, flows, regimes) : [];
    if (!lost && turned.length === 0) return judged(network, indexed, flows);
    last = lost ?? last;
    // Charging batteries may leave constant power without a hold above their emf: it then falls to where they give.
    const turns = turned.length === 0 ? giving(bounded, regimes) : turned;
    if (lost && turns.length === 0) return lost;
    for (const [id, regime] of [...turns, ...helping(bounded, flows, turns, regimes)])
      regimes.set(id, regime);
  }
  return tryAllStates(network, indexed) ?? last ?? unsettled(network);
}

/** The network in the one combination of states that nothing contradicts; null where there is none. */
function tryAllStates(network: Network, indexed: IndexedNetwork): NetworkResult | null {
  if (indexed.bounded.length > mostCombined) return null;
  for (const regimes of everyState(indexed.bounded)) {
    const groups = joinStiff(indexed, regimes);
    if (groups.faults.length > 0 || groups.overruled.size > 0) continue;
    const { flows, lost } = solveRegime(network, indexed, regimes, groups);
    if (!lost && wrongRegimes(indexed.bounded, flows, regimes).length === 0)
      return judged(network, indexed, flows);
  }
  return null;
}

function unsettled({ referenceNode }: Network): UnsolvableNetwork {
  const reason = 'the sources with a limit settle on no common state';
  return { state: 'no-solution', referenceNode, reason };
}

function faulty(network: Network, faults: readonly NetworkFault[]): FaultyNetwork {
  return { state: 'fault', referenceNode: network.referenceNode, faults };
}

/** What flows with the sources in their states; where not all of the load is fed, what flows with the most that is. */
type RegimeOutcome =
  | { readonly flows: NetworkFlows; readonly lost: null }
  | { readonly flows: NetworkFlows | null; readonly lost: UnsolvableNetwork };

function solveRegime(
  { referenceNode }: Network,
  indexed: IndexedNetwork,
  regimes: Regimes,
  groups: StiffGroups,
): RegimeOutcome {
  let compiled = compileNetwork(indexed, regimes, groups);
  let reach = raiseLoads(compiled.system, 1);
  const yields = !reach.x && regimes.size > 0;
  if (yields) {
    // Some part of the network has only sources that are held to a current: giving way a little, they tell which is not.
    compiled = compileNetwork(indexed, regimes, groups, yieldS);
    reach = raiseLoads(compiled.system, 1);
  }
  const { share, x } = reach;
  const lost = (more: Omit<UnsolvableNetwork, 'state' | 'referenceNode'>): UnsolvableNetwork => {
    return { state: 'no-solution', referenceNode, ...more };
  };
  const unheld = lost({ reason: 'no source holds the voltage of the network' });
  if (!x) return { flows: null, lost: unheld };
  const flows = networkFlows(indexed, compiled, groups, regimes, x, share);
  if (yields) return { flows, lost: unheld };
  if (share < 1) return { flows, lost: lost(collapse(indexed, compiled, reach, x)) };
  const isBound = flows.elements.every(({ currentA, heatW }) => Number.isFinite(currentA + heatW));
  // A load at a voltage next to none would draw more than a number can hold.
  return isBound && Number.isFinite(flows.residualA)
    ? { flows, lost: null }
    : { flows: null, lost: lost({ reason: 'the loads cannot be fed: the voltage is next to none' }) };
}

/** Where and at which share of the loads the voltage gives way. */
function collapse(
  indexed: IndexedNetwork,
  { system: { loads } }: CompiledNetwork,
  { share, weakest }: LoadReach,
  x: number[],
): Omit<UnsolvableNetwork, 'state' | 'referenceNode'> {
  const load = weakest === null ? undefined : indexed.elements[loads.element[weakest] ?? 0];
  if (weakest === null || !load) return { reason: 'the loads cannot be fed', greatestShare: share };
  const lowV = branchV(loads, weakest, x);
  return {
    greatestShare: share,
    weakestLoad: load.id,
    reason:
      share === 0
        ? `no voltage of the right polarity reaches ${load.id}`
        : `the loads cannot be fed: at ${percentKept(share)} of them the voltage collapses, first at ${load.id} (${voltsLeft(lowV)} there)`,
  };
}

/** By how much more current a source at a bound gives way for each volt past it, while its state is sought (S). */
const yieldS = 1e-6;

type Turn = readonly [id: string, regime: SourceRegime];

/** The bounded sources whose state contradicts the solution, with the state that follows from it. */
function wrongRegimes(bounded: readonly VoltageSource[], flows: NetworkFlows, regimes: Regimes): Turn[] {
  return bounded.flatMap((source): Turn[] => {
    const flow = flows.elements.find(({ id }) => id === source.id);
    const regime = regimes.get(source.id) ?? 'set-point';
    const after = flow ? regimeAfter(source, regime, flow) : regime;
    return after === regime ? [] : [[source.id, after]];
  });
}

/** Every battery that charges, as giving. */
function giving(bounded: readonly VoltageSource[], regimes: Regimes): Turn[] {
  return bounded.flatMap(({ id, model }): Turn[] =>
    model === 'two-slope' && regimes.get(id) !== 'set-point' ? [[id, 'set-point']] : [],
  );
}

/**
 * Where a source is turned to its limit, batteries must hold the voltage in its place: those that took all they accept
 * go on charging, and where more is asked past the limit than all of them take up, they give. To find that out by trying
 * would cost a collapse, or find a voltage that no source bounds.
 */
function helping(
  bounded: readonly VoltageSource[],
  flows: NetworkFlows | null,
  turned: readonly Turn[],
  regimes: Regimes,
): Turn[] {
  const limited = new Set(turned.flatMap(([id, regime]) => (regime === 'limited' ? [id] : [])));
  if (!flows || limited.size === 0) return [];
  let spareA = 0;
  for (const source of bounded) {
    const currentA = flows.elements.find(({ id }) => id === source.id)?.currentA ?? 0;
    if (source.model === 'two-slope') spareA += Math.max(0, currentA);
    else if (limited.has(source.id)) spareA += currentA + (source.limitA ?? 0);
  }
  return bounded.flatMap(({ id, model }): Turn[] => {
    if (model !== 'two-slope') return [];
    return spareA < 0 ? [[id, 'set-point']] : regimes.get(id) === 'set-point' ? [] : [[id, 'charging']];
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
      .map(
        ({ id, dropV, cutoutV }) => `${id} sees ${voltsLeft(dropV)}, below its cut-out of ${volts(cutoutV)}`,
      )
      .join('; '),
    referenceNode,
    nodes,
    elements,
    residualA,
  };
}
