import { type AskedColumn, column, optionalColumn } from '../../../model/survey/asked-table.ts';
import { stretchFields } from '../../../model/survey/places-and-ways.ts';
import { edgeSchema } from '../../../model/vocabulary.ts';
import type { Cell, Row } from '../ask/rows.ts';
import { readRow, unknown } from '../ask/rows.ts';
import { idOf } from '../id-of.ts';
import type { Named } from '../yaml-text.ts';

const stretch: readonly AskedColumn[] = [
  column('zone', 'zone', stretchFields.zone, 'sill'),
  column('length', 'length', stretchFields.length, '36 in'),
  optionalColumn('hole', 'hole', stretchFields.hole, '20 mm'),
  optionalColumn('grommet', 'grommet', stretchFields.hole, '20 mm'),
  optionalColumn('drill', 'drill', stretchFields.hole, '20 mm'),
  optionalColumn('behind', 'behind', stretchFields.behind, 'nothing'),
];

/** What is wrong with a way, as the end of a sentence about it. */
interface Fault {
  readonly fault: string;
}

/** A zone of two words, `engine bay 26 in`, as its one name. */
function withZone(text: string): string {
  return text
    .trim()
    .replace(/^[a-z]+(?:\s+[a-z]+)+(?=\s+\d)/i, (words) => words.toLowerCase().replaceAll(/\s+/g, '-'));
}

/**
 * One stretch of a way, `bulkhead 6 in edge hole 20 mm`, `bulkhead 6 in grommet 20 mm` or
 * `bulkhead 6 in drill 20 mm behind nothing`, as a file has it. What is there and not measured, `grommet ?`, stays: a grommet
 * of the vehicle without its bore, and a hole as a sharp edge until somebody felt it.
 */
function stretchOf(text: string): { readonly pass: string | Named } | Fault {
  const [, zone, length, edge, what = '', width = '', behind = ''] =
    /^(\S+)\s+(.*?)(\s+edge)?(?:\s+(hole|grommet|drill)\s+(.+?)(?:\s+behind\s+(\S+))?)?$/.exec(
      withZone(text),
    ) ?? [];
  if (zone === undefined || length === undefined)
    return { fault: `has the stretch "${text}": write its zone and its length, such as sill 36 in` };
  const cellOf = (word: string) => (what === word ? width : '');
  if (behind !== '' && what !== 'drill')
    return {
      fault: `has the stretch "${text}": behind goes with a hole that is to be drilled, such as drill 20 mm behind nothing`,
    };
  const row = readRow(
    stretch,
    [zone, length, cellOf('hole'), cellOf('grommet'), cellOf('drill'), behind].join(', '),
  );
  if (typeof row === 'string') return { fault: `has the stretch "${text}": ${row}` };
  if (edge === undefined && what === '') return { pass: `${zone} ${length}` };
  const { hole: open, grommet: bore, drill, behind: seen, ...cells } = row.cells;
  const isOpen = width === unknown;
  return {
    pass: {
      ...cells,
      ...((edge !== undefined || what === 'drill' || (what === 'hole' && isOpen)) && { edge: true }),
      ...measured(open ?? bore ?? drill),
      ...(what === 'grommet' && { 'own-grommet': true }),
      ...(what === 'drill' && { there: false }),
      ...(seen !== undefined && { behind: seen }),
    },
  };
}

function measured(width: Cell | undefined): Named {
  return width === undefined ? {} : { 'through-hole': width };
}

/** Stretches of a way that begin with a hole whose width was left open by `?`. */
export function holesOpen({ rest }: Row): readonly string[] {
  return rest.flatMap((text) => /^(\S+)\s.*\shole\s+\?$/.exec(withZone(text))?.[1] ?? []);
}

/** Where a way ends: at names of the vehicle, or at an edge of a space. */
interface WayEnd {
  readonly names: readonly string[];
  readonly reaches: { readonly space: string; readonly edge: string } | null;
}

/** One end of a way: `left-door`, `left edge` or `under-left-seat left edge`. */
function wayEnd(text: string, spaces: readonly string[]): WayEnd | Fault {
  const words = text.trim().split(/\s+/);
  if (words.at(-1) !== 'edge') {
    const meant = edgeMeant(text.trim(), spaces);
    return meant === null
      ? { names: words, reaches: null }
      : { fault: `has the end "${text}": an edge of a space is written ${meant}` };
  }
  const [edge, named, ...more] = words.slice(0, -1).reverse();
  if (!edgeSchema.safeParse(edge).success || edge === undefined || more.length > 0)
    return { fault: `has the end "${text}": write ${edgeSchema.options.join(' edge, ')} edge` };
  const space = named ?? (spaces.length === 1 ? spaces[0] : undefined);
  if (space !== undefined) return { names: [], reaches: { space, edge } };
  return spaces.length === 0
    ? { fault: `has the end "${text}", and there is no space that it could be the edge of` }
    : { fault: `has the end "${text}": write of which space, such as ${spaces[0]} ${edge} edge` };
}

/** The edge that is meant where only the word for it is missing, `top` or `well.top`: as it is written; null where none is. */
function edgeMeant(text: string, spaces: readonly string[]): string | null {
  const space = spaces.find((one) => text.startsWith(one) && /^[\s./-]$/.test(text.charAt(one.length)));
  const edge = space === undefined ? text : text.slice(space.length + 1);
  if (!edgeSchema.safeParse(edge).success) return null;
  return space === undefined || spaces.length === 1 ? `${edge} edge` : `${space} ${edge} edge`;
}

/** A way as a file has it, under its id. */
export interface Way {
  readonly id: string;
  readonly way: Named;
}

/** The way that a row tells; what is wrong with it as a text. */
export function wayOf({ cells, rest }: Row, spaces: readonly string[]): Way | string {
  const ends: WayEnd[] = [];
  for (const text of [String(cells.from), String(cells.to)]) {
    const end = wayEnd(text, spaces);
    if ('fault' in end) return end.fault;
    ends.push(end);
  }
  const passes: (string | Named)[] = [];
  for (const text of rest) {
    const read = stretchOf(text);
    if ('fault' in read) return read.fault;
    passes.push(read.pass);
  }
  const called = ends.map(endWords).join(' to ');
  const id = idOf(called);
  if (id === null) return 'has ends that can not be read';
  if (ends.every(({ reaches }) => reaches !== null))
    return 'leads from edge to edge: one end is an edge of a space, the other is not';
  return { id, way: { title: titleOf(called), side: cells.side ?? 'middle', ...endFields(ends), passes } };
}

function titleOf(called: string): string {
  return `${called.charAt(0).toUpperCase()}${called.slice(1)}`;
}

/** What a way leads to, by the names of a file: what each end is called by first stands at the ends of their list. */
function endFields(read: readonly WayEnd[]): Named {
  const [first, last] = read;
  const names = [...(first?.names ?? []), ...(last?.names ?? []).toReversed()];
  const [reached] = read.flatMap((end) => end.reaches ?? []);
  const serves = names.filter((name) => name.startsWith('body.'));
  const ends = names.filter((name) => !name.startsWith('body.'));
  return {
    ...(ends.length > 0 && { ends }),
    ...(serves.length > 0 && { serves }),
    ...(reached && { reaches: { ...reached } }),
  };
}

function endWords({ names, reaches }: WayEnd): string {
  if (reaches) return `${reaches.space.replaceAll('-', ' ')}, ${reaches.edge} edge`;
  return (names[0] ?? '').replace(/^body\./, 'ground ').replaceAll('-', ' ');
}
