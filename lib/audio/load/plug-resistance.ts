import { isPositive } from '../../model/fault.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';
import { type Coil, type Wiring, type WiringFault, wiringFault } from './coil-wiring.ts';
import { groupOhm } from './loads.ts';

/** The range in which a meter should read at the speaker plug. */
export interface PlugResistance {
  readonly fromOhm: Traced<number>;
  readonly expectedOhm: Traced<number>;
  readonly toOhm: Traced<number>;
}

/** Direct-current resistance of a coil over its nominal load, least and greatest: house rules. */
export interface CoilShares {
  readonly least: number;
  readonly most: number;
}

/**
 * Direct-current resistance to expect at the plug of a channel, in ohm: from the least to the greatest share of the
 * nominal load of the wiring, and in the middle between the two (common practice). Where every coil carries its own direct-current
 * resistance, that of the wiring is the middle, with a range as wide. The resistance of the speaker wire up
 * to the plug (both conductors, `wireOhm`) comes on top.
 */
export function plugResistance(
  channel: string,
  wiring: Wiring | null,
  coils: readonly Coil[],
  { least, most }: CoilShares,
  wireOhm = 0,
): PlugResistance | WiringFault {
  const fault = wiringFault(channel, wiring, coils);
  if (fault) return fault;
  if (wiring === null) throw new Error('A wiring that is missing has a fault.');
  const measured = coils.every(({ dcOhm }) => dcOhm !== undefined && isPositive(dcOhm));
  const ohm = groupOhm(
    wiring,
    new Map(coils.map(({ id, nominalOhm, dcOhm }) => [id, measured ? (dcOhm ?? nominalOhm) : nominalOhm])),
  );
  const middle = (least + most) / 2;
  const at = (share: number) => {
    const factor = measured ? share / middle : share;
    return traced(factor * ohm + wireOhm, 'ohm', {
      rule: 'plug-resistance',
      formula: measured
        ? 'Rdc = k * R + Rwire, R the direct-current resistance of the coils as wired'
        : 'Rdc = k * R + Rwire, R the nominal load as wired',
      citation: commonPractice,
      mark: 'cp',
      inputs: [
        ['k', factor],
        ['R', ohm, 'ohm'],
        ['Rwire', wireOhm, 'ohm'],
      ],
    });
  };
  return { fromOhm: at(least), expectedOhm: at(middle), toOhm: at(most) };
}
