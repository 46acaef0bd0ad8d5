import { actsOn } from '../../../audio/filter/filter-offers.ts';
import type { Device, LinkEnd } from '../../../model/content/resolved-job.ts';
import type { ControlSpec } from '../../../model/kinds/fields/control-spec.ts';
import type { PlanPeak } from '../../../model/plan/index.ts';
import { stemName } from '../../../model/ports/pair-name.ts';
import { parseQuantity } from '../../../model/quantity/quantity.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { isSameState, stateAfterwards } from './control-state.ts';

/** A boost of an amplifier as it stands after commissioning. */
export interface Boost {
  readonly control: string;
  readonly channels: readonly string[];
  /** How it stands, in words. */
  readonly state: string;
  /** What it puts into the path; null where that is not known, an empty list where it raises nothing. */
  readonly peaks: readonly Omit<PlanPeak, 'where'>[] | null;
}

/**
 * The boosts of an amplifier as they stand after commissioning: as the job says, as the part says, or as they were
 * preset. At its safe state a boost raises nothing more than the low end of its range. A state that tells no level
 * counts with the whole range, or is not known where the part gives none.
 */
export function boostsOf(device: Device): readonly Boost[] {
  return Object.entries(device.facts.controls).flatMap(([control, spec]): Boost[] => {
    if (spec.what !== 'boost') return [];
    const state = stateAfterwards(device, control, spec);
    return [{ control, channels: actsOn(device, spec), state, peaks: peaksAt(spec, state) }];
  });
}

function peaksAt({ boost, safe }: ControlSpec, state: string): Boost['peaks'] {
  const isSafe = isSameState(state, safe);
  const read = parseQuantity(state, 'level');
  const gainDb =
    typeof read === 'number' ? read : isSafe ? (boost?.range.from ?? 0) : (boost?.range.to ?? null);
  if (gainDb === null) return null;
  if (gainDb === 0) return [];
  // Half-way between the stops nobody knows more than the range.
  const isTold = typeof read === 'number' || isSafe;
  return [{ centreHz: boost?.centre ?? null, gainDb, q: isTold ? (boost?.q ?? null) : null }];
}

/** What stands between the source and a channel beside filters: equalising of the output that feeds it, and its own. */
export function peaksBefore(
  devices: DevicesById,
  amplifier: Device,
  channel: string,
  feeding: LinkEnd | null,
  positive: string,
): PlanPeak[] {
  const names = channel.split('+');
  const where = `${amplifier.id}.${stemName(positive)}`;
  const boosts = boostsOf(amplifier).filter(({ channels }) => channels.some((one) => names.includes(one)));
  return [
    ...(feeding ? equaliserAt(devices, feeding.device, feeding.terminal) : []),
    ...equaliserAt(devices, amplifier.id, positive),
    ...boosts.flatMap(({ peaks }) => (peaks ?? []).map((peak) => ({ where, ...peak }))),
  ];
}

function equaliserAt(devices: DevicesById, device: string, terminal: string): PlanPeak[] {
  const bands = devices.get(device)?.given?.equalising ?? {};
  return [...new Set([terminal, stemName(terminal)])].flatMap((name) =>
    (bands[name] ?? [])
      .filter(({ gain }) => gain !== 0)
      .map(({ centre, gain, q }) => ({
        where: `${device}.${name}`,
        centreHz: centre,
        gainDb: gain,
        q: q ?? null,
      })),
  );
}
