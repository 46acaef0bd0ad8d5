import type { BuildPlan, PlanItem, PlanTerminal } from '../../model/plan/index.ts';
import { shownTerminal } from '../../model/plan/shown-names.ts';
import { namesOf, type PlanNames } from '../words/plan-names.ts';
import { counted } from '../words/words.ts';
import { builderSheet } from './sheet.ts';
import { strong, type Table, type Tick, tableOf, ticks } from './table.ts';

/** Every terminal of every placed part, accounted for. */
export interface TerminalsSheet {
  readonly summary: string;
  readonly items: Table;
}

function terminalTick(one: PlanTerminal, names: PlanNames, items: ReadonlyMap<string, PlanItem>): Tick {
  const wires = one.wires.map((id) => `wire ${names.wire(id)}`).join(', ');
  const beside = one.state === 'connected' ? wires : (one.reason ?? '');
  const item = items.get(one.item);
  return {
    text: item ? shownTerminal(item, one.terminal) : one.terminal,
    strong: true,
    ...(beside !== '' && { beside }),
    subject: `${one.item}.${one.terminal}`,
  };
}

function itemsTable(plan: BuildPlan): Table {
  const names = namesOf(plan);
  const byId = new Map(plan.items.map((item) => [item.id, item]));
  const items = [...new Set(plan.terminals.map(({ item }) => item))];
  const of = (item: string, state: PlanTerminal['state']): Tick[] =>
    plan.terminals
      .filter((one) => one.item === item && one.state === state)
      .map((one) => terminalTick(one, names, byId));
  const anyLost = plan.terminals.some(({ state }) => state === 'unaccounted');
  return tableOf(
    'Terminals, part by part',
    items,
    [
      { title: 'Part', kind: 'words', cell: (item) => strong(names.item(item), item) },
      { title: 'Connected, by wire', cell: (item) => ticks(of(item, 'connected')) },
      { title: 'Left open, and why', cell: (item) => ticks(of(item, 'open')) },
      ...(anyLost
        ? [{ title: 'NOT ACCOUNTED FOR', cell: (item: string) => ticks(of(item, 'unaccounted')) }]
        : []),
    ],
    (item) => item,
  );
}

function summaryOf(terminals: readonly PlanTerminal[]): string {
  const count = (state: PlanTerminal['state']): number =>
    terminals.filter((one) => one.state === state).length;
  return `${counted(terminals.length, 'terminal')}: ${count('connected')} connected, ${count('open')} left open with a reason, ${count('unaccounted')} not accounted for.`;
}

function terminalsModel(plan: BuildPlan): TerminalsSheet | null {
  if (plan.terminals.length === 0) return null;
  return { summary: summaryOf(plan.terminals), items: itemsTable(plan) };
}

export const terminals = builderSheet('terminals', 'Every terminal accounted for', terminalsModel);
