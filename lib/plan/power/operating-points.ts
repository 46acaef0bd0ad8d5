import { bodyId, type Job } from '../../model/content/resolved-job.ts';
import type { OperatingPointName } from '../../model/operating-points.ts';
import type { OperatingPoint, NetworkElement as PlanElement } from '../../model/plan/index.ts';
import { inSystem, systemVoltageOf } from '../../model/system-voltage.ts';
import { loadElement } from '../../power/network/load-current.ts';
import { solveNetwork } from '../../power/network/network.ts';
import type { NetworkFault } from '../../power/network/network-fault.ts';
import type { NetworkElement, NetworkResult } from '../../power/network/network-types.ts';
import { batteryOhm } from './battery-resistance.ts';
import type { Circuit, CircuitSource } from './circuit/circuit.ts';
import type { CircuitPaths } from './circuit/circuit-paths.ts';
import { batteryShare, chargerElements, circuitIn } from './circuit/circuit-states.ts';
import { type DeviceLoad, supplyOf } from './device-loads.ts';
import { faultText, plainly } from './network-fault-text.ts';
import { passivesOf, reachedNodes } from './network-passives.ts';
import { setPointV } from './regulator-voltage.ts';
import type { SizedConductor } from './sizing/conductor-sizing.ts';
import type { SizedFuse } from './sizing/fuse-sizing.ts';
import { sizingVoltageAt, systemShare } from './sizing-voltage.ts';
import { rulesAt, type SupplyEnd } from './supply-spread.ts';

/** What the network of a job is built from. */
export interface NetworkInput {
  readonly job: Job;
  readonly circuit: Circuit;
  readonly paths: CircuitPaths;
  readonly loads: readonly DeviceLoad[];
  readonly fuses: readonly SizedFuse[];
  readonly conductors: ReadonlyMap<string, SizedConductor>;
}

export interface PointDefinition {
  readonly name: OperatingPointName;
  readonly title: string;
  /** Alternator limit, by the house rule; null with the engine off. */
  readonly alternator: 'alternator-idle-share' | 'alternator-cruise-share' | null;
  /** What a battery that neither charges nor gives has there, by house rule. */
  readonly battery: 'voltage-rested' | 'voltage-engine-off';
  readonly currentA: (load: DeviceLoad) => number;
  /** Draws at the fuse whatever the voltage: the worst that the wiring may see. */
  readonly constantCurrent?: boolean;
  /** How the state is brought about safely beside a meter; none where it can't be held. */
  readonly reach?: string;
}

const noise = 'pink noise, doors shut, nobody inside';

/** The operating points that every job is solved at. */
export const operatingPoints = [
  {
    name: 'rated-power',
    title: 'Rated power, cruising',
    alternator: 'alternator-cruise-share',
    battery: 'voltage-rested',
    currentA: ({ ratedA }) => ratedA,
  },
  {
    name: 'full-rating',
    title: 'Full rating: every device at its fuse',
    alternator: 'alternator-cruise-share',
    battery: 'voltage-rested',
    currentA: ({ fuseA }) => fuseA,
    constantCurrent: true,
  },
  {
    name: 'music',
    title: 'Music, hot idle',
    alternator: 'alternator-idle-share',
    battery: 'voltage-rested',
    currentA: ({ musicA }) => musicA,
    reach: `engine idling warm, lamps and blower on, ${noise}`,
  },
  {
    name: 'engine-off',
    title: 'Music, engine off',
    alternator: null,
    // The charge where the reserve ends: the worst that is planned for.
    battery: 'voltage-engine-off',
    currentA: ({ musicA }) => musicA,
    reach: `engine off, ${noise}`,
  },
  {
    name: 'cruise',
    title: 'Music, cruising',
    alternator: 'alternator-cruise-share',
    battery: 'voltage-rested',
    currentA: ({ musicA }) => musicA,
  },
  {
    name: 'idle',
    title: 'Hot idle, no signal',
    alternator: 'alternator-idle-share',
    battery: 'voltage-rested',
    currentA: ({ idleA }) => idleA,
    reach: 'engine idling warm, lamps and blower on, turned on, no signal',
  },
  {
    name: 'rest',
    title: 'Engine off, no signal',
    alternator: null,
    battery: 'voltage-rested',
    currentA: ({ idleA }) => idleA,
    reach: 'engine off for 10 min, turned on, no signal',
  },
] as const satisfies readonly PointDefinition[];

/** The points that last: what a fuse carries there it carries for long. Devices at their fuses open them. */
export const continuousPoints: readonly string[] = operatingPoints
  .map(({ name }) => name)
  .filter((name) => name !== 'full-rating');

/** What flows through a conductor, either way, at each of the points that last and were solved (A). */
export function lastingCurrentsA(points: readonly OperatingPoint[], wire: string): readonly number[] {
  return points
    .filter(({ name, state }) => continuousPoints.includes(name) && state === 'solved')
    .flatMap(({ elements }) =>
      elements.flatMap(({ of, kind, currentA }) =>
        of === wire && kind === 'conductor' && currentA !== undefined ? [Math.abs(currentA)] : [],
      ),
    );
}

/** Solves one operating point of a job. */
export function solvePoint(input: NetworkInput, point: PointDefinition, end?: SupplyEnd): OperatingPoint {
  const elements = networkElements(end ? atEnd(input, end) : input, point, end);
  const referenceNode = input.circuit.primary?.negative ?? bodyId;
  const network = { referenceNode, elements };
  return planPoint(point, elements, solveNetwork(network));
}

function atEnd(input: NetworkInput, end: SupplyEnd): NetworkInput {
  return { ...input, job: { ...input.job, rules: rulesAt(input.job.rules, end) } };
}

/** What makes a network of the job impossible to compute at an operating point; empty where it can be. */
export function pointFaults(input: NetworkInput, point: PointDefinition): readonly NetworkFault[] {
  const referenceNode = input.circuit.primary?.negative ?? bodyId;
  const elements = networkElements(input, point).map((element): NetworkElement => {
    if (element.model !== 'two-slope') return element;
    // As a plain source: its charging resistance would hide that two without resistance stand side by side.
    const { id, kind, from, to, emfV, ohm } = element;
    return { id, kind, model: 'emf', from, to, emfV, ohm };
  });
  const result = solveNetwork({ referenceNode, elements });
  return result.state === 'fault' ? result.faults : [];
}

function networkElements(given: NetworkInput, point: PointDefinition, end?: SupplyEnd): NetworkElement[] {
  const state = point.alternator === null ? 'engine-off' : 'engine-on';
  const input = { ...given, circuit: circuitIn(given.circuit, state) };
  const reached = reachedNodes(input.circuit);
  // Where the supply is strongest its conductors are cold, whatever zone they lie in.
  const isCold = end === 'strong';
  return [
    ...passivesOf(given, input.circuit, isCold),
    ...input.circuit.sources
      .filter((source) => reached.has(source.positive) && mayFlow(input.circuit, source))
      .flatMap((source) => sourceElements(input, source, point, end)),
    ...input.loads.flatMap((load) => deviceElement(input, load, point, reached)),
  ];
}

/**
 * False for a second source whose negative pole is joined to nothing: no current leaves it, and a rule tells so. That
 * of the primary is the reference of all voltages and stays, so that what lacks its return is named.
 */
function mayFlow({ edges, primary }: Circuit, source: CircuitSource): boolean {
  return (
    source === primary || edges.some(({ from, to }) => from === source.negative || to === source.negative)
  );
}

function sourceElements(
  input: NetworkInput,
  source: CircuitSource,
  point: PointDefinition,
  end?: SupplyEnd,
): NetworkElement[] {
  const { job, circuit } = input;
  const { rules } = job;
  const { device, positive: from, negative: to } = source;
  const spec = device.spec;
  if (spec?.kind === 'battery') {
    const ohm = batteryOhm(job, spec);
    const battery: NetworkElement = {
      id: `${device.id}:emf`,
      of: device.id,
      kind: 'source',
      model: 'two-slope',
      from,
      to,
      emfV: rules[point.battery].value * batteryShare(job, spec),
      ohm,
      chargeOhm: Math.max(
        ohm,
        inSystem(rules['battery-charging-resistance'].value, systemVoltageOf(spec.voltage)),
      ),
      acceptA: rules['battery-acceptance'].value,
    };
    const givenA = vehicleLoadA(input, point);
    if (source !== circuit.primary || givenA <= 0) return [battery];
    return [battery, { id: 'vehicle:load', of: 'vehicle', kind: 'load', model: 'current', from, to, givenA }];
  }
  if (spec?.kind === 'charger') return [...chargerElements(circuit, source, spec)];
  if (spec?.kind !== 'alternator' || point.alternator === null) return [];
  const emfV = setPointV(job, spec, end);
  const limitA = spec.rating * rules[point.alternator].value;
  return [
    { id: `${device.id}:emf`, of: device.id, kind: 'source', model: 'emf', from, to, emfV, ohm: 0, limitA },
  ];
}

/**
 * What the vehicle itself takes (A): with the engine running as measured, else by house rule; with the engine off the
 * source units that play in it, by their parts, as far as they do not stand among the devices.
 */
function vehicleLoadA({ job, paths }: NetworkInput, { alternator }: PointDefinition): number {
  if (alternator !== null) return job.vehicle['vehicle-load'] ?? job.rules['vehicle-load'].value;
  return job.devices.reduce((sum, { id, origin, spec }) => {
    const plays = origin === 'vehicle' && spec?.kind === 'source-unit';
    return plays && !paths.fed.some(({ device }) => device.id === id) ? sum + (spec.supply.draw ?? 0) : sum;
  }, 0);
}

function deviceElement(
  { job, paths }: NetworkInput,
  load: DeviceLoad,
  point: PointDefinition,
  reached: ReadonlySet<string>,
): NetworkElement[] {
  const own = paths.fed.find(({ device }) => device.id === load.item);
  const supply = supplyOf(own?.device.spec ?? null);
  // What hangs behind an open contact or a charger that is off gets nothing; a charger stands among the sources.
  if (!own || !supply || !reached.has(own.from) || own.device.spec?.kind === 'charger') return [];
  const element = loadElement({
    id: `${load.item}:load`,
    of: load.item,
    from: own.from,
    to: own.to,
    supply: point.constantCurrent ? 'constant-current' : supply.type,
    currentA: point.currentA(load),
    voltageV: sizingVoltageAt(job, paths.islands, own.from),
    cutoutV: supply['cut-out'] ?? job.rules['cut-out'].value * systemShare(job, paths.islands, own.from),
  });
  return element ? [element] : [];
}

function planPoint(
  point: PointDefinition,
  elements: readonly NetworkElement[],
  result: NetworkResult,
): OperatingPoint {
  const { name, title, reach } = point;
  const base = { name, title, referenceNode: result.referenceNode, ...(reach !== undefined && { reach }) };
  if (result.state === 'no-solution' || result.state === 'fault') {
    const reason =
      result.state === 'fault'
        ? result.faults.map((fault) => faultText(fault, result.referenceNode)).join('; ')
        : plainly(result.reason);
    const nodes = [...new Set(elements.flatMap(({ from, to }) => [from, to]))].sort();
    return {
      ...base,
      state: 'no-solution',
      reason,
      nodes: nodes.map((id) => ({ id, voltageV: null })),
      elements: elements.map((element) => ({ ...element, of: element.of ?? element.id })),
    };
  }
  const flows = new Map(result.elements.map((flow) => [flow.id, flow]));
  return {
    ...base,
    state: result.state,
    ...(result.state === 'cut-out' ? { reason: plainly(result.reason) } : {}),
    residualA: result.residualA,
    nodes: result.nodes.map(({ id, voltageV }) => ({ id, voltageV })),
    elements: elements.map((element): PlanElement => {
      const flow = flows.get(element.id);
      const own = { ...element, of: element.of ?? element.id };
      return flow ? { ...own, currentA: flow.currentA, dropV: flow.dropV, heatW: flow.heatW } : own;
    }),
  };
}
