import type { BuildPlan, PlanTerminal } from '../../model/plan/index.ts';
import { counted } from '../words.ts';
import { none } from '../written.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, tableOf, tick } from './table.ts';

/** Every terminal of every placed part, accounted for. */
export interface TerminalsSheet {
  readonly summary: string;
  readonly items: readonly Table[];
}

const stateWords = {
  connected: 'Connected',
  open: 'Left open',
  unaccounted: 'NOT ACCOUNTED FOR',
} as const satisfies Record<PlanTerminal['state'], string>;

function itemTable(
  title: string,
  terminals: readonly PlanTerminal[],
  labels: ReadonlyMap<string, string>,
): Table {
  return tableOf(
    title,
    terminals,
    [
      { title: 'Terminal', cell: (one) => strong(one.terminal) },
      {
        title: 'State',
        cell: (one) => ({ text: stateWords[one.state], strong: one.state === 'unaccounted' }),
      },
      {
        title: 'Wires',
        cell: (one) =>
          one.wires.length === 0 ? none : one.wires.map((wire) => labels.get(wire) ?? wire).join(', '),
      },
      { title: 'Reason', cell: (one) => one.reason ?? none },
      tick('Seen'),
    ],
    (one) => `${one.item}.${one.terminal}`,
  );
}

function summaryOf(terminals: readonly PlanTerminal[]): string {
  const count = (state: PlanTerminal['state']): number =>
    terminals.filter((one) => one.state === state).length;
  return `${counted(terminals.length, 'terminal')}: ${count('connected')} connected, ${count('open')} left open with a reason, ${count('unaccounted')} not accounted for.`;
}

function terminalsModel(plan: BuildPlan): TerminalsSheet | null {
  if (plan.terminals.length === 0) return null;
  const labels = new Map(plan.wires.map((wire) => [wire.id, wire.label]));
  const titles = new Map(plan.items.map((item) => [item.id, item.title]));
  const items = [...new Set(plan.terminals.map((one) => one.item))];
  return {
    summary: summaryOf(plan.terminals),
    items: items.map((item) =>
      itemTable(
        titles.has(item) ? `${titles.get(item)} (${item})` : item,
        plan.terminals.filter((one) => one.item === item),
        labels,
      ),
    ),
  };
}

export const terminals = builderSheet('terminals', 'Terminals', terminalsModel);
