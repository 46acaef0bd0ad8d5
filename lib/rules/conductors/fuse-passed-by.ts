import type { PlanWire } from '../../model/plan/index.ts';
import { type LiveEdge, type LiveSide, noFuse, reached } from '../live-side.ts';
import { endsOf, jobWires, wireSpot } from '../look-up.ts';
import { unprotectedWires } from '../protection/conductor-without-fuse.ts';
import { distantFuses } from '../protection/fuse-at-source.ts';
import type { Case, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** The wires of a job that no fuse protects, and those on the way from a source to a fuse that stands too far off. */
export function unfusedWires(about: Case): readonly PlanWire[] {
  const late = new Set(distantFuses(about).flatMap(({ of }) => of));
  const bare = new Set(unprotectedWires(about));
  return jobWires(about).filter((wire) => bare.has(wire) || late.has(wire.id));
}

/**
 * A fuse that hangs on its source by one end, with the other end open, while one of the unfused wires leaves before it:
 * the wire was meant to leave behind it.
 */
export function passedBy(
  about: Case,
  side: LiveSide,
  fuse: LiveEdge,
  unfused: readonly PlanWire[],
): Verdict<'fuse-bypassed'>[] {
  const open = openEnd(side, fuse);
  const near = fuse.ends.find((end) => end !== open);
  if (open === null || near === undefined) return [];
  const lead = leadTo(about, side, near);
  const before = (wire: PlanWire) => endsOf(wire).filter((end) => lead.has(end));
  const past = unfused.filter((wire) => before(wire).length === 1);
  const [first] = past;
  if (!first) return [];
  const names = listed(past.map(({ id }) => id));
  return [
    {
      level: 'stop',
      of: [fuse.id, open, ...past.map(({ id }) => id)],
      message: `${names} ${past.length === 1 ? 'leaves' : 'leave'} from ${listed([...new Set(past.flatMap(before))])}, before the fuse ${fuse.id}, and ${open} behind it is open: the fuse protects nothing`,
      remedy: `take ${names} to ${open}`,
      ...wireSpot(about, first.id),
    },
  ];
}

/** The end of a fuse that nothing is linked to; null where both ends are linked, or none is. */
function openEnd({ edges }: LiveSide, fuse: LiveEdge): string | null {
  const isLinked = (end: string) => edges.some((edge) => edge !== fuse && edge.ends.includes(end));
  const open = fuse.ends.filter((end) => !isLinked(end));
  return open.length === 1 ? (open[0] ?? null) : null;
}

/** The near end of a fuse, and the post of the source that a wire leads to it from; nothing where no source reaches it. */
function leadTo({ plan }: Case, side: LiveSide, near: string): ReadonlySet<string> {
  const zone = reached(side.edges, [near], noFuse);
  const sources = side.sources.filter((source) => zone.has(source));
  const joined = sources.filter((source) =>
    plan.wires.some((wire) => [source, near].every((end) => endsOf(wire).includes(end))),
  );
  return new Set(sources.length === 0 ? [] : [near, ...joined]);
}
