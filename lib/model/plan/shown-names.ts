import { linkEndOf } from '../content/resolved-job.ts';
import type { BuildPlan, PlanItem, PlanWire } from './index.ts';

/** What sheets call a terminal of an item: by the maker's mark, `port 2` where there is none. */
export function shownTerminal(item: Pick<PlanItem, 'terminals'> | undefined, name: string): string {
  return item?.terminals.find((terminal) => terminal.name === name)?.shown ?? name;
}

/** What sheets call a terminal by its id: `dist.OUT2` by its mark, `ground-bar port 2` where it has none. */
export function terminalWords({ items }: Pick<BuildPlan, 'items'>): (id: string) => string {
  const byId = new Map(items.map((item) => [item.id, item]));
  return (id) => {
    const { device, terminal } = linkEndOf(id);
    const item = byId.get(device);
    const shown = shownTerminal(item, terminal);
    if (shown === terminal) return id;
    return shown.includes(' ') ? `${device} ${shown}` : `${device}.${shown}`;
  };
}

/**
 * The label of a wire, with its sign where the label does not end in one: a label that was released before signs were
 * written stays, and yet no speaker conductor is told without its sign.
 */
export function shownLabel({ label, sign }: Pick<PlanWire, 'label' | 'sign'>): string {
  return !sign || label === '' || label.endsWith(sign) ? label : `${label} (${sign})`;
}
