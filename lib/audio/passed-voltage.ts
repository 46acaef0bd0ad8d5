import { type Traced, traced } from '../model/trace.ts';

/** What arrives at an input of a device, and what a line output passes on of it. */
export interface PassedSignal {
  /** Greatest clean voltage at the input (V, RMS). */
  readonly arrivingV: number;
  /** The share of it that comes out, by the maker. */
  readonly share: number;
  /** The most that the line output gives clean (V, RMS); null where its maker does not say. */
  readonly mostV: number | null;
}

/**
 * What a line output gives (V, RMS) while what arrives at its input is clean: the share of it that its maker states, and
 * no more than the most that the output gives. It holds ahead of gain and filters alone. Source: the amplifier's data.
 */
export function passedVoltage({ arrivingV, share, mostV }: PassedSignal): Traced<number> {
  const bounds = mostV === null ? [] : [mostV];
  return traced(Math.min(share * arrivingV, ...bounds), 'V', {
    rule: 'passed-voltage',
    formula: mostV === null ? 'V = k * Vin' : 'V = min(k * Vin, Vmost)',
    citation: "the amplifier's data",
    inputs: [
      ['k', share],
      ['Vin', arrivingV, 'V'],
      ...(mostV === null ? [] : [['Vmost', mostV, 'V'] as const]),
    ],
  });
}
