import type { BuildPlan, PlanPick } from '../../model/plan/index.ts';
import { counted, spelledWithin } from '../words.ts';
import { type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { blank, dense, strong, type Table, tableOf, tick } from './table.ts';

/** What to take from the shelf, and what the shelf lacks. */
export interface PickListSheet {
  readonly summary: string;
  readonly pick: Table;
}

function amount(pick: PlanPick, quantity: number, write: Writer): { text: string } {
  return { text: pick.unit === 'm' ? write.wire(quantity).text : String(quantity) };
}

/** Each piece that cuts come from, with what it has left. */
function reelsText({ reels = [] }: PlanPick, write: Writer): { text: string } {
  return {
    text: reels
      .map(({ lengthM, leftM }) => `${write.wire(lengthM).text}: ${write.wire(leftM).text}`)
      .join('; '),
  };
}

function pickModel(plan: BuildPlan): PickListSheet | null {
  if (plan.pick.length === 0) return null;
  const write = writerFor(plan.shop);
  const short = plan.pick.filter((pick) => pick.short > 0).length;
  return {
    summary:
      short === 0
        ? 'Everything is in stock.'
        : `${counted(short, 'entry is', 'entries are')} short: order before you begin.`,
    pick: dense(
      tableOf(
        'Pick list',
        [...plan.pick].sort((a, b) => (a.kind < b.kind ? -1 : Number(a.kind > b.kind))),
        [
          { title: 'Part', kind: 'words', cell: (pick) => strong(pick.title, pick.part) },
          { title: 'Kind', cell: (pick) => spelledWithin(pick.kind) },
          {
            title: 'Take',
            kind: 'figure',
            cell: (pick) => ({ ...amount(pick, pick.quantity, write), strong: true }),
          },
          { title: 'In stock', kind: 'figure', cell: (pick) => amount(pick, pick.stockQuantity, write) },
          {
            title: 'Short',
            kind: 'figure',
            cell: (pick) =>
              pick.short > 0 ? { ...amount(pick, pick.short, write), strong: true } : { text: '' },
          },
          tick('Taken'),
          { title: 'Cut from, left on it', cell: (pick) => reelsText(pick, write) },
          blank('Measured left'),
        ],
        (pick) => pick.part,
      ),
    ),
  };
}

export const pickList = builderSheet('pick-list', 'Pick list', pickModel);
