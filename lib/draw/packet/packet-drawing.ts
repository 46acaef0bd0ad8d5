import type { BuildPlan } from '../../model/plan/index.ts';
import { baselineFor, drawText } from '../lettering/lettering.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines, types } from '../line-styles.ts';
import type { PaperPoint } from '../paper.ts';
import { drawCircle, type Parent } from '../pen.ts';
import { type Drawing, drawingText, layPaper, openDrawing } from '../surface.ts';

/** As wide as a phone shows at full size of its type; on paper two thirds of a page. */
export const packetWidthMm = 116;

/** A drawing of the packet: no sheet, no number, for everyone. */
export interface PacketDrawing {
  readonly id: string;
  readonly title: string;
  readonly drawing: Drawing;
  /** What found no place on it. */
  readonly unplaced: readonly string[];
}

export interface PacketDrawingRequest {
  readonly id: string;
  readonly title: string;
  /** Read out by a screen reader. */
  readonly description: string;
  readonly heightMm: number;
}

/** Opens a drawing of the packet of a job, on paper of its own. */
export function openPacketDrawing(
  { job }: Pick<BuildPlan, 'job'>,
  metrics: TextMetrics,
  { id, title, description, heightMm }: PacketDrawingRequest,
): Drawing {
  const size = { widthMm: packetWidthMm, heightMm };
  const drawing = openDrawing({ job: job.id, sheet: `packet-${id}`, ...size, title, description, metrics });
  layPaper(drawing);
  return drawing;
}

/** A drawing as the packet holds it: its colours are the page's. */
export function packetSvg({ drawing }: PacketDrawing): string {
  return drawingText(drawing, { colours: 'properties' });
}

/** Radius of the mark of a fuse. */
export const markMm = 2.9;

/** The number of a fuse in its ring. */
export function drawNumber(drawing: Drawing, parent: Parent, number: number, centre: PaperPoint): void {
  drawCircle(parent, centre, markMm, lines.seen, 'paper');
  const type = types.terminal;
  const point = { xMm: centre.xMm, yMm: baselineFor(centre.yMm, type) };
  drawText(drawing, parent, String(number), point, { type, align: 'middle' });
}
