import { cableSm } from '../../../power/conductor/conductor-choice.ts';
import type { PowerRules } from '../../../power/power-rules.ts';
import type { CircuitEdge } from '../circuit/circuit.ts';
import { islandAt } from '../circuit/circuit-islands.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import type { PowerSizing } from './power-sizing.ts';
import { isFeed } from './protection.ts';

export function sumOf(feeds: readonly SizedConductor[], read: (feed: SizedConductor) => number): number {
  return feeds.reduce((sum, feed) => sum + read(feed), 0);
}

/**
 * The feeds whose current a ground may have to take back, in groups of which each may do so alone: those of its
 * devices together, and of a battery that it joins to the rest the best conducting feed at its post.
 */
export function returnedFeeds(
  edge: CircuitEdge,
  sizing: PowerSizing,
  into: ReadonlyMap<string, SizedConductor>,
  rules: PowerRules,
): readonly (readonly SizedConductor[])[] {
  const own = new Set(sizing.paths.downstream(edge).map(({ device }) => device.id));
  // A battery gives to one of its feeds what it does not take from another: the best of them counts.
  const [post] = postFeeds(edge, sizing, into).toSorted(
    (a, b) => cableSm(b.cable, rules) - cableSm(a.cable, rules),
  );
  return [disjointFeeds(own, sizing, into), post ? [post] : []].filter((feeds) => feeds.length > 0);
}

/**
 * Feeds whose devices together are those of a ground, each device counted once: the feed of most devices first.
 * What several branches bring goes back through one shared ground together.
 */
function disjointFeeds(
  own: ReadonlySet<string>,
  sizing: PowerSizing,
  into: ReadonlyMap<string, SizedConductor>,
): SizedConductor[] {
  const taken = new Set<string>();
  const sets = nearestFeeds(own, sizing, into).toSorted((a, b) => b.devices.length - a.devices.length);
  return sets.flatMap(({ sized, devices }) => {
    if (devices.some((id) => taken.has(id))) return [];
    for (const id of devices) taken.add(id);
    return [sized];
  });
}

interface FeedSet {
  readonly sized: SizedConductor;
  readonly devices: readonly string[];
}

/** For each set of devices among `own` that a feed carries: the feed of that set that is farthest from the source. */
function nearestFeeds(
  own: ReadonlySet<string>,
  { paths, circuit }: PowerSizing,
  into: ReadonlyMap<string, SizedConductor>,
): readonly FeedSet[] {
  const bySet = new Map<string, FeedSet & { readonly hops: number }>();
  for (const feed of circuit.edges.filter((one) => isFeed(circuit, one))) {
    const behind = paths.downstream(feed).map(({ device }) => device.id);
    const sized = into.get(feed.id);
    if (!sized || behind.length === 0 || !behind.every((id) => own.has(id))) continue;
    const key = behind.toSorted().join(' ');
    const primary = islandAt(paths.islands, feed.from)?.primary;
    const hops = primary ? paths.hops(primary, feed) : 0;
    if (hops >= (bySet.get(key)?.hops ?? -1)) bySet.set(key, { sized, devices: behind, hops });
  }
  return [...bySet.values()];
}

/** Feeds at the positive post of a battery whose negative post this ground joins to the rest. */
function postFeeds(
  edge: CircuitEdge,
  { paths, circuit }: PowerSizing,
  into: ReadonlyMap<string, SizedConductor>,
): SizedConductor[] {
  const posts = paths.returnsBehind(edge).map(({ positive }) => positive);
  return circuit.edges
    .filter((feed) => isFeed(circuit, feed) && (posts.includes(feed.from) || posts.includes(feed.to)))
    .flatMap(({ id }) => into.get(id) ?? []);
}
