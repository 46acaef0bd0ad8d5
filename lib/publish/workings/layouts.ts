import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { strong, type Table, tableOf } from '../sheets/table.ts';
import { spelledWithin } from '../words/words.ts';
import { plainNumber, type Writer, writerFor } from '../words/written.ts';

/** The layouts that the search found for each board, best first, with the score of each explained. */
export function layoutTables(plan: BuildPlan): Table[] {
  const write = writerFor(plan.shop);
  return plan.boards.map((board) => layoutTable(board, write));
}

function layoutTable(board: PlanBoard, write: Writer): Table {
  const ranked = board.proposals.map((proposal, index) => ({ ...proposal, rank: index + 1 }));
  return tableOf(`Layouts found for ${board.title}, best first`, ranked, [
    { title: 'No.', kind: 'figure', cell: (one) => strong(String(one.rank)) },
    { title: 'Score', kind: 'figure', cell: (one) => plainNumber(one.total) },
    {
      title: 'Made up of',
      cell: (one) =>
        Object.entries(one.score)
          .map(([name, share]) => `${spelledWithin(name)} ${plainNumber(share)}`)
          .join(', '),
    },
    {
      title: 'Places',
      cell: (one) =>
        one.placements
          .map(({ item, xM, yM, turnDeg }) =>
            [
              item,
              write.length('position', xM).text,
              write.length('position', yM).text,
              printed('angle', turnDeg),
            ].join(' '),
          )
          .join('; '),
    },
  ]);
}
