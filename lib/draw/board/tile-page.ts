import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type DrawnPage, drawPage, formatOf } from '../page.ts';
import { grown } from '../paper.ts';
import { onPaper, type PlanView } from '../sheet/scale.ts';
import { frameBox } from '../sheet/sheet-format.ts';
import { zoneAt } from '../sheet/zones.ts';
import { type BoardWindow, viewIn, windowBox } from './board-view.ts';
import { type BoardPicture, type BoardScene, type ScaledSheet, within } from './scaled-sheet.ts';

/** One of several sheets of a picture: a part of the board, or a detail of it. */
export interface TileName {
  readonly word: 'part' | 'detail';
  readonly index: number;
  /** The parts of the board that all of these sheets show. */
  readonly windows: readonly BoardWindow[];
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
  request: TileRequest,
  sheet: ScaledSheet,
  window: BoardWindow,
  name: TileName,
): DrawnPage {
  const { plan, metrics, board, picture } = request;
  const { base, margins, paint } = picture;
  const { word, index, windows } = name;
  const count = windows.length;
  const isWhole = word === 'part' && count === 1;
  const prefix = word === 'part' ? '' : 'detail-';
  return drawPage(plan, metrics, {
    ...base,
    id: isWhole ? base.id : `${base.id}-${prefix}${index + 1}`,
    title: isWhole ? base.title : `${base.title}, ${word} ${index + 1} of ${count}`,
    scale: sheet.ratio,
    orientation: sheet.orientation,
    large: sheet.large ?? false,
    paint: (drawing, room) => {
      const viewOf = (one: BoardWindow): PlanView =>
        viewIn(within(room, margins(sheet.ratio)), sheet.ratio, one);
      const view = viewOf(window);
      // Edges that lie on the border of the window are inside it.
      const clip = isWhole ? null : grown(windowBox(view, window), 0.02);
      const frame = frameBox(formatOf(plan.shop, sheet));
      const elsewhere: BoardScene['elsewhere'] = (place) => {
        const other = windows.findIndex((one, nth) => nth !== index && holds(one, place));
        const shown = windows[other];
        if (!shown) return null;
        return {
          part: `${word} ${other + 1}`,
          zone: zoneAt(frame, onPaper(viewOf(shown), place)),
          box: windowBox(view, shown),
        };
      };
      return paint(drawing, { plan, board, view, clip, room, elsewhere });
    },
  });
}

function holds(window: BoardWindow, { xM, yM }: { readonly xM: number; readonly yM: number }): boolean {
  return xM >= window.fromXM && xM <= window.toXM && yM >= window.fromYM && yM <= window.toYM;
}
