import type { Side } from '../../board/layout/item.ts';
import { flatten } from '../../board/shape/bulge.ts';
import type { Ring } from '../../board/shape/point.ts';
import type { PlanPlacement } from '../../model/plan/index.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import { type BoardWindow, rectangleOnPaper, windowBox } from '../board/board-view.ts';
import { clippedLine, interrupted } from '../board/clip.ts';
import { labelsText } from '../board/merge-names.ts';
import { drawOrdinates } from '../dimension.ts';
import { hatchFill } from '../hatch.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import { drawLabels, type TextLabel } from '../lettering/view-labels.ts';
import { type HatchName, lines, types } from '../line-styles.ts';
import { at, boxAt, boxRound, cornersOf, type PaperBox } from '../paper.ts';
import { drawArrowHead, drawCircle, drawLine, drawShape, type Parent } from '../pen.ts';
import { lengthOnPaper, onPaper, type PlanView } from '../sheet/scale.ts';
import { type Drawing, openGroup, openSubject } from '../surface.ts';
import { railsBelow } from './rails.ts';
import type { RaisedScene } from './raised-scene.ts';
import type { PassingWire } from './wires-beneath.ts';

/** One of the two views, and where its names may stand. */
export interface SceneView {
  readonly view: PlanView;
  readonly window: BoardWindow;
  readonly room: PaperBox;
}

const letter = 'A';
/** Lengths of the ends of the cutting plane and of their arrows, millimetres of paper. */
const endMm = 6;
const arrowMm = 6;

/** The part from its mounting side: what lies below it in hidden lines, and the line of the cutting plane. */
export function paintPlan(drawing: Drawing, scene: RaisedScene, { view, window, room }: SceneView): string[] {
  const { board, placement, beneath, nameOf } = scene;
  const group = openGroup(drawing, drawing.svg, 'plan');
  const frame = windowBox(view, window);
  const outline = board.outline.map((point) => onPaper(view, point));
  const [first] = outline;
  for (const piece of first ? clippedLine([...outline, first], frame) : [])
    drawLine(openSubject(drawing, group, board.id), piece, lines.seen);
  const whole = partBox(view, placement);
  drawShape(openSubject(drawing, group, placement.item), cornersOf(whole), lines.seen);
  const lower = beneath.placements.map((one) => {
    const box = partBox(view, one);
    drawLower(openSubject(drawing, group, one.item), box, whole);
    return nameLabel(`plan ${one.item}`, nameOf(one.item), one.item, box);
  });
  for (const { from, to } of beneath.wires)
    drawLine(group, [onPaper(view, from), onPaper(view, to)], lines.hidden);
  drawCuttingPlane(drawing, onPaper(view, { xM: 0, yM: scene.cutM }).yMm, whole);
  const label = nameLabel(`plan ${placement.item}`, nameOf(placement.item), placement.item, whole);
  const own = { ...label, inside: whole };
  return drawLabels(drawing, openGroup(drawing, drawing.svg, 'plan-names'), [own, ...lower], room);
}

function partBox(view: PlanView, { xM, yM, widthM, depthM }: PlanPlacement): PaperBox {
  return boxRound(rectangleOnPaper(view, { xM, yM, widthM, heightM: depthM }));
}

/** The outline of a part below another: hidden where it lies below that, seen where it looks out. */
function drawLower(parent: Parent, box: PaperBox, upper: PaperBox): void {
  const corners = cornersOf(box);
  const around = [...corners, ...corners.slice(0, 1)];
  for (const piece of interrupted(around, [upper])) drawLine(parent, piece, lines.seen);
  for (const piece of clippedLine(around, upper)) drawLine(parent, piece, lines.hidden);
}

function nameLabel(id: string, text: string, subject: string, box: PaperBox): TextLabel {
  return { id, lines: [text], type: types.terminal, anchors: [box], own: [subject], subject };
}

/** A chain line, wide at its ends, with arrows the way that is looked and a letter at each (ISO 128-3, from memory). */
function drawCuttingPlane(drawing: Drawing, yMm: number, part: PaperBox): void {
  const group = openGroup(drawing, drawing.svg, 'cutting-plane');
  const [fromMm, toMm] = [part.leftMm - endMm, part.rightMm + endMm];
  drawLine(group, [at(fromMm, yMm), at(toMm, yMm)], lines.centre);
  for (const [endAtMm, out] of [
    [fromMm, -1],
    [toMm, 1],
  ] as const) {
    drawLine(group, [at(endAtMm - (out * endMm) / 2, yMm), at(endAtMm + out, yMm)], lines.cut);
    const middle = endAtMm;
    drawLine(group, [at(middle, yMm + arrowMm), at(middle, yMm)], lines.dimension);
    drawArrowHead(group, at(middle, yMm), at(middle, yMm + arrowMm));
    const besideMm = endAtMm + out * 2.5;
    const align = out < 0 ? 'end' : 'start';
    drawText(drawing, group, letter, at(besideMm, yMm + arrowMm), { type: types.item, align });
  }
}

/** The section: board and rails cut, the part and what stands below it seen, conductors where they pass the plane. */
export function paintSection(
  drawing: Drawing,
  scene: RaisedScene,
  { view, window, room }: SceneView,
): string[] {
  const { board, placement, beneath, nameOf } = scene;
  const group = openGroup(drawing, drawing.svg, 'section');
  const frame = windowBox(view, window);
  const upright = (
    item: string,
    fromXM: number,
    toXM: number,
    fromM: number,
    toM: number,
    hatch?: HatchName,
  ): PaperBox => {
    const corners = rectangleOnPaper(view, {
      xM: fromXM,
      yM: fromM,
      widthM: toXM - fromXM,
      heightM: toM - fromM,
    });
    drawShape(openSubject(drawing, group, item), corners, lines.seen, hatch && hatchFill(drawing, hatch));
    return boxRound(corners);
  };
  for (const { fromXM, toXM } of boardAt(scene, window))
    upright(board.id, fromXM, toXM, -board.thicknessM, 0, 'section');
  for (const { fromXM, acrossM, toM } of railsBelow(board, placement))
    upright(placement.item, fromXM, fromXM + acrossM, 0, toM, 'sectionBeside');
  const { raisedM, heightM, xM, widthM } = placement;
  const whole = upright(placement.item, xM, xM + widthM, raisedM, raisedM + heightM);
  const lower = beneath.placements.map((one) => {
    const box = upright(one.item, one.xM, one.xM + one.widthM, one.raisedM, one.raisedM + one.heightM);
    return nameLabel(`section ${one.item}`, nameOf(one.item), one.item, box);
  });
  const wires = drawWires(group, scene, view);
  const head = at((frame.leftMm + frame.rightMm) / 2, baselineFor(frame.topMm - 6, types.item));
  drawText(drawing, group, `${letter}-${letter}`, head, { type: types.item, align: 'middle' });
  const left = drawHeights(drawing, scene, view, frame);
  const own = {
    ...nameLabel(`section ${placement.item}`, nameOf(placement.item), placement.item, whole),
    inside: whole,
  };
  const names = openGroup(drawing, drawing.svg, 'section-names');
  return [...left, ...drawLabels(drawing, names, [own, ...lower, ...wires], room)];
}

/** From where to where the cutting plane meets the board in a window, its cut-outs left out. */
function boardAt({ board, cutM }: RaisedScene, window: BoardWindow): { fromXM: number; toXM: number }[] {
  const xs = [board.outline, ...board.cutouts]
    .flatMap((loop) => crossingsAt(flatten(loop, chordM), cutM))
    .toSorted((a, b) => a - b);
  return xs.flatMap((from, index) => {
    const to = xs[index + 1];
    if (index % 2 === 1 || to === undefined) return [];
    const [fromXM, toXM] = [Math.max(from, window.fromXM), Math.min(to, window.toXM)];
    return fromXM < toXM ? [{ fromXM, toXM }] : [];
  });
}

/** No chord stands farther from its arc, metres. */
const chordM = 0.0002;

/** Where a ring passes a height, along x. */
function crossingsAt(ring: Ring, yM: number): number[] {
  return ring.flatMap((a, index) => {
    const b = ring[(index + 1) % ring.length];
    if (!b || a.yM > yM === b.yM > yM) return [];
    return [a.xM + ((b.xM - a.xM) * (yM - a.yM)) / (b.yM - a.yM)];
  });
}

/** Conductors that pass the cutting plane, as circles of their size; what runs beyond it is on the view above. */
function drawWires(parent: Parent, scene: RaisedScene, view: PlanView): TextLabel[] {
  const { beneath, cutM } = scene;
  return beneath.wires.flatMap((wire, nth): TextLabel[] => {
    const xM = passesAt(wire, cutM);
    if (xM === null) return [];
    const radiusMm = lengthOnPaper(view, wire.diameterM) / 2;
    const centre = onPaper(view, { xM, yM: wire.diameterM / 2 });
    drawCircle(parent, centre, radiusMm, lines.part);
    const box = boxAt(centre.xMm - radiusMm, centre.yMm - radiusMm, 2 * radiusMm, 2 * radiusMm);
    const text = labelsText(wire.labels);
    return [
      { id: `wire ${nth} ${text}`, lines: [text], type: types.terminal, anchors: [box], own: ['section'] },
    ];
  });
}

/** Where a stroke of a wire passes the plane; null where it does not. */
function passesAt({ from, to }: PassingWire, cutM: number): number | null {
  const [a, b] = [from.yM - cutM, to.yM - cutM];
  if (a * b >= 0) return null;
  return from.xM + ((to.xM - from.xM) * a) / (a - b);
}

/** Heights off the board on the right: what stands below, the underside of the part, its upper face; and what is left between. */
function drawHeights(drawing: Drawing, scene: RaisedScene, view: PlanView, frame: PaperBox): string[] {
  const { placement, beneath, style } = scene;
  const { raisedM, heightM } = placement;
  const mark = (zM: number, text: string) => ({
    alongMm: onPaper(view, { xM: 0, yM: zM }).yMm,
    featureMm: frame.rightMm,
    text,
  });
  const top = Math.max(0, ...beneath.placements.map((one) => one.raisedM + one.heightM));
  const marks = [
    ...(top > 0 ? [mark(top, printedDimension('size', top, style))] : []),
    mark(raisedM, printedDimension('made', raisedM, style)),
    mark(raisedM + heightM, printedDimension('size', raisedM + heightM, style)),
  ];
  const side: Side = 'right';
  const { left } = drawOrdinates(drawing, openGroup(drawing, drawing.svg, 'heights'), {
    side,
    lineMm: frame.rightMm + 4,
    datumMm: onPaper(view, { xM: 0, yM: 0 }).yMm,
    marks,
    room: { fromMm: frame.topMm - 8, toMm: frame.bottomMm + 8 },
  });
  return left.map(({ text }) => text);
}
