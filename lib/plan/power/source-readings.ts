import type { OperatingPointName } from '../../model/operating-points.ts';
import type { OperatingPoint, SourceReading } from '../../model/plan/index.ts';
import type { Traced } from '../../model/trace.ts';
import { traced } from '../../model/trace.ts';
import type { PlanBook } from '../plan-book.ts';
import type { CircuitEdge, CircuitSource } from './circuit/circuit.ts';
import { type NetworkInput, operatingPoints } from './operating-points.ts';
import type { SolvedPoints } from './solved-points.ts';

type Point = (typeof operatingPoints)[number];

/** Where a meter goes: its probes on two terminals, or its clamp round what an element carries. */
type Probe =
  | { readonly volts: readonly [string, string] }
  | { readonly amps: string; readonly absentIsNone: boolean };

/** A reading before the network is asked for it. */
interface Sought extends Pick<SourceReading, 'item' | 'what' | 'at'> {
  readonly state: Point;
  readonly probe: Probe;
  /** True where a figure is missing that it would follow from: it is held against a limit alone. */
  readonly unstated?: boolean;
}

/**
 * What is read at the parts that join batteries, with what the network gives there: over and through the contact of an
 * isolating relay, closed and open; at the output of a charger, and at its input with the engine off; at a capacitor bank
 * that was charged from its feed. Without a sign, since a meter shows it either way round. Each with the band between the
 * supply at its weakest and at its strongest by the house rules, as drops have. None where the job has no such part, or
 * where its point has no solution.
 */
export function sourceReadings(input: NetworkInput, solved: SolvedPoints, book: PlanBook): SourceReading[] {
  const sought = [
    ...input.circuit.edges.flatMap(contactReadings),
    ...input.circuit.sources.flatMap((source) => [
      ...chargerReadings(input, source),
      ...bankReadings(source),
    ]),
  ];
  return sought.flatMap(({ item, what, at, state, probe, unstated }): SourceReading[] => {
    const points = ([undefined, 'weak', 'strong'] as const).map((end) => solved(state, end));
    const reads = points.map((point) => (point.state === 'solved' ? readingAt(point, probe) : null));
    const found = reads.flatMap((read) => read ?? []);
    const [nominal] = found;
    if (nominal === undefined || found.length < reads.length) return [];
    const own = { item, what, at, point: state.name, unit: 'volts' in probe ? 'V' : 'A' } as const;
    if (unstated) return [{ ...own, value: null, band: null }];
    const values = found.map(({ value }) => value);
    return [
      {
        ...own,
        value: book.trace(`power.sourceReadings.${item}.${what}`, nominal),
        band: { from: Math.min(...values), to: Math.max(...values) },
      },
    ];
  });
}

/** What a meter shows at a solved point; null where it would hang on nothing. */
function readingAt({ name, nodes, elements }: OperatingPoint, probe: Probe): Traced<number> | null {
  const citation = `the solved network, point ${name}`;
  if ('volts' in probe) {
    const volts = probe.volts.map(
      (id) => [id, nodes.find((node) => node.id === id)?.voltageV ?? null] as const,
    );
    const known = volts.flatMap(([id, voltageV]) => (voltageV === null ? [] : [{ id, voltageV }]));
    const [high, low] = known.toSorted((a, b) => b.voltageV - a.voltageV);
    if (!high || !low) return null;
    return traced(high.voltageV - low.voltageV, 'V', {
      rule: 'source-reading',
      formula: `V(${high.id}) - V(${low.id})`,
      citation,
      inputs: [high, low].map(({ id, voltageV }) => [`V(${id})`, voltageV, 'V'] as const),
    });
  }
  const currentA = elements.find(({ id }) => id === probe.amps)?.currentA;
  if (currentA === undefined && !probe.absentIsNone) return null;
  return traced(Math.abs(currentA ?? 0), 'A', {
    rule: 'source-reading',
    formula:
      currentA === undefined
        ? '0: it is open or off'
        : 'the greatest of I and -I; a clamp may lie either way round',
    citation: `${citation}, ${probe.amps}`,
    inputs:
      currentA === undefined
        ? []
        : [
            ['I', currentA, 'A'],
            ['-I', -currentA, 'A'],
          ],
  });
}

const pointNamed = (name: OperatingPointName): readonly Point[] =>
  operatingPoints.filter((point) => point.name === name);

/** The closed contact with music, where it carries most of what can be held beside a meter; the open one likewise. */
function contactReadings({ id, device, from, to, closed, ohm }: CircuitEdge): Sought[] {
  if (device?.spec?.kind !== 'isolating-relay' || closed !== 'engine-on') return [];
  const over = { item: device.id, at: [from, to], probe: { volts: [from, to] } } as const;
  const through = { item: device.id, at: [from] };
  return [
    ...pointNamed('music').flatMap((state): Sought[] => [
      { ...through, what: 'contact-current', state, probe: { amps: id, absentIsNone: false } },
      { ...over, at: [...over.at], what: 'contact-drop', state, unstated: ohm === undefined },
    ]),
    ...pointNamed('engine-off').flatMap((state): Sought[] => [
      { ...over, at: [...over.at], what: 'contact-open', state },
      // An open contact is no element of the network.
      { ...through, what: 'contact-open-current', state, probe: { amps: id, absentIsNone: true } },
    ]),
  ];
}

/** A charger as it works at idle, and that it takes nothing from the starter's battery once the engine is off. */
function chargerReadings({ circuit }: NetworkInput, source: CircuitSource): Sought[] {
  const { device, type, positive, negative } = source;
  const input = circuit.loads.find((load) => load.device.id === device.id);
  if (type !== 'charger' || !input) return [];
  const item = device.id;
  const amps = (side: 'in' | 'out', absentIsNone: boolean): Probe => {
    return { amps: `${item}:${side}`, absentIsNone };
  };
  return [
    ...pointNamed('idle').flatMap((state): Sought[] => {
      const volts: Probe = { volts: [positive, negative] };
      return [
        { item, what: 'output-voltage', at: [positive, negative], state, probe: volts },
        { item, what: 'output-current', at: [positive], state, probe: amps('out', false) },
      ];
    }),
    ...pointNamed('rest').map((state): Sought => {
      return { item, what: 'input-current', at: [input.from], state, probe: amps('in', true) };
    }),
  ];
}

/** A bank takes what the feed has while nothing is turned on: no current flows through its fuse any more. */
function bankReadings({ device, type, positive, negative }: CircuitSource): Sought[] {
  if (type !== 'capacitor-bank') return [];
  return pointNamed('rest').map((state): Sought => {
    return {
      item: device.id,
      what: 'bank-charge',
      at: [positive, negative],
      state: { ...state, currentA: () => 0 },
      probe: { volts: [positive, negative] },
    };
  });
}
