import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { shownLabel } from '../../model/plan/shown-names.ts';
import { exitMargins } from '../board/exits.ts';
import { labelsText } from '../board/merge-names.ts';
import type { Margins } from '../board/scaled-sheet.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { types } from '../line-styles.ts';
import type { DrawnPage } from '../page.ts';
import type { ScaleRatio } from '../sheet/scale.ts';
import { cutPlaces } from '../wiring/cut-places.ts';
import { insulationStripHeightMm, insulationsIn } from '../wiring/insulation-strip.ts';
import { keyGapMm, layerExits, paintLayer } from '../wiring/layer-paint.ts';
import { loomMargins, paintLooms } from '../wiring/loom-paint.ts';
import { wiresAlong } from '../wiring/route-ends.ts';
import { stepsOf } from '../wiring/tags.ts';
import { isOnLayer, type WiringLayer, wiringLayers } from '../wiring/wiring-layers.ts';
import { wiringSheets } from '../wiring/wiring-sheets.ts';
import type { DrawingKind } from './kind.ts';

/** Wiring of each board: its looms in one overview, then each layer by itself, with a tag at every end of its conductors. */
export const wiring: DrawingKind = {
  sheet: 'board-wiring',
  pages: (plan, metrics) =>
    plan.boards
      .filter(({ routes }) => routes.length > 0)
      .flatMap((board) => [
        ...overview(plan, metrics, board),
        ...wiringLayers.flatMap((layer) => layerPages(plan, metrics, board, layer)),
      ]),
};

/** The narrowest room of a sheet, that of an upright A4 or Letter. */
const narrowMm = 172;

/** Room on a side of a board where nothing leaves: what stands round it is on other sheets. */
const besideMm = 3;

/** The smallest scale at which a conductor of 16 AWG can be followed: it is then as wide as the finest line. */
const legible: ScaleRatio = 10;
/** The smallest scale at which conductors side by side are told apart. */
const toldApart: ScaleRatio = 5;

/** Room for `to part 2, B4` and its arrow beside a cut. */
const shortReferenceMm = 27;
/** Arrow and gaps of a reference, and the height of one on two lines with what parts it from the next. */
const [besideReferenceMm, referenceBlockMm] = [11, 9];

/** Room beside a cut: for references on two lines, or on one where all routes of a layer may meet one side. */
function referenceMmOf(metrics: TextMetrics, board: PlanBoard, labels: readonly string[]): number {
  const shortestMm = (Math.min(board.widthM, board.heightM) * 1000) / legible;
  if (labels.length * referenceBlockMm <= shortestMm) return shortReferenceMm;
  const texts = labels.map((label) => `${label} to part 6, H9`);
  return besideReferenceMm + Math.max(...texts.map((text) => metrics.widthMm(text, types.terminal)));
}

function overview(plan: BuildPlan, metrics: TextMetrics, board: PlanBoard): readonly DrawnPage[] {
  const { routes, crossings } = board;
  return wiringSheets(plan, metrics, board, {
    base: {
      id: `wiring-${board.id}`,
      title: `${board.title}: wiring, looms`,
      subject: board.spaceTitle,
      documentType: 'Wiring',
      description: `${board.title} with ${routes.length} routes gathered in looms, each with the count of its conductors; ${crossings} crossings.`,
      projection: null,
      notes: [
        'A line is a loom, the figure beside its stroke the count of its conductors; without a stroke it is one conductor, or the loom is told on its longest stretch',
        'Each conductor is drawn on the sheet of its layer',
        `Crossings: ${crossings}`,
      ],
    },
    margins: (ratio) => loomMargins(metrics, board, ratio),
    referenceMm: shortReferenceMm,
    cuts: cutPlaces(plan, board, routes),
    readable: legible,
    legible,
    paint: paintLooms,
    paintListed: paintLooms,
  });
}

function layerPages(
  plan: BuildPlan,
  metrics: TextMetrics,
  board: PlanBoard,
  layer: WiringLayer,
): readonly DrawnPage[] {
  const along = board.routes.map((route) => wiresAlong(plan, route));
  const wires = along.flat().filter((wire) => isOnLayer(layer, wire));
  if (wires.length === 0) return [];
  const onLayer = board.routes.filter((_, nth) => along[nth]?.some((wire) => isOnLayer(layer, wire)));
  const labels = along.flatMap((each) => {
    const own = each.filter((wire) => isOnLayer(layer, wire));
    return own.length === 0 ? [] : [labelsText(own.map(shownLabel))];
  });
  const keyMm = insulationStripHeightMm(metrics, insulationsIn(wires, true), narrowMm) + keyGapMm;
  const exits = layerExits({ plan, board }, layer, stepsOf(plan));
  const margins = (ratio: ScaleRatio): Margins => {
    const own = exitMargins({ metrics }, board, exits, ratio, types.terminal, besideMm);
    return { ...own, top: own.top + keyMm };
  };
  return wiringSheets(plan, metrics, board, {
    base: {
      id: `wiring-${layer.id}-${board.id}`,
      title: `${board.title}: wiring, ${layer.name}`,
      subject: board.spaceTitle,
      documentType: 'Wiring',
      description: `${board.title} with ${wires.length} conductors of its ${layer.name}, each tagged at both ends.`,
      projection: null,
      notes: [
        'Tag: terminal / wire: size, colour, [step of the order of work]',
        ...polarityNotes[layer.id],
        'What passes below ends beside what passes over it',
        'Broad pale lines: the other layers',
      ],
    },
    margins,
    referenceMm: referenceMmOf(metrics, board, labels),
    cuts: cutPlaces(plan, board, onLayer),
    readable: toldApart,
    legible,
    paint: (drawing, scene) => paintLayer(drawing, scene, layer, false),
    paintListed: (drawing, scene) => paintLayer(drawing, scene, layer, true),
  });
}

/** How the polarity of a conductor is read, layer by layer. */
const polarityNotes: Readonly<Record<WiringLayer['id'], readonly string[]>> = {
  signal: [],
  speaker: ['L1 +- is L1+ and L1-'],
  'turn-on': [],
  power: ['P is positive, G is negative'],
};
