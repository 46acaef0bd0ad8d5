import type { BuildPlan, PlanBoard, PlanPlacement } from '../../model/plan/index.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import { dimensionNote, type LengthStyle } from '../../model/quantity/length-text.ts';
import { type BoardWindow, viewIn } from '../board/board-view.ts';
import { labelsText } from '../board/merge-names.ts';
import { sheetRooms } from '../board/scaled-sheet.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { type DrawnPage, drawPage } from '../page.ts';
import { heightMm, type PaperBox, widthMm } from '../paper.ts';
import { shortName } from '../power/feed-words.ts';
import { type ScaleRatio, scaleRatios } from '../sheet/scale.ts';
import type { Drawing } from '../surface.ts';
import type { RaisedScene } from './raised-scene.ts';
import { paintPlan, paintSection } from './section-paint.ts';
import { type Beneath, beneathOf } from './wires-beneath.ts';

/** Round the part, how much of the board is shown with it, metres. */
const roundM = 0.03;
/** Room for names and dimensions round the two views, and between them, millimetres of paper. */
const asideMm = 42;
const gapMm = 16;
const rimMm = 12;

/** The parts of a board that stand raised. */
export function raisedOn({ placements }: Pick<PlanBoard, 'placements'>): PlanPlacement[] {
  return placements.filter(({ raisedM }) => raisedM > 0);
}

/**
 * A raised part seen from its mounting side and, below it, in section A-A after ISO 128-3: the board and the rails are cut,
 * parts and conductors are not. Views in third-angle projection: the section is seen from below, and stands there.
 */
export function raisedPage(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  placement: PlanPlacement,
  style: LengthStyle,
): DrawnPage {
  const scene = sceneOf(plan, board, placement, style);
  const name = scene.nameOf(placement.item);
  const base = {
    id: `section-${board.id}-${placement.item}`,
    title: `${board.title}: ${name}, section`,
    subject: board.spaceTitle,
    documentType: 'Section',
    description: `${name}, raised ${printedDimension('made', placement.raisedM, style)}, from its mounting side and in section. ${belowText(scene)}.`,
    projection: 'third',
    notes: [belowText(scene), 'Hatched: cut; dashed: what lies below', dimensionNote(style)],
  } as const;
  const [best] = sheetRooms(plan, metrics, base)
    .flatMap(({ orientation, room }) => {
      const ratio = scaleRatios.find((each) => each >= 1 && fits(scene, room, each));
      return ratio === undefined ? [] : [{ orientation, ratio }];
    })
    .toSorted((a, b) => a.ratio - b.ratio);
  const ratio = best?.ratio ?? 100;
  return drawPage(plan, metrics, {
    ...base,
    scale: ratio,
    orientation: best?.orientation ?? 'landscape',
    paint: (drawing, room) => paintBoth(drawing, scene, room, ratio),
  });
}

function sceneOf(
  plan: BuildPlan,
  board: PlanBoard,
  placement: PlanPlacement,
  style: LengthStyle,
): RaisedScene {
  const beneath = beneathOf(plan, board, placement);
  const nameOf = (id: string): string => {
    const item = plan.items.find((one) => one.id === id);
    return item ? shortName(item) : id;
  };
  return { plan, board, placement, beneath, style, cutM: cutAt(placement, beneath), nameOf };
}

/** Through the middle of what of the first thing below lies below the part; without any, through that of the part. */
function cutAt({ yM, depthM }: PlanPlacement, { placements }: Beneath): number {
  const [lower] = placements;
  const [from, to] = lower
    ? [Math.max(yM, lower.yM), Math.min(yM + depthM, lower.yM + lower.depthM)]
    : [yM, yM + depthM];
  return (from + to) / 2;
}

/** All that lies below a part: `Below it: Ground bar; wires P1, G2`. */
function belowText({ beneath: { placements, wires }, nameOf }: RaisedScene): string {
  const labels = labelsText([...new Set(wires.flatMap((wire) => wire.labels))]);
  const things = [
    ...placements.map(({ item }) => nameOf(item)),
    ...(labels === '' ? [] : [`wires ${labels}`]),
  ];
  return things.length === 0 ? 'Below it: nothing' : `Below it: ${things.join('; ')}`;
}

function planWindow({ xM, yM, widthM, depthM }: PlanPlacement): BoardWindow {
  return { fromXM: xM - roundM, toXM: xM + widthM + roundM, fromYM: yM - roundM, toYM: yM + depthM + roundM };
}

/** What the section shows, its heights in place of y. */
function sectionWindow({ placement, board }: RaisedScene): BoardWindow {
  const { fromXM, toXM } = planWindow(placement);
  return { fromXM, toXM, fromYM: -board.thicknessM, toYM: placement.raisedM + placement.heightM };
}

const sizeMm = (fromM: number, toM: number, ratio: ScaleRatio): number => ((toM - fromM) * 1000) / ratio;

function fits(scene: RaisedScene, room: PaperBox, ratio: ScaleRatio): boolean {
  const [above, below] = [planWindow(scene.placement), sectionWindow(scene)];
  const wide = sizeMm(above.fromXM, above.toXM, ratio) + 2 * asideMm;
  const high =
    sizeMm(above.fromYM, above.toYM, ratio) + sizeMm(below.fromYM, below.toYM, ratio) + gapMm + 2 * rimMm;
  return wide <= widthMm(room) && high <= heightMm(room);
}

function paintBoth(drawing: Drawing, scene: RaisedScene, room: PaperBox, ratio: ScaleRatio): string[] {
  const [above, below] = [planWindow(scene.placement), sectionWindow(scene)];
  const aboveMm = sizeMm(above.fromYM, above.toYM, ratio);
  const belowMm = sizeMm(below.fromYM, below.toYM, ratio);
  const spareMm = (heightMm(room) - aboveMm - belowMm - gapMm) / 2;
  const middleMm = room.topMm + spareMm + aboveMm;
  const upper = { ...room, topMm: room.topMm + spareMm, bottomMm: middleMm };
  const lower = { ...room, topMm: middleMm + gapMm, bottomMm: middleMm + gapMm + belowMm };
  const views = { plan: viewIn(upper, ratio, above), section: viewIn(lower, ratio, below) };
  return [
    ...paintPlan(drawing, scene, {
      view: views.plan,
      window: above,
      room: { ...room, bottomMm: middleMm + gapMm / 2 },
    }),
    ...paintSection(drawing, scene, {
      view: views.section,
      window: below,
      room: { ...room, topMm: middleMm },
    }),
  ];
}
