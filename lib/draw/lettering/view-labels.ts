import { strokeObstacles } from '../drawn-strokes.ts';
import type { TypeStyle } from '../line-styles.ts';
import { at, type PaperBox } from '../paper.ts';
import { drawLeader, type Parent } from '../pen.ts';
import { type Drawing, openSubject } from '../surface.ts';
import type { LabelRequest } from './label-candidates.ts';
import { placeLabels } from './label-placement.ts';
import { drawText, linePitchMm } from './lettering.ts';
import type { Obstacle } from './obstacle-index.ts';

/** A text that is drawn wherever it finds a place near what it names. */
export interface TextLabel extends Omit<LabelRequest, 'widthMm' | 'heightMm'> {
  /** Lines, one below the other. */
  readonly lines: readonly string[];
  readonly type: TypeStyle;
  /** The id in the plan of what it names. */
  readonly subject?: string;
  /** Room on its left and right besides what every text has, so that neighbours are not read as one. Default 0. */
  readonly asideMm?: number;
}

/** Size of lines of text as they are read level. */
export function linesSizeMm(
  { metrics }: Drawing,
  texts: readonly string[],
  type: TypeStyle,
): { widthMm: number; heightMm: number } {
  return {
    widthMm: Math.max(0, ...texts.map((text) => metrics.widthMm(text, type))),
    heightMm: metrics.ascentMm(type) + metrics.descentMm(type) + (texts.length - 1) * linePitchMm(type),
  };
}

/** Every text drawn so far, as obstacles. */
export function textObstacles({ texts }: Drawing): Obstacle[] {
  return texts.map(({ box }, index) => ({ id: `text-${index}`, box }));
}

/** Places labels clear of all that is drawn so far, of further obstacles and of each other; names the rest. */
export function drawLabels(
  drawing: Drawing,
  parent: Parent,
  labels: readonly TextLabel[],
  room: PaperBox,
  obstacles: readonly Obstacle[] = [],
): string[] {
  const { placed, unplaced } = placeLabels({
    labels: labels.map((label) => ({ ...label, ...sizeOf(drawing, label) })),
    obstacles: [...obstacles, ...strokeObstacles(drawing), ...textObstacles(drawing)],
    room,
  });
  for (const { id, box, turned, leader } of placed) {
    const label = labels.find((each) => each.id === id);
    if (!label) continue;
    const group = openSubject(drawing, parent, label.subject ?? id);
    if (leader) drawLeader(group, [leader.from, leader.to]);
    const { asideMm = 0 } = label;
    const start = turned
      ? { ...box, bottomMm: box.bottomMm - asideMm }
      : { ...box, leftMm: box.leftMm + asideMm };
    drawLinesIn(drawing, group, label, start, turned);
  }
  return unplaced.map(({ id }) => labels.find((label) => label.id === id)?.lines.join(' ') ?? id);
}

function sizeOf(drawing: Drawing, { lines, type, asideMm = 0 }: TextLabel): ReturnType<typeof linesSizeMm> {
  const { widthMm, heightMm } = linesSizeMm(drawing, lines, type);
  return { widthMm: widthMm + 2 * asideMm, heightMm };
}

/** Writes lines one below the other into the box that they take, read level or from the right edge. */
export function drawLinesIn(
  drawing: Drawing,
  parent: Parent,
  { lines, type }: Pick<TextLabel, 'lines' | 'type'>,
  box: PaperBox,
  turned: boolean,
): void {
  const ascent = drawing.metrics.ascentMm(type);
  lines.forEach((text, index) => {
    const down = ascent + index * linePitchMm(type);
    const point = turned ? at(box.leftMm + down, box.bottomMm) : at(box.leftMm, box.topMm + down);
    drawText(drawing, parent, text, point, { type, turned });
  });
}
