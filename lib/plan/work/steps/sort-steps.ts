import type { WorkPlace } from '../../../model/vocabulary.ts';
/** What the order of steps depends on. */
export interface Waiting {
  readonly id: string;
  readonly after: readonly string[];
  readonly minutes: number;
  readonly by: WorkPlace;
}

/**
 * The steps in an order in which each comes after those that it waits for, otherwise as given; what is left over waits
 * for itself, over others. Names that are no step are left aside.
 */
export function inOrder<T extends Waiting>(
  steps: readonly T[],
): { readonly ordered: readonly T[]; readonly waitingForEachOther: readonly T[] } {
  const ordered: T[] = [];
  const done = new Set<string>();
  const known = new Set(steps.map(({ id }) => id));
  let left = [...steps];
  for (;;) {
    const next = left.find(({ after }) => after.every((id) => done.has(id) || !known.has(id)));
    if (!next) return { ordered, waitingForEachOther: left };
    ordered.push(next);
    done.add(next.id);
    left = left.filter((step) => step !== next);
  }
}

/**
 * One ring among things that wait for others, in the order of waiting; null where there is none. `waits` gives, for
 * each, what it waits for.
 */
export function ringOf(waits: ReadonlyMap<string, readonly string[]>): readonly string[] | null {
  const clear = new Set<string>();
  const visit = (id: string, path: readonly string[]): readonly string[] | null => {
    const at = path.indexOf(id);
    if (at >= 0) return path.slice(at);
    if (clear.has(id)) return null;
    for (const next of waits.get(id) ?? []) {
      const ring = visit(next, [...path, id]);
      if (ring) return ring;
    }
    clear.add(id);
    return null;
  };
  for (const id of waits.keys()) {
    const ring = visit(id, []);
    if (ring) return ring;
  }
  return null;
}

/** The times of a chain of steps, in minutes from the start. */
export interface Timing {
  /** When each step may begin at the earliest, whatever hands there are. */
  readonly earliest: ReadonlyMap<string, number>;
  /** Minutes from the beginning of each step to the end of the longest chain behind it. */
  readonly tail: ReadonlyMap<string, number>;
  readonly minutes: number;
  /** The longest chain, first step first. */
  readonly path: readonly string[];
}

/** The longest chain through steps that are in order (critical path method). */
export function criticalPath(ordered: readonly Waiting[]): Timing {
  const earliest = new Map<string, number>();
  const end = new Map<string, number>();
  for (const { id, after, minutes } of ordered) {
    const start = Math.max(0, ...after.map((before) => end.get(before) ?? 0));
    earliest.set(id, start);
    end.set(id, start + minutes);
  }
  const tail = new Map<string, number>();
  for (const { id, minutes } of ordered.toReversed()) {
    const behind = ordered.filter(({ after }) => after.includes(id)).map((step) => tail.get(step.id) ?? 0);
    tail.set(id, minutes + Math.max(0, ...behind));
  }
  const total = Math.max(0, ...end.values());
  const path: string[] = [];
  for (let at = 0; ; ) {
    const next = ordered.find(
      ({ id, after }) =>
        Math.abs((earliest.get(id) ?? 0) - at) < 1e-9 &&
        Math.abs(at + (tail.get(id) ?? 0) - total) < 1e-9 &&
        !path.includes(id) &&
        (path.length === 0 ? after.length === 0 : after.includes(path.at(-1) ?? '')),
    );
    if (!next) break;
    path.push(next.id);
    at = end.get(next.id) ?? total;
  }
  return { earliest, tail, minutes: total, path };
}

/**
 * When each step begins where one person works at the board and one in the vehicle: whoever is free takes the step
 * that is ready and has the longest chain behind it. Minutes from the start.
 */
export function twoPersonStarts(
  ordered: readonly Waiting[],
  { tail }: Pick<Timing, 'tail'>,
): { readonly starts: ReadonlyMap<string, number>; readonly minutes: number } {
  const starts = new Map<string, number>();
  const ends = new Map<string, number>();
  const known = new Set(ordered.map(({ id }) => id));
  const free = { board: 0, vehicle: 0 };
  const handsOf = ({ by }: Waiting) => (by === 'both' ? (['board', 'vehicle'] as const) : ([by] as const));
  const startOf = (step: Waiting) =>
    Math.max(...handsOf(step).map((hand) => free[hand]), ...step.after.map((id) => ends.get(id) ?? 0));
  for (let left = [...ordered]; left.length > 0; ) {
    const ready = left.filter(({ after }) => after.every((id) => ends.has(id) || !known.has(id)));
    const [next] = ready.toSorted(
      (a, b) => startOf(a) - startOf(b) || (tail.get(b.id) ?? 0) - (tail.get(a.id) ?? 0),
    );
    if (!next) break;
    const start = startOf(next);
    starts.set(next.id, start);
    ends.set(next.id, start + next.minutes);
    for (const hand of handsOf(next)) free[hand] = start + next.minutes;
    left = left.filter((step) => step !== next);
  }
  return { starts, minutes: Math.max(0, ...ends.values()) };
}
