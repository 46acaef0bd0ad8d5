import type { NestPiece, StockSheet } from '../../board/nesting.ts';
import { riserPieces } from '../../board/risers.ts';
import type { BuildPlan, OutlinePoint, PlanBoard } from '../../model/plan/index.ts';
import { fullSizeView } from '../machine/full-size.ts';

/** A piece of a job, with the line that it is cut along where it is no rectangle. */
export interface JobPiece extends NestPiece {
  readonly loops: readonly (readonly OutlinePoint[])[];
}

type Jobs = readonly Pick<BuildPlan, 'job' | 'boards'>[];

/** Every piece that is cut from sheet for some jobs: boards, rails, pads. With several jobs, ids begin with the job's. */
export function jobPieces(jobs: Jobs): JobPiece[] {
  return jobs.flatMap(({ job, boards }) => {
    const prefix = jobs.length > 1 ? `${job.id}.` : '';
    return boards.flatMap((board) => [boardPiece(board, prefix), ...riserPiecesOf(board, prefix)]);
  });
}

function boardPiece(board: PlanBoard, prefix: string): JobPiece {
  const { widthMm, heightMm } = fullSizeView(board.outline);
  return {
    id: `${prefix}${board.id}`,
    sheet: board.sheet,
    widthM: widthMm / 1000,
    heightM: heightMm / 1000,
    loops: [board.outline, ...board.cutouts],
  };
}

/** Pieces of one form and size are one entry, however many things they carry. */
function riserPiecesOf(board: PlanBoard, prefix: string): JobPiece[] {
  const alike = new Map<string, JobPiece & { readonly count: number }>();
  for (const { form, count, widthM, lengthM } of riserPieces(board)) {
    if (count === 0) continue;
    const size = [widthM, lengthM].map((sizeM) => Number((sizeM * 1000).toFixed(1))).join('x');
    const id = `${prefix}${board.id}.${form}-${size}`;
    const before = alike.get(id)?.count ?? 0;
    const sides = { widthM, heightM: lengthM };
    alike.set(id, { id, sheet: board.sheet, ...sides, count: before + count, loops: [] });
  }
  return [...alike.values()];
}

/** Whole sheets of every material that the jobs ask for, as many as are needed, their longer side lying. */
export function jobStock(jobs: Jobs): StockSheet[] {
  const stock = new Map<string, StockSheet>();
  for (const { sheet, sheetWidthM, sheetHeightM } of jobs.flatMap(({ boards }) => boards))
    stock.set(sheet, {
      id: sheet,
      sheet,
      widthM: Math.max(sheetWidthM, sheetHeightM),
      heightM: Math.min(sheetWidthM, sheetHeightM),
      quantity: null,
    });
  return [...stock.values()].toSorted((a, b) => (a.id < b.id ? -1 : 1));
}
