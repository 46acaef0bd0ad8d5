import { ribRing } from '../../board/strength/rib.ts';
import type { BuildPlan, OutlinePoint, PlanBoard } from '../../model/plan/index.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import { dimensionNote, type LengthStyle } from '../../model/quantity/length-text.ts';
import {
  arcPoint,
  drawBoardEdge,
  drawHole,
  holeBox,
  viewIn,
  windowBox,
  windowRound,
} from '../board/board-view.ts';
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
import { drawRibs, type RibView, ribLabels, ribSize } from '../board/ribs-on-board.ts';
import { type Margins, type ScaledSheet, sheetFor, sheetRooms, within } from '../board/scaled-sheet.ts';
import { anchorAt } from '../lettering/label-candidates.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { type DrawnPage, drawPage, type Page } from '../page.ts';
import type { PaperBox } from '../paper.ts';
import { onPaper, type PlanView, type ScaleRatio } from '../sheet/scale.ts';
import { types } from '../style.ts';
import { type Drawing, openGroup } from '../surface.ts';
import type { DrawingKind } from './kind.ts';

/** Which face of a board a view shows, and what is measured on it. */
export interface BoardViewKind {
  readonly id: string;
  readonly title: string;
  readonly mirrored: boolean;
  readonly measured: 'outline' | 'holes';
}

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
  const drawn = drawnWith(0);
  const lacksRoom = drawn.left.includes(arrowsLeft) || drawn.left.includes(grainLeft);
  return lacksRoom ? drawnWith(directionArrowsMm.height + captionMm) : drawn;
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
  const figures = kind.measured === 'holes' ? [`Figures: hole numbers, then ordinate${ribs}`] : [];
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

interface BoardPainting {
  readonly board: PlanBoard;
  readonly kind: BoardViewKind;
  readonly rows: readonly RowPlan[];
  readonly view: PlanView;
  readonly style: LengthStyle;
  readonly room: PaperBox;
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
  const arrows = placeDirectionArrows(drawing, board, room, { mirrored, caption });
  const grain = kind.measured === 'outline' ? placeGrainArrow(drawing, grainShown(board), room) : [];
  return [...left, ...arrows, ...grain, ...labelBoard(drawing, painting, box)];
}

function ribView({ board, kind, view }: BoardPainting): RibView {
  return { board, view, seenFrom: kind.mirrored ? 'rear' : 'mounting', clip: null };
}

/** The name of each rib with its section; on the rear view with the room that is left between it and the panel. */
function ribNames(painting: BoardPainting): TextLabel[] {
  const { kind, style } = painting;
  return ribLabels(ribView(painting), [], (rib) =>
    kind.mirrored && rib.face === 'rear'
      ? [`${printedDimension('room-free', rib.roomM, style)} free behind`]
      : [ribSize(rib, style)],
  );
}

/** Hole numbers, then names of ribs and radii of bends. */
function labelBoard(drawing: Drawing, painting: BoardPainting, box: PaperBox): string[] {
  const { board, kind, view, room } = painting;
  const group = openGroup(drawing, drawing.svg, 'labels');
  const numbers = board.holes.map((hole): TextLabel => {
    const { n, of } = hole;
    const anchors = [holeBox(view, hole)];
    return { id: `H${n}`, lines: [String(n)], type: types.terminal, anchors, own: [of], subject: of };
  });
  const radii = kind.measured === 'outline' ? radiusLabels(painting) : [];
  return [
    ...drawLabels(drawing, group, numbers, box),
    ...drawLabels(drawing, group, [...ribNames(painting), ...radii], room),
  ];
}

/** One label for every radius, at one of the bends that have it: `4x R 1/2 (0.5) [13]`. */
function radiusLabels({ board, view, style }: BoardPainting): TextLabel[] {
  const bends = [board.outline, ...board.cutouts].flatMap((loop) =>
    loop.flatMap((from, index) => {
      const to = loop[(index + 1) % loop.length];
      if (!to || from.bulge === 0) return [];
      const anchor = anchorAt(onPaper(view, arcPoint(from, to, 0.5)));
      return [{ text: `R ${printedDimension('cut', radiusOf(from, to), style)}`, anchor }];
    }),
  );
  return [...new Set(bends.map(({ text }) => text))].map((text): TextLabel => {
    const anchors = bends.filter((bend) => bend.text === text).map(({ anchor }) => anchor);
    const said = anchors.length > 1 ? `${anchors.length}x ${text}` : text;
    return { id: text, lines: [said], type: types.dimension, anchors, own: [board.id], subject: board.id };
  });
}

/** Radius of a bent edge, from its chord: chord (1 + b2) / (4 |b|). */
function radiusOf(from: OutlinePoint, to: OutlinePoint): number {
  const chord = Math.hypot(to.xM - from.xM, to.yM - from.yM);
  return (chord * (1 + from.bulge ** 2)) / (4 * Math.abs(from.bulge));
}
