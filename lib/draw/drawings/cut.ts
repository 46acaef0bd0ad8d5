import { ribRing } from '../../board/strength/rib.ts';
import type { BuildPlan, OutlinePoint, PlanBoard } from '../../model/plan/index.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import { dimensionNote, type LengthStyle } from '../../model/quantity/length-text.ts';
import { drawBoardEdge, drawHole, viewIn, windowBox, windowRound } from '../board/board-view.ts';
import { captionMm, directionArrowsMm } from '../board/direction-arrows.ts';
import { grainLeft, grainShown, placeGrainArrow } from '../board/grain-arrow.ts';
import {
  drawRows,
  type Feature,
  planRows,
  type RowPlan,
  rowMargins,
  rowsHaveRoom,
} from '../board/ordinate-rows.ts';
import { arrowsLeft, placeDirectionArrows } from '../board/place-arrows.ts';
import { drawRibs } from '../board/ribs-on-board.ts';
import { type Margins, type ScaledSheet, sheetFor, sheetRooms, within } from '../board/scaled-sheet.ts';
import { type BoardPainting, type BoardViewKind, labelBoard, ribView } from '../cut/cut-labels.ts';
import { holeKeyLeft, holeKeyMm, holeKeyTexts, placeHoleKey } from '../cut/hole-key.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type DrawnPage, drawPage, type Page } from '../page.ts';
import type { ScaleRatio } from '../sheet/scale.ts';
import { type Drawing, openGroup } from '../surface.ts';
import type { DrawingKind } from './kind.ts';

const views: readonly BoardViewKind[] = [
  { id: 'cut', title: 'Cut', mirrored: false, measured: 'outline' },
  { id: 'drill', title: 'Drill, mounting side', mirrored: false, measured: 'holes' },
  { id: 'drill-rear', title: 'Drill, rear view', mirrored: true, measured: 'holes' },
];

/** Cut and drill drawings: each board from its mounting side, and its holes from behind as well. */
export const cut: DrawingKind = {
  sheet: 'cut-and-drill',
  pages: (plan, metrics) =>
    plan.boards.flatMap((board) =>
      views
        .filter(({ measured }) => measured === 'outline' || board.holes.length > 0)
        .map((kind) => cutPage(plan, metrics, board, kind)),
    ),
};

/** How a shop writes lengths on its boards. */
export function lengthStyleOf({ shop }: Pick<BuildPlan, 'shop'>): LengthStyle {
  return { system: shop.units === 'inch' ? 'inch' : 'mm', fraction: shop.fraction };
}

function cutPage(plan: BuildPlan, metrics: TextMetrics, board: PlanBoard, kind: BoardViewKind): DrawnPage {
  const style = lengthStyleOf(plan);
  const window = windowRound(board.outline);
  const base = {
    id: `${kind.id}-${board.id}`,
    title: `${board.title}: ${kind.title.charAt(0).toLowerCase()}${kind.title.slice(1)}`,
    subject: board.spaceTitle,
    documentType: kind.measured === 'outline' ? 'Cut drawing' : 'Drill drawing',
    description: describe(board, kind, style),
    projection: null,
    notes: notesOf(board, kind, style),
  };
  const drawnWith = (extraMm: number): DrawnPage => {
    const { rows, sheet } = chooseRows({ plan, metrics, board, kind, style, base, extraMm });
    return drawPage(plan, metrics, {
      ...base,
      scale: sheet.ratio,
      orientation: sheet.orientation,
      paint: (drawing, room) => {
        const margins = marginsOf({ metrics }, seenRows(rows, kind), extraMm);
        const view = viewIn(within(room, margins), sheet.ratio, window, kind.mirrored);
        return paintBoard(drawing, { board, kind, rows, view, style, room });
      },
    });
  };
  const keyMm = kind.measured === 'holes' ? holeKeyMm(holeKeyTexts(board.holes, style)) : 0;
  const arrowsMm = directionArrowsMm.height + captionMm;
  return firstWithBlocks([0, Math.max(arrowsMm, keyMm), arrowsMm + keyMm], drawnWith);
}

/** Arrows and keys, which find a place below the board at the latest. */
const blocks: readonly string[] = [arrowsLeft, grainLeft, holeKeyLeft];

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

/** Room for rows, and for the arrows below them where they find no free corner. */
function marginsOf(
  drawing: { readonly metrics: TextMetrics },
  rows: readonly RowPlan[],
  extraMm: number,
): Margins {
  const margins = rowMargins(drawing, rows);
  return { ...margins, bottom: margins.bottom + extraMm };
}

interface RowChoice {
  readonly plan: BuildPlan;
  readonly metrics: TextMetrics;
  readonly board: PlanBoard;
  readonly kind: BoardViewKind;
  readonly style: LengthStyle;
  readonly base: Omit<Page, 'paint' | 'scale' | 'orientation'>;
  /** More room below the rows. */
  readonly extraMm: number;
}

/** Extension lines are shortest where both axes use the nearer side, and rows fewest where none does. */
const nearestFirst = [['x', 'y'], ['y'], ['x'], []] as const;

/** Rows on one side where they have room, else on the nearer side, at the largest scale that takes them. */
function chooseRows({ plan, metrics, board, kind, style, base, extraMm }: RowChoice): {
  readonly rows: readonly RowPlan[];
  readonly sheet: ScaledSheet;
} {
  const window = windowRound(board.outline);
  const isCut = kind.measured === 'outline';
  const features = isCut ? [...outlineFeatures(board), ...ribFeatures(board)] : holeFeatures(board);
  const from = kind.measured === 'outline' ? 'feature' : 'edge';
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
function seenRows(rows: readonly RowPlan[], { mirrored }: BoardViewKind): RowPlan[] {
  if (!mirrored) return [...rows];
  const other = { left: 'right', right: 'left', top: 'top', bottom: 'bottom' } as const;
  return rows.map((row) => ({ ...row, side: other[row.side] }));
}

/**
 * Corners of the outline and of its cut-outs. Where a rounded corner meets a level or upright edge, that edge is
 * measured; the point where the bend begins follows from its radius.
 */
function outlineFeatures(board: PlanBoard): Feature[] {
  return [board.outline, ...board.cutouts].flatMap((loop) =>
    loop.map((point, index): Feature => {
      const before = loop.at(index - 1) ?? point;
      const after = loop[(index + 1) % loop.length] ?? point;
      const { xM, yM } = point;
      const straight = isRounding(before) ? after : isRounding(point) ? before : null;
      if (straight && Math.abs(straight.yM - yM) < sameM) return { xM, yM, only: 'y' };
      return straight && Math.abs(straight.xM - xM) < sameM ? { xM, yM, only: 'x' } : { xM, yM };
    }),
  );
}

const sameM = 0.0002;

/** True for a quarter bend, whose bulge is tan(22.5 degrees). */
function isRounding({ bulge }: OutlinePoint): boolean {
  return Math.abs(Math.abs(bulge) - Math.tan(Math.PI / 8)) < 0.01;
}

/** The holes that are measured: screws of ribs stand evenly along these, and in the drill table. */
function holeFeatures({ holes, ribs }: PlanBoard): Feature[] {
  return holes.filter(({ of }) => !ribs.some(({ id }) => id === of)).map(({ n, xM, yM }) => ({ xM, yM, n }));
}

/** Two opposite corners of each rib: where its sides and its ends are marked. */
function ribFeatures({ ribs }: PlanBoard): Feature[] {
  return ribs.flatMap((rib) => ribRing(rib).filter((_, corner) => corner % 2 === 0));
}

function describe(board: PlanBoard, kind: BoardViewKind, style: LengthStyle): string {
  const size = `${printedDimension('cut', board.widthM, style)} by ${printedDimension('cut', board.heightM, style)}`;
  const seen = kind.mirrored ? 'from the rear' : 'from the mounting side';
  return `${board.title}, ${size}, seen ${seen}, with ${board.holes.length} holes and ${board.cutouts.length} cut-outs.`;
}

function notesOf(board: PlanBoard, kind: BoardViewKind, style: LengthStyle): string[] {
  const ribs = board.ribs.some(({ screw }) => screw) ? '; screws of ribs in the drill table' : '';
  const figures =
    kind.measured === 'holes' ? [`Letters: see the key; figures: hole numbers, then ordinate${ribs}`] : [];
  return [
    `${board.material.replaceAll('-', ' ')}, ${printedDimension('made', board.thicknessM, style)} thick`,
    dimensionNote(style),
    ...figures,
    ...(kind.measured === 'outline' ? edgeNotes(board, style) : []),
    ...(board.ribs.some(({ face }) => (face === 'rear') !== kind.mirrored)
      ? [`Dashed: ribs on the ${kind.mirrored ? 'mounting side' : 'rear'}`]
      : []),
  ];
}

/** How the edges are worked; which way the grain has to run. */
function edgeNotes(board: PlanBoard, style: LengthStyle): string[] {
  const { edgeProfile, grainChosen } = board;
  const grain = grainShown(board);
  const size = edgeProfile?.sizeM ? ` ${printedDimension('cut', edgeProfile.sizeM, style)}` : '';
  const worked = edgeProfile && edgeProfile.kind !== 'square' ? `${edgeProfile.kind}${size}` : 'square';
  const runs = { level: 'from left to right', upright: 'upwards' } as const;
  return [
    `Edges: ${worked}`,
    ...(grain ? [`Grain ${runs[grain]}${grainChosen === 'computed' ? ', relied on' : ''}`] : []),
  ];
}

function paintBoard(drawing: Drawing, painting: BoardPainting): string[] {
  const { board, kind, rows, view, room } = painting;
  const group = openGroup(drawing, drawing.svg, 'board');
  drawBoardEdge(drawing, group, board, view);
  if (board.ribs.length > 0) drawRibs(drawing, openGroup(drawing, group, 'ribs'), ribView(painting));
  for (const hole of board.holes) drawHole(drawing, group, hole, view);
  const box = windowBox(view, windowRound(board.outline));
  const left = drawRows(drawing, openGroup(drawing, drawing.svg, 'ordinates'), rows, view, box);
  const { mirrored } = kind;
  const caption = mirrored ? 'REAR VIEW' : null;
  const arrows = placeDirectionArrows(drawing, board, room, { mirrored, caption, keepOff: [box] });
  const isCut = kind.measured === 'outline';
  const grain = isCut ? placeGrainArrow(drawing, grainShown(board), room, [box]) : [];
  const key = isCut ? [] : placeHoleKey(drawing, holeKeyTexts(board.holes, painting.style), room, box);
  return [...left, ...arrows, ...grain, ...key, ...labelBoard(drawing, painting, box)];
}
