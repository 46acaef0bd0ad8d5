import { isPositive } from '../../model/fault.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';
import { groupOhm } from './loads.ts';
import { type Coil, type Wiring, type WiringFault, wiringFault } from './wiring.ts';

/** The range in which a meter should read at the speaker plug. */
export interface PlugResistance {
  readonly fromOhm: Traced<number>;
  readonly expectedOhm: Traced<number>;
  readonly toOhm: Traced<number>;
}

/** Direct-current resistance over nominal load: least, middle, greatest. Common practice, no source. */
const shares = { from: 0.75, expected: 0.8, to: 0.85 } as const;

/**
 * Direct-current resistance to expect at the plug of a channel, in ohm: 0.75 to 0.85 of the nominal load of
 * the wiring, 0.80 in the middle (common practice). Where every coil carries its own direct-current
 * resistance, that of the wiring is the middle, with a range as wide. The resistance of the speaker wire up
 * to the plug (both conductors, `wireOhm`) comes on top.
 */
export function plugResistance(
  channel: string,
  wiring: Wiring | null,
  coils: readonly Coil[],
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
  const at = (share: number) => {
    const factor = measured ? share / shares.expected : share;
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
  return { fromOhm: at(shares.from), expectedOhm: at(shares.expected), toOhm: at(shares.to) };
}
