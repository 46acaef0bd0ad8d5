import { dimensionText, formatLength, type LengthStyle, type LengthText } from '../quantity/length-text.ts';
import { type Direction, wholeSteps } from '../quantity/safe-rounding.ts';

/** A kind of length: which way it may err on a tape. */
export interface LengthKind {
  readonly direction: Direction;
  /** Why that is the safe way; for what is told to the nearest, why neither side is the safer one. */
  readonly why: string;
}

const inchM = 0.0254;
const cut = 'saw and tape follow one line: both sides are wrong alike';

/** Every kind of length that a sheet, a drawing or a table prints, holes apart. */
export const lengths = {
  position: { direction: 'nearest', why: 'a place: both sides are wrong alike' },
  cut: { direction: 'nearest', why: cut },
  wire: { direction: 'up', why: 'a conductor that is too short is lost, and the rest goes into its loop' },
  'length-taken': { direction: 'up', why: 'what is taken from the shelf is never told as less' },
  'length-left': { direction: 'down', why: 'what lies on the shelf is never told as more' },
  way: { direction: 'up', why: 'what is laid along it must reach' },
  size: { direction: 'up', why: 'a part asks for the room that it takes' },
  'room-asked': { direction: 'up', why: 'a gap is never told as narrower than it must be' },
  'room-free': { direction: 'down', why: 'room is never told as wider than it is' },
  overlap: { direction: 'up', why: 'what has to give way is never told as less' },
  'at-most': { direction: 'down', why: 'what is allowed at most is never told as more' },
  'from-source': { direction: 'up', why: 'it is held against the most that is allowed' },
  measured: { direction: 'nearest', why: 'it is measured again and held against what stands here' },
  made: { direction: 'nearest', why: 'a size as it is made: it is recognised, not cut' },
  strip: {
    direction: 'nearest',
    why: 'too long is bare and too short is not held: both sides are wrong alike',
  },
  covered: { direction: 'up', why: 'what covers is never cut too short' },
  told: {
    direction: 'nearest',
    why: 'a message names both sides of a comparison, which is made with the exact lengths',
  },
  'depth-drilled': { direction: 'down', why: 'a hole that is too deep comes through' },
} as const satisfies Record<string, LengthKind>;

export type LengthName = keyof typeof lengths;

/** A length in every form that a sheet shows, rounded to its safe side. */
export function printedLength(name: LengthName, lengthM: number, style: LengthStyle): LengthText {
  return formatLength(lengthM, { ...style, direction: lengths[name].direction });
}

/** A length as it stands on a drawing, rounded to its safe side. */
export function printedDimension(name: LengthName, lengthM: number, style: LengthStyle): string {
  return dimensionText(lengthM, { ...style, direction: lengths[name].direction });
}

/** A length of wire in metres, to the centimetre: `3.47 m`. */
export function printedMetres(name: LengthName, lengthM: number): string {
  return `${(wholeSteps(lengthM * 100, lengths[name].direction) / 100).toFixed(2)} m`;
}

/** A length of wire in feet and whole inches, at least one: `3 ft 11 in`. */
export function printedInches(name: LengthName, lengthM: number): string {
  const inches = Math.max(1, wholeSteps(lengthM / inchM, lengths[name].direction));
  return formatLength(inches * inchM, { system: 'inch', fraction: 16, feet: true }).primary;
}
