import { layingOrder } from '../../../model/laying-order.ts';
import type { BuildPlan, PlanBoard } from '../../../model/plan/index.ts';
import { ruleOf } from '../../../model/plan/plan-rules.ts';
import { namesOf, type PlanNames } from '../../words/plan-names.ts';
import { counted, spelled } from '../../words/words.ts';
import { type Writer, writerFor } from '../../words/written.ts';
import { builderSheet } from '../sheet.ts';
import { dense, groupedTable, strong, type Table, tick } from '../table.ts';

/** What lies on each board, layer by layer, and where it leaves. */
export interface BoardWiringSheet {
  readonly boards: readonly { readonly summary: string; readonly routes: Table }[];
}

function routesTable(board: PlanBoard, names: PlanNames, write: Writer): Table {
  const exits = new Map(board.exits.map(({ wire, edge }) => [wire, edge]));
  const groups = layingOrder
    .map((layer) => ({
      title: spelled(layer),
      things: board.routes.filter((route) => route.layer === layer),
    }))
    .filter(({ things }) => things.length > 0);
  return groupedTable(
    `Wires on ${board.title}, layer by layer`,
    groups,
    [
      { title: 'Wire', kind: 'words', cell: (route) => strong(route.along.map(names.wire).join(', ')) },
      { title: 'Way on the board', kind: 'figure', cell: (route) => write.short('way', route.lengthM) },
      { title: 'Bends', kind: 'figure', cell: (route) => String(route.bends) },
      {
        title: 'Leaves at',
        cell: (route) => {
          const edge = route.along.map((wire) => exits.get(wire)).find((one) => one !== undefined);
          return edge === undefined ? 'stays on the board' : `${edge} edge`;
        },
      },
      tick('Laid'),
      tick('Tied'),
    ],
    (route) => route.wire,
  );
}

/** What the crossings were before fewer were looked for, and how long that was done. */
function searched({ firstCrossings, pathSearches }: PlanBoard): string {
  return pathSearches === 0
    ? ''
    : ` (the first way had ${firstCrossings}; ${counted(pathSearches, 'path')} searched for)`;
}

/** How what crosses is led; nothing where nothing does. */
function crossing({ crossings, routes }: PlanBoard): string {
  if (crossings === 0) return '';
  const layers = routes.map(({ layer }) => layer);
  const bridged = layers.includes('signal') && layers.includes('power');
  return `: cross at right angles${bridged ? ', power over signal on a bridge piece' : ''}`;
}

function wiringModel(plan: BuildPlan): BoardWiringSheet | null {
  const names = namesOf(plan);
  const write = writerFor(plan.shop);
  const tie = write.length('at-most', ruleOf(plan, 'tie-spacing-board')).text;
  const wired = plan.boards.filter((board) => board.routes.length > 0);
  if (wired.length === 0) return null;
  return {
    boards: wired.map((board) => ({
      summary: `${counted(board.routes.length, 'way')} on ${board.title}, ${counted(board.crossings, 'crossing')}${searched(board)}${crossing(board)}. A tie every ${tie}.`,
      routes: dense(routesTable(board, names, write)),
    })),
  };
}

export const boardWiring = builderSheet('board-wiring', 'Board wiring', wiringModel);
