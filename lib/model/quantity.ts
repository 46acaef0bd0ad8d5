/**
 * Quantities as a fabricator writes them: a number, then a unit. Inside, every one is a plain number of
 * its SI unit; the brand keeps metres from being passed for amperes.
 */
declare const unitOf: unique symbol;
export type Quantity<U extends string> = number & { readonly [unitOf]: U };

/** True for every finite number; gives the number its unit in the type. */
export function isQuantity<U extends string>(value: number): value is Quantity<U> {
  return Number.isFinite(value);
}

interface Dimension {
  /** What the trade calls it. */
  readonly name: string;
  /** Example for error messages. */
  readonly example: string;
  /** SI unit of the stored number. */
  readonly si: string;
  /** Factor from each written unit to the SI unit. */
  readonly units: Readonly<Record<string, number>>;
}

const inch = 0.0254;
const pound = 0.45359237;

/** Every dimension with the units that may be written. Factors are exact by definition (NIST SP 811). */
export const dimensions = {
  length: {
    name: 'length',
    example: '13 5/8 in, 13-5/8", 346 mm or 12 ft',
    si: 'm',
    units: { in: inch, '"': inch, ft: 12 * inch, "'": 12 * inch, mm: 1e-3, cm: 1e-2, m: 1 },
  },
  mass: {
    name: 'mass',
    example: '3.2 kg or 7 lb',
    si: 'kg',
    units: { kg: 1, g: 1e-3, lb: pound, oz: pound / 16 },
  },
  current: { name: 'current', example: '20 A or 300 mA', si: 'A', units: { A: 1, mA: 1e-3, kA: 1e3 } },
  voltage: { name: 'voltage', example: '12.6 V', si: 'V', units: { V: 1, mV: 1e-3 } },
  power: { name: 'power', example: '75 W', si: 'W', units: { W: 1, kW: 1e3 } },
  frequency: { name: 'frequency', example: '80 Hz or 2.5 kHz', si: 'Hz', units: { Hz: 1, kHz: 1e3 } },
  resistance: {
    name: 'resistance',
    example: '4 ohm or 0.2 mohm',
    si: 'ohm',
    units: { ohm: 1, ohms: 1, mohm: 1e-3, kohm: 1e3 },
  },
  time: { name: 'time', example: '20 min or 4 ms', si: 's', units: { s: 1, ms: 1e-3, min: 60, h: 3600 } },
  torque: {
    name: 'torque',
    example: '10 N m or 35 lbf in',
    si: 'N m',
    units: { 'N m': 1, Nm: 1, 'lbf in': pound * 9.80665 * inch, 'lbf ft': pound * 9.80665 * 12 * inch },
  },
  charge: { name: 'battery capacity', example: '70 Ah', si: 'C', units: { Ah: 3600 } },
  angle: { name: 'angle', example: '90 deg', si: 'deg', units: { deg: 1 } },
  ratio: { name: 'share', example: '3 %', si: '1', units: { '%': 0.01 } },
  volume: {
    name: 'volume',
    example: '28 L or 1 ft3',
    si: 'm3',
    units: { L: 1e-3, l: 1e-3, ft3: (12 * inch) ** 3, in3: inch ** 3, m3: 1 },
  },
  density: { name: 'density', example: '680 kg/m3', si: 'kg/m3', units: { 'kg/m3': 1 } },
  stress: { name: 'elastic modulus', example: '9 GPa', si: 'Pa', units: { Pa: 1, MPa: 1e6, GPa: 1e9 } },
  lineResistance: {
    name: 'resistance of a length',
    example: '1.3 mohm/m',
    si: 'ohm/m',
    units: { 'ohm/m': 1, 'mohm/m': 1e-3, 'ohm/km': 1e-3, 'ohm/1000ft': 1 / 304.8, 'mohm/ft': 1e-3 / 0.3048 },
  },
  temperature: { name: 'temperature', example: '85 C', si: 'C', units: { C: 1 } },
  level: { name: 'level', example: '3 dB', si: 'dB', units: { dB: 1 } },
} as const satisfies Record<string, Dimension>;
export type DimensionName = keyof typeof dimensions;

export type Metres = Quantity<'m'>;
export type Kilograms = Quantity<'kg'>;
export type Amperes = Quantity<'A'>;
export type Volts = Quantity<'V'>;
export type Watts = Quantity<'W'>;
export type Hertz = Quantity<'Hz'>;
export type Ohms = Quantity<'ohm'>;
export type Seconds = Quantity<'s'>;

/** What went wrong with a written quantity, in the trade's words. */
export interface QuantityFault {
  readonly fault: string;
}

const number = String.raw`(?:\d+(?:\.\d+)?[ -]\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+)`;
const term = new RegExp(`^(${number})\\s*(\\D.*)$`);
const feetAndInches = new RegExp(`^(\\d+)\\s*(?:ft|')\\s*(${number})\\s*(?:in|")$`);

/**
 * Reads a written number: `13`, `13.5`, `5/8`, `13 5/8`, `13-5/8`. Returns null where it is none of
 * these, or where the fraction is not a proper one.
 */
export function parseNumber(text: string): number | null {
  const mixed = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(text);
  if (!mixed) return /^(?:\d+(?:\.\d+)?|\.\d+)$/.test(text) ? Number(text) : null;
  const [, whole, over, under] = mixed;
  if (Number(under) === 0 || Number(over) >= Number(under)) return null;
  return Number(whole ?? 0) + Number(over) / Number(under);
}

/**
 * Reads a quantity of one dimension into its SI unit. A bare number is a fault, never a guess; so is a
 * unit of another dimension. Lengths may join feet and inches, and may be negative (positions).
 */
export function parseQuantity(text: string, dimensionName: DimensionName): number | QuantityFault {
  const dimension: Dimension = dimensions[dimensionName];
  const trimmed = text.trim();
  const negative = trimmed.startsWith('-');
  if (
    negative &&
    dimensionName !== 'length' &&
    dimensionName !== 'level' &&
    dimensionName !== 'angle' &&
    dimensionName !== 'temperature'
  )
    return { fault: `a ${dimension.name} can't be negative` };
  const body = negative ? trimmed.slice(1).trim() : trimmed;
  const magnitude =
    dimensionName === 'length'
      ? (parseFeetAndInches(body) ?? parseTerm(body, dimension))
      : parseTerm(body, dimension);
  if (typeof magnitude !== 'number') return magnitude;
  // Twelve digits: 13 5/8 in is 0.346075 m, not 0.34607499999999997.
  return Number((negative ? -magnitude : magnitude).toPrecision(12));
}

function parseFeetAndInches(text: string): number | QuantityFault | null {
  const both = feetAndInches.exec(text);
  if (!both) return null;
  const inches = parseNumber(both[2] ?? '');
  if (inches === null) return { fault: `"${both[2]}" is not a proper fraction` };
  if (inches >= 12) return { fault: `"${text}" has 12 inches or more beside its feet` };
  return (Number(both[1]) * 12 + inches) * inch;
}

function parseTerm(text: string, dimension: Dimension): number | QuantityFault {
  if (parseNumber(text) !== null) return { fault: `"${text}" has no unit` };
  if (/^\d{1,3}(,\d{3})+/.test(text)) return { fault: `"${text}" has a comma in its number: leave it out` };
  const match = term.exec(text);
  if (!match) return { fault: `"${text}" is not a ${dimension.name}` };
  const [, digits = '', unit = ''] = match;
  const value = parseNumber(digits);
  if (value === null) return { fault: `"${digits}" is not a proper fraction` };
  const factor = dimension.units[unit];
  if (factor === undefined)
    return {
      fault: `"${unit}" is not a unit of ${dimension.name} (known: ${Object.keys(dimension.units).join(', ')})`,
    };
  return value * factor;
}
