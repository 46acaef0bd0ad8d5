import type { Side } from '../../board/layout/item.ts';
import type { BuildPlan, PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { itemOnBoard } from '../board/item-on-board.ts';
import { shortName } from '../feed/feed-words.ts';
import { baselineFor, drawLines, drawText, linePitchMm, wrapText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import { at, boxAt, cornersOf } from '../paper.ts';
import { drawShape } from '../pen.ts';
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

/** The ways of a block in the order in which they lie on it, each with its fuse. Null of one that has fewer than two. */
export function waysOfBlock(
  plan: BuildPlan,
  metrics: TextMetrics,
  fuses: readonly NumberedFuse[],
  board: PlanBoard,
  placement: PlanPlacement,
): PacketDrawing | null {
  const own = inOrder(
    fuses.filter(({ holder }) => holder.id === placement.item),
    placement,
  );
  const [first] = own.fuses;
  if (!first || own.fuses.length < 2) return null;
  const name = shortName(first.holder);
  const [id, title] = [`ways-${first.holder.id}`, `${name}: its fuses in their order`];
  const order = own.isUpright ? 'from top to bottom' : 'from left to right';
  const said = own.fuses.map(({ number, fuse }) => `fuse ${number}, ${ratingOf(fuse)}`).join('; ');
  const description = `${name} as it lies on ${board.title}, ${order}: ${said}.`;
  const rows = own.fuses.map((one) => wrapText(metrics, feedsText(one), feedsMm, types.terminal));
  const rowMm = rows.map((texts) => Math.max(wayMm, (texts.length - 1) * linePitchMm(types.terminal) + 6));
  const heightMm = Math.ceil(headMm + rowMm.reduce((sum, high) => sum + high, 0) + footMm);
  const drawing = openPacketDrawing(plan, metrics, { id, title, description, heightMm });
  const note = { type: types.note };
  drawText(drawing, drawing.svg, `On the board ${order}`, at(rimMm, headMm - 2.6), note);
  const group = openSubject(drawing, drawing.svg, first.holder.id);
  const blockMm = rowMm.reduce((sum, high) => sum + high, 0);
  drawShape(group, cornersOf(boxAt(rimMm, headMm, 3 * markMm, blockMm)), lines.cut, 'paper');
  own.fuses.forEach((one, index) => {
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
  drawText(drawing, group, ratingOf(fuse), at(ratingMm, baselineFor(middleMm, types.item)), {
    type: types.item,
  });
  const firstMm = middleMm - ((feeds.length - 1) * linePitchMm(types.terminal)) / 2;
  const point = at(packetWidthMm - rimMm - feedsMm, baselineFor(firstMm, types.terminal));
  drawLines(drawing, group, feeds, point, { type: types.terminal });
}

const ratingOf = ({ ratingA }: NumberedFuse['fuse']): string => printed('current-allowed', ratingA);

function feedsText({ feeds }: NumberedFuse): string {
  return feeds.map(shortName).join(', ');
}

/** The fuses of a block along the side on which its ways leave, left to right or from the top, as it is turned. */
function inOrder(
  fuses: readonly NumberedFuse[],
  placement: PlanPlacement,
): { readonly fuses: readonly NumberedFuse[]; readonly isUpright: boolean } {
  const placed = fuses.map((one) => {
    const terminal = one.holder.terminals.find(({ name }) => isWay(one.fuse, name));
    const onBoard = itemOnBoard(one.holder, placement, fullSize);
    return { one, mark: terminal ? onBoard.mark(terminal.panel, terminal.atM) : null };
  });
  const upright: readonly Side[] = ['left', 'right'];
  const isUpright = placed.every(({ mark }) => mark !== null && upright.includes(mark.side));
  const sorted = placed.toSorted((a, b) => (a.mark?.alongMm ?? 0) - (b.mark?.alongMm ?? 0));
  return { fuses: sorted.map(({ one }) => one), isUpright };
}
