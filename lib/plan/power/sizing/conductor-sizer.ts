import type { Job, Link } from '../../../model/content/resolved-job.ts';
import type { ConductorRole } from '../../../model/vocabulary.ts';
import type { RunZone } from '../../../power/conductor/ampacity.ts';
import { onceEach } from '../../once-each.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { ampacityZones, wireZones } from '../../wiring/runs/run-zones.ts';
import type { BendBounds } from './bend-bounds.ts';
import {
  bareWarmAmpacityA,
  greatestAmpacityA,
  type SizedConductor,
  sizeConductor,
} from './conductor-sizing.ts';
import type { ConductorTask } from './conductor-task.ts';

/** A conductor to be sized: the zones that it lies in follow from its length. */
export type SizerTask = Omit<ConductorTask, 'zones' | 'underMm2'>;

/**
 * Sizes the conductors of one job. The loop between size and length asks for most of them again in the same words: each
 * is worked out once.
 */
export interface ConductorSizer {
  size(task: SizerTask): SizedConductor;
  /** The most that a conductor could carry with any cable that it may have (A). */
  mostA(link: Link, role: ConductorRole, lengthM: number): number;
  /** The most that it could carry at the true ambient of its way with a cable that needs no reducer (A). */
  bareWarmA(link: Link, role: ConductorRole, lengthM: number): number;
  /** What a conductor has to stay under for its bends (mm2); infinite where it has room for any. */
  underMm2(link: string): number;
}

export function conductorSizer(
  job: Job,
  devices: DevicesById,
  roles: ReadonlyMap<string, ConductorRole>,
  bends: BendBounds = new Map(),
): ConductorSizer {
  const underMm2 = (link: string) => bends.get(link) ?? Infinity;
  const zones = onceEach(
    (link: Link, lengthM: number) => zonesOf(job, devices, link, lengthM, roles),
    ({ id }, lengthM) => `${id}\n${lengthM}`,
  );
  return {
    size: onceEach(
      (task: SizerTask) =>
        sizeConductor(job, devices, {
          ...task,
          zones: zones(task.link, task.lengthM),
          underMm2: underMm2(task.link.id),
        }),
      taskKey,
    ),
    mostA: onceEach(
      (link: Link, role: ConductorRole, lengthM: number) =>
        greatestAmpacityA(job, devices, link, role, zones(link, lengthM)),
      lengthKey,
    ),
    bareWarmA: onceEach(
      (link: Link, role: ConductorRole, lengthM: number) =>
        bareWarmAmpacityA(job, devices, link, role, zones(link, lengthM)),
      lengthKey,
    ),
    underMm2,
  };
}

const lengthKey = ({ id }: Link, role: ConductorRole, lengthM: number): string =>
  `${id}\n${role}\n${lengthM}`;

/** All that the size of a conductor follows from, beside its link. */
function taskKey({ link, feed, grown, ...task }: SizerTask): string {
  const ofFeed = feed ? Object.entries(feed).flat() : [];
  const grew = grown ? JSON.stringify(grown) : '';
  return [link.id, ...Object.entries(task).flat(), 'feed', ...ofFeed, grew].map(String).join('\n');
}

/** The zones of a link's conductor for its ampacity; loaded conductors of one run count as a bundle. */
function zonesOf(
  job: Job,
  devices: DevicesById,
  link: Link,
  lengthM: number,
  roles: ReadonlyMap<string, ConductorRole>,
): RunZone[] {
  const mates = job.links.filter(
    ({ id, run }) =>
      run !== null && run === link.run && ['power', 'ground', 'speaker'].includes(roles.get(id) ?? ''),
  );
  return ampacityZones(job, link, wireZones(job, devices, link, lengthM), Math.max(1, mates.length));
}
