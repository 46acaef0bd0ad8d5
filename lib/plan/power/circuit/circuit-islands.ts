import type { SourceType } from '../../../model/kinds/kind.ts';
import { type SystemVoltage, systemOf, systemVoltageOf } from '../../../model/system-voltage.ts';
import { type Circuit, type CircuitEdge, type CircuitSource, isStore } from './circuit.ts';
import { neighboursOf, reachable } from './circuit-graph.ts';

/** Whether the engine runs: it closes isolating relays, drives alternators, and lets chargers work. */
export type EngineState = 'engine-on' | 'engine-off';

/** What of a circuit is joined in a state: contacts that are open in it are left out. */
export function edgesIn({ edges }: Pick<Circuit, 'edges'>, state: EngineState): readonly CircuitEdge[] {
  return state === 'engine-on' ? edges : edges.filter(({ closed }) => closed === undefined);
}

/** True for a source that drives a current in a state: with the engine off batteries alone, and for moments banks. */
export function givesIn(source: Pick<CircuitSource, 'type'>, state: EngineState): boolean {
  return state === 'engine-on' || isStore(source);
}

/** Sources whose positive posts are joined, with all that hangs on them: a charger's input and output are two islands. */
export interface Island {
  readonly nodes: ReadonlySet<string>;
  readonly sources: readonly CircuitSource[];
  /** The source that the others hang on: the vehicle's battery, else a battery, an alternator, a charger, a bank. */
  readonly primary: CircuitSource;
}

const ranks: Readonly<Record<SourceType, number>> = {
  battery: 0,
  alternator: 1,
  charger: 2,
  'capacitor-bank': 3,
};

/** The islands of a circuit in a state, in the order of its sources; what no source reaches belongs to none. */
export function islandsOf(circuit: Circuit, state: EngineState = 'engine-on'): readonly Island[] {
  const neighbours = neighboursOf(edgesIn(circuit, state));
  const islands: Island[] = [];
  for (const { positive } of circuit.sources) {
    if (islands.some(({ nodes }) => nodes.has(positive))) continue;
    const nodes = reachable(neighbours, positive, new Set());
    const sources = circuit.sources.filter((source) => nodes.has(source.positive));
    const primary = primaryOf(circuit, sources);
    if (primary) islands.push({ nodes, sources, primary });
  }
  return islands;
}

function primaryOf({ primary }: Circuit, sources: readonly CircuitSource[]): CircuitSource | undefined {
  const own = sources.find((source) => source === primary);
  return own ?? sources.toSorted((a, b) => ranks[a.type] - ranks[b.type])[0];
}

/** The island that a node lies in; none where no source reaches it. */
export function islandAt(islands: readonly Island[], node: string): Island | undefined {
  return islands.find(({ nodes }) => nodes.has(node));
}

/**
 * The nominal voltage of an island (V): by its batteries, by the output of a charger where it has none; what neither
 * tells is the vehicle's own.
 */
export function islandSystemV(island: Island | undefined, vehicleV: SystemVoltage): SystemVoltage {
  for (const { device } of island?.sources ?? [])
    if (device.spec?.kind === 'battery') return systemVoltageOf(device.spec.voltage);
  for (const { device } of island?.sources ?? [])
    if (device.spec?.kind === 'charger') return systemOf(device.spec.output.voltage);
  return vehicleV;
}
