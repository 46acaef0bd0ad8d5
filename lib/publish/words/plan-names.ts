import type { BuildPlan } from '../../model/plan/index.ts';
import { shownLabel, terminalWords } from '../../model/plan/shown-names.ts';

/** What a sheet calls a thing of the plan, by its id; the id itself where the plan has no other name. */
export interface PlanNames {
  /** The label of a wire. */
  readonly wire: (id: string) => string;
  /** The title of a device. */
  readonly item: (id: string) => string;
  /** A terminal by its id, as drawings call it. */
  readonly terminal: (id: string) => string;
  /** The title of a part on the pick list. */
  readonly part: (id: string) => string;
  /** A device by its title, a wire by its label. */
  readonly thing: (id: string) => string;
}

/** The names of a plan's things. */
export function namesOf(plan: Pick<BuildPlan, 'wires' | 'items' | 'pick' | 'pickBeyond'>): PlanNames {
  const wires = new Map(plan.wires.map((wire) => [wire.id, wire.label === '' ? wire.id : shownLabel(wire)]));
  const items = new Map(plan.items.map((item) => [item.id, item.title]));
  const parts = new Map(
    [...plan.pick, ...(plan.pickBeyond?.inPlace ?? [])].map(({ part, title }) => [part, title]),
  );
  const wire = (id: string): string => wires.get(id) ?? id;
  return {
    wire,
    item: (id) => items.get(id) ?? id,
    terminal: terminalWords(plan),
    part: (id) => parts.get(id) ?? id,
    thing: (id) => items.get(id) ?? (wires.has(id) ? `Wire ${wire(id)}` : id),
  };
}
