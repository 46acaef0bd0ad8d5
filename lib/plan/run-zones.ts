import type { PlanWire } from '../model/plan/index.ts';
import type { Device, Job, Link } from '../model/resolved-job.ts';
import type { ZoneKind } from '../model/vocabulary.ts';
import { ambientRules } from '../model/zone-ambient.ts';
import type { RunZone } from '../power/ampacity.ts';
import type { DevicesById } from './conductor-role.ts';
import { isCovered } from './run-coverings.ts';

const engineSpaces: readonly ZoneKind[] = ['engine-bay', 'bulkhead', 'underbody'];

/** The zones that the conductor of a link passes, with the length in each: its run's, then those of its ends. */
export function wireZones(job: Job, devices: DevicesById, link: Link, lengthM: number): PlanWire['zones'] {
  const run = job.runs.find(({ id }) => id === link.run);
  const passes = run?.route.passes.map(({ zone, length, edge }) => ({ zone, lengthM: length, edge })) ?? [];
  const along = passes.reduce((sum, pass) => sum + pass.lengthM, 0);
  const rest = Math.max(0, lengthM - along);
  const ends = [...new Set([link.from, link.to].map(({ device }) => endZone(devices.get(device), link)))];
  const open = ends.filter((zone) => !passes.some((pass) => pass.zone === zone));
  if (open.length === 0) return passes.length > 0 ? passes : [{ zone: 'cabin', lengthM: rest, edge: false }];
  return [...passes, ...open.map((zone) => ({ zone, lengthM: rest / open.length, edge: false }))];
}

/** The body has ground points in several zones; everything else stands in one. */
function endZone(device: Device | undefined, { to, from }: Link): ZoneKind {
  if (device?.spec !== null) return device?.zone ?? 'cabin';
  const terminal = [from, to].find((end) => end.device === device.id)?.terminal ?? '';
  return device.groundZones[terminal] ?? device.zone;
}

/** The same zones in the terms of the ampacity computation. */
export function ampacityZones(
  job: Job,
  link: Link,
  zones: PlanWire['zones'],
  bundleCount: number,
): RunZone[] {
  const run = job.runs.find(({ id }) => id === link.run);
  return zones.map(({ zone }) => ({
    zone,
    ambientC: job.rules[ambientRules[zone]].value,
    engineSpace: engineSpaces.includes(zone),
    covered: zone === 'under-carpet' || (run !== undefined && isCovered(run, zone)),
    bundleCount: run ? bundleCount : 1,
  }));
}
