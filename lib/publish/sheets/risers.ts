import type { BuildPlan, PlanBoard } from '../../model/plan/index.ts';
import { namesOf } from '../plan-names.ts';
import { counted } from '../words.ts';
import { type Writer, writerFor } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { groupedTable, strong, type Table, tableOf, tick } from './table.ts';

/** What lifts parts off a board and a board off its panel. */
export interface RisersSheet {
  readonly note: string;
  readonly risers: Table | null;
  readonly spacers: Table | null;
}

/** Parts of a board that stand off it. */
function raised(board: PlanBoard): PlanBoard['placements'] {
  return board.placements.filter(({ raisedM }) => raisedM > 0);
}

function risersTable(plan: BuildPlan, write: Writer): Table | null {
  const groups = plan.boards.map((board) => ({ title: board.title, things: raised(board) }));
  if (groups.every(({ things }) => things.length === 0)) return null;
  const { item } = namesOf(plan);
  return groupedTable(
    'Risers below parts',
    groups,
    [
      { title: 'Below', cell: (placed) => strong(item(placed.item), placed.item) },
      { title: 'Height', kind: 'figure', cell: (placed) => write.length(placed.raisedM) },
      { title: 'Width', kind: 'figure', cell: (placed) => write.length(placed.widthM) },
      { title: 'Depth', kind: 'figure', cell: (placed) => write.length(placed.depthM) },
      tick('Cut'),
      tick('Fixed'),
    ],
    (placed) => placed.item,
  );
}

interface Spacers {
  readonly board: string;
  readonly heightM: number;
  readonly fixings: readonly string[];
  readonly part: string;
}

/** Spacers of one height and for one kind of fixing together. */
function spacersOf(board: PlanBoard): Spacers[] {
  const kinds = new Map<string, Spacers>();
  for (const { id, spacerM, part } of board.fixings) {
    if (spacerM === 0) continue;
    const key = `${spacerM} ${part}`;
    const held = kinds.get(key);
    kinds.set(key, {
      board: board.title,
      heightM: spacerM,
      part,
      fixings: [...(held?.fixings ?? []), id],
    });
  }
  return [...kinds.values()];
}

function spacersTable(plan: BuildPlan, write: Writer): Table | null {
  const spacers = plan.boards.flatMap(spacersOf);
  if (spacers.length === 0) return null;
  const { part } = namesOf(plan);
  return tableOf('Spacers between board and panel', spacers, [
    { title: 'Board', cell: (one) => strong(one.board) },
    { title: 'Height', kind: 'figure', cell: (one) => write.length(one.heightM) },
    { title: 'How many', kind: 'figure', cell: (one) => counted(one.fixings.length, 'piece') },
    { title: 'At', cell: (one) => one.fixings.join(', ') },
    { title: 'Round', cell: (one) => part(one.part) },
    tick('Cut'),
  ]);
}

function risersModel(plan: BuildPlan): RisersSheet | null {
  const write = writerFor(plan.shop);
  const [risers, spacers] = [risersTable(plan, write), spacersTable(plan, write)];
  return risers === null && spacers === null ? null : { note: write.note, risers, spacers };
}

export const risers = builderSheet('risers', 'Risers and spacers', risersModel);
