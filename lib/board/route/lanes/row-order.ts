import { type BareLeg, keyOf } from './leg.ts';

/** That one leg lies below another, or left of it: both by key. `must`: by the order at an edge that both pass. */
export interface LegOrder {
  readonly low: number;
  readonly high: number;
  readonly must: boolean;
}

/**
 * Ranks of legs such that every order that must be holds, and of the others those that can: a topological sort of each
 * row and column (Kahn 1962), by what is fixed first, then by wire.
 */
export function rankOf(legs: readonly BareLeg[], orders: readonly LegOrder[]): ReadonlyMap<number, number> {
  const above = new Map<number, Set<number>>();
  const put = ({ low, high }: LegOrder) => {
    const own = above.get(low) ?? new Set();
    above.set(low, own.add(high));
  };
  for (const order of orders) if (order.must) put(order);
  for (const order of orders) if (!order.must && !leadsTo(above, order.high, order.low)) put(order);
  const groups = new Map<string, BareLeg[]>();
  for (const leg of legs) {
    const key = `${leg.level} ${leg.line}`;
    groups.set(key, [...(groups.get(key) ?? []), leg]);
  }
  const ranks = new Map<number, number>();
  for (const group of groups.values()) {
    const sorted = sortedBy(group, above);
    sorted.forEach(({ line, ...leg }, at) => {
      ranks.set(keyOf(leg), line + (at + 1) / (sorted.length + 1));
    });
  }
  return ranks;
}

/** True where orders lead from one leg to another. */
function leadsTo(above: ReadonlyMap<number, ReadonlySet<number>>, from: number, to: number): boolean {
  const seen = new Set([from]);
  const open = [from];
  for (let leg = open.pop(); leg !== undefined; leg = open.pop()) {
    if (leg === to) return true;
    for (const next of above.get(leg) ?? [])
      if (!seen.has(next)) {
        seen.add(next);
        open.push(next);
      }
  }
  return false;
}

function sortedBy(group: readonly BareLeg[], above: ReadonlyMap<number, ReadonlySet<number>>): BareLeg[] {
  const waits = new Map(group.map((leg) => [keyOf(leg), 0]));
  for (const leg of group)
    for (const high of above.get(keyOf(leg)) ?? []) waits.set(high, (waits.get(high) ?? 0) + 1);
  const open = group.toSorted((a, b) => keyOf(a) - keyOf(b));
  const sorted: BareLeg[] = [];
  while (open.length > 0) {
    const free = open.findIndex((leg) => (waits.get(keyOf(leg)) ?? 0) === 0);
    // A ring of orders that must all be can't come from one sketch; were there one, it is cut at its first leg.
    const [leg] = open.splice(Math.max(0, free), 1);
    if (!leg) break;
    sorted.push(leg);
    for (const high of above.get(keyOf(leg)) ?? []) waits.set(high, (waits.get(high) ?? 0) - 1);
  }
  return sorted;
}
