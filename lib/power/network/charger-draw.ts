import type { PartOf } from '../../model/kinds/index.ts';
import { type Traced, traced } from '../../model/trace.ts';
import type { DeviceCurrents } from './load-current.ts';

/**
 * What a charger draws from its input (A) at a voltage there: Ii = Uo * Io / (eta * Ui), its whole output over its
 * efficiency, since a battery that is run down takes all of it for long. Balance of power; the figures are the part's.
 */
export function chargerInputA({ output, input }: PartOf<'charger'>, voltageV: number): Traced<number> {
  return traced((output.voltage * output.current) / (input.efficiency * voltageV), 'A', {
    rule: 'charger-input',
    formula: 'Ii = Uo * Io / (eta * Ui)',
    citation: "balance of power, with the part's data",
    inputs: [
      ['Uo', output.voltage, 'V'],
      ['Io', output.current, 'A'],
      ['eta', input.efficiency, ''],
      ['Ui', voltageV, 'V'],
    ],
  });
}

/** The currents of a charger: with its whole output in every state in which it works. */
export function chargerCurrents(part: PartOf<'charger'>, voltageV: number): DeviceCurrents {
  const draw = chargerInputA(part, voltageV);
  const fuse = traced(part.input.fuse, 'A', {
    origin: 'given',
    rule: 'device-fuse',
    citation: "the part's data",
  });
  return { fullRatingA: fuse, ratedPowerA: draw, musicA: draw };
}
