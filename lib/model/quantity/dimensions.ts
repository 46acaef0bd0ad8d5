/** One dimension that a quantity may have, as a fabricator writes it. */
export interface Dimension {
  /** What the trade calls it. */
  readonly name: string;
  /** Ways of writing one, each as it may stand in a file. */
  readonly examples: readonly string[];
  /** SI unit of the stored number. */
  readonly si: string;
  /** Factor from each written unit to the SI unit. */
  readonly units: Readonly<Record<string, number>>;
  /** True where a value may lie below zero: a position, an angle, a level, a temperature. */
  readonly signed?: boolean;
  /** Far beyond anything in or round a vehicle, in SI: past it a number or its unit is mistyped. */
  readonly greatest: number;
  /** The same downwards, where it is not as far below zero as `greatest` is above. */
  readonly least?: number;
}

/** Metres, exact (NIST SP 811). */
export const inch = 0.0254;
const pound = 0.45359237;

/** Every dimension with the units that may be written. Factors are exact by definition (NIST SP 811). */
export const dimensions = {
  length: {
    name: 'length',
    examples: ['13 5/8 in', '13-5/8"', '346 mm', '12 ft'],
    si: 'm',
    units: { in: inch, '"': inch, ft: 12 * inch, "'": 12 * inch, mm: 1e-3, cm: 1e-2, m: 1 },
    greatest: 1000,
    signed: true,
  },
  mass: {
    name: 'mass',
    examples: ['3.2 kg', '7 lb'],
    si: 'kg',
    units: { kg: 1, g: 1e-3, lb: pound, oz: pound / 16 },
    greatest: 1e4,
  },
  current: {
    name: 'current',
    examples: ['20 A', '300 mA'],
    si: 'A',
    units: { A: 1, mA: 1e-3, kA: 1e3 },
    greatest: 1e5,
  },
  voltage: { name: 'voltage', examples: ['12.6 V'], si: 'V', units: { V: 1, mV: 1e-3 }, greatest: 1000 },
  power: { name: 'power', examples: ['75 W'], si: 'W', units: { W: 1, kW: 1e3 }, greatest: 1e5 },
  frequency: {
    name: 'frequency',
    examples: ['80 Hz', '2.5 kHz'],
    si: 'Hz',
    units: { Hz: 1, kHz: 1e3 },
    greatest: 1e6,
  },
  resistance: {
    name: 'resistance',
    examples: ['4 ohm', '0.2 mohm'],
    si: 'ohm',
    units: { ohm: 1, ohms: 1, mohm: 1e-3, kohm: 1e3 },
    greatest: 1e6,
  },
  time: {
    name: 'time',
    examples: ['20 min', '4 ms'],
    si: 's',
    units: { s: 1, ms: 1e-3, min: 60, h: 3600 },
    greatest: 1000 * 3600,
  },
  torque: {
    name: 'torque',
    examples: ['10 N m', '35 lbf in'],
    si: 'N m',
    units: { 'N m': 1, Nm: 1, 'lbf in': pound * 9.80665 * inch, 'lbf ft': pound * 9.80665 * 12 * inch },
    greatest: 1000,
  },
  charge: {
    name: 'battery capacity',
    examples: ['70 Ah'],
    si: 'A s',
    units: { Ah: 3600 },
    greatest: 1e4 * 3600,
  },
  capacitance: {
    name: 'capacitance',
    examples: ['500 F'],
    si: 'F',
    units: { F: 1, mF: 1e-3 },
    greatest: 1e5,
  },
  inductance: {
    name: 'inductance',
    examples: ['0.35 mH'],
    si: 'H',
    units: { H: 1, mH: 1e-3, uH: 1e-6 },
    greatest: 1,
  },
  angle: { name: 'angle', examples: ['90 deg'], si: 'deg', units: { deg: 1 }, greatest: 3600, signed: true },
  ratio: { name: 'share', examples: ['3 %'], si: '1', units: { '%': 0.01 }, greatest: 10 },
  volume: {
    name: 'volume',
    examples: ['28 L', '1 ft3'],
    si: 'm3',
    units: { L: 1e-3, l: 1e-3, ft3: (12 * inch) ** 3, in3: inch ** 3, m3: 1 },
    greatest: 1000,
  },
  area: {
    name: 'area',
    examples: ['0.8 m2', '9 ft2'],
    si: 'm2',
    units: { m2: 1, cm2: 1e-4, ft2: (12 * inch) ** 2, in2: inch ** 2 },
    greatest: 1000,
  },
  airflow: {
    name: 'flow of air',
    examples: ['30 m3/h', '18 cfm'],
    si: 'm3/s',
    units: { 'm3/h': 1 / 3600, 'm3/s': 1, 'L/s': 1e-3, cfm: (12 * inch) ** 3 / 60 },
    greatest: 10,
  },
  heatTransfer: {
    name: 'heat that a wall passes',
    examples: ['3.5 W/m2K'],
    si: 'W/m2K',
    units: { 'W/m2K': 1 },
    greatest: 1000,
  },
  density: { name: 'density', examples: ['680 kg/m3'], si: 'kg/m3', units: { 'kg/m3': 1 }, greatest: 3e4 },
  stress: {
    name: 'elastic modulus',
    examples: ['9 GPa'],
    si: 'Pa',
    units: { Pa: 1, MPa: 1e6, GPa: 1e9 },
    greatest: 1e12,
  },
  lineResistance: {
    name: 'resistance of a length',
    examples: ['1.3 mohm/m'],
    si: 'ohm/m',
    units: { 'ohm/m': 1, 'mohm/m': 1e-3, 'ohm/km': 1e-3, 'ohm/1000ft': 1 / 304.8, 'mohm/ft': 1e-3 / 0.3048 },
    greatest: 100,
  },
  temperature: {
    name: 'temperature',
    examples: ['85 C'],
    si: 'C',
    units: { C: 1 },
    greatest: 1000,
    least: -100,
    signed: true,
  },
  level: { name: 'level', examples: ['3 dB'], si: 'dB', units: { dB: 1 }, greatest: 300, signed: true },
} as const satisfies Record<string, Dimension>;
export type DimensionName = keyof typeof dimensions;
export const dimensionNames: readonly DimensionName[] = Object.keys(dimensions).filter(
  (name): name is DimensionName => name in dimensions,
);
