import { type Traced, traced } from '../model/trace.ts';

/** What a device takes and gives while music plays, W. */
export interface PlayingDevice {
  /** Voltage at its terminals times its current, solved. */
  readonly inputW: number;
  /** Average audio power that leaves over its speaker wires; 0 for one that drives no speaker. */
  readonly outputW: number;
}

/**
 * What a device turns into heat, W: input less output (conservation of energy). Not below 0, where rounding of its data
 * would say that it gives more than it takes.
 */
export function deviceLoss({ inputW, outputW }: PlayingDevice): Traced<number> {
  const value = Math.max(0, inputW - outputW);
  return traced(value, 'W', {
    rule: 'device-loss',
    formula: 'Pin - Pout, music average',
    citation: 'conservation of energy; duty and efficiency: common practice, no source',
    mark: 'cp',
    inputs: [
      ['Pin', inputW, 'W'],
      ['Pout', outputW, 'W'],
    ],
  });
}
