import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { dimensionNote, type LengthStyle } from '../../model/quantity/length-text.ts';
import { drawBase, drawItemOutline, itemsOf } from '../board/board-base.ts';
import type { ItemOnBoard } from '../board/item-on-board.ts';
import { letterMiddle } from '../board/item-title.ts';
import type { Feature } from '../board/ordinate-rows.ts';
import { placeDirectionArrows } from '../board/place-arrows.ts';
import { itemsBeneath, largestFree } from '../board/stacked-items.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { types } from '../line-styles.ts';
import type { DrawnPage } from '../page.ts';
import { at, grown } from '../paper.ts';
import { fillShape } from '../pen.ts';
import { shortName } from '../power/feed-words.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import { type OrdinateScene, ordinateSheet } from './ordinate-sheet.ts';
import { keyMm, placeKey } from './text-key.ts';

/** The drawing by which parts are set out: each with the ordinates of its lower left corner from the datum. */
export function setOutPage(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  style: LengthStyle,
): DrawnPage {
  const numbers = partNumbers(board);
  const key = [...numbers].map(([id, n]) => `${n}: ${nameOf(plan, id)}`);
  return ordinateSheet(plan, metrics, {
    base: {
      id: `set-out-${board.id}`,
      title: `${board.title}: setting out`,
      subject: board.spaceTitle,
      documentType: 'Setting out',
      description: `${board.title} with the lower left corners of ${board.placements.length} parts, measured from the datum, seen from the mounting side.`,
      projection: null,
      notes: [
        'Figures: numbers of parts, then ordinate of the lower left corner (filled)',
        dimensionNote(style),
      ],
    },
    board,
    style,
    features: board.placements.map(({ item, xM, yM }): Feature => ({ xM, yM, n: numbers.get(item) ?? 0 })),
    from: 'edge',
    mirrored: false,
    keyMm: keyMm(key),
    paint: (drawing, scene) => paintSetOut(drawing, { plan, board, scene, numbers, key }),
  });
}

/** Numbers of parts, row by row from the datum, each row from the left. */
function partNumbers({ placements }: PlanBoard): ReadonlyMap<string, number> {
  const inRows = placements.toSorted((a, b) => a.yM - b.yM || a.xM - b.xM || (a.item < b.item ? -1 : 1));
  return new Map(inRows.map(({ item }, index) => [item, index + 1]));
}

function nameOf({ items }: Pick<BuildPlan, 'items'>, id: string): string {
  const item = items.find((one) => one.id === id);
  return item ? shortName(item) : id;
}

interface SetOut {
  readonly plan: BuildPlan;
  readonly board: PlanBoard;
  readonly scene: OrdinateScene;
  readonly numbers: ReadonlyMap<string, number>;
  readonly key: readonly string[];
}

/** Side of the filled corner, millimetres of paper. */
const cornerMm = 2.4;

function paintSetOut(drawing: Drawing, { plan, board, scene, numbers, key }: SetOut): string[] {
  const { view, room, box } = scene;
  const shown = { plan, board, view, clip: null, room, elsewhere: () => null };
  drawBase(drawing, shown);
  const items = itemsOf(shown);
  const group = openGroup(drawing, drawing.svg, 'items');
  for (const item of items) {
    const own = openSubject(drawing, group, item.item.id);
    drawItemOutline(own, shown, item, items);
    const { leftMm, bottomMm } = item.box;
    fillShape(
      own,
      [at(leftMm, bottomMm), at(leftMm + cornerMm, bottomMm), at(leftMm, bottomMm - cornerMm)],
      'line',
    );
  }
  const left = scene.drawRows();
  const arrows = placeDirectionArrows(drawing, board, room, {
    mirrored: false,
    caption: null,
    keepOff: [box],
  });
  const labels = items.flatMap((item) => numberPart(drawing, item, items, numbers.get(item.item.id) ?? 0));
  const named = placeKey(drawing, key, room, box);
  return [
    ...left,
    ...arrows,
    ...named,
    ...drawLabels(drawing, openGroup(drawing, drawing.svg, 'labels'), labels, room),
  ];
}

/** Writes the number of a part into what is free of it; where that has no room, it becomes a label. */
function numberPart(
  drawing: Drawing,
  item: ItemOnBoard,
  items: readonly ItemOnBoard[],
  n: number,
): TextLabel[] {
  const beneath = itemsBeneath(item, items).map((lower) => lower.box);
  const free = largestFree(grown(item.box, -cornerMm), beneath);
  const { id } = item.item;
  if (letterMiddle(drawing, openSubject(drawing, drawing.svg, id), free, String(n))) return [];
  return [
    { id: `number ${id}`, lines: [String(n)], type: types.item, anchors: [item.box], own: [id], subject: id },
  ];
}
