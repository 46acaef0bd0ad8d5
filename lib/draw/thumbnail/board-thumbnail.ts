import { flatten } from '../../board/shape/bulge.ts';
import { ringOfBox } from '../../board/shape/point.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { drawConductor } from '../conductor-line.ts';
import type { TextMetrics } from '../lettering/text-metrics.ts';
import { lines } from '../line-styles.ts';
import { at } from '../paper.ts';
import { drawShape } from '../pen.ts';
import { drawingText, layPaper, openDrawing } from '../surface.ts';
import { wholeBoard } from '../whole-board.ts';

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
  const room = { widthMm: widthMm - 2 * rimMm, heightMm: heightMm - 2 * rimMm };
  const whole = wholeBoard(board, room, chordM);
  const onPaper = whole.onPaper(at((widthMm - whole.widthMm) / 2, (heightMm - whole.heightMm) / 2));
  drawShape(drawing.svg, whole.ring.map(onPaper), lines.seen);
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
