import { nestedName } from '../../board/cut/sheet-pieces.ts';
import { drawLines, linePitchMm } from '../../draw/lettering/lettering.ts';
import type { TextMetrics } from '../../draw/lettering/text-metrics.ts';
import { types } from '../../draw/line-styles.ts';
import { nestLayout, nestNotes } from '../../draw/nest/nest-layout.ts';
import type { NestScene } from '../../draw/nest/nest-list.ts';
import { paintNest } from '../../draw/nest/nest-paint.ts';
import { at } from '../../draw/paper.ts';
import { scaleText } from '../../draw/sheet/scale.ts';
import { frameBox, sheetSize, type UsualFormatName } from '../../draw/sheet/sheet-format.ts';
import { drawingText, layPaper, openDrawing } from '../../draw/surface.ts';

export interface NestPage {
  readonly scene: NestScene;
  readonly paper: UsualFormatName;
  readonly metrics: TextMetrics;
  /** What the page says of itself, one line for each job. */
  readonly origins: readonly string[];
}

const padMm = 4;

/** One stock sheet with what is cut from it, on a page of its own without the title block of a job; null where no scale takes it. */
export function nestPageSvg({ scene, paper, metrics, origins }: NestPage): string | null {
  const { stock, copy } = scene.sheet;
  const format = { name: paper, orientation: 'landscape' } as const;
  const title = `Nesting: ${nestedName(scene.sheet)}`;
  const description = origins.join('; ');
  const size = sheetSize(format);
  const drawing = openDrawing({
    job: 'nest',
    sheet: `${stock.id}-${copy}`,
    ...size,
    title,
    description,
    metrics,
  });
  layPaper(drawing);
  const frame = frameBox(format);
  const facts = nestNotes(scene);
  const headMm = types.heading.capMm + (origins.length + facts.length + 1) * linePitchMm(types.note) + padMm;
  const room = { ...frame, topMm: frame.topMm + headMm };
  const layout = nestLayout(scene, room, metrics);
  if (!layout) return null;
  const first = frame.topMm + types.heading.capMm;
  drawLines(drawing, drawing.svg, [title], at(frame.leftMm, first), { type: types.heading });
  const said = [...origins, ...facts, `Scale ${scaleText(layout.ratio)}`];
  const below = first + linePitchMm(types.note) + padMm / 2;
  drawLines(drawing, drawing.svg, said, at(frame.leftMm, below), { type: types.note });
  paintNest(drawing, room, scene, layout);
  return drawingText(drawing, { colours: 'resolved', outlines: metrics });
}
