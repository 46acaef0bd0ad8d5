import { drawLines, drawText, linePitchMm } from '../lettering/lettering.ts';
import { lines, types } from '../line-styles.ts';
import { at, boxAt, cornersOf, type PaperPoint } from '../paper.ts';
import { drawLine, drawShape } from '../pen.ts';
import { type Drawing, openSubject } from '../surface.ts';
import { byItsScale, drawControl, needsScale, notSafe, shapeSize } from './control-shape.ts';
import type { PanelControl } from './panel-strips.ts';
import { type LaidStrip, nameOf, strip } from './strip-layout.ts';

/** Draws a panel with its controls in their presets; its top left corner at a point. */
export function paintStrip(drawing: Drawing, laid: LaidStrip, { xMm, yMm }: PaperPoint): void {
  const { item, isMenu, controls } = laid.strip;
  const group = openSubject(drawing, drawing.svg, item.id);
  let top = yMm;
  const write = (texts: readonly string[], type: typeof types.item | typeof types.note): void => {
    drawLines(drawing, group, texts, at(xMm, top + type.capMm), { type });
    top += texts.length * linePitchMm(type);
  };
  write(laid.heading, types.item);
  write(laid.lies, types.note);
  top += strip.gapMm;
  const box = boxAt(xMm, top, controls.length * laid.pitchMm, laid.panelMm);
  // A menu is no surface of the part: its outline is thinner and dashed.
  drawShape(group, cornersOf(box), isMenu ? lines.hidden : lines.seen);
  controls.forEach((control, index) => {
    if (index > 0) {
      const edge = xMm + index * laid.pitchMm;
      drawLine(group, [at(edge, box.bottomMm - 1.5), at(edge, box.bottomMm)], lines.rule);
    }
    paintControl(drawing, laid, index, control, at(xMm + (index + 0.5) * laid.pitchMm, top));
  });
  top = box.bottomMm + strip.gapMm + laid.presetMm + strip.gapMm;
  write(laid.reasons, types.note);
}

function paintControl(
  drawing: Drawing,
  laid: LaidStrip,
  index: number,
  control: PanelControl,
  top: PaperPoint,
): void {
  const { set } = control;
  const group = openSubject(drawing, drawing.svg, `${set.item}.${set.control}`);
  const middle = { align: 'middle' } as const;
  const type = types.terminal;
  drawText(drawing, group, nameOf(control), at(top.xMm, top.yMm + strip.padMm + 1 + type.capMm), {
    type,
    ...middle,
  });
  const fromMm = top.yMm + strip.padMm + strip.nameMm;
  const { heightMm } = shapeSize(drawing.metrics, control);
  drawControl(drawing, group, control, at(top.xMm, fromMm + heightMm / 2));
  if (needsScale(control))
    drawText(drawing, group, byItsScale, at(top.xMm, fromMm + heightMm + 1 + types.note.capMm), {
      type: types.note,
      ...middle,
    });
  const preset = laid.presets[index];
  if (!preset) return;
  const below = top.yMm + laid.panelMm + strip.gapMm;
  drawLines(drawing, group, preset.lines, at(top.xMm, below + preset.type.capMm), {
    type: preset.type,
    ...middle,
  });
  if (set.safe) return;
  const last = below + preset.lines.length * linePitchMm(preset.type) + type.capMm;
  drawText(drawing, group, notSafe, at(top.xMm, last), { type, ...middle });
}
