import { ribRing } from '../../board/strength/rib.ts';
import type { BuildPlan, OutlinePoint, PlanBoard } from '../../model/plan/index.ts';
import { inSentence } from '../../model/printed/in-sentence.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import { dimensionNote, type LengthStyle, lengthStyle } from '../../model/quantity/length-text.ts';
import { drawBoardEdge, drawHole } from '../board/board-view.ts';
import { grainShown, placeGrainArrow } from '../board/grain-arrow.ts';
import type { Feature } from '../board/ordinate-rows.ts';
import { placeDirectionArrows } from '../board/place-arrows.ts';
import { drawRibs } from '../board/ribs-on-board.ts';
import { type BoardPainting, type BoardViewKind, labelBoard, ribView } from '../cut/cut-labels.ts';
import { holeKeyTexts } from '../cut/hole-key.ts';
import { ordinateSheet } from '../cut/ordinate-sheet.ts';
import { keyMm as holeKeyMm, placeKey } from '../cut/text-key.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import type { DrawnPage } from '../page.ts';
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

function cutPage(plan: BuildPlan, metrics: TextMetrics, board: PlanBoard, kind: BoardViewKind): DrawnPage {
  const style = lengthStyle(plan.shop);
  const base = {
    id: `${kind.id}-${board.id}`,
    title: `${board.title}: ${inSentence(kind.title)}`,
    subject: board.spaceTitle,
    documentType: kind.measured === 'outline' ? 'Cut drawing' : 'Drill drawing',
    description: describe(board, kind, style),
    projection: null,
    notes: notesOf(board, kind, style),
  };
  const isCut = kind.measured === 'outline';
  const keyMm = isCut ? 0 : holeKeyMm(holeKeyTexts(board.holes, style));
  return ordinateSheet(plan, metrics, {
    base,
    board,
    style,
    features: isCut ? [...outlineFeatures(board), ...ribFeatures(board)] : holeFeatures(board),
    from: isCut ? 'feature' : 'edge',
    mirrored: kind.mirrored,
    keyMm,
    paint: (drawing, scene) => paintBoard(drawing, { board, kind, style, ...scene }),
  });
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
  const { board, kind, view, room, box } = painting;
  const group = openGroup(drawing, drawing.svg, 'board');
  drawBoardEdge(drawing, group, board, view);
  if (board.ribs.length > 0) drawRibs(drawing, openGroup(drawing, group, 'ribs'), ribView(painting));
  for (const hole of board.holes) drawHole(drawing, group, hole, view);
  const left = painting.drawRows();
  const { mirrored } = kind;
  const caption = mirrored ? 'REAR VIEW' : null;
  const arrows = placeDirectionArrows(drawing, board, room, { mirrored, caption, keepOff: [box] });
  const isCut = kind.measured === 'outline';
  const grain = isCut ? placeGrainArrow(drawing, grainShown(board), room, [box]) : [];
  const key = isCut ? [] : placeKey(drawing, holeKeyTexts(board.holes, painting.style), room, box);
  return [...left, ...arrows, ...grain, ...key, ...labelBoard(drawing, painting)];
}
