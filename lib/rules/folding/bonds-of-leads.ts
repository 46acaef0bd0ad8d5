import { liveSide, noFuse, reached } from '../live-side.ts';
import { deviceIdOf, endsOf } from '../look-up.ts';
import { ratedPoint, voltageOver } from '../operating-point.ts';
import type { Bond } from './bonds.ts';

/**
 * The follower judges a fuse by batteries that all reach it through the wire without a fuse that the cause is about, and
 * by that wire alone: with a fuse at the battery's end, that one is judged instead.
 */
export const batteriesBehindWire: Bond = (
  cause,
  { related: [fuseId, ...batteries] },
  { job, plan, edges },
) => {
  const wire = plan.wires.find(({ id }) => id === cause.related[0]);
  const fuse = plan.power.fuses.find(({ id }) => id === fuseId);
  if (!wire || !fuse || batteries.length === 0) return false;
  const others = edges.filter((edge) => edge.wire?.id !== wire.id);
  const near = reached(others, [fuse.from, fuse.to], noFuse);
  if (!endsOf(wire).some((end) => near.has(end))) return false;
  const posts = liveSide({ job, plan }).sources.filter((post) => batteries.includes(deviceIdOf(post)));
  const beyond = reached(others, endsOf(wire), noFuse);
  return posts.length >= batteries.length && posts.every((post) => !near.has(post) && beyond.has(post));
};

/** How much longer than its limit the lead of the cause is (m); the finding has both figures. */
function excessM({ value, limit }: { readonly value?: unknown; readonly limit?: unknown }): number {
  return typeof value === 'number' && typeof limit === 'number' ? value - limit : 0;
}

/**
 * The follower's reel would do if the lead of the cause were no longer than its limit: no more is short than that lead,
 * and without it enough is left.
 */
export const reelOfExcess: Bond = (
  { related: [id], value: leadM, limit: mostM },
  { related: [part] },
  { plan },
) => {
  const wire = plan.wires.find((one) => one.id === id);
  const pick = plan.pick.find((one) => one.part === part);
  if (!wire || !pick || wire.part !== part || typeof leadM !== 'number' || typeof mostM !== 'number')
    return false;
  const leftM = pick.stockQuantity - (pick.quantity - leadM);
  return pick.short <= leadM + 1e-9 && leftM >= mostM;
};

/** The follower's ground would drop no more than its limit if the lead of the cause were no longer than its own. */
export const dropOfExcess: Bond = (cause, { value, limit }, { job, plan }) => {
  const point = ratedPoint({ job, plan });
  const [id] = cause.related;
  const lead = point?.elements.find(({ kind, of }) => kind === 'conductor' && of === id);
  if (!point || !lead || typeof value !== 'number' || typeof limit !== 'number') return false;
  const leadV = Math.abs(voltageOver(point, lead) ?? 0);
  const savedV =
    typeof cause.value === 'number' && cause.value > 0 ? (leadV * excessM(cause)) / cause.value : 0;
  return value - savedV <= limit + 1e-9;
};
