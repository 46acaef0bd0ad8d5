/** What a figure is read on, or set by: a sheet prints no more digits than it shows. */
export interface Instrument {
  /** The finest step that it shows, in the unit of the figure. */
  readonly finest: number;
  /** Digits that count, at most: a range switch takes the rest. */
  readonly digits: number;
  /** True where it shows the noughts at the end too. */
  readonly noughts?: boolean;
}

/**
 * What stands on a bench, as common meters and tools show it (common practice, no source). What no tool shows, such as
 * an area or a heat, is told to the digits that anyone could check.
 */
export const instruments = {
  /** Volts of a supply or a signal, 20 V range of a meter with three and a half digits. */
  voltmeter: { finest: 0.01, digits: 4, noughts: true },
  /** Drops and other small voltages: the 2 V range. */
  millivolts: { finest: 0.001, digits: 3, noughts: true },
  /** Small voltages told in millivolts. */
  millivoltmeter: { finest: 1, digits: 3 },
  clamp: { finest: 0.1, digits: 3 },
  /** Turn-on and key-off currents, in series. */
  milliammeter: { finest: 0.001, digits: 3 },
  /** The same told in milliamperes. */
  'milliampere-range': { finest: 1, digits: 3 },
  ohmmeter: { finest: 0.1, digits: 3, noughts: true },
  wattmeter: { finest: 1, digits: 3 },
  /** Tones and corners are set and counted to the hertz. */
  generator: { finest: 1, digits: 5 },
  kilohertz: { finest: 0.01, digits: 4 },
  /** Levels as ratios of a true-RMS meter. */
  levels: { finest: 0.1, digits: 3, noughts: true },
  /** A processor sets its delays by hundredths. */
  processor: { finest: 0.01, digits: 4, noughts: true },
  'torque-wrench': { finest: 0.1, digits: 3 },
  scale: { finest: 0.1, digits: 3, noughts: true },
  'dial-gauge': { finest: 0.01, digits: 2 },
  thermometer: { finest: 1, digits: 3 },
  clock: { finest: 1, digits: 4 },
  protractor: { finest: 1, digits: 3 },
  /** Reckoned from readings that count three digits. */
  reckoned: { finest: 0.001, digits: 3 },
  /** A share of a voltage, reckoned from two readings. */
  shares: { finest: 0.1, digits: 3, noughts: true },
  /** A reading over its prediction, as one says it. */
  ratio: { finest: 0.01, digits: 2 },
  /** A ratio or a count as a message tells it. */
  plain: { finest: 1e-9, digits: 4 },
  wholes: { finest: 1, digits: 4 },
} as const satisfies Record<string, Instrument>;

export type InstrumentName = keyof typeof instruments;

/** The step that an instrument shows a value in: its finest, or coarser where the value has more digits than it shows. */
export function stepOf(value: number, name: InstrumentName): number {
  const { finest, digits } = instruments[name];
  if (value === 0) return finest;
  // A millionth is left out of the count: 9.9999999 has the digits of 10.
  const magnitude = Math.floor(Math.log10(Math.abs(value) * (1 + 1e-9)));
  return Math.max(finest, 10 ** (magnitude - digits + 1));
}
