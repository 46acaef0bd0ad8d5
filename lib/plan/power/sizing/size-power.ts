import type { Job } from '../../../model/content/resolved-job.ts';
import { cableSm } from '../../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import type { CircuitEdge } from '../circuit/circuit.ts';
import { feedNeed, groundNeed } from './conductor-need.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import type { LeastConductance } from './conductor-task.ts';
import { type FuseSizing, type SizedFuse, sizeFuses } from './fuse-sizing.ts';
import { returnedFeeds, sumOf } from './ground-feeds.ts';
import { fitsPorts } from './ports-fit.ts';
import type { PowerSizing } from './power-sizing.ts';
import { fusesBehind, greatestA, isBare, isFeed } from './protection.ts';
import { growGrounds } from './size-grounds.ts';

export interface SizedPower {
  readonly fuses: readonly SizedFuse[];
  readonly conductors: ReadonlyMap<string, SizedConductor>;
}

/** Sizes all fuses, then the feeds that they protect, then the grounds that go with the feeds. */
export function sizePower(sizing: PowerSizing): SizedPower {
  const { circuit, job } = sizing;
  const fuses = sizeFuses(fuseSizing(sizing));
  const ratingA = ratingsOf(fuses, job);
  const conductors = new Map<string, SizedConductor>();
  const edges = circuit.edges.filter(({ kind }) => kind === 'conductor');
  const feeds = edges.filter((one) => isFeed(circuit, one));
  for (const edge of feeds) sizeFeed(edge, sizing, ratingA, conductors);
  for (const edge of feeds)
    if (thickenTail(edge, sizing, conductors)) sizeFeed(edge, sizing, ratingA, conductors);
  const resize = (edge: CircuitEdge) => sizeGround(edge, sizing, ratingA, conductors);
  for (const edge of edges.filter((one) => !isFeed(circuit, one))) resize(edge);
  growGrounds({ job, devices: sizing.devices, edges, conductors, least: sizing.least, resize });
  return { fuses, conductors };
}

/** The rating of each fuse (A); for one without a lawful rating, what it would be without a bound. */
export function ratingsOf(
  fuses: readonly SizedFuse[],
  { rules }: Pick<Job, 'rules'>,
): (fuse: string) => number {
  const ratings = new Map(
    fuses.map(({ edge, ratingA, ratedA }) => [edge.id, ratingA ?? ratedA * rules['fuse-margin'].value]),
  );
  return (id) => ratings.get(id) ?? 0;
}

function fuseSizing(sizing: PowerSizing): FuseSizing {
  const { job, circuit, paths, loads, protection, lengths, least, sizer, choose } = sizing;
  const mostBy = (ask: typeof sizer.mostA) => (id: string) => {
    const link = circuit.edges.find((edge) => edge.id === id)?.link;
    const role = circuit.roles.get(id);
    return link && role ? ask(link, role, lengths(link.id).lengthM) : 0;
  };
  return {
    ...{ job, circuit, paths, loads, protection, choose },
    mostA: mostBy(sizer.mostA),
    bareWarmA: mostBy(sizer.bareWarmA),
    flowA: (fuse) => least.flowA(fuse),
  };
}

function sizeFeed(
  edge: CircuitEdge,
  sizing: PowerSizing,
  ratingA: (id: string) => number,
  into: Map<string, SizedConductor>,
): void {
  size(edge, sizing, greatestA(feedNeed(edge, sizing, ratingA)), into);
}

/**
 * The lead from a source to its first fuse is as thick as what leaves that fuse, as far as its ports take it: it has
 * no fuse of its own, and one size from the post on leaves no step to forget. True where it has to grow.
 */
function thickenTail(
  edge: CircuitEdge,
  { job, circuit, paths, protection, least, sizer }: PowerSizing,
  into: ReadonlyMap<string, SizedConductor>,
): boolean {
  const own = into.get(edge.id);
  if (!own || own.chosen === 'given' || !isBare(protection.get(edge.id))) return false;
  const fuses = fusesBehind(circuit, paths, edge);
  const behind = [...into.values()].filter(({ link }) =>
    protection.get(link.id)?.ends.some((end) => end.fuses.some(({ id }) => fuses.includes(id))),
  );
  const [thickest] = behind
    .filter(({ cable: { size } }) => fitsPorts(job, own.link, size.areaMm2))
    .filter(({ cable: { size } }) => size.areaMm2 < sizer.underMm2(edge.id) / 1.001)
    .toSorted((a, b) => b.cable.size.areaMm2 - a.cable.size.areaMm2);
  if (!thickest || thickest.cable.size.areaMm2 <= own.cable.size.areaMm2 * 1.001) return false;
  least.raise(
    edge.id,
    thickest.cable.size.areaMm2,
    `as thick as ${thickest.link.id} behind its fuse, ${thickest.cable.size.label}`,
  );
  return true;
}

/**
 * A ground is at least as large as the feed of the same devices, judged by conductance. Where that feed has
 * several sizes in a row, the one next to the devices counts. The return of a battery is as large as what hangs
 * on its positive post.
 */
function sizeGround(
  edge: CircuitEdge,
  sizing: PowerSizing,
  ratingA: (fuse: string) => number,
  into: Map<string, SizedConductor>,
): void {
  const rules = powerRules(sizing.job.rules);
  const returned = returnedFeeds(edge, sizing, into, rules);
  const [most] = returned
    .map((feeds) => ({ feeds, conductanceSm: sumOf(feeds, ({ cable }) => cableSm(cable, rules)) }))
    .toSorted((a, b) => b.conductanceSm - a.conductanceSm);
  const names = most?.feeds.map(({ link, cable }) => `${link.id}, ${cable.size.label}`).join(', and ');
  size(edge, sizing, greatestA(groundNeed(edge, sizing, ratingA, into)), into, {
    conductanceSm: most?.conductanceSm ?? 0,
    why: `at least as large as its feed ${names ?? ''}`,
  });
}

function size(
  edge: CircuitEdge,
  sizing: PowerSizing,
  needed: number,
  into: Map<string, SizedConductor>,
  feed: LeastConductance = { conductanceSm: 0, why: '' },
): void {
  const { circuit, paths, loads, lengths, least, sizer } = sizing;
  const { link } = edge;
  const role = circuit.roles.get(edge.id);
  if (!link || !role) return;
  const { areaMm2, why, grown } = least.of(edge.id);
  const ratedA = paths
    .downstream(edge)
    .reduce((sum, { device }) => sum + (loads.find(({ item }) => item === device.id)?.ratedA ?? 0), 0);
  const sized = sizer.size({
    link,
    role,
    lengthM: lengths(link.id).lengthM,
    neededA: needed,
    ratedA,
    leastMm2: areaMm2,
    why: why || null,
    ...(grown && { grown }),
    feed,
  });
  // What fits nowhere must not drag the other sizes along.
  if (!sized.remarks.some(({ level }) => level === 'stop'))
    least.raise(edge.id, sized.cable.size.areaMm2, sized.byFeed ? feed.why : why);
  into.set(edge.id, sized);
}
