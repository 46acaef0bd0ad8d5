import { bulgePath } from '../../draw/bulge-path.ts';
import { onPaper, type PlanView } from '../../draw/sheet/scale.ts';
import type { PlanBoard } from '../../model/plan/index.ts';
import { element, pathData, svgOf } from '../svg-markup.ts';
import { fullSizeView } from './full-size.ts';
import { type DrilledHole, machinePaths } from './machine-paths.ts';

/** Strokes by which a machine's program tells the three apart; thin enough to be taken as a line to follow. */
const strokes = { cut: '#ff0000', drill: '#0000ff', engrave: '#000000' } as const;
const strokeMm = 0.1;

/**
 * A board at full size for a router or a laser: one unit is one millimetre, the page is the smallest upright
 * rectangle round the outline, and groups `cut`, `drill` and `engrave` differ in name and in stroke.
 */
export function machineSvg(board: PlanBoard, remarks: readonly string[]): string {
  const { view, ...size } = fullSizeView(board.outline);
  const { cut, drill, engrave } = machinePaths(board);
  const words = {
    title: `${board.title}, full size`,
    description: ['Units are millimetres, seen from the mounting side.', ...remarks].join(' '),
  };
  return `${svgOf(size, words, [
    group(
      'cut',
      cut.map((loop) => element('path', { d: bulgePath(loop, view) })),
    ),
    group(
      'drill',
      drill.map((hole) => drilled(hole, view)),
    ),
    group(
      'engrave',
      engrave.map((run) => element('path', { d: pathData(run.map((place) => onPaper(view, place))) })),
    ),
  ])}\n`;
}

function group(id: keyof typeof strokes, inside: readonly string[]): string {
  return element('g', { id, stroke: strokes[id], 'stroke-width': strokeMm }, inside);
}

/** A circle; a small cross where the diameter is not known. */
function drilled(hole: DrilledHole, view: PlanView): string {
  const { xMm, yMm } = onPaper(view, hole);
  if (hole.diameterM > 0) return element('circle', { cx: xMm, cy: yMm, r: hole.diameterM * 500 });
  return element('path', { d: `M${xMm - 2} ${yMm}L${xMm + 2} ${yMm}M${xMm} ${yMm - 2}L${xMm} ${yMm + 2}` });
}
