import type { PartOf } from '../model/kinds/index.ts';
import type { ShortBasis } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import type { CircuitSource } from './circuit.ts';
import { highestVoltageV } from './highest-voltage.ts';

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
 * its maker's figure alone. An alternator as a source that gives a multiple of its rating at its posts.
 */
export function shortSources(job: Job, sources: readonly CircuitSource[]): ShortSource[] {
  const emfV = highestVoltageV(job);
  return sources.flatMap((source): ShortSource[] => {
    const { spec } = source.device;
    if (spec?.kind === 'battery') return [{ source, emfV, ...batteryInto(job, spec, emfV) }];
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

type Inner = Pick<ShortSource, 'ohm' | 'basis' | 'from'>;

function batteryInto({ rules }: Job, battery: PartOf<'battery'>, emfV: number): Inner {
  const { resistance, chemistry, 'short-circuit': shortA } = battery;
  if (shortA !== undefined)
    return { ohm: emfV / shortA, basis: 'maker', from: [['short-circuit', shortA, 'A']] };
  if (resistance !== undefined && resistance > 0)
    return { ohm: resistance, basis: 'stated', from: [['resistance', resistance, 'ohm']] };
  if (chemistry === 'lithium') return { ohm: null, basis: 'assumed', from: [] };
  const rule = chemistry === 'flooded' ? 'short-resistance-flooded' : 'short-resistance-agm';
  const ohm = rules[rule].value;
  return { ohm, basis: 'assumed', from: [['lowest resistance', ohm, 'ohm']] };
}
