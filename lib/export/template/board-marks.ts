import { bulgePath } from '../../draw/bulge-path.ts';
import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import { types } from '../../draw/line-styles.ts';
import { boxAt, boxesMeet, grown, type PaperBox, type PaperPoint } from '../../draw/paper.ts';
import { onPaper, type PlanView } from '../../draw/sheet/scale.ts';
import type { PlanBoard, PlanHole } from '../../model/plan/index.ts';
import { fittedText, haloed } from '../fitted-text.ts';
import { element, pathData } from '../svg-markup.ts';

const crossMm = 4;
/** A hole and its number reach no further from its centre. */
const nearMm = 60;
const everywhere = boxAt(-1e6, -1e6, 2e6, 2e6);

function pointBox({ xMm, yMm }: PaperPoint): PaperBox {
  return boxAt(xMm, yMm, 0, 0);
}

/** A board as it is pricked through a template: edge, openings, centres of holes with their numbers, footprints. */
export function boardMarks(
  board: PlanBoard,
  view: PlanView,
  metrics: TextMetrics,
  window: PaperBox = everywhere,
): string[] {
  const holes = board.holes.filter((hole) => boxesMeet(window, grown(pointBox(onPaper(view, hole)), nearMm)));
  const loops = [board.outline, ...board.cutouts].map((loop) =>
    element('path', { d: bulgePath(loop, view) }),
  );
  const prints = board.placements.map(({ xM, yM, widthM, depthM }) => {
    const corners = [
      onPaper(view, { xM, yM }),
      onPaper(view, { xM: xM + widthM, yM }),
      onPaper(view, { xM: xM + widthM, yM: yM + depthM }),
      onPaper(view, { xM, yM: yM + depthM }),
    ];
    return element('path', { d: pathData(corners, true) });
  });
  const middleMm = (Math.min(...xs(board, view)) + Math.max(...xs(board, view))) / 2;
  return [
    element('g', { stroke: '#000000', 'stroke-width': 0.5 }, loops),
    ...(prints.length > 0
      ? [element('g', { stroke: '#000000', 'stroke-width': 0.18, 'stroke-dasharray': '3 1.5' }, prints)]
      : []),
    ...(holes.length > 0
      ? [
          element(
            'g',
            { stroke: '#000000', 'stroke-width': 0.18 },
            holes.map((hole) => centre(hole, view)),
          ),
          element(
            'g',
            { fill: '#000000' },
            holes.map((hole) => number(hole, view, middleMm, metrics)),
          ),
        ]
      : []),
    element('g', haloed, itemNames(board, view, metrics, window)),
  ];
}

function xs(board: PlanBoard, view: PlanView): number[] {
  return board.outline.map((corner) => onPaper(view, corner).xMm);
}

function centre(hole: PlanHole, view: PlanView): string {
  const { xMm, yMm } = onPaper(view, hole);
  const reach = Math.max(crossMm, hole.diameterM * 500 + 1.5);
  const cross = element('path', {
    d: pathData([
      { xMm: xMm - reach, yMm },
      { xMm: xMm + reach, yMm },
    ]).concat(
      pathData([
        { xMm, yMm: yMm - reach },
        { xMm, yMm: yMm + reach },
      ]),
    ),
  });
  if (hole.diameterM <= 0) return cross;
  return element('g', {}, [cross, element('circle', { cx: xMm, cy: yMm, r: hole.diameterM * 500 })]);
}

/** Beside its hole, towards the middle of the board. */
function number(hole: PlanHole, view: PlanView, middleMm: number, metrics: TextMetrics): string {
  const { xMm, yMm } = onPaper(view, hole);
  const awayMm = Math.max(1, hole.diameterM * 500) + 1;
  const rightwards = xMm <= middleMm;
  return fittedText(
    {
      text: String(hole.n),
      xMm: xMm + (rightwards ? awayMm : -awayMm),
      yMm: yMm - 1.4,
      capMm: 2.5,
      roomMm: 12,
      type: types.terminal,
      align: rightwards ? 'start' : 'end',
    },
    metrics,
  );
}

function itemNames(board: PlanBoard, view: PlanView, metrics: TextMetrics, window: PaperBox): string[] {
  return board.placements.flatMap(({ item, xM, yM, widthM, depthM }) => {
    const middle = onPaper(view, { xM: xM + widthM / 2, yM: yM + depthM / 2 });
    const roomMm = Math.max(1, widthM * 1000 - 4);
    if (!boxesMeet(window, grown(pointBox(middle), roomMm))) return [];
    return fittedText(
      { text: item, ...middle, capMm: 3.5, roomMm, type: types.item, align: 'middle' },
      metrics,
    );
  });
}
