import { type Traced, traced } from '../model/trace.ts';

/** What a device takes and gives while music plays, W. */
export interface PlayingDevice {
  /** Voltage at its terminals times its current, solved. */
  readonly inputW: number;
  /** Average audio power that leaves over its speaker wires; 0 for one that drives no speaker. */
  readonly outputW: number;
  /** True where its maker tells what it draws with music: both are those of his figure. */
  readonly byMaker?: boolean;
}

/** What an amplifier is told to draw with music. */
export interface MeasuredDraw {
  /** Its maker's current (A), at one-eighth of its rated output and at the voltage of its rating (V). */
  readonly musicA: number;
  readonly ratedV: number;
  /** Its rated output as it is loaded (W), and its efficiency at full power. */
  readonly ratedPowerW: number;
  readonly fullEfficiency: number;
}

/**
 * What an amplifier takes and gives by its maker's current with music, W: one-eighth of its rated output leaves it, and it
 * takes the maker's current times his voltage, but no less than by its efficiency at full power.
 */
export function measuredPlaying({
  musicA,
  ratedV,
  ratedPowerW,
  fullEfficiency,
}: MeasuredDraw): PlayingDevice {
  const outputW = ratedPowerW / 8;
  return { inputW: Math.max(musicA * ratedV, outputW / fullEfficiency), outputW, byMaker: true };
}

/**
 * What a device turns into heat, W: input less output (conservation of energy). Not below 0, where rounding of its data
 * would say that it gives more than it takes.
 */
export function deviceLoss({ inputW, outputW, byMaker = false }: PlayingDevice): Traced<number> {
  const value = Math.max(0, inputW - outputW);
  return traced(value, 'W', {
    rule: 'device-loss',
    formula: 'Pin - Pout, music average',
    ...(byMaker
      ? { citation: "conservation of energy; what it draws with music: the part's data" }
      : {
          citation: 'conservation of energy; duty and efficiency: common practice, no source',
          mark: 'cp' as const,
        }),
    inputs: [
      ['Pin', inputW, 'W'],
      ['Pout', outputW, 'W'],
    ],
  });
}
