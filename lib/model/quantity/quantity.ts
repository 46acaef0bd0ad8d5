import { withArticle } from '../printed/with-article.ts';
import type { Unreadable } from '../problem.ts';
import { type Dimension, type DimensionName, dimensionNames, dimensions, inch } from './dimensions.ts';
import { inchText } from './length-text.ts';
import { otherlyWritten } from './mistyped-quantity.ts';
import { plainDigits } from './plain-digits.ts';

export { type DimensionName, dimensionNames, dimensions };

/**
 * Quantities as a fabricator writes them: a number, then a unit. Inside, every one is a plain number of
 * its SI unit; the brand keeps metres from being passed for amperes.
 */
declare const unitOf: unique symbol;
export type Quantity<U extends string> = number & OfUnit<U>;
/** The brand. It has a name, so that a declaration of types can tell of it. */
export interface OfUnit<U extends string> {
  readonly [unitOf]: U;
}

/** True for every finite number; gives the number its unit in the type. */
export function isQuantity<U extends string>(value: number): value is Quantity<U> {
  return Number.isFinite(value);
}

export type Metres = Quantity<'m'>;
export type Kilograms = Quantity<'kg'>;
export type Volts = Quantity<'V'>;
export type Seconds = Quantity<'s'>;

/** What a dimension is called with its article: `a length`, `an angle`. */
export function oneOf(dimensionName: DimensionName): string {
  const { name } = dimensions[dimensionName];
  return withArticle(name);
}

/** The ways of writing a dimension as one phrase: `20 A or 300 mA`. */
export function exampleText(dimensionName: DimensionName): string {
  const examples: readonly string[] = dimensions[dimensionName].examples;
  const last = examples.at(-1) ?? '';
  return examples.length < 2 ? last : `${examples.slice(0, -1).join(', ')} or ${last}`;
}

const number = String.raw`(?:\d+(?:\.\d+)?[ -]\d+\/\d+|\d+\/\d+|\d+(?:\.\d+)?|\.\d+)`;
const term = new RegExp(`^(${number})\\s*(\\D.*)$`);
/** `5'3"`, `5 ft 3 in`, and with the hyphen of drawings, `5'-3 5/8"`. */
const feetAndInches = new RegExp(`^(\\d+)\\s*(?:ft|')\\s*(?:-\\s*)?(${number})\\s*(?:in|")$`);

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
 * Reads a quantity of one dimension into its SI unit, to twelve digits. A bare number is a fault, never a
 * guess; so is a unit of another dimension, and a number too large to hold. Lengths may join feet and
 * inches. Only signed dimensions may carry a sign.
 */
export function parseQuantity(text: string, dimensionName: DimensionName): number | Unreadable {
  const spaced = text.trim().replace(/\s+/g, ' ');
  const read = plainQuantity(spaced, dimensionName);
  if (typeof read === 'number') return read;
  const reads = (one: string) => typeof plainQuantity(one, dimensionName) === 'number';
  const other = otherlyWritten(spaced, dimensions[dimensionName], reads);
  if (other === null) return read;
  const { says, isWhole, meant } = other;
  return { unreadable: says, ...(isWhole && { isMended: true }), ...(meant !== undefined && { meant }) };
}

/** A quantity that was read already, or none of the dimension: null, without a look at what is wrong with it. */
export function quantityIn(text: string, dimensionName: DimensionName): number | null {
  const spaced = text.trim().replace(/\s+/g, ' ');
  if (!Object.keys(dimensions[dimensionName].units).some((unit) => spaced.endsWith(unit))) return null;
  const read = plainQuantity(spaced, dimensionName);
  return typeof read === 'number' ? read : null;
}

/** The same of a text with single spaces, without a look at what else may be meant by it. */
function plainQuantity(spaced: string, dimensionName: DimensionName): number | Unreadable {
  const dimension: Dimension = dimensions[dimensionName];
  const sign = /^[-+]/.exec(spaced)?.[0];
  if (sign && !dimension.signed)
    return sign === '-'
      ? { unreadable: `${oneOf(dimensionName)} can't be negative` }
      : { unreadable: `"${spaced}" begins with a sign: leave out the +` };
  const body = sign ? spaced.slice(1).trim() : spaced;
  const magnitude =
    dimensionName === 'length'
      ? (parseFeetAndInches(body) ?? parseTerm(body, dimensionName))
      : parseTerm(body, dimensionName);
  if (typeof magnitude !== 'number') return magnitude;
  if (!Number.isFinite(magnitude)) return { unreadable: `"${shortened(spaced)}" is too large a number` };
  // Twelve digits: 13 5/8 in is 0.346075 m, not 0.34607499999999997.
  return Number((sign === '-' ? -magnitude : magnitude).toPrecision(12));
}

/** True for a text that is a number with the unit of some dimension. */
export function isMeasure(text: string): boolean {
  // Most texts are words: they need not be tried in every dimension.
  return (
    /^\s*[-+]?\s*[\d.]/.test(text) &&
    dimensionNames.some((name) => typeof plainQuantity(text.trim().replace(/\s+/g, ' '), name) === 'number')
  );
}

const twelveDigits = plainDigits(12);

/**
 * Writes a held number (SI) so that `parseQuantity` reads it back: in the SI unit where that may be written,
 * else in the first unit of the dimension; never with a power of ten.
 */
export function writeQuantity(value: number, dimensionName: DimensionName): string {
  const units = Object.entries<number>(dimensions[dimensionName].units);
  const [unit, factor] = units.find(([, one]) => one === 1) ?? units[0] ?? ['', 1];
  return `${twelveDigits(value / factor)} ${unit}`;
}

/**
 * What is wrong with a held number (SI) that is far beyond anything in a vehicle, such as a length of a thousand
 * kilometres: what was meant is not guessed. Null where it may be meant.
 */
export function beyondVehicle(value: number, dimensionName: DimensionName): string | null {
  const { greatest, least = -greatest }: Dimension = dimensions[dimensionName];
  if (value >= least && value <= greatest) return null;
  const bound = writeQuantity(value > greatest ? greatest : least, dimensionName);
  return `is ${value > greatest ? 'more' : 'less'} than ${bound}, beyond anything in a vehicle: check the number and its unit`;
}

function parseFeetAndInches(text: string): number | Unreadable | null {
  const both = feetAndInches.exec(text);
  if (!both) return null;
  const inches = parseNumber(both[2] ?? '');
  if (inches === null) return { unreadable: `"${both[2]}" is not a proper fraction` };
  if (inches >= 12) return { unreadable: `"${text}" has 12 inches or more beside its feet` };
  return tapeFault(both[2] ?? '', inches) ?? (Number(both[1]) * 12 + inches) * inch;
}

function parseTerm(text: string, dimensionName: DimensionName): number | Unreadable {
  if (parseNumber(text) !== null) return { unreadable: `"${shortened(text)}" has no unit` };
  const match = term.exec(text);
  if (!match) return { unreadable: `"${shortened(text)}" is not ${oneOf(dimensionName)}` };
  const [, digits = '', unit = ''] = match;
  const value = parseNumber(digits);
  if (value === null) return { unreadable: `"${digits}" is not a proper fraction` };
  const units: Readonly<Record<string, number>> = dimensions[dimensionName].units;
  // Own keys only: "constructor" is not a unit.
  const factor = Object.hasOwn(units, unit) ? units[unit] : undefined;
  if (factor === undefined) return { unreadable: unitFault(unit, dimensionName) };
  const isInches = factor === inch || factor === 12 * inch;
  return (isInches ? tapeFault(digits, (value * factor) / inch) : null) ?? value * factor;
}

/** The finest part of an inch that a tape or a set of drills has. */
const finestPart = 64;

/** What is wrong with a fraction of an inch that no tape has, such as a seventh; null where one has it. */
function tapeFault(written: string, valueIn: number): Unreadable | null {
  const parts = valueIn * finestPart;
  if (!written.includes('/') || Math.abs(parts - Math.round(parts)) < 1e-6) return null;
  const below = inchText(Math.floor(parts), finestPart);
  const above = inchText(Math.ceil(parts), finestPart);
  return {
    unreadable: `"${written}" is a fraction that no tape has, between ${below} in and ${above} in: read it again in halves, quarters, eighths, 16ths, 32nds or 64ths, or write it as a decimal`,
    isMended: true,
  };
}

function unitFault(unit: string, dimensionName: DimensionName): string {
  const { name, units } = dimensions[dimensionName];
  const known = Object.keys(units);
  const alike = known.filter((one) => one.toLowerCase() === unit.toLowerCase());
  const hint = alike.length === 1 ? `; did you mean ${alike[0]}?` : '';
  return `"${shortened(unit)}" is not a unit of ${name} (known: ${known.join(', ')})${hint}`;
}

function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}...` : text;
}
