import type { Job } from '../../../model/content/resolved-job.ts';
import type { PartOf } from '../../../model/kinds/index.ts';
import type { ShortBasis } from '../../../model/plan/index.ts';
import { inSystem, type SystemVoltage, systemOf, systemVoltageOf } from '../../../model/system-voltage.ts';
import type { CircuitSource } from '../circuit/circuit.ts';
import { highestVoltageV } from '../highest-voltage.ts';

/** A source as a dead short sees it: an electromotive force behind a resistance. */
export interface ShortSource {
  readonly source: CircuitSource;
  readonly emfV: number;
  /** Null where nobody states what it gives: it is not guessed. */
  readonly ohm: number | null;
  readonly basis: ShortBasis;
  /** What the resistance was made from, by name, value and unit. */
  readonly from: readonly (readonly [name: string, value: number, unit: string])[];
}

/**
 * What each source gives into a dead short, from the side that lets the greatest current through: a battery by its
 * maker's short-circuit current, else by its own resistance, else by the lowest that its chemistry may have; lithium by
 * its maker's figure alone. An alternator as a source that gives a multiple of its rating at its posts, a bank of
 * capacitors behind its series resistance, a charger as one that gives its limit.
 */
export function shortSources(job: Job, sources: readonly CircuitSource[]): ShortSource[] {
  const vehicleV = highestVoltageV(job);
  return sources.flatMap((source): ShortSource[] => {
    const { spec } = source.device;
    const emfV = vehicleV * (systemOfSource(job, source) / systemVoltageOf(job.vehicle['system-voltage']));
    if (spec?.kind === 'battery') return [{ source, emfV, ...batteryInto(job, spec, emfV) }];
    const limited = byItsMaker(source, emfV);
    if (limited) return [limited];
    if (spec?.kind !== 'alternator') return [];
    const share = job.rules['short-alternator-share'].value;
    return [
      {
        source,
        emfV,
        ohm: emfV / (spec.rating * share),
        basis: 'assumed',
        from: [
          ['rating', spec.rating, 'A'],
          ['times', share, ''],
        ],
      },
    ];
  });
}

/** The system that a source belongs to by itself: behind a charger from 24 V to 12 V it is another than the vehicle's. */
function systemOfSource(
  { vehicle }: Pick<Job, 'vehicle'>,
  { device: { spec } }: CircuitSource,
): SystemVoltage {
  if (spec?.kind === 'battery') return systemVoltageOf(spec.voltage);
  return spec?.kind === 'charger'
    ? systemOf(spec.output.voltage)
    : systemVoltageOf(vehicle['system-voltage']);
}

function byItsMaker(source: CircuitSource, emfV: number): ShortSource | null {
  const { spec } = source.device;
  if (spec?.kind === 'charger') {
    const { current } = spec.output;
    return { source, emfV, ohm: emfV / current, basis: 'maker', from: [['limit', current, 'A']] };
  }
  if (spec?.kind !== 'capacitor-bank') return null;
  const { resistance } = spec;
  return { source, emfV, ohm: resistance, basis: 'maker', from: [['series resistance', resistance, 'ohm']] };
}

type Inner = Pick<ShortSource, 'ohm' | 'basis' | 'from'>;

function batteryInto({ rules }: Pick<Job, 'rules'>, battery: PartOf<'battery'>, emfV: number): Inner {
  const { resistance, chemistry, voltage, 'short-circuit': shortA } = battery;
  if (shortA !== undefined)
    return { ohm: emfV / shortA, basis: 'maker', from: [['short-circuit', shortA, 'A']] };
  if (resistance !== undefined && resistance > 0)
    return { ohm: resistance, basis: 'stated', from: [['resistance', resistance, 'ohm']] };
  if (chemistry === 'lithium') return { ohm: null, basis: 'assumed', from: [] };
  const rule = chemistry === 'flooded' ? 'short-resistance-flooded' : 'short-resistance-agm';
  // The rule is stated for a battery of 12 V; one of 24 V is two of them in series.
  const ohm = inSystem(rules[rule].value, systemVoltageOf(voltage));
  return { ohm, basis: 'assumed', from: [['lowest resistance', ohm, 'ohm']] };
}
