import type { BuildPlan } from '../../model/plan/index.ts';
import { shownLabel, shownTerminal } from '../../model/plan/shown-names.ts';
import { drawConductor } from '../conductor-line.ts';
import { drawLines, drawText } from '../lettering/lettering.ts';
import { spacing, types } from '../line-styles.ts';
import { at, heightMm, type PaperBox, widthMm } from '../paper.ts';
import type { Parent } from '../pen.ts';
import { type Drawing, openSubject } from '../surface.ts';
import {
  type FactsOf,
  type FeedPart,
  type FeedWidths,
  isHanging,
  nodesOn,
  type PlacedFeed,
  partHeightMm,
  spanMm,
} from './feed-geometry.ts';
import type { FeedGrid, GridEdge, GridNode } from './feed-grid.ts';
import { paintNode } from './feed-nodes.ts';
import { conductorLines } from './feed-words.ts';

/** What is drawn of a feed. */
export interface FeedView {
  readonly plan: BuildPlan;
  readonly grid: FeedGrid;
  readonly widths: FeedWidths;
  readonly part: FeedPart;
  readonly factsOf: FactsOf;
}

/** Draws a part of the feed in the middle of the room. */
export function paintFeed(drawing: Drawing, view: FeedView, room: PaperBox): void {
  const placed = placeFeed(drawing, view, room);
  const { grid, part } = view;
  const { fromRow, toRow } = part;
  for (const edge of grid.edges)
    if (edge.row > fromRow - 1 && edge.row < toRow + 1) paintEdge(drawing, placed, edge);
  for (const node of nodesOn(grid, part)) paintNode(drawing, placed, node);
}

/** The most that a gap is widened where there is room to spare. */
const mostSpareMm = 12;

function placeFeed({ metrics }: Drawing, view: FeedView, room: PaperBox): PlacedFeed {
  const { plan, grid, widths, part, factsOf } = view;
  const gapCount = grid.columns - 1;
  const spareMm = Math.min(mostSpareMm, Math.max(0, widthMm(room) - widths.totalMm) / Math.max(1, gapCount));
  const leftMm = room.leftMm + (widthMm(room) - widths.totalMm - gapCount * spareMm) / 2;
  const { rowMm, totalMm } = partHeightMm(grid, part, metrics);
  const topMm = room.topMm + Math.max(0, heightMm(room) - totalMm) / 2;
  return {
    plan,
    grid,
    part,
    factsOf,
    columnMm: (column) => {
      const own = widths.columns[column] ?? 0;
      const left = leftMm + spanMm(widths, 0, column) - own + column * spareMm;
      return { leftMm: left, rightMm: left + own };
    },
    rowMm: (row) => topMm + rowMm(row),
  };
}

/** Where a conductor meets a node, which may be drawn narrower than its column. */
function endMm(placed: PlacedFeed, node: GridNode, side: 'left' | 'right'): number {
  const { leftMm, rightMm } = placed.columnMm(node.column);
  const middle = (leftMm + rightMm) / 2;
  if (isHanging(node) || node.kind === 'body') return middle;
  if (node.kind === 'fuse') return side === 'left' ? middle - 5 : middle + 5;
  return side === 'left' ? leftMm : rightMm;
}

interface EdgePlace {
  readonly fromMm: number;
  readonly toMm: number;
  readonly yMm: number;
  readonly from: GridNode;
  readonly to: GridNode;
}

function paintEdge(drawing: Drawing, placed: PlacedFeed, edge: GridEdge): void {
  const { grid, rowMm } = placed;
  const from = grid.nodes.find(({ id }) => id === edge.from);
  const to = grid.nodes.find(({ id }) => id === edge.to);
  if (!from || !to) return;
  const place = {
    fromMm: endMm(placed, from, 'right'),
    toMm: endMm(placed, to, 'left'),
    yMm: rowMm(edge.row),
    from,
    to,
  };
  const group = openSubject(drawing, drawing.svg, edge.wire.id);
  drawConductor(group, [at(place.fromMm, place.yMm), at(place.toMm, place.yMm)], edge.wire.role);
  paintEdgeTexts(drawing, group, placed, edge, place);
}

/** Label above in the middle, terminals at both ends, size and length below. */
function paintEdgeTexts(
  drawing: Drawing,
  group: Parent,
  { plan }: PlacedFeed,
  edge: GridEdge,
  { fromMm, toMm, yMm, from, to }: EdgePlace,
): void {
  const { metrics } = drawing;
  const { wire } = edge;
  const fromTerminal = shownTerminal(from.item, edge.fromTerminal);
  const toTerminal = shownTerminal(to.item, edge.toTerminal);
  const label = shownLabel(wire);
  const aboveMm = yMm - spacing.labelGapMm - metrics.descentMm(types.wireLabel);
  const belowMm = yMm + spacing.labelGapMm + metrics.ascentMm(types.note);
  const terminal = (text: string, node: GridNode): number =>
    boxed(node) ? metrics.widthMm(text, types.terminal) + 2 : 0;
  const labelMm = metrics.widthMm(label, types.wireLabel);
  const freeMm = [fromMm + terminal(fromTerminal, from), toMm - terminal(toTerminal, to)] as const;
  // On a long conductor the texts stand at its first end.
  const centreMm = Math.min((freeMm[0] + freeMm[1]) / 2, freeMm[0] + Math.max(9, labelMm / 2 + 3));
  drawText(drawing, group, label, at(centreMm, aboveMm), { type: types.wireLabel, align: 'middle' });
  const lines = conductorLines(plan, wire);
  const wide = Math.max(...lines.map((text) => metrics.widthMm(text, types.note)));
  const lineMm = Math.max(centreMm, fromMm + 1 + wide / 2);
  drawLines(drawing, group, lines, at(Math.min(lineMm, toMm - 1 - wide / 2), belowMm), {
    type: types.note,
    align: 'middle',
  });
  const type = types.terminal;
  if (boxed(from)) drawText(drawing, group, fromTerminal, at(fromMm + 1, aboveMm), { type });
  if (boxed(to)) drawText(drawing, group, toTerminal, at(toMm - 1, aboveMm), { type, align: 'end' });
}

/** Nodes whose terminals are told beside them. */
function boxed({ kind }: GridNode): boolean {
  return kind === 'device' || kind === 'distribution' || kind === 'ground-bar' || kind === 'fuse';
}
