import type { Units } from '../vocabulary.ts';
import { type Direction, wholeSteps } from './safe-rounding.ts';

const inchM = 0.0254;

/** How a shop writes lengths. */
export interface LengthStyle {
  /** The system that comes first; the other stands beside it. */
  readonly system: 'inch' | 'mm';
  /** The finest part of an inch on the shop's tape: `16` for 1/16 in. */
  readonly fraction: 16 | 32;
  /** Decimals of a millimetre. Default 0. */
  readonly mmDecimals?: 0 | 1;
  /** From 12 in on, write `12 ft 3 5/8 in`; for wire, not for boards. Default no. */
  readonly feet?: boolean;
  /** Which way a length that lies between two steps is written. Default to the nearest. */
  readonly direction?: Direction;
}

/** How a shop writes lengths, by its units and its tape. */
export function lengthStyle({
  units,
  fraction,
}: {
  readonly units: Units;
  readonly fraction: LengthStyle['fraction'];
}): LengthStyle {
  return { system: units === 'inch' ? 'inch' : 'mm', fraction };
}

/** One length in every form that a sheet shows. */
export interface LengthText {
  /** The form that the shop reads first. */
  readonly primary: string;
  /** `13 5/8 in`, to 1/16 or 1/32. */
  readonly fraction: string;
  /** `13.625 in`, to 0.001 in. */
  readonly decimal: string;
  /** `346 mm`, to 1 or 0.1 mm. */
  readonly mm: string;
  /** What the primary form says, less the true length, in metres; 0 where it is exact. */
  readonly roundedByM: number;
}

/**
 * Writes a length (metres) as fraction, decimal inch and millimetre, each rounded on its own from the true
 * length in the direction of its style (to the nearest step with halves away from zero, or up, or down), so that no
 * rounding is built upon another. The inch is 25.4 mm exactly (NIST SP 811). Throws on a length that is not finite: that is a bug of the caller.
 */
export function formatLength(lengthM: number, style: LengthStyle): LengthText {
  if (!Number.isFinite(lengthM)) throw new RangeError(`a length of ${lengthM} can't be written`);
  const { direction = 'nearest', mmDecimals = 0 } = style;
  const counted = (value: number, steps: number) => wholeSteps(value * steps, direction);
  const parts = counted(lengthM / inchM, style.fraction);
  const mm = counted(lengthM * 1000, 10 ** mmDecimals) / 10 ** mmDecimals;
  const fraction = fractionText(parts, style.fraction, style.feet ?? false);
  const mmText = `${mm.toFixed(mmDecimals)} mm`;
  const shownM = style.system === 'inch' ? (parts / style.fraction) * inchM : mm / 1000;
  return {
    primary: style.system === 'inch' ? fraction : mmText,
    fraction,
    decimal: `${decimalText(counted(lengthM / inchM, 1000) / 1000)} in`,
    mm: mmText,
    // Nought added turns -0 into 0.
    roundedByM: Number((shownM - lengthM).toFixed(9)) + 0,
  };
}

function fractionText(parts: number, steps: number, feet: boolean): string {
  const sign = parts < 0 ? '-' : '';
  const count = Math.abs(parts);
  const perFoot = 12 * steps;
  if (!feet || count < perFoot) return `${sign}${inchText(count, steps)} in`;
  const rest = count % perFoot;
  const wholeFeet = `${sign}${Math.floor(count / perFoot)} ft`;
  return rest === 0 ? wholeFeet : `${wholeFeet} ${inchText(rest, steps)} in`;
}

/** `13 5/8` of 218 sixteenths: whole, then the fraction in lowest terms. */
export function inchText(count: number, steps: number): string {
  const whole = Math.floor(count / steps);
  let over = count % steps;
  let under = steps;
  if (over === 0) return String(whole);
  while (over % 2 === 0) {
    over /= 2;
    under /= 2;
  }
  return whole === 0 ? `${over}/${under}` : `${whole} ${over}/${under}`;
}

/** Up to three decimals, at least one, so that a decimal inch is never taken for a whole one. */
function decimalText(value: number): string {
  return value.toFixed(3).replace(/0{1,2}$/, '');
}

/**
 * A dimension as it stands on a drawing, without unit words (the sheet's note tells them): `13 5/8 (13.625)
 * [346]` for a shop that reads inches, `346 [13 5/8]` for one that reads millimetres. Whole inches need no
 * decimal beside them, and the datum is a plain `0`.
 */
export function dimensionText(lengthM: number, style: LengthStyle): string {
  if (lengthM === 0) return '0';
  const text = formatLength(lengthM, { ...style, feet: false });
  const fraction = withoutUnit(text.fraction);
  const decimal = withoutUnit(text.decimal);
  const mm = `[${withoutUnit(text.mm)}]`;
  if (style.system === 'mm') return `${withoutUnit(text.mm)} [${fraction}]`;
  return decimal === `${fraction}.0` ? `${fraction} ${mm}` : `${fraction} (${decimal}) ${mm}`;
}

function withoutUnit(text: string): string {
  return text.replace(/ (in|mm)$/, '');
}

/** The note that goes with `dimensionText`: its steps, and which way each kind of length is rounded to them. */
export function dimensionNote(style: LengthStyle): string {
  const inches = `inches to 1/${style.fraction}`;
  const mm = style.mmDecimals === 1 ? 'mm to 0.1' : 'whole mm';
  const said = style.system === 'inch' ? `${inches} (decimal) [${mm}]` : `${mm} [${inches}]`;
  return `Dimensions: ${said}, rounded to nearest; what a part asks for up, what is free down`;
}
