import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanWire } from '../../model/plan/index.ts';
import type { TerminalRole } from '../../model/vocabulary.ts';
import { liveSide, noFuse, reached } from '../live-side.ts';
import { deviceIdOf, deviceOf, deviceSpot, endsOf, hasRole, jobWires, wireSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';
import { passedBy, unfusedWires } from './fuse-passed-by.ts';

const groundRoles: readonly TerminalRole[] = ['body', 'ground-bar', 'supply-negative'];
const feedRoles: readonly TerminalRole[] = ['feed-in', 'feed-out', 'supply-positive', 'source-positive'];

/** The far ends of the wires at a post whose role is one of those. */
function farEnds({ job, plan }: Case, post: string, roles: readonly TerminalRole[]): readonly string[] {
  return plan.wires
    .filter((wire) => endsOf(wire).includes(post))
    .map((wire) => (wire.from === post ? wire.to : wire.from))
    .filter((end) => hasRole(job, end, ...roles));
}

const postsOf = ({ id, facts }: Device, role: TerminalRole): readonly string[] =>
  Object.keys(facts.terminals)
    .filter((terminal) => facts.terminals[terminal]?.role === role)
    .map((terminal) => terminalId({ device: id, terminal }));

/**
 * A battery whose positive post goes to ground while its negative post goes to feeds. A strap to the negative post of
 * another battery in series has its positive post on a feed, and is none.
 */
const batteryReversed: Rule = {
  id: 'battery-reversed',
  judge(about) {
    return about.job.devices.flatMap((device): Verdict<'battery-reversed'>[] => {
      if (device.spec?.kind !== 'battery') return [];
      const [positive = ''] = postsOf(device, 'source-positive');
      const [negative = ''] = postsOf(device, 'source-negative');
      const grounds = farEnds(about, positive, groundRoles);
      const feeds = farEnds(about, negative, feedRoles);
      if (grounds.length === 0 || feeds.length === 0) return [];
      return [
        {
          level: 'stop',
          of: [device.id, positive, negative],
          message: `the battery ${device.id} is the wrong way round: ${positive} goes to ${listed(grounds)}, which is ground, and ${negative} to ${listed(feeds)}, which is a feed`,
          remedy: `exchange ${positive} and ${negative} in the links that end there`,
          ...deviceSpot(about.job, device.id),
        },
      ];
    });
  },
};

/** A way round a fuse: past its open end, or through wires and strips alone, so that current flows with the fuse open. */
const fuseBypassed: Rule = {
  id: 'fuse-bypassed',
  judge(about) {
    const side = liveSide(about);
    const { edges } = side;
    const unfused = unfusedWires(about);
    const ofJob = edges.filter(
      ({ kind, id }) => kind === 'fuse' && deviceOf(about.job, deviceIdOf(id))?.origin === 'job',
    );
    const passed = ofJob.flatMap((fuse) => passedBy(about, side, fuse, unfused));
    const bridged = about.plan.power.fuses.flatMap((fuse): Verdict<'fuse-bypassed'>[] => {
      if (deviceOf(about.job, fuse.item)?.origin !== 'job') return [];
      const joins = (without?: PlanWire) =>
        reached(edges, [fuse.from], (edge) => noFuse(edge) && edge.wire !== (without ?? null)).has(fuse.to);
      const across = reached(edges, [fuse.from], noFuse);
      if (!across.has(fuse.to)) return [];
      // A wire is on the way where the ends are not joined without it.
      const way = jobWires(about).filter(
        (wire) => endsOf(wire).some((end) => across.has(end)) && !joins(wire),
      );
      return [
        {
          level: 'stop',
          of: [fuse.id, ...way.map(({ id }) => id)],
          message: `${way.length === 0 ? 'a way without a fuse' : listed(way.map(({ id }) => id))} leads round the fuse ${fuse.id}, from ${fuse.from} to ${fuse.to}: once it opens, the current still flows`,
          remedy: `end the feed at the device that it is for, so that all that flows goes through ${fuse.id}`,
          ...wireSpot(about, way[0]?.id ?? ''),
        },
      ];
    });
    return [...passed, ...bridged];
  },
};

const outputRoles: readonly TerminalRole[] = ['signal-out', 'speaker-out-positive', 'speaker-out-negative'];

/** Two outputs of different devices on one wire drive each other. Outputs of one amplifier are a bridge's affair. */
const outputsJoined: Rule = {
  id: 'outputs-joined',
  judge(about) {
    const isOutput = (job: Job, end: string) => hasRole(job, end, ...outputRoles);
    return jobWires(about).flatMap((wire): Verdict<'outputs-joined'>[] => {
      const ends = endsOf(wire);
      const [one, other] = ends;
      if (!ends.every((end) => isOutput(about.job, end)) || deviceIdOf(one) === deviceIdOf(other)) return [];
      return [
        {
          level: 'stop',
          of: [wire.id, one, other],
          message: `${wire.id} joins the output ${one} to the output ${other}: one drives the other, and nothing hears either`,
          remedy: `end it at an input of ${deviceIdOf(other)}`,
          ...wireSpot(about, wire.id),
        },
      ];
    });
  },
};

/** Links that end where they can't belong. */
export const wrongEndRules: readonly Rule[] = [batteryReversed, fuseBypassed, outputsJoined];
