import type { Circuit, CircuitEdge, CircuitSource } from './circuit.ts';
import type { CircuitPaths } from './circuit-paths.ts';

/** How a conductor is protected against one source. */
export interface Protection {
  readonly source: CircuitSource;
  /** Fuses in every way from the source to the conductor, the nearest one first. */
  readonly fuses: readonly CircuitEdge[];
  /** Where no fuse is in every way, but no way is without one: those that stand abreast, as before parallel feeds. */
  readonly abreast: ReturnType<CircuitPaths['fusesAbreast']>;
}

/** True where current can come from the source without passing a fuse. */
export function isBareOf({ fuses, abreast }: Protection): boolean {
  return fuses.length === 0 && abreast.fuses.length === 0;
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
      paths.sourcesOf(edge).map((source): Protection => {
        return { source, fuses: paths.fusesBetween(source, edge), abreast: paths.fusesAbreast(source, edge) };
      }),
    ]),
  );
}

/** True for a conductor of the job on the feed side. What the vehicle came with is its maker's to protect. */
export function isFeed({ roles }: Circuit, edge: CircuitEdge): boolean {
  return edge.kind === 'conductor' && edge.link?.origin === 'job' && roles.get(edge.id) === 'power';
}

/**
 * The current (A) that a conductor must be able to carry: against each source the least of the fuses before
 * it; of fuses abreast the largest where they feed it from its two ends, their sum where they feed it from one;
 * where none stands before it, all that the fuses behind it let through.
 */
export function neededA(
  protection: readonly Protection[],
  ratingA: (fuse: string) => number,
  behind: readonly string[],
): number {
  const sum = (ratings: readonly number[]) => ratings.reduce((total, rating) => total + rating, 0);
  const needs = protection.map(({ fuses, abreast }) => {
    if (fuses.length > 0) return Math.min(...fuses.map(({ id }) => ratingA(id)));
    const ratings = abreast.fuses.map(({ id }) => ratingA(id));
    if (ratings.length > 0) return abreast.inRing ? Math.max(...ratings) : sum(ratings);
    return sum(behind.map(ratingA));
  });
  return Math.max(0, ...needs);
}

/** The conductors that a fuse is the nearest to protect against some source, in the order of the circuit. */
export function protectedBy(all: ReadonlyMap<string, readonly Protection[]>, fuse: string): string[] {
  const protects = ({ fuses, abreast }: Protection) =>
    fuses[0]?.id === fuse || abreast.fuses.some(({ id }) => id === fuse);
  return [...all].flatMap(([id, list]) => (list.some(protects) ? [id] : []));
}

/** The first fuses that the current of a conductor meets after it, seen from a source that has none before it. */
export function fusesBehind(circuit: Circuit, paths: CircuitPaths, edge: CircuitEdge): string[] {
  const source = paths.sourcesOf(edge).find((one) => isBare(paths, one, edge));
  if (!source) return [];
  return circuit.edges
    .filter((fuse) => fuse.kind === 'fuse')
    .filter((fuse) => paths.fusesBetween(source, fuse).length === 0 && passes(paths, source, fuse, edge))
    .map(({ id }) => id);
}

/** True where a way from a source to an edge has no fuse in it. */
function isBare(paths: CircuitPaths, source: CircuitSource, edge: CircuitEdge): boolean {
  return paths.fusesBetween(source, edge).length === 0 && paths.fusesAbreast(source, edge).fuses.length === 0;
}

function passes(paths: CircuitPaths, source: CircuitSource, fuse: CircuitEdge, edge: CircuitEdge): boolean {
  return paths.way(source, fuse, () => 1)?.some(({ id }) => id === edge.id) ?? false;
}
