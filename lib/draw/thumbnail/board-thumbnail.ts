import { flatten } from '../../board/shape/bulge.ts';
import { ringOfBox } from '../../board/shape/point.ts';
import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { drawConductor } from '../conductor-line.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines } from '../line-styles.ts';
import { at, type PaperPoint } from '../paper.ts';
import { drawShape } from '../pen.ts';
import { drawingText, layPaper, openDrawing } from '../surface.ts';

/** Room that a thumbnail has, millimetres of paper: its lines are those of any drawing, and it is shown about so large. */
export const thumbnailMm = { width: 48, height: 36 } as const;

const rimMm = 2;
/** No chord stands farther from its arc, metres: a tenth of a millimetre of paper. */
const chordM = 0.002;

/** A drawing of a board that is small and says nothing: by it a job is known among others. */
export interface BoardThumbnail {
  /** What it shows, for who hears the page read. */
  readonly title: string;
  readonly svg: string;
}

/**
 * The board of a job that carries most, from its mounting side: its outline and cut-outs, what stands on it, its power
 * wires and grounds. Null where no board carries anything.
 */
export function boardThumbnail(
  { job, boards }: Pick<BuildPlan, 'job' | 'boards'>,
  metrics: TextMetrics,
): BoardThumbnail | null {
  const [board] = boards
    .filter(({ placements }) => placements.length > 0)
    .toSorted((a, b) => b.placements.length - a.placements.length);
  if (!board) return null;
  const title = `${board.title}, from its mounting side`;
  const [widthMm, heightMm] = [thumbnailMm.width, thumbnailMm.height];
  const request = { job: job.id, sheet: 'thumbnail', widthMm, heightMm, title, description: title, metrics };
  const drawing = openDrawing(request);
  layPaper(drawing);
  const onPaper = viewOf(board);
  drawShape(drawing.svg, flatten(board.outline, chordM).map(onPaper), lines.seen);
  for (const cutout of board.cutouts)
    drawShape(drawing.svg, flatten(cutout, chordM).map(onPaper), lines.part, 'ghost');
  for (const { points, layer } of board.routes)
    if (layer === 'power' || layer === 'ground') drawConductor(drawing.svg, points.map(onPaper), layer);
  for (const { xM, yM, widthM, depthM } of board.placements) {
    const corners = ringOfBox({ minX: xM, minY: yM, maxX: xM + widthM, maxY: yM + depthM });
    drawShape(drawing.svg, corners.map(onPaper), lines.part, 'paper');
  }
  return { title, svg: drawingText(drawing, { colours: 'properties' }) };
}

/** The whole outline as large as it has room, in the middle. */
function viewOf({
  outline,
}: Pick<PlanBoard, 'outline'>): (place: { readonly xM: number; readonly yM: number }) => PaperPoint {
  const ring = flatten(outline, chordM);
  const [xs, ys] = [ring.map(({ xM }) => xM), ring.map(({ yM }) => yM)];
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  const perM = Math.min(
    (thumbnailMm.width - 2 * rimMm) / Math.max(right - left, chordM),
    (thumbnailMm.height - 2 * rimMm) / Math.max(high - low, chordM),
  );
  const asideMm = (thumbnailMm.width - (right - left) * perM) / 2;
  const aboveMm = (thumbnailMm.height - (high - low) * perM) / 2;
  return ({ xM, yM }) => at(asideMm + (xM - left) * perM, aboveMm + (high - yM) * perM);
}
