import { type Traced, traced } from '../../model/trace.ts';
import { type Coil, type Wiring, type WiringFault, wiringFault, wiringText } from './coil-wiring.ts';
import { withoutFiltered } from './in-line-filter.ts';

/** The load of a wiring, and how the power in it divides over its coils. */
export interface WiringLoad {
  readonly loadOhm: Traced<number>;
  /** In the order of the wiring; the shares sum to 1, those of filters in a lead aside. */
  readonly shares: readonly CoilShare[];
}

export interface CoilShare {
  readonly coil: string;
  readonly speaker: string;
  readonly nominalOhm: number;
  /** Part of the channel's power that this coil takes. */
  readonly share: number;
}

const ohmsLaw = "Ohm's and Kirchhoff's laws";

/** Resistance of a wiring whose coils have the given resistances; every coil of it must be among them. */
export function groupOhm(wiring: Wiring, nominal: ReadonlyMap<string, number>): number {
  // Every coil has been looked up before: an unknown one would be a bug, and shows as no load at all.
  if (wiring.kind === 'coil') return nominal.get(wiring.coil) ?? 0;
  const members = wiring.members.map((member) => groupOhm(member, nominal));
  if (wiring.kind === 'series') return members.reduce((sum, ohm) => sum + ohm, 0);
  return 1 / members.reduce((sum, ohm) => sum + 1 / ohm, 0);
}

/** Coils by their ids, and their nominal loads. */
interface KnownCoils {
  readonly coils: readonly Coil[];
  readonly byId: ReadonlyMap<string, Coil>;
  readonly nominal: ReadonlyMap<string, number>;
}

/** The share of the power of each coil: of one with a filter in its lead what it takes where this lets through. */
function shareOut(wiring: Wiring, share: number, known: KnownCoils): readonly CoilShare[] {
  if (wiring.kind === 'coil') {
    const coil = known.byId.get(wiring.coil);
    return coil ? [{ coil: coil.id, speaker: coil.speaker, nominalOhm: coil.nominalOhm, share }] : [];
  }
  const whole = groupOhm(withoutFiltered(wiring, known.coils).wiring, known.nominal);
  return wiring.members.flatMap((member) => {
    const ohm = groupOhm(withoutFiltered(member, known.coils).wiring, known.nominal);
    return shareOut(member, share * (wiring.kind === 'series' ? ohm / whole : whole / ohm), known);
  });
}

/** What `wiringLoad` tells, as numbers alone, of wirings that are known to join each of these coils once. */
export function loadsOf(
  coils: readonly Coil[],
): (wiring: Wiring) => { readonly ohm: number; readonly shares: readonly CoilShare[] } {
  const known: KnownCoils = {
    coils,
    byId: new Map(coils.map((coil) => [coil.id, coil])),
    nominal: new Map(coils.map((coil) => [coil.id, coil.nominalOhm])),
  };
  return (wiring) => ({
    ohm: groupOhm(withoutFiltered(wiring, coils).wiring, known.nominal),
    shares: shareOut(wiring, 1, known),
  });
}

/**
 * Nominal load in ohm of the coils of one channel as they are wired, and the share of power of each coil.
 * Series: R = R1 + R2 + ...; parallel: 1/R = 1/R1 + 1/R2 + ...; power divides as R in series and as 1/R in
 * parallel. The nominal loads are taken as resistances. What a filter in its lead keeps bass from, beside what plays it,
 * is left out of the load and takes its power at the same voltage. A wiring that doesn't join each coil once is a fault.
 */
export function wiringLoad(
  channel: string,
  wiring: Wiring | null,
  coils: readonly Coil[],
): WiringLoad | WiringFault {
  const fault = wiringFault(channel, wiring, coils);
  if (fault) return fault;
  if (wiring === null) throw new Error('A wiring that is missing has a fault.');
  const { ohm, shares } = loadsOf(coils)(wiring);
  return {
    loadOhm: traced(ohm, 'ohm', {
      rule: 'channel-load',
      formula: `R = ${wiringText(withoutFiltered(wiring, coils).wiring)}; series: R = R1 + R2 + ...; parallel: 1/R = 1/R1 + 1/R2 + ...`,
      citation: ohmsLaw,
      inputs: coils.map((coil) => [coil.id, coil.nominalOhm, 'ohm']),
    }),
    shares,
  };
}
