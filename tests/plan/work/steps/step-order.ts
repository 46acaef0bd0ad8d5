import type { PlanStep } from '../../../../lib/model/plan/index.ts';

/**
 * Independent topological check by depth-first search with three colours (the textbook way; the code under test takes
 * off, one after the other, what waits for nothing).
 */
export function hasRing(steps: readonly PlanStep[]): boolean {
  const colour = new Map<string, 'grey' | 'black'>();
  const byId = new Map(steps.map((step) => [step.id, step]));
  const visit = (id: string): boolean => {
    if (colour.get(id) === 'grey') return true;
    if (colour.get(id) === 'black') return false;
    colour.set(id, 'grey');
    const found = (byId.get(id)?.after ?? []).some(visit);
    colour.set(id, 'black');
    return found;
  };
  return steps.some(({ id }) => visit(id));
}

/** Every step that must be done before one, directly or through others: what holds of it holds however many work. */
export function allBefore(steps: readonly PlanStep[], id: string): ReadonlySet<string> {
  const byId = new Map(steps.map((step) => [step.id, step]));
  const seen = new Set<string>();
  const visit = (one: string): void => {
    for (const next of byId.get(one)?.after ?? [])
      if (!seen.has(next)) {
        seen.add(next);
        visit(next);
      }
  };
  visit(id);
  return seen;
}

export const positions = (steps: readonly PlanStep[]) => new Map(steps.map(({ id }, index) => [id, index]));
