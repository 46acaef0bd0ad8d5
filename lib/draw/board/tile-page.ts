import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type DrawnPage, drawPage } from '../page.ts';
import { grown } from '../paper.ts';
import { type BoardWindow, viewIn, windowBox } from './board-view.ts';
import type { BoardPicture } from './scaled-sheet.ts';
import { type ScaledSheet, within } from './scaled-sheet.ts';

/** One of several sheets of a picture: a part of the board, or a detail of it. */
export interface TileName {
  readonly word: 'part' | 'detail';
  readonly index: number;
  readonly count: number;
}

/** What sheets of a board are drawn from. */
export interface TileRequest {
  readonly plan: BuildPlan;
  readonly metrics: TextMetrics;
  readonly board: PlanBoard;
  readonly picture: BoardPicture;
}

/** Draws a sheet that shows a board through a window; the only part shows the whole board. */
export function drawTile(
  { plan, metrics, board, picture: { base, margins, paint } }: TileRequest,
  sheet: ScaledSheet,
  window: BoardWindow,
  { word, index, count }: TileName,
): DrawnPage {
  const isWhole = word === 'part' && count === 1;
  const name = word === 'part' ? '' : 'detail-';
  return drawPage(plan, metrics, {
    ...base,
    id: isWhole ? base.id : `${base.id}-${name}${index + 1}`,
    title: isWhole ? base.title : `${base.title}, ${word} ${index + 1} of ${count}`,
    scale: sheet.ratio,
    orientation: sheet.orientation,
    paint: (drawing, room) => {
      const view = viewIn(within(room, margins(sheet.ratio)), sheet.ratio, window);
      // Edges that lie on the border of the window are inside it.
      const clip = isWhole ? null : grown(windowBox(view, window), 0.02);
      return paint(drawing, { plan, board, view, clip, room });
    },
  });
}
