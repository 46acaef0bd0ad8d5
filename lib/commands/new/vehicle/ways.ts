import { edgeSchema } from '../../../model/vocabulary.ts';
import { type AskedColumn, column, optionalColumn } from '../../../model/walk/asked-table.ts';
import { stretchFields } from '../../../model/walk/walk.ts';
import type { Row } from '../ask/rows.ts';
import { readRow } from '../ask/rows.ts';
import { idOf } from '../id-of.ts';
import type { Written } from '../yaml-text.ts';

const stretch: readonly AskedColumn[] = [
  column('zone', 'zone', stretchFields.zone, 'sill'),
  column('length', 'length', stretchFields.length, '36 in'),
  optionalColumn('hole', 'hole', stretchFields.hole, '20 mm'),
];

/** One stretch of a way, `bulkhead 6 in edge hole 20 mm`; what is wrong with it as a text. */
export function stretchOf(text: string): { readonly [name: string]: Written } | string {
  const [, zone, length, edge, hole] = /^(\S+)\s+(.*?)(\s+edge)?(?:\s+hole\s+(.+))?$/.exec(text.trim()) ?? [];
  if (zone === undefined || length === undefined)
    return `has the stretch "${text}": write its zone and its length, such as sill 36 in`;
  const row = readRow(stretch, [zone, length, hole ?? ''].join(', '));
  if (typeof row === 'string') return `has the stretch "${text}": ${row}`;
  const { hole: width, ...cells } = row.cells;
  return {
    ...cells,
    ...(edge !== undefined && { edge: true }),
    ...(width !== undefined && { 'through-hole': width }),
  };
}

/** Where a way ends: at names of the vehicle, or at an edge of a space. */
export interface WayEnd {
  readonly names: readonly string[];
  readonly reaches: { readonly space: string; readonly edge: string } | null;
}

/** One end of a way, `left-door`, `left edge` or `under-left-seat left edge`; what is wrong with it as a text. */
export function wayEnd(text: string, spaces: readonly string[]): WayEnd | string {
  const words = text.trim().split(/\s+/);
  if (words.at(-1) !== 'edge') return { names: words, reaches: null };
  const [edge, named, ...more] = words.slice(0, -1).reverse();
  if (!edgeSchema.safeParse(edge).success || edge === undefined || more.length > 0)
    return `has the end "${text}": write ${edgeSchema.options.join(' edge, ')} edge`;
  const space = named ?? (spaces.length === 1 ? spaces[0] : undefined);
  if (space === undefined)
    return spaces.length === 0
      ? `has the end "${text}", and there is no space that it could be the edge of`
      : `has the end "${text}": write of which space, such as ${spaces[0]} ${edge} edge`;
  return { names: [], reaches: { space, edge } };
}

/** A way as the file has it, under its id; what is wrong with it as a text. */
export function wayOf(
  { cells, rest }: Row,
  spaces: readonly string[],
): { readonly id: string; readonly way: { readonly [name: string]: Written } } | string {
  const ends = [wayEnd(String(cells.from), spaces), wayEnd(String(cells.to), spaces)];
  const passes = rest.map(stretchOf);
  const fault = [...ends, ...passes].find((one) => typeof one === 'string');
  if (typeof fault === 'string') return fault;
  const read = ends.flatMap((end) => (typeof end === 'string' ? [] : [end]));
  const reaches = read.flatMap((end) => end.reaches ?? []);
  if (reaches.length > 1) return 'leads from edge to edge: one end is an edge of a space, the other is not';
  const names = read.flatMap((end) => end.names);
  const called = read.map(endWords).join(' to ');
  const id = idOf(called);
  if (id === null) return 'has ends that can not be read';
  const served = names.filter((name) => name.startsWith('body.'));
  const others = names.filter((name) => !name.startsWith('body.'));
  return {
    id,
    way: {
      title: `${called.charAt(0).toUpperCase()}${called.slice(1)}`,
      side: cells.side ?? 'middle',
      ...(others.length > 0 && { ends: others }),
      ...(served.length > 0 && { serves: served }),
      passes: passes.flatMap((one) => (typeof one === 'string' ? [] : [one])),
      ...(reaches[0] && { reaches: { ...reaches[0] } }),
    },
  };
}

function endWords({ names, reaches }: WayEnd): string {
  if (reaches) return `${reaches.space.replaceAll('-', ' ')}, ${reaches.edge} edge`;
  return (names[0] ?? '').replace(/^body\./, 'ground ').replaceAll('-', ' ');
}
