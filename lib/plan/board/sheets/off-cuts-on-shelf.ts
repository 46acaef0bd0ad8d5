import { type CutBoard, cutFrom } from '../../../board/cut/sheet-pieces.ts';
import type { Job } from '../../../model/content/resolved-job.ts';
import type { PlanOffCut } from '../../../model/plan/index.ts';

/** The off-cuts on the shelf, none that is used up, of the sheets that some boards and their ribs are cut from. */
export function offCutsFor({ shop }: Pick<Job, 'shop'>, boards: readonly CutBoard[]): PlanOffCut[] {
  const sheets = [...new Set(cutFrom(boards).map(({ sheet }) => sheet))].toSorted();
  return sheets.flatMap((sheet) => offCutsOfSheet(shop.stock[sheet], sheet));
}

/** The off-cuts of one sheet on the shelf. */
export function offCutsOfSheet(stock: Job['shop']['stock'][string] | undefined, sheet: string): PlanOffCut[] {
  if (!stock || !('pieces' in stock)) return [];
  return Object.entries(stock['off-cuts'])
    .filter(([, { pieces }]) => pieces > 0)
    .map(([name, { width, height, pieces }]): PlanOffCut => {
      return { name, sheet, widthM: width, heightM: height, quantity: pieces };
    });
}
