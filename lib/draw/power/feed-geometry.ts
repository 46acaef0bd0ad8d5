import type { BuildPlan } from '../../model/plan/index.ts';
import { shownLabel, shownTerminal, terminalWords } from '../../model/plan/shown-names.ts';
import { linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { symbolModuleMm, type TypeStyle, types } from '../line-styles.ts';
import { deviceMark } from './device-symbols.ts';
import type { FeedGrid, GridEdge, GridNode } from './feed-grid.ts';
import { conductorLines, formText, ratingText, shortName } from './feed-words.ts';

/** Height of one row: a conductor with its label above and two lines below. */
export const rowPitchMm = 16.5;
/** From the middle of its first and last row to the edge of a tall box. */
export const tallPadMm = 7.5;
/** Room below the line of a node for what hangs on it: symbol, ground conductor, body. */
const hangsMm: Readonly<Record<GridNode['kind'], number>> = {
  alternator: 47,
  battery: 45,
  'ground-bar': tallPadMm + 28,
  body: 18,
  elsewhere: 11,
  fuse: 14,
  distribution: tallPadMm + 1,
  device: 11,
};
/** Width of a device's box. */
const deviceWidthMm = 33;
const sourceWidthMm = 12;
/** From the middle of the symbol of an alternator to the name beside it. */
export const nameOffMm = 7;
const edgePadMm = 4;
const leastGapMm = 8;

/** True for a source: it hangs below its line by its symbol. */
export function isHanging({ kind }: GridNode): boolean {
  return kind === 'battery' || kind === 'alternator';
}

/** What that symbol adds to the width of its box. */
export function markWidthMm(node: GridNode): number {
  return deviceMark(node) === null ? 0 : 4.5 * symbolModuleMm;
}

/** Widths of the columns and of the gaps after them, millimetres. */
export interface FeedWidths {
  readonly columns: readonly number[];
  readonly gaps: readonly number[];
  readonly totalMm: number;
}

/** What of a plan the widths depend on. */
export type FeedPlan = Pick<BuildPlan, 'power' | 'shop'>;

/** The widths that texts and symbols ask for. */
export function feedWidths(grid: FeedGrid, plan: FeedPlan, metrics: TextMetrics): FeedWidths {
  const columnOf = (id: string): number => grid.nodes.find((node) => node.id === id)?.column ?? 0;
  const each = (widthOf: (column: number) => number): number[] =>
    Array.from({ length: grid.columns }, (_, column) => widthOf(column));
  const columns = each((column) => {
    const nodes = grid.nodes.filter((node) => node.column === column);
    return greatest(nodes.map((node) => nodeWidth(grid, node, plan, metrics)));
  });
  const gaps = each((column) => {
    const edges = grid.edges.filter(
      ({ from, to }) => columnOf(from) === column && columnOf(to) === column + 1,
    );
    const widest = greatest(edges.map((edge) => edgeWidth(grid, edge, plan, metrics)));
    const titles = titleMmBeside(grid, column, metrics);
    return column < grid.columns - 1 ? Math.max(leastGapMm, widest, titles) : 0;
  });
  const widths = { columns, gaps, totalMm: 0 };
  return { ...widths, totalMm: spanMm(widths, 0, grid.columns - 1) };
}

/** Room for the titles of sources that hang in a column, where another hangs in the next: a title stands between the two. */
function titleMmBeside(grid: FeedGrid, column: number, metrics: TextMetrics): number {
  const hanging = (nth: number): GridNode[] =>
    grid.nodes.filter(
      (node) => node.column === nth && (node.kind === 'alternator' || node.kind === 'battery'),
    );
  if (hanging(column + 1).length === 0) return 0;
  const titles = hanging(column).flatMap((node) => titleLines(node, metrics));
  return greatest(titles.map((text) => metrics.widthMm(text, types.item) + 1.5));
}

/** What stands where a conductor comes from another sheet or goes on to it. */
export function elsewhereText(grid: FeedGrid, node: GridNode): string {
  const leaves = grid.edges.find(({ from }) => from === node.id);
  const comes = grid.edges.find(({ to }) => to === node.id);
  if (leaves) return `from ${ofItem(node, leaves.fromTerminal)}`;
  return `to ${ofItem(node, comes?.toTerminal ?? '')}`;
}

function ofItem({ item }: GridNode, terminal: string): string {
  return terminalWords({ items: [item] })(`${item.id}.${terminal}`);
}

/** The name of a point of the body, broken at its hyphens. */
export function bodyLines(grid: FeedGrid, node: GridNode): string[] {
  const point = grid.edges.find(({ to }) => to === node.id)?.toTerminal ?? '';
  return point.split('-').reduce<string[]>((broken, word) => {
    const last = broken.at(-1);
    if (last !== undefined && last.length + word.length < 11) broken[broken.length - 1] = `${last}-${word}`;
    else broken.push(last === undefined ? word : `-${word}`);
    return broken;
  }, []);
}

function greatest(numbers: readonly number[]): number {
  return Math.max(0, ...numbers);
}

/** Width of the texts on a conductor. */
function edgeWidth(grid: FeedGrid, edge: GridEdge, plan: FeedPlan, metrics: TextMetrics): number {
  const { wire } = edge;
  const shown = (id: string, terminal: string): string => {
    const node = grid.nodes.find((each) => each.id === id);
    return node ? shownTerminal(node.item, terminal) : terminal;
  };
  const ends = [shown(edge.from, edge.fromTerminal), shown(edge.to, edge.toTerminal)].map(
    (text) => metrics.widthMm(text, types.terminal) + 2,
  );
  const aboveMm = ends.reduce((sum, each) => sum + each, metrics.widthMm(shownLabel(wire), types.wireLabel));
  const below = conductorLines(plan, wire).map((text) => metrics.widthMm(text, types.note));
  return Math.max(aboveMm, ...below) + edgePadMm;
}

/** Width that a title is broken at, by kind. */
const titleWidthsMm: Readonly<Record<GridNode['kind'], number>> = {
  alternator: 22,
  battery: 20,
  fuse: 21,
  distribution: 27,
  device: deviceWidthMm - 3,
  'ground-bar': 24,
  body: 14,
  elsewhere: 40,
};

/** The lines of a node's title. */
export function titleLines({ kind, item }: GridNode, metrics: TextMetrics): string[] {
  return wrapText(metrics, shortName(item), titleWidthsMm[kind], types.item);
}

/** The narrowest box in which a title stands on two lines of the smallest type. */
function deviceWidth({ item }: GridNode, metrics: TextMetrics): number {
  const fits = (widthMm: number): boolean => {
    const lines = wrapText(metrics, shortName(item), widthMm - 4, types.terminal);
    return lines.length <= 2 && lines.every((text) => metrics.widthMm(text, types.terminal) <= widthMm - 4);
  };
  let widthMm = deviceWidthMm;
  while (!fits(widthMm) && widthMm < 3 * deviceWidthMm) widthMm += 3;
  return widthMm;
}

function nodeWidth(grid: FeedGrid, node: GridNode, plan: FeedPlan, metrics: TextMetrics): number {
  const fuses = plan.power.fuses.filter(({ item }) => item === node.item.id);
  const wide = (text: string, type: TypeStyle): number => metrics.widthMm(text, type);
  const fuseMm = greatest([
    10,
    ...fuses.flatMap((fuse) => [wide(formText(fuse), types.note), wide(ratingText(fuse).text, types.item)]),
  ]);
  const titleMm = greatest(titleLines(node, metrics).map((text) => wide(text, types.item)));
  const widths: Readonly<Record<GridNode['kind'], number>> = {
    alternator: sourceWidthMm,
    battery: sourceWidthMm,
    fuse: Math.max(titleMm, fuseMm) + 1,
    distribution: fuseMm + 9,
    device: deviceWidth(node, metrics) + markWidthMm(node),
    'ground-bar': 9,
    body: greatest([12, ...bodyLines(grid, node).map((text) => wide(text, types.note) + 1)]),
    elsewhere: wide(elsewhereText(grid, node), types.note) + 2,
  };
  return widths[node.kind];
}

/** Rows of a grid that fit one sheet. */
export interface FeedPart {
  readonly fromRow: number;
  readonly toRow: number;
}

/** Splits a grid into parts of as many rows as a height takes. */
export function feedParts(
  grid: FeedGrid,
  heightMm: number,
  metrics: TextMetrics,
  fromRow = Math.min(...grid.edges.map(({ row }) => row)),
): FeedPart[] {
  const lastRow = Math.max(...grid.edges.map(({ row }) => row));
  let toRow = lastRow;
  while (toRow - 1 >= fromRow && partHeightMm(grid, { fromRow, toRow }, metrics).totalMm > heightMm)
    toRow -= 1;
  const part = { fromRow, toRow };
  return toRow >= lastRow ? [part] : [part, ...feedParts(grid, heightMm, metrics, toRow + 1)];
}

/** Width of the columns from one to another, gaps between them included. */
export function spanMm({ columns, gaps }: Omit<FeedWidths, 'totalMm'>, from: number, to: number): number {
  let sum = 0;
  for (let column = from; column <= to; column += 1)
    sum += (columns[column] ?? 0) + (column < to ? (gaps[column] ?? 0) : 0);
  return sum;
}

/** Nodes that stand on a part. */
export function nodesOn(grid: FeedGrid, { fromRow, toRow }: FeedPart): GridNode[] {
  return grid.nodes.filter((node) => node.toRow >= fromRow && node.fromRow <= toRow);
}

/** Where the rows of a part stand below its top, and how high it is in all. */
export interface PartHeight {
  readonly rowMm: (row: number) => number;
  readonly totalMm: number;
}

/** True for a fuse on the row below another: its title would stand in the rating of that one. */
function isUnderFuse({ kind, column, row }: GridNode, nodes: readonly GridNode[]): boolean {
  const isAbove = (other: GridNode) => other.column === column && other.row < row && row - other.row <= 1;
  return kind === 'fuse' && nodes.some((other) => other.kind === 'fuse' && isAbove(other));
}

/** Rows at their pitch, with more room before a row where a title stands over a tall box. */
export function partHeightMm(grid: FeedGrid, part: FeedPart, metrics: TextMetrics): PartHeight {
  const nodes = nodesOn(grid, part);
  const titleMm = (node: GridNode): number => titleLines(node, metrics).length * linePitchMm(types.item);
  const tall = nodes.filter(({ kind }) => kind === 'distribution' || kind === 'ground-bar');
  const under = nodes.filter((node) => isUnderFuse(node, nodes));
  const extraAt = (row: number): number =>
    greatest([
      ...tall.filter((node) => Math.max(node.fromRow, part.fromRow) === row).map((node) => titleMm(node) + 2),
      ...under.filter((node) => node.row === row).map((node) => titleMm(node) + 2),
    ]);
  const fuses = nodes.filter(({ kind }) => kind === 'fuse').map((node) => titleMm(node) + 6);
  const steps = [
    ...new Set([
      part.fromRow,
      ...tall.map((node) => Math.max(node.fromRow, part.fromRow)),
      ...under.map(({ row }) => row),
    ]),
  ];
  const topMm = Math.max(tallPadMm + 1, ...fuses);
  const rowMm = (row: number): number =>
    topMm +
    (row - part.fromRow) * rowPitchMm +
    steps.filter((step) => step <= row).reduce((sum, step) => sum + extraAt(step), 0);
  const feet = nodes.map((node) => {
    const foot = isHanging(node) ? node.row : Math.min(node.toRow, part.toRow);
    return rowMm(foot) + hangsMm[node.kind];
  });
  return { rowMm, totalMm: greatest([rowMm(part.toRow) + 11, ...feet]) };
}

/** A part of the feed with the places of its columns and rows on paper. */
export interface PlacedFeed {
  readonly plan: BuildPlan;
  readonly grid: FeedGrid;
  readonly part: FeedPart;
  readonly factsOf: FactsOf;
  /** Left and right of every column of the part. */
  readonly columnMm: (column: number) => { readonly leftMm: number; readonly rightMm: number };
  readonly rowMm: (row: number) => number;
}

/** What a device's box tells under its title. */
export type FactsOf = (item: string) => readonly string[];
