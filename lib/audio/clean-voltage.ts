import { type Traced, traced } from '../model/trace.ts';

/** A power that a maker states into a load. */
export interface RatedPower {
  readonly powerW: number;
  readonly loadOhm: number;
}

/** The greatest clean voltage of an output by its rated power, and the rating that it follows from. */
export interface CleanVoltage extends RatedPower {
  readonly voltageV: Traced<number>;
}

/**
 * What a speaker output gives clean (V, RMS), by the rated power that asks for the highest voltage: V = sqrt(P * R). A
 * power that its maker states with much distortion makes this too high, which errs to the safe side of an input. Null
 * where no power is stated. Source: Ohm's law.
 */
export function cleanVoltage(powers: readonly RatedPower[]): CleanVoltage | null {
  const [highest] = powers.toSorted((a, b) => b.powerW * b.loadOhm - a.powerW * a.loadOhm);
  if (!highest) return null;
  const { powerW, loadOhm } = highest;
  return {
    powerW,
    loadOhm,
    voltageV: traced(Math.sqrt(powerW * loadOhm), 'V', {
      rule: 'clean-voltage-of-power',
      formula: 'V = sqrt(P * R)',
      citation: "Ohm's law, P = V^2 / R",
      inputs: [
        ['P', powerW, 'W'],
        ['R', loadOhm, 'ohm'],
      ],
    }),
  };
}
