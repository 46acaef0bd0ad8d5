import { type HatchName, hatches, inks, lines } from './line-styles.ts';
import type { Fill } from './pen.ts';
import type { Drawing } from './surface.ts';

/** The fill of a hatch; defines its pattern in the drawing when first asked for. */
export function hatchFill(drawing: Drawing, name: HatchName): Fill {
  const id = drawing.id(`hatch-${name}`);
  if (!drawing.patterns.has(id)) definePattern(drawing, id, name);
  return `url(#${id})`;
}

function definePattern(drawing: Drawing, id: string, name: HatchName): void {
  const { anglesDeg, pitchMm } = hatches[name];
  const [first = 0, second] = anglesDeg;
  const pattern = drawing.defs.element('pattern').attr({
    id,
    width: pitchMm,
    height: pitchMm,
    patternUnits: 'userSpaceOnUse',
    patternTransform: `rotate(${-first})`,
  });
  const half = pitchMm / 2;
  const crossed = second === undefined ? '' : `M${half} 0V${pitchMm}`;
  pattern.element('path').attr({
    d: `M0 ${half}H${pitchMm}${crossed}`,
    stroke: inks[lines.hatch.ink],
    'stroke-width': lines.hatch.widthMm,
  });
  drawing.patterns.add(id);
}
