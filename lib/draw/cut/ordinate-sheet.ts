import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { viewIn, windowBox, windowRound } from '../board/board-view.ts';
import { captionMm, directionArrowsMm } from '../board/direction-arrows.ts';
import { grainLeft } from '../board/grain-arrow.ts';
import {
  drawRows,
  type Feature,
  planRows,
  type RowPlan,
  rowMargins,
  rowsHaveRoom,
} from '../board/ordinate-rows.ts';
import { arrowsLeft } from '../board/place-arrows.ts';
import { type Margins, type ScaledSheet, sheetFor, sheetRooms, within } from '../board/scaled-sheet.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type DrawnPage, drawPage, type Page } from '../page.ts';
import type { PaperBox } from '../paper.ts';
import type { PlanView, ScaleRatio } from '../sheet/scale.ts';
import { type Drawing, openGroup } from '../surface.ts';
import { keyLeft } from './text-key.ts';

/** A board on a sheet with running dimensions round it, before its scale is known. */
export interface OrdinateSheet {
  readonly base: Omit<Page, 'paint' | 'scale' | 'orientation'>;
  readonly board: PlanBoard;
  readonly style: LengthStyle;
  /** What is measured. */
  readonly features: readonly Feature[];
  /** Extension lines begin at the feature, or only at the edge of the outline. */
  readonly from: 'feature' | 'edge';
  readonly mirrored: boolean;
  /** How high the key beside it is; 0 without one. */
  readonly keyMm: number;
  readonly paint: (drawing: Drawing, scene: OrdinateScene) => string[];
}

/** Where the board and its rows stand on paper. */
export interface OrdinateScene {
  readonly view: PlanView;
  readonly room: PaperBox;
  /** The box round the board. */
  readonly box: PaperBox;
  /** Draws the rows of dimensions; names the figures that found no room. */
  readonly drawRows: () => string[];
}

/** Draws a board with its rows at the largest scale that has room for them, for its arrows and for its key. */
export function ordinateSheet(plan: BuildPlan, metrics: TextMetrics, spec: OrdinateSheet): DrawnPage {
  const window = windowRound(spec.board.outline);
  const drawnWith = (extraMm: number): DrawnPage => {
    const { rows, sheet } = chooseRows(plan, metrics, spec, extraMm);
    return drawPage(plan, metrics, {
      ...spec.base,
      scale: sheet.ratio,
      orientation: sheet.orientation,
      paint: (drawing, room) => {
        const margins = marginsOf({ metrics }, seenRows(rows, spec), extraMm);
        const view = viewIn(within(room, margins), sheet.ratio, window, spec.mirrored);
        const box = windowBox(view, window);
        const rowsDrawn = (): string[] =>
          drawRows(drawing, openGroup(drawing, drawing.svg, 'ordinates'), rows, view, box);
        return spec.paint(drawing, { view, room, box, drawRows: rowsDrawn });
      },
    });
  };
  const arrowsMm = directionArrowsMm.height + captionMm;
  return firstWithBlocks([0, Math.max(arrowsMm, spec.keyMm), arrowsMm + spec.keyMm], drawnWith);
}

/** Arrows and keys, which find a place below the board at the latest. */
const blocks: readonly string[] = [arrowsLeft, grainLeft, keyLeft];

/** The page with the least more room at which every block finds a place, or the last of them. */
function firstWithBlocks(
  extras: readonly [number, ...number[]],
  drawnWith: (extraMm: number) => DrawnPage,
): DrawnPage {
  let drawn = drawnWith(extras[0]);
  for (const extraMm of extras.slice(1)) {
    if (!drawn.left.some((what) => blocks.includes(what))) break;
    drawn = drawnWith(extraMm);
  }
  return drawn;
}

/** Room for rows, and for what stands below them where it finds no free corner. */
function marginsOf(
  drawing: { readonly metrics: TextMetrics },
  rows: readonly RowPlan[],
  extraMm: number,
): Margins {
  const margins = rowMargins(drawing, rows);
  return { ...margins, bottom: margins.bottom + extraMm };
}

/** Extension lines are shortest where both axes use the nearer side, and rows fewest where none does. */
const nearestFirst = [['x', 'y'], ['y'], ['x'], []] as const;

/** Rows on one side where they have room, else on the nearer side, at the largest scale that takes them. */
function chooseRows(
  plan: BuildPlan,
  metrics: TextMetrics,
  { board, features, from, style, base }: OrdinateSheet,
  extraMm: number,
): { readonly rows: readonly RowPlan[]; readonly sheet: ScaledSheet } {
  const window = windowRound(board.outline);
  const sides = from === 'feature' ? nearestFirst : nearestFirst.toReversed();
  const plans = sides.map((nearest) => planRows({ features, window, style, nearest, from }));
  const rooms = sheetRooms(plan, metrics, base);
  const choices = plans.flatMap((rows) => {
    const accepts = (ratio: ScaleRatio): boolean => rowsHaveRoom({ metrics }, rows, window, ratio);
    const margins = marginsOf({ metrics }, rows, extraMm);
    const sheet = sheetFor(rooms, window, () => margins, accepts);
    return sheet ? [{ rows, sheet }] : [];
  });
  const [best] = choices.sort((a, b) => a.sheet.ratio - b.sheet.ratio);
  return best ?? { rows: plans[0] ?? [], sheet: { ratio: 100, orientation: 'landscape' } };
}

/** The rows as they stand on paper. */
function seenRows(rows: readonly RowPlan[], { mirrored }: Pick<OrdinateSheet, 'mirrored'>): RowPlan[] {
  if (!mirrored) return [...rows];
  const other = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' } as const;
  return rows.map((row) => ({ ...row, side: other[row.side] }));
}
