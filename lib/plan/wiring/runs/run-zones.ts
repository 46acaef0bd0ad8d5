import type { Job, Link } from '../../../model/content/resolved-job.ts';
import type { PlanWire } from '../../../model/plan/index.ts';
import { ambientRules, isEngineSpace } from '../../../model/zone-ambient.ts';
import type { RunZone } from '../../../power/conductor/ampacity.ts';
import type { DevicesById } from '../conductor-role.ts';
import { liesOnWay } from '../joints.ts';
import { endZone, ownWay } from './own-way.ts';
import { isCovered } from './run-coverings.ts';

/** The zones that the conductor of a link passes, with the length in each: those of its way by its run, then those of its ends. */
export function wireZones(job: Job, devices: DevicesById, link: Link, lengthM: number): PlanWire['zones'] {
  const { passes } = ownWay(job, devices, link);
  const along = passes.reduce((sum, pass) => sum + pass.lengthM, 0);
  const rest = Math.max(0, lengthM - along);
  const own = [link.from, link.to].filter((end) => !liesOnWay(job, link, end));
  const ends = [...new Set(own.map(({ device }) => endZone(devices.get(device), link)))];
  const open = ends.filter((zone) => !passes.some((pass) => pass.zone === zone));
  if (open.length === 0) return passes.length > 0 ? passes : [{ zone: 'cabin', lengthM: rest, edge: false }];
  return [...passes, ...open.map((zone) => ({ zone, lengthM: rest / open.length, edge: false }))];
}

/** The same zones in the terms of the ampacity and the temperature of a conductor. */
export function ampacityZones(
  job: Job,
  link: Link,
  zones: PlanWire['zones'],
  bundleCount: number,
): RunZone[] {
  const run = job.runs.find(({ id }) => id === link.run);
  return zones.map(({ zone, lengthM }) => ({
    zone,
    lengthM,
    ambientC: job.rules[ambientRules[zone]].value,
    engineSpace: isEngineSpace(zone),
    covered: zone === 'under-carpet' || (run !== undefined && isCovered(run, zone)),
    bundleCount: run ? bundleCount : 1,
  }));
}
