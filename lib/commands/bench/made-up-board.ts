import type { Item, ItemTerminal, Placement, WireLayer } from '../../board/layout/item.ts';
import type { Link } from '../../board/layout/score/links.ts';
import { type Random, seeded } from '../../board/random.ts';
import { type BoardShape, drawOutline } from '../../board/shape/outline.ts';
import { outlineSchema } from '../../model/outline.ts';

/** A board made up from a solution: parts in rows, wires straight across the channels between them and over both edges. */
export interface MadeUpBoard {
  readonly shape: BoardShape;
  readonly items: readonly Item[];
  readonly links: readonly Link[];
  /** Places from which every wire has a way: no two have to cross. */
  readonly solution: readonly Placement[];
  /** Share of the board that parts and their rooms take. */
  readonly taken: number;
}

/** Room for bends at both sides of a part, metres. */
const bendM = 0.035;
const wantedShare = 0.55;

interface MadeUpPart {
  readonly row: number;
  readonly column: number;
  readonly widthM: number;
  readonly depthM: number;
}

/** The board of a number: two rows of two or three parts, five or six wires in each channel. Null where it can't be drawn: a bug. */
export function madeUpBoard(seed: number): MadeUpBoard | null {
  const random = seeded(seed);
  const between = (from: number, to: number): number => from + Math.floor(random() * (to - from + 1));
  const [columns, wires] = [between(2, 3), between(5, 6)];
  const parts = [0, 1].flatMap((row) =>
    Array.from({ length: columns }, (_, column): MadeUpPart => {
      return { row, column, widthM: between(10, 26) / 100, depthM: between(11, 20) / 100 };
    }),
  );
  const { marginM, wideM, highM } = outerSize(parts);
  const items = parts.map((part) => itemOf(part, wires, random));
  const solution = parts.map((part): Placement => {
    const before = parts.filter(({ row, column }) => row === part.row && column < part.column);
    const below = part.row === 0 ? 0 : rowDepthM(parts, 0) + marginM;
    return {
      item: nameOf(part),
      xM: marginM + before.reduce((sum, { widthM }) => sum + widthM + 2 * bendM, bendM),
      yM: marginM + below,
      turnDeg: 0,
      heightM: 0,
    };
  });
  const outline = { rectangle: { width: `${wideM * 1000} mm`, height: `${highM * 1000} mm` } };
  const { shape } = drawOutline(outlineSchema.parse(outline));
  if (!shape) return null;
  const links = linksOf(items, columns, wires);
  return { shape, items, links, solution, taken: takenM2(parts) / (wideM * highM) };
}

function nameOf({ row, column }: Pick<MadeUpPart, 'row' | 'column'>): string {
  return `part-${row + 1}-${column + 1}`;
}

function rowDepthM(parts: readonly MadeUpPart[], row: number): number {
  return Math.max(...parts.filter((one) => one.row === row).map(({ depthM }) => depthM));
}

function rowWidthM(parts: readonly MadeUpPart[], row: number): number {
  return parts.filter((one) => one.row === row).reduce((sum, { widthM }) => sum + widthM + 2 * bendM, 0);
}

function takenM2(parts: readonly MadeUpPart[]): number {
  return parts.reduce((sum, { widthM, depthM }) => sum + (widthM + 2 * bendM) * depthM, 0);
}

/** The least board with a free margin round the rows, or the one of which the wanted share is taken: whichever is larger. */
function outerSize(parts: readonly MadeUpPart[]) {
  const innerWideM = Math.max(rowWidthM(parts, 0), rowWidthM(parts, 1));
  const innerHighM = rowDepthM(parts, 0) + rowDepthM(parts, 1);
  let marginM = 0.013;
  const wide = () => innerWideM + 2 * marginM;
  const high = () => innerHighM + 3 * marginM;
  while (takenM2(parts) / (wide() * high()) > wantedShare) marginM += 0.0005;
  // A hair less, so that the share is reached and not nearly so.
  marginM = Math.max(0.013, marginM - 0.0005);
  const round = (valueM: number): number => Math.floor(valueM * 1000) / 1000;
  return { marginM, wideM: round(wide()), highM: round(high()) };
}

function itemOf(part: MadeUpPart, wires: number, random: Random): Item {
  const id = nameOf(part);
  const pitchM = part.depthM / (wires + 1);
  const layer = (): WireLayer =>
    (['speaker', 'ground', 'speaker', 'power'] as const)[Math.floor(random() * 4)] ?? 'speaker';
  const terminals = (['left', 'right'] as const).flatMap((side) =>
    Array.from({ length: wires }, (_, n): ItemTerminal => {
      return { id: `${id}.${side}-${n + 1}`, side, alongM: (n + 1) * pitchM, layer: layer() };
    }),
  );
  return {
    id,
    widthM: part.widthM,
    depthM: part.depthM,
    heightM: 0.05,
    massKg: 20 * part.widthM * part.depthM,
    rooms: { left: { bendM }, right: { bendM } },
    terminals,
  };
}

/** The n-th terminal of a right side goes to the n-th of the left side beyond the channel: in order, so that none cross. */
function linksOf(items: readonly Item[], columns: number, wires: number): Link[] {
  const layerOf = (item: string, terminal: string): WireLayer =>
    items.find(({ id }) => id === item)?.terminals.find(({ id }) => id === terminal)?.layer ?? 'speaker';
  return [0, 1].flatMap((row) =>
    Array.from({ length: columns + 1 }, (_, channel) => channel).flatMap((channel) =>
      Array.from({ length: wires }, (_, n): Link => {
        const [before, after] = [nameOf({ row, column: channel - 1 }), nameOf({ row, column: channel })];
        const from = { item: before, terminal: `${before}.right-${n + 1}` };
        const to = { item: after, terminal: `${after}.left-${n + 1}` };
        const own = channel < columns ? to : from;
        return {
          id: `wire-${row + 1}-${channel + 1}-${n + 1}`,
          from: channel === 0 ? { exit: 'left' } : from,
          to: channel === columns ? { exit: 'right' } : to,
          layer: layerOf(own.item, own.terminal),
        };
      }),
    ),
  );
}
