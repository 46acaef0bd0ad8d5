import { commonPractice, type Traced, traced } from '../../../model/trace.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import type { CircuitEdge } from '../circuit/circuit.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import { returnedFeeds, sumOf } from './ground-feeds.ts';
import type { PowerSizing } from './power-sizing.ts';
import { fusesBehind, greatestA, isBare, isFeed, type NeedShare, needShares } from './protection.ts';

type Ratings = (fuse: string) => number;
type Conductors = ReadonlyMap<string, SizedConductor>;

/** The currents of which a feed must be able to carry the greatest. */
export function feedNeed(edge: CircuitEdge, sizing: PowerSizing, ratingA: Ratings): readonly NeedShare[] {
  const { circuit, paths, protection } = sizing;
  const own = protection.get(edge.id);
  return needShares(own, ratingA, isBare(own) ? fusesBehind(circuit, paths, edge) : []);
}

/**
 * The same of a ground: all that the fuses before its devices let through together, and what each group of feeds
 * must carry whose current it may have to take back alone.
 */
export function groundNeed(
  edge: CircuitEdge,
  sizing: PowerSizing,
  ratingA: Ratings,
  conductors: Conductors,
): readonly NeedShare[] {
  const { paths, job } = sizing;
  // Of leads side by side only one is the nearest feed, but all of them come back here.
  const nodes = paths.downstream(edge).map(({ from }) => from);
  const fuses = new Set(nodes.flatMap((node) => paths.inflows.into(node, '').fuses.map(({ id }) => id)));
  const feeds = returnedFeeds(edge, sizing, conductors, powerRules(job.rules));
  return [
    ...(fuses.size > 0 ? [[[...fuses].join(' and '), paths.inflows.jointA(nodes, ratingA)] as const] : []),
    ...feeds.map((group): NeedShare => {
      const names = group.map(({ link: { id } }) => `the need of ${id}`);
      return [names.join(' and '), sumOf(group, ({ neededA }) => neededA)];
    }),
  ];
}

/** What a conductor must carry (A), with its working. */
export function needTrace(
  edge: CircuitEdge,
  sizing: PowerSizing,
  ratingA: Ratings,
  conductors: Conductors,
): Traced<number> {
  const all = isFeed(sizing.circuit, edge)
    ? feedNeed(edge, sizing, ratingA)
    : groundNeed(edge, sizing, ratingA, conductors);
  const shares = all.filter(
    ([name, currentA], k) => all.findIndex((one) => one[0] === name && one[1] === currentA) === k,
  );
  return traced(greatestA(shares), 'A', {
    rule: 'conductor-need',
    formula:
      shares.length === 0
        ? '0: no fuse lets current into it'
        : 'the greatest of what is let into it: of fuses side by side the sum of their ratings, of fuses in a row the least',
    citation: commonPractice,
    mark: 'cp',
    inputs: shares.map(([name, currentA]) => [name, currentA, 'A'] as const),
  });
}
