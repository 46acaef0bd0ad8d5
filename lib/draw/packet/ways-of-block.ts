import { type Side, sides } from '../../board/layout/item.ts';
import type { BuildPlan, PlanBoard, PlanItem, PlanPlacement } from '../../model/plan/index.ts';
import { itemOnBoard } from '../board/item-on-board.ts';
import { baselineFor, drawLines, drawText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import { at, boxAt, cornersOf } from '../paper.ts';
import { drawShape } from '../pen.ts';
import { ratingText, shortName } from '../power/feed-words.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { isWay, type NumberedFuse } from './numbered-fuses.ts';
import {
  drawNumber,
  markMm,
  openPacketDrawing,
  type PacketDrawing,
  packetWidthMm,
} from './packet-drawing.ts';

/** At full size, a millimetre of paper is a millimetre of the board, y down. */
const fullSize = { ratio: 1, datum: at(0, 0), mirrored: false } as const;
const rimMm = 5;
const headMm = 11;
const footMm = 8;
/** Room of one way beside the next, and below it for what it feeds. */
const wayMm = 10;
const feedsMm = 78;

/** A side of a block as its board is looked at. */
const sideWords = {
  left: 'left side',
  right: 'right side',
  top: 'upper side',
  bottom: 'lower side',
} as const satisfies Record<Side, string>;

/** Fuses whose ways leave a block by one side, in their order. */
interface SideOfBlock {
  readonly side: Side;
  readonly fuses: readonly NumberedFuse[];
  /** True where no other way of the block is fused. */
  readonly isAll: boolean;
}

/**
 * The ways of a block in the order in which they lie on it, each with its fuse; one picture a side where they leave by several.
 * None of a block that has fewer than two, nor of ways of which it is not known by which side they leave.
 */
export function waysOfBlock(
  plan: BuildPlan,
  metrics: TextMetrics,
  fuses: readonly NumberedFuse[],
  board: PlanBoard,
  placement: PlanPlacement,
): PacketDrawing[] {
  const own = fuses.filter(({ holder }) => holder.id === placement.item);
  const [first] = own;
  if (!first || own.length < 2) return [];
  return sidesOf(own, placement).map((one) =>
    drawSide(plan, metrics, { ...one, board, block: first.holder }),
  );
}

interface BlockOnBoard extends SideOfBlock {
  readonly board: PlanBoard;
  readonly block: PlanItem;
}

function drawSide(
  plan: BuildPlan,
  metrics: TextMetrics,
  { board, block, side, fuses, isAll }: BlockOnBoard,
): PacketDrawing {
  const name = shortName(block);
  const [id, title] = isAll
    ? [`ways-${block.id}`, `${name}: its fuses in their order`]
    : [`ways-${block.id}-${side}`, `${name}: its fuses on the ${sideWords[side]} in their order`];
  const where = isAll ? '' : `, ${sideWords[side]},`;
  const order = isUpright(side) ? 'from top to bottom' : 'from left to right';
  const said = fuses.map(({ number, fuse }) => `fuse ${number}, ${ratingText(fuse).text}`).join('; ');
  const description = `${name} as it lies on ${board.title}${where || ','} ${order}: ${said}.`;
  const rows = fuses.map((one) => wrapText(metrics, feedsText(one), feedsMm, types.terminal));
  const rowMm = rows.map((texts) => Math.max(wayMm, (texts.length - 1) * linePitchMm(types.terminal) + 6));
  const blockMm = rowMm.reduce((sum, high) => sum + high, 0);
  const heightMm = Math.ceil(headMm + blockMm + footMm);
  const drawing = openPacketDrawing(plan, metrics, { id, title, description, heightMm });
  const note = { type: types.note };
  drawText(drawing, drawing.svg, `On the board${where} ${order}`, at(rimMm, headMm - 2.6), note);
  const group = openSubject(drawing, drawing.svg, block.id);
  drawShape(group, cornersOf(boxAt(rimMm, headMm, 3 * markMm, blockMm)), lines.cut, 'paper');
  fuses.forEach((one, index) => {
    const topMm = headMm + rowMm.slice(0, index).reduce((sum, high) => sum + high, 0);
    drawWay(drawing, one, rows[index] ?? [], topMm, rowMm[index] ?? wayMm);
  });
  return { id, title, drawing, unplaced: [] };
}

function drawWay(
  drawing: Drawing,
  { number, fuse, holder }: NumberedFuse,
  feeds: readonly string[],
  topMm: number,
  highMm: number,
): void {
  const group = openSubject(drawing, drawing.svg, holder.id);
  const middleMm = topMm + highMm / 2;
  drawNumber(drawing, group, number, at(rimMm + 1.5 * markMm, middleMm));
  const ratingMm = rimMm + 3 * markMm + 3;
  drawText(drawing, group, ratingText(fuse).text, at(ratingMm, baselineFor(middleMm, types.item)), {
    type: types.item,
  });
  const firstMm = middleMm - ((feeds.length - 1) * linePitchMm(types.terminal)) / 2;
  const point = at(packetWidthMm - rimMm - feedsMm, baselineFor(firstMm, types.terminal));
  drawLines(drawing, group, feeds, point, { type: types.terminal });
}

function feedsText({ feeds }: NumberedFuse): string {
  return feeds.map(shortName).join(', ');
}

/** The fuses of a block by the side by which their ways leave as it is turned, left to right or from the top. */
function sidesOf(own: readonly NumberedFuse[], placement: PlanPlacement): SideOfBlock[] {
  const placed = own.flatMap((one) => {
    const terminal = one.holder.terminals.find(({ name }) => isWay(one.fuse, name));
    const mark = terminal && itemOnBoard(one.holder, placement, fullSize).mark(terminal.panel, terminal.atM);
    return mark ? [{ one, mark }] : [];
  });
  return sides.flatMap((side) => {
    const here = placed
      .filter(({ mark }) => mark.side === side)
      .toSorted((a, b) => a.mark.alongMm - b.mark.alongMm);
    const fuses = here.map(({ one }) => one);
    return fuses.length === 0 ? [] : [{ side, fuses, isAll: fuses.length === own.length }];
  });
}

const isUpright = (side: Side): boolean => side === 'left' || side === 'right';
