import type { Job } from '../../../model/content/resolved-job.ts';
import type { PartOf } from '../../../model/kinds/index.ts';
import { onceFor } from '../../../model/once-for.ts';
import { systemVoltageOf } from '../../../model/system-voltage.ts';
import { converterElements } from '../../../power/network/converters.ts';
import type { NetworkElement } from '../../../power/network/network-types.ts';
import { onceEach } from '../../once-each.ts';
import type { Circuit, CircuitLoad, CircuitSource } from './circuit.ts';
import { type EngineState, edgesIn, givesIn, islandAt, islandsOf } from './circuit-islands.ts';

/** A circuit in each of its states, put together once. */
const statesOf = onceFor((circuit: Circuit) =>
  onceEach(
    (state: EngineState) => inState(circuit, state),
    (state) => state,
  ),
);

/**
 * What of a circuit carries a lasting current in a state: contacts as they stand in it, no bank of capacitors, and a
 * charger only while the engine runs and something feeds it.
 */
export function circuitIn(circuit: Circuit, state: EngineState): Circuit {
  return statesOf(circuit)(state);
}

function inState(circuit: Circuit, state: EngineState): Circuit {
  const islands = islandsOf(circuit, state);
  const works = (source: CircuitSource): boolean => {
    if (source.type === 'capacitor-bank') return false;
    if (source.type !== 'charger') return true;
    const input = inputOf(circuit, source);
    const feeds = input ? (islandAt(islands, input.from)?.sources ?? []) : [];
    return givesIn(source, state) && feeds.some((one) => one !== source);
  };
  return { ...circuit, edges: edgesIn(circuit, state), sources: circuit.sources.filter(works) };
}

/** The input of a charger, as a load of the circuit. */
function inputOf({ loads }: Circuit, { device }: CircuitSource): CircuitLoad | undefined {
  return loads.find((load) => load.device.id === device.id);
}

/**
 * A charger in the network: at its output a source of one voltage up to its limit, at its input what that takes, over
 * its efficiency. Below the range that its maker states it stops.
 */
export function chargerElements(
  circuit: Circuit,
  source: CircuitSource,
  { input: { efficiency, range }, output }: PartOf<'charger'>,
): readonly NetworkElement[] {
  const input = inputOf(circuit, source);
  if (!input) return [];
  const { id } = source.device;
  return converterElements({
    id,
    of: id,
    input: { from: input.from, to: input.to },
    output: { from: source.positive, to: source.negative },
    outputV: output.voltage,
    limitA: output.current,
    efficiency,
    ...(range && { cutoutV: range.from }),
  });
}

/** How many times the voltage of the vehicle's system a battery has by itself. */
export function batteryShare({ vehicle }: Pick<Job, 'vehicle'>, { voltage }: PartOf<'battery'>): number {
  return systemVoltageOf(voltage) / systemVoltageOf(vehicle['system-voltage']);
}
