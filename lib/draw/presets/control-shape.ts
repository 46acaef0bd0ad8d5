import { controlStopOf } from '../../model/control-stops.ts';
import type { OffStop } from '../../model/vocabulary.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import { at, boxAt, centreOf, cornersOf, grown, type PaperBox, type PaperPoint } from '../paper.ts';
import { drawCircle, drawLine, drawShape, fillShape, type Parent } from '../pen.ts';
import type { Drawing } from '../surface.ts';
import type { PanelControl } from './panel-strips.ts';

const knobMm = 5.5;
const rowMm = 5.2;
const cellMm = 5;
const gapMm = 1.4;
const slotMm = 16;
/** The widest value that is written in its entry. */
const entryMm = 20;
/** Ends of a knob's turn, from its top: 7 and 5 o'clock. */
const stopDeg = 150;

/** Said below a control whose preset is a value on its own scale. */
export const byItsScale = 'by its scale';
/** Said below a preset that is not the safe state of its control. */
export const notSafe = 'NOT SAFE';

/**
 * How far a control is turned from its middle, -1 at the one end to 1 at the other; null for a value on its own scale. An
 * OFF lies at the stop that the part tells, else at the lowest.
 */
export function travelOf(preset: string, off: OffStop = 'lowest'): number | null {
  const said = preset.trim().toLowerCase();
  const stop = said === 'off' ? off : controlStopOf(said);
  if (stop !== null) return { lowest: -1, middle: 0, highest: 1 }[stop];
  const hour = Number(/^(\d{1,2}) o['’]clock$/.exec(said)?.[1] ?? Number.NaN) % 12;
  const turn = hour > 6 ? hour - 12 : hour;
  return Math.abs(turn) * 30 <= stopDeg ? (turn * 30) / stopDeg : null;
}

/** True where the shape can't show the preset, so that a text has to. */
export function needsScale({ form, positions, set, off }: PanelControl): boolean {
  return positions.length === 0 && form !== 'menu' && travelOf(set.preset, off) === null;
}

/** True for the position that a preset asks for. */
function isPreset(position: string, { set }: PanelControl): boolean {
  return position.trim().toLowerCase() === set.preset.trim().toLowerCase();
}

/** Room that the shape of a control takes, its positions with it. */
export function shapeSize(
  metrics: TextMetrics,
  control: PanelControl,
): { readonly widthMm: number; readonly heightMm: number } {
  const { form, positions } = control;
  if (positions.length > 0) {
    const names = Math.max(...positions.map((name) => metrics.widthMm(name, types.terminal)));
    return { widthMm: cellMm + gapMm + names, heightMm: positions.length * rowMm };
  }
  if (form === 'slide') return { widthMm: 8, heightMm: slotMm };
  if (form === 'menu') return { widthMm: entryTextMm(metrics, control) + 6, heightMm: 8 };
  return { widthMm: 2 * knobMm + 4, heightMm: 2 * knobMm + 4 };
}

/** Draws a control round a point, put in its preset. */
export function drawControl(
  drawing: Drawing,
  parent: Parent,
  control: PanelControl,
  centre: PaperPoint,
): void {
  const { widthMm, heightMm } = shapeSize(drawing.metrics, control);
  const box = boxAt(centre.xMm - widthMm / 2, centre.yMm - heightMm / 2, widthMm, heightMm);
  if (control.positions.length > 0) drawPositions(drawing, parent, control, box);
  else if (control.form === 'slide') drawSlide(parent, box, travelOf(control.set.preset, control.off));
  else if (control.form === 'menu') drawEntry(drawing, parent, control, box);
  else drawKnob(parent, centre, travelOf(control.set.preset, control.off));
}

/** A slot with a cell for each position, or a box for each entry of a menu; the preset one is filled. */
function drawPositions(drawing: Drawing, parent: Parent, control: PanelControl, box: PaperBox): void {
  const isMenu = control.form === 'menu';
  const pitch = isMenu ? rowMm - gapMm : rowMm;
  const slot = { ...box, rightMm: box.leftMm + cellMm };
  if (!isMenu) drawShape(parent, cornersOf(slot), lines.seen, 'paper');
  control.positions.forEach((name, index) => {
    const cell = boxAt(slot.leftMm, box.topMm + index * rowMm + (isMenu ? gapMm / 2 : 0), cellMm, pitch);
    const chosen = isPreset(name, control);
    if (isMenu) drawShape(parent, cornersOf(cell), lines.part, 'paper');
    if (chosen) fillShape(parent, cornersOf(grown(cell, -0.8)), 'line');
    const baseline = baselineFor((cell.topMm + cell.bottomMm) / 2, types.terminal);
    drawText(drawing, parent, name, at(slot.rightMm + gapMm, baseline), {
      type: chosen ? types.terminal : types.note,
    });
  });
}

function drawSlide(parent: Parent, box: PaperBox, travel: number | null): void {
  const middle = (box.leftMm + box.rightMm) / 2;
  drawShape(parent, cornersOf({ ...box, leftMm: middle - 1.2, rightMm: middle + 1.2 }), lines.part, 'paper');
  if (travel === null) return;
  const yMm = (box.topMm + box.bottomMm) / 2 - (travel * (slotMm - 3)) / 2;
  drawShape(parent, cornersOf(boxAt(box.leftMm, yMm - 1.5, 8, 3)), lines.seen, 'line');
}

/** An entry of a menu that takes a value: its box, the value in it where it is short. */
function drawEntry(drawing: Drawing, parent: Parent, control: PanelControl, box: PaperBox): void {
  drawShape(parent, cornersOf(box), lines.part, 'paper');
  const { xMm, yMm } = centreOf(box);
  const type = types.terminal;
  const text = entryText(drawing.metrics, control);
  drawText(drawing, parent, text, at(xMm, baselineFor(yMm, type)), { type, align: 'middle' });
}

function entryText(metrics: TextMetrics, { set }: PanelControl): string {
  return metrics.widthMm(set.preset, types.terminal) <= entryMm ? set.preset : '';
}

function entryTextMm(metrics: TextMetrics, control: PanelControl): number {
  return Math.max(entryMm / 2, metrics.widthMm(entryText(metrics, control), types.terminal));
}

function drawKnob(parent: Parent, centre: PaperPoint, travel: number | null): void {
  drawCircle(parent, centre, knobMm, lines.seen, 'paper');
  const spoke = (deg: number, fromMm: number, toMm: number): PaperPoint[] =>
    [fromMm, toMm].map((reach) => {
      const angle = (deg * Math.PI) / 180;
      return at(centre.xMm + reach * Math.sin(angle), centre.yMm - reach * Math.cos(angle));
    });
  for (const deg of [-stopDeg, stopDeg]) drawLine(parent, spoke(deg, knobMm + 0.5, knobMm + 2), lines.part);
  if (travel === null) drawCircle(parent, centre, 0.8, lines.part);
  else drawLine(parent, spoke(travel * stopDeg, 0, knobMm), { ...lines.cut, widthMm: 1.2 });
}
