import { z } from 'zod';
import type { WireSize } from '../quantity/wire-size.ts';

/**
 * How a field of the entries of a row runs along it. `pitch`: the first place, with the distance from one to the next
 * beside it. `list`: a list has one value for each. `names`: names of a row, one for each. `groups`: a list has some
 * names for each. `pairs`: a role of a pair makes the two terminals of each.
 */
export type Along = 'pitch' | 'list' | 'names' | 'groups' | 'pairs';

/**
 * A shorter way of writing a value, which the reader opens out before anything else looks at it. The schema tells the
 * value as it is held; what a file may write beside it follows from the form (`fileSchema`).
 */
export type ShortForm =
  /** Values by name, of which one name may stand for several: `CH1..4`. */
  | { readonly form: 'rows'; readonly along: Readonly<Record<string, Along>> }
  /** `{ from, to }` as one text: `8 AWG to 4 AWG`. */
  | { readonly form: 'range' }
  /** A list of two fields as a table from one to the other: `{ 4 ohm: 75 W }`. */
  | { readonly form: 'table'; readonly key: string; readonly value: string }
  /** Names in a list, of which one may stand for several: `[1..4]`; also without the list. */
  | { readonly form: 'names' }
  /** The holes in the four corners of a part, by their distance from its edges. */
  | { readonly form: 'corners' }
  /** A knob or a switch, with what goes without saying for what it does. */
  | { readonly form: 'control' }
  /** An output of an amplifier by the name of its pair. */
  | { readonly form: 'channel' }
  /** A coil whose terminals bear its name. */
  | { readonly form: 'coil' }
  /** Corners of a rectangle by its width and height. */
  | { readonly form: 'rectangle' }
  /** A thing of a vehicle that is called by its id in words where it has no title. */
  | { readonly form: 'titled' }
  /** A stretch of a way as one text: `sill 36 in`. */
  | { readonly form: 'stretch' }
  /** A thing by the one measure that it can't be without: `30 m3/h` for `{ air: 30 m3/h }`. */
  | { readonly form: 'measure'; readonly field: string }
  /** One of a few words, also by other words for the same. */
  | { readonly form: 'words'; readonly words: Readonly<Record<string, string>> };

const forms = z.registry<ShortForm>();

/** Says how a value may also be written. Copies of the schema keep it. */
export function shortened<S extends z.ZodType>(schema: S, form: ShortForm): S {
  forms.add(schema, form);
  return schema;
}

/** Values by name, of which one name may stand for several, with what runs along such a row. */
export function rows<S extends z.ZodType>(record: S, along: Readonly<Record<string, Along>> = {}): S {
  return shortened(record, { form: 'rows', along });
}

/** A list of names, of which one may stand for several. */
export function names<S extends z.ZodType>(list: S): S {
  return shortened(list, { form: 'names' });
}

/** What a range runs between: quantities, or conductor sizes. */
type End = number | WireSize;
interface Range {
  readonly from?: End | undefined;
  readonly to: End;
}

/** A range from a smaller to a larger quantity, or from a thinner to a thicker conductor, that may be written as one text. */
export function span<S extends z.ZodType<Range>>(range: S): S {
  const rising = range.refine(
    ({ from, to }) => from === undefined || amountOf(from) <= amountOf(to),
    'runs downwards: the smaller value, or the thinner conductor, stands first (from:), the larger one behind it (to:)',
  );
  return shortened(rising, { form: 'range' });
}

function amountOf(end: End): number {
  return typeof end === 'number' ? end : end.areaMm2;
}

/** The word of a file that another word is read as, in large or small letters; null where it is none of them. */
export function wordFor(words: Readonly<Record<string, string>>, written: string): string | null {
  const plain = written
    .trim()
    .toLowerCase()
    .replace(/[\s_]+/g, '-');
  return Object.entries(words).find(([word]) => word.toLowerCase() === plain)?.[1] ?? null;
}

/** The short form of a schema; null where it has none. */
export function shortFormOf(schema: z.core.$ZodType): ShortForm | null {
  return forms.get(schema) ?? null;
}

/** Roles that two terminals of a part have together, by what a row of them is written with. */
export const pairRoles = {
  supply: ['supply-positive', 'supply-negative'],
  source: ['source-positive', 'source-negative'],
  'speaker-out': ['speaker-out-positive', 'speaker-out-negative'],
  'speaker-in': ['speaker-in-positive', 'speaker-in-negative'],
  coil: ['coil-positive', 'coil-negative'],
} as const;
export type PairRole = keyof typeof pairRoles;

/** True for the role of a pair whose terminals are called by the name that they share: CH1 is CH1+ and CH1-. */
export function isNamedPair(role: PairRole): boolean {
  return role !== 'supply' && role !== 'source';
}

export function isPairRole(role: unknown): role is PairRole {
  return typeof role === 'string' && Object.hasOwn(pairRoles, role);
}
