import type { FindingId } from '../../lib/model/findings/index.ts';
import type { SheetId } from '../../lib/publish/sheets/index.ts';
import { type Edit, gone, type JobSheet, type Sheet, sheets } from './shop.ts';

/** Why no tool can tell a slip: who reads the field, or where a person holds it against the vehicle. */
export interface Untold {
  readonly untold: UntoldReason;
  /** The sheet on which a person checks what only a tape or an eye can tell. */
  readonly sheet?: SheetId;
}
/** A free text or a name that only people read; a fact that a person takes from the vehicle or the shelf. */
export const untoldReasons = ['read by people alone', 'seen in the vehicle alone'] as const;
export type UntoldReason = (typeof untoldReasons)[number];

/** What tells a slip: a finding, an error of reading with these words, or nothing, for a reason. */
export type Told = FindingId | RegExp | Untold;

/** Further values of a row, by file and keys: `wired/devices/amp/fuse`. */
export type Values = Readonly<Record<string, unknown>>;

/** A value that is written wrong: where, what the apprentice got wrong, what stands there then, what tells it. */
export type Row = readonly [
  at: string,
  slip: string,
  write: unknown,
  told: Told,
  more?: {
    /** The job that is planned; the one of the file where left out, `wired` for a slip outside of jobs. */
    readonly job?: JobSheet;
    /** What else stands in the shop, before the slip and after it. */
    readonly scene?: Values;
    /** What is written with it, by the same slip. */
    readonly too?: Values;
  },
];

export const byPeople: Untold = { untold: 'read by people alone' };
export const byTape = (sheet: SheetId): Untold => ({ untold: 'seen in the vehicle alone', sheet });

function isSheet(name: string): name is Sheet {
  return Object.hasOwn(sheets, name);
}

/** File and keys of `wired/devices/amp/fuse`. */
export function spotOf(at: string): { readonly sheet: Sheet; readonly keys: readonly string[] } {
  const [sheet = '', ...keys] = at.split('/').map((key) => key.replaceAll('|', '/'));
  if (!isSheet(sheet)) throw new Error(`There is no file ${sheet}.`);
  return { sheet, keys };
}

export function editsOf(values: Values = {}): Edit[] {
  return Object.entries(values).map(([at, value]) => ({ ...spotOf(at), value }));
}

export { gone };
