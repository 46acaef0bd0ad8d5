import type { Circuit, CircuitEdge, CircuitSource } from './circuit.ts';
import type { CircuitPaths } from './circuit-paths.ts';

/** How a conductor is protected against one source. */
export interface Protection {
  readonly source: CircuitSource;
  /** Fuses in every way from the source to the conductor, the nearest one first. */
  readonly fuses: readonly CircuitEdge[];
}

/** The protection of every conductor of the feed side, by its id. Grounds are returns: their feed protects them. */
export function protections(
  circuit: Circuit,
  paths: CircuitPaths,
): ReadonlyMap<string, readonly Protection[]> {
  const conductors = circuit.edges.filter((edge) => isFeed(circuit, edge));
  return new Map(
    conductors.map((edge) => [
      edge.id,
      paths.sourcesOf(edge).map((source) => ({ source, fuses: paths.fusesBetween(source, edge) })),
    ]),
  );
}

/** True for a conductor of the job on the feed side. What the vehicle came with is its maker's to protect. */
export function isFeed({ roles }: Circuit, edge: CircuitEdge): boolean {
  return edge.kind === 'conductor' && edge.link?.origin === 'job' && roles.get(edge.id) === 'power';
}

/**
 * The current (A) that a conductor must be able to carry: against each source the least of the fuses before
 * it; where none stands before it, all that the fuses behind it let through.
 */
export function neededA(
  protection: readonly Protection[],
  ratingA: (fuse: string) => number,
  behind: readonly string[],
): number {
  const needs = protection.map(({ fuses }) =>
    fuses.length > 0
      ? Math.min(...fuses.map(({ id }) => ratingA(id)))
      : behind.reduce((sum, fuse) => sum + ratingA(fuse), 0),
  );
  return Math.max(0, ...needs);
}

/** The conductors that a fuse is the nearest to protect against some source, in the order of the circuit. */
export function protectedBy(all: ReadonlyMap<string, readonly Protection[]>, fuse: string): string[] {
  return [...all].flatMap(([id, list]) => (list.some(({ fuses }) => fuses[0]?.id === fuse) ? [id] : []));
}

/**
 * The first fuses behind a conductor that no fuse stands before: those that a bare way beyond it
 * meets. Leads side by side each have to let all of it through.
 */
export function fusesBehind(circuit: Circuit, paths: CircuitPaths, edge: CircuitEdge): string[] {
  const bare = paths.sourcesOf(edge).filter((source) => paths.fusesBetween(source, edge).length === 0);
  const near = new Set(bare.flatMap((source) => [...paths.bareReach(source, edge)]));
  return circuit.edges
    .filter(({ kind, from, to }) => kind === 'fuse' && (near.has(from) || near.has(to)))
    .map(({ id }) => id);
}
