import { type Circuit, type CircuitEdge, limitA } from '../circuit/circuit.ts';
import type { CircuitPaths } from '../circuit/circuit-paths.ts';
import type { Inflow } from '../short/fuse-inflow.ts';

/** How a conductor is protected. */
export interface Protection {
  /** What flows into it from either end when it is shorted: in a ring, or between leads side by side, from both. */
  readonly ends: readonly [Inflow, Inflow];
  /** Every fuse that stands before it: in every way from some source, the nearest first, then those side by side. */
  readonly fuses: readonly CircuitEdge[];
}

/** The protection of every conductor of the feed side, by its id. Grounds are returns: their feed protects them. */
export function protections(circuit: Circuit, paths: CircuitPaths): ReadonlyMap<string, Protection> {
  const conductors = circuit.edges.filter((edge) => isFeed(circuit, edge));
  return new Map(
    conductors.map((edge) => {
      const ends = [paths.inflows.into(edge.from, edge.id), paths.inflows.into(edge.to, edge.id)] as const;
      const inARow = paths.sourcesOf(edge).flatMap((source) => paths.fusesBetween(source, edge));
      return [edge.id, { ends, fuses: [...new Set([...inARow, ...ends.flatMap(({ fuses }) => fuses)])] }];
    }),
  );
}

/** True for a conductor of the job on the feed side. What the vehicle came with is its maker's to protect. */
export function isFeed({ roles }: Circuit, edge: CircuitEdge): boolean {
  return edge.kind === 'conductor' && edge.link?.origin === 'job' && roles.get(edge.id) === 'power';
}

/** True for a conductor that a source reaches without a fuse. */
export function isBare(protection: Protection | undefined): boolean {
  return protection?.ends.some(({ bare }) => bare) ?? false;
}

/** A current (A) that a conductor must be able to carry, and by the name of what lets it through. */
export type NeedShare = readonly [name: string, currentA: number];

/**
 * The currents of which a conductor must be able to carry the greatest: what the fuses let flow in at either end; at
 * an end that a source reaches bare, all that the fuses behind it let through.
 */
export function needShares(
  protection: Protection | undefined,
  ratingA: (fuse: string) => number,
  behind: readonly string[],
): readonly NeedShare[] {
  const named = (ids: readonly string[]) => [...new Set(ids)].join(' and ');
  return (protection?.ends ?? []).flatMap((end): NeedShare[] => [
    ...(end.fuses.length > 0 ? [[named(end.fuses.map(({ id }) => id)), end.mostA(ratingA)] as const] : []),
    ...(end.bare ? [[named(behind), behind.reduce((sum, fuse) => sum + ratingA(fuse), 0)] as const] : []),
  ]);
}

/** The greatest of the currents that a conductor must be able to carry (A). */
export function neededA(...given: Parameters<typeof needShares>): number {
  return greatestA(needShares(...given));
}

export function greatestA(shares: readonly NeedShare[]): number {
  return Math.max(0, ...shares.map(([, currentA]) => currentA));
}

/** A conductor that a fuse is the nearest to protect, with how many fuses side by side let current in at that end. */
export interface Protected {
  readonly id: string;
  readonly sideBySide: number;
}

/** The conductors that a fuse is the nearest to protect against some source, in the order of the circuit. */
export function protectedBy(all: ReadonlyMap<string, Protection>, fuse: string): Protected[] {
  return [...all].flatMap(([id, { ends }]) => {
    const counts = ends.flatMap(({ fuses }) => (fuses.some((one) => one.id === fuse) ? [fuses.length] : []));
    return counts.length > 0 ? [{ id, sideBySide: Math.max(...counts) }] : [];
  });
}

/**
 * The first fuses behind a conductor that no fuse stands before: those that a bare way beyond it
 * meets. Leads side by side each have to let all of it through.
 */
export function fusesBehind(circuit: Circuit, paths: CircuitPaths, edge: CircuitEdge): string[] {
  const bare = circuit.sources.filter((source) => limitA(source) === null && paths.isBare(source, edge));
  const near = new Set(bare.flatMap((source) => [...paths.bareReach(source, edge)]));
  return circuit.edges
    .filter(({ kind, from, to }) => kind === 'fuse' && (near.has(from) || near.has(to)))
    .map(({ id }) => id);
}
