import type { Part } from '../../../model/kinds/index.ts';
import { isOnReel } from '../../../model/kinds/index.ts';
import type { Problem } from '../../../model/problem.ts';
import { idOf } from '../id-of.ts';
import { blockText, type Named } from '../yaml-text.ts';
import { type Completed, completed, partsWith } from './matching-part.ts';
import { type Count, countAtEnd, readThing, reelsIn } from './thing.ts';
import type { ThingForm } from './thing-forms.ts';

/** The shop that a shelf is counted in. */
export interface ShelfAround {
  readonly parts: Readonly<Record<string, Part>>;
  /** A part as its file has it; null where no file has it. */
  readonly written: (id: string) => Named | null;
  /** What the reader finds in a new file of parts. */
  readonly problems: (text: string) => readonly Problem[];
}

/** What one line puts on the shelf. */
export interface Shelved {
  readonly id: string;
  readonly count: Count;
  /** The part where it is new to the catalogue. */
  readonly made: Completed | null;
}

/** What a line of the shelf says, as a text what is wrong with it or what it lacks. */
export function shelved(line: string, around: ShelfAround): Shelved | string {
  const [, name = '', rest = ''] = /^(\S+)\s+(\S.*)$/.exec(line.trim()) ?? [];
  const named = around.parts[name];
  if (named) return counted(name, isOnReel(named), countOf(rest), null);
  const thing = readThing(line);
  if (typeof thing === 'string') return thing;
  const { form, words, count } = thing;
  const fields = withConductors(thing.fields);
  const found = partsWith(around.parts, form.kind, fields);
  const [id, ...others] = found;
  const isReeled =
    form.isByPiece !== true && (form.kind === 'wire' || form.kind === 'cable' || form.kind === 'covering');
  if (id !== undefined && others.length > 0)
    return `may be ${found.join(' or ')}: begin the line with the name of the one that it is${orTold(form, fields)}`;
  if (id !== undefined) return counted(id, isReeled, count, null);
  if (form.isCatalogued === true) return notCatalogued(around, form, words);
  const made = completed(around.parts, around.written, form, {
    kind: form.kind,
    title: `${words.charAt(0).toUpperCase()}${words.slice(1)}`,
    ...fields,
  });
  const short = idOf(words);
  const own = short !== null && around.parts[short] ? idOf(thing.longer) : short;
  if (own === null) return `makes no name of "${words}"`;
  if (around.parts[own])
    return `is called ${own}, and a part of that name is another: begin the line with a name`;
  const [problem] = around.problems(shelfText([{ id: own, count, made }]));
  if (problem)
    return `lacks something of a new part: ${problem.message}. Write it behind a comma, by its name`;
  return counted(own, isReeled, count, made);
}

/** What a line left out that would tell the parts apart; empty where its thing has no such measure. */
function orTold({ slots, example }: ThingForm, fields: Named): string {
  const open = slots.find(({ field, optional }) => optional === true && fields[field] === undefined);
  return open ? `, or tell its ${open.field}: ${example}` : '';
}

/** What is said of a thing whose data no line could tell, and which the catalogue lacks. */
function notCatalogued({ parts }: ShelfAround, { kind, fields }: ThingForm, words: string): string {
  const like = partsWith(parts, kind, fields);
  const [first] = like;
  const near = first === undefined ? '' : `; of its form there is ${like.join(', ')}`;
  const begun = `rackleaf new part ${idOf(words) ?? 'NAME'} ${first === undefined ? `--kind ${kind}` : `--like ${first}`}`;
  return `is none of the catalogue${near}: begin the line with that name, or write the part by ${begun} first`;
}

function countOf(text: string): Count {
  const { left, pieces } = countAtEnd(`of ${text}`);
  const rest = left.replace(/^of\s*/, '');
  return { pieces, reels: pieces === null ? (reelsIn(rest) ?? []) : [] };
}

function counted(id: string, isReeled: boolean, count: Count, made: Completed | null): Shelved | string {
  const isNone = count.pieces === 0;
  if (isReeled && count.reels.length === 0 && !isNone)
    return `lacks what is left of ${id}: write the length of each reel behind it, 30 ft + 8 ft; or none: it is known then, and ordered where a job takes it`;
  if (!isReeled && count.pieces === null)
    return `lacks how many of ${id} there are: write x4 behind it; or none: it is known then, and ordered where a job takes it`;
  return { id, count: isReeled ? { pieces: null, reels: count.reels } : { ...count, reels: [] }, made };
}

/** A pair has two conductors of one size, told apart by colour: for speakers red and black, for signal white and black. */
function withConductors({ pair, 'signal-pair': signal, ...fields }: Named): Named {
  const size = pair ?? signal;
  if (size === undefined) return fields;
  const conductor = (colour: string) => ({ size, colour });
  const [name, colour] = signal === undefined ? (['red', 'RD'] as const) : (['white', 'WH'] as const);
  return { ...fields, conductors: { [name]: conductor(colour), black: conductor('BK') } };
}

/** A file with the parts that are new, each with what it has from another one. */
export function shelfText(shelf: readonly Shelved[]): string {
  const parts = shelf.flatMap(({ id, made }) => {
    if (!made) return [];
    const taken =
      made.taken.length === 0 ? '' : `  # ${made.taken.join(', ')}: as ${made.from}, to be compared.\n`;
    return [`${taken}${blockText({ [id]: made.fields }, 1, '  ')}`];
  });
  return `rackleaf: 1\n# What lies on the shelf of this shop.\nparts:\n${parts.join('')}`;
}
