import {
  type Device,
  type Job,
  type Link,
  type Run,
  sharedTerminal,
  terminalId,
} from '../../../model/content/resolved-job.ts';
import type { PlanWire } from '../../../model/plan/index.ts';
import type { ZoneKind } from '../../../model/vocabulary.ts';
import { ambientRules, isEngineSpace } from '../../../model/zone-ambient.ts';
import type { RunZone } from '../../../power/conductor/ampacity.ts';
import { trunkOf } from '../branches.ts';
import type { DevicesById } from '../conductor-role.ts';
import { liesOnWay } from '../joints.ts';
import { isCovered } from './run-coverings.ts';

/** The zones that the conductor of a link passes, with the length in each: its run's, then those of its ends. */
export function wireZones(job: Job, devices: DevicesById, link: Link, lengthM: number): PlanWire['zones'] {
  const run = job.runs.find(({ id }) => id === link.run);
  const passes = passesOf(job, devices, run, link);
  const along = passes.reduce((sum, pass) => sum + pass.lengthM, 0);
  const rest = Math.max(0, lengthM - along);
  const own = [link.from, link.to].filter((end) => !liesOnWay(job, link, end));
  const ends = [...new Set(own.map(({ device }) => endZone(devices.get(device), link)))];
  const open = ends.filter((zone) => !passes.some((pass) => pass.zone === zone));
  if (open.length === 0) return passes.length > 0 ? passes : [{ zone: 'cabin', lengthM: rest, edge: false }];
  return [...passes, ...open.map((zone) => ({ zone, lengthM: rest / open.length, edge: false }))];
}

/**
 * The zones of the run that the conductor of a link lies in. A branch lies in those that it shares with the link that it
 * leaves, counted from the end of the run where the shared terminal is, then with its leg in the zone of its far end.
 * Where the zones do not tell which end that is, it keeps the zones of the whole run.
 */
function passesOf(job: Job, devices: DevicesById, run: Run | undefined, link: Link): PlanWire['zones'] {
  const passes = run?.route.passes.map(({ zone, length, edge }) => ({ zone, lengthM: length, edge })) ?? [];
  const branch = link.given?.branch;
  const trunk = branch && trunkOf(job, link, branch.from);
  const terminal = trunk && sharedTerminal(link, trunk);
  if (!branch || !terminal) return passes;
  const [shared, far] = terminalId(link.from) === terminal ? [link.from, link.to] : [link.to, link.from];
  const zone = endZone(devices.get(shared.device), link);
  const [first, last] = [passes[0]?.zone === zone, passes.at(-1)?.zone === zone];
  if (passes.length > 1 && first === last) return passes;
  const own = firstStretch(first ? passes : passes.toReversed(), branch.after);
  return [...own, { zone: endZone(devices.get(far.device), link), lengthM: branch.leg, edge: false }];
}

function firstStretch(passes: PlanWire['zones'], goesM: number): PlanWire['zones'] {
  const [first, ...rest] = passes;
  if (!first || goesM <= 0) return [];
  if (first.lengthM >= goesM) return [{ ...first, lengthM: goesM }];
  return [first, ...firstStretch(rest, goesM - first.lengthM)];
}

/** The body has ground points in several zones; everything else stands in one. */
function endZone(device: Device | undefined, { to, from }: Link): ZoneKind {
  if (device?.spec !== null) return device?.zone ?? 'cabin';
  const terminal = [from, to].find((end) => end.device === device.id)?.terminal ?? '';
  return device.groundZones[terminal] ?? device.zone;
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
