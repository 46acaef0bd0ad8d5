import type { Remark } from '../model/remark.ts';
import { type Job, type Link, type LinkEnd, terminalId } from '../model/resolved-job.ts';
import type { ConductorRole } from '../model/vocabulary.ts';
import { ampacity, type RunZone } from '../power/ampacity.ts';
import {
  type CableCandidate,
  type ConductorChoice,
  type ConductorDuty,
  chooseConductor,
  type JudgedCable,
} from '../power/conductor-choice.ts';
import { isPowerFault } from '../power/traced.ts';
import { candidatesFor, fixedCandidate, isGiven } from './cable-candidates.ts';
import type { DevicesById } from './conductor-role.ts';
import { powerRules } from './power-rules.ts';
import { reducerFor } from './reducers.ts';

/** A conductor with the cable that was chosen or given for it. */
export interface SizedConductor {
  readonly link: Link;
  readonly role: ConductorRole;
  readonly cable: CableCandidate;
  readonly judged: JudgedCable | null;
  readonly lengthM: number;
  /** What it must be able to carry, from its fuses (A). */
  readonly neededA: number;
  readonly chosen: 'given' | 'computed';
  readonly reason: string;
  /** True where its feed alone asks for its size. */
  readonly byFeed: boolean;
  readonly remarks: readonly Remark[];
  /** Cables of the catalogue that would do where the given one does not carry its fuse, thin to thick. */
  readonly alternatives: readonly JudgedCable[];
}

/** What one conductor is to do. */
export interface ConductorTask {
  readonly link: Link;
  readonly role: ConductorRole;
  readonly lengthM: number;
  readonly zones: readonly RunZone[];
  readonly neededA: number;
  readonly ratedA: number;
  /** At least this area: an earlier pass, its feed, its port or its drop asked for it (mm2). */
  readonly leastMm2: number;
  readonly why: string | null;
  /** For a ground, what its feeds ask of it. */
  readonly feed?: LeastConductance;
}

/** At least this conductance of one metre (S m), and why. */
export interface LeastConductance {
  readonly conductanceSm: number;
  readonly why: string;
}

/** A drop that no conductor reaches by itself: the drop is judged over the whole way, in the network. */
const anyDropV = 1000;

/** Chooses the cable of one conductor, or takes over what the job, the cable or the vehicle says. */
export function sizeConductor(job: Job, devices: DevicesById, task: ConductorTask): SizedConductor {
  const { link, role } = task;
  const fixed = fixedCandidate(job, link);
  const candidates = fixed ? [fixed] : candidatesFor(job, link, role);
  const given = isGiven(link);
  const duty = dutyOf(job, devices, task, given);
  const first = choose(duty, candidates, job);
  // Where the shelf is short, the size is still computed from the catalogue: the pick list then says what to buy.
  const anyShelf = first.chosen ? first : choose(duty, candidates.map(withoutStock), job);
  const judged = anyShelf.chosen ?? nearest(anyShelf.considered);
  const cable = judged?.candidate ?? candidates[0] ?? nothingKnown();
  const remarks = given
    ? []
    : remarksOf(link, task, candidates, first.chosen, anyShelf.chosen, anyShelf.reason);
  const byFeed = !given && anyShelf.governed.includes('conductance');
  const reason = given
    ? `given: ${cable.size.label}`
    : reasonOf(task, cable, anyShelf.chosen, anyShelf.reason, byFeed);
  return {
    link,
    role,
    cable,
    judged,
    lengthM: task.lengthM,
    neededA: task.neededA,
    chosen: given ? 'given' : 'computed',
    reason,
    byFeed,
    remarks,
    alternatives: given && link.origin === 'job' ? lawfulInstead(job, devices, task, judged) : [],
  };
}

/** What would be lawful in the place of a given conductor that does not carry its fuse; empty where it does. */
function lawfulInstead(
  job: Job,
  devices: DevicesById,
  task: ConductorTask,
  judged: JudgedCable | null,
): readonly JudgedCable[] {
  if (!judged || judged.ampacity.ampacityA.value >= task.neededA) return [];
  const open: Link = { ...task.link, given: null, cable: null };
  const candidates = candidatesFor(job, open, task.role).map(withoutStock);
  const choice = choose(dutyOf(job, devices, { ...task, link: open }, false), candidates, job);
  return choice.considered.filter(({ misses }) => misses.length === 0);
}

/** What an earlier size, a feed or a port asked for says more than the limit of the next smaller cable. */
function reasonOf(
  { why, leastMm2, feed }: ConductorTask,
  { size }: CableCandidate,
  chosen: JudgedCable | null,
  reason: string,
  byFeed: boolean,
): string {
  if (byFeed && chosen !== null && feed) return `${size.label}: ${feed.why}`;
  const governs = why !== null && chosen !== null && leastMm2 > size.areaMm2 / 1.001 - 1e-9;
  return governs ? `${size.label}: ${why}` : reason;
}

function nothingKnown(): CableCandidate {
  return { part: '', size: { label: 'none', areaMm2: 0 }, material: 'copper', insulationC: null };
}

function withoutStock({ stockM: _, ...candidate }: CableCandidate): CableCandidate {
  return candidate;
}

/** What fits best where nothing fits: it misses fewest limits, and is the thickest of these. */
function nearest(considered: readonly JudgedCable[]): JudgedCable | null {
  return considered.toReversed().toSorted((a, b) => a.misses.length - b.misses.length)[0] ?? null;
}

/** The choice; where none can be made, why not is its reason. */
function choose(duty: ConductorDuty, candidates: readonly CableCandidate[], job: Job): ConductorChoice {
  const choice = chooseConductor(duty, candidates, powerRules(job.rules));
  return isPowerFault(choice) ? { chosen: null, governed: [], reason: choice.fault, considered: [] } : choice;
}

/** A size that was given is judged by the rules, so only the fuse is put to it here. */
function dutyOf(job: Job, devices: DevicesById, task: ConductorTask, given: boolean): ConductorDuty {
  const ends = [task.link.from, task.link.to].map((end) => portOf(job, devices, end));
  const smallestPort = Math.max(0, ...ends.flatMap((port) => (port ? [port.smallestMm2] : [])));
  return {
    fuseA: given ? 0 : task.neededA,
    currentA: task.ratedA,
    lengthM: Math.max(task.lengthM, 0.001),
    otherOhm: 0,
    mostDropV: anyDropV,
    zones: task.zones,
    ...(given
      ? {}
      : {
          ports: ends.flatMap((port) => (port ? [port] : [])),
          leastMm2: Math.max(task.leastMm2, smallestPort),
          leastSm: task.feed?.conductanceSm ?? 0,
        }),
  };
}

function portOf({ parts }: Job, devices: DevicesById, end: LinkEnd) {
  const spec = devices.get(end.device)?.facts.terminals[end.terminal];
  const takes = spec?.takes;
  return takes
    ? {
        id: terminalId(end),
        largestMm2: takes.to.areaMm2,
        smallestMm2: takes.from.areaMm2,
        reduces: (areaMm2: number) => reducerFor(parts, areaMm2, spec) !== null,
      }
    : null;
}

function remarksOf(
  { id }: Link,
  task: ConductorTask,
  candidates: readonly CableCandidate[],
  fromShelf: JudgedCable | null,
  chosen: JudgedCable | null,
  reason: string,
): Remark[] {
  const base = { of: [id], source: "33 CFR 183.425, Table 5; the parts' data" };
  if (candidates.length === 0)
    return [
      {
        ...base,
        rule: 'conductor-no-reel',
        level: 'stop',
        message: `no reel of the catalogue is for ${task.role} conductors`,
        remedy:
          task.role === 'signal'
            ? 'take a conductor of a cable by cable: and conductors:, or add a wire part for this use to the catalogue'
            : 'add a wire part for this use to the catalogue, or name one by wire:',
      },
    ];
  if (!chosen)
    return [
      {
        ...base,
        rule: 'conductor-none-fits',
        level: 'stop',
        message: `no cable of the catalogue fits ${id}: ${reason}`,
        remedy:
          'use a larger port or reducer, a smaller fuse, insulation for a higher temperature, or a second feed',
      },
    ];
  if (fromShelf) return [];
  return [
    {
      ...base,
      rule: 'conductor-not-on-shelf',
      level: 'caution',
      message: `no reel on the shelf has ${chosen.candidate.size.label} in one piece for ${id}`,
      remedy: 'buy it before the build: the pick list says how much',
    },
  ];
}

/** The most that a conductor could carry with any cable that it may have; what was given counts alone (A). */
export function greatestAmpacityA(
  job: Job,
  devices: DevicesById,
  link: Link,
  role: ConductorRole,
  zones: readonly RunZone[],
): number {
  const fixed = fixedCandidate(job, link);
  const candidates = fixed ? [fixed] : candidatesFor(job, link, role);
  const ports = isGiven(link) ? [] : [link.from, link.to].flatMap((end) => portOf(job, devices, end) ?? []);
  const ampacities = candidates
    .filter(({ size: { areaMm2 } }) =>
      ports.every(({ largestMm2, reduces }) => areaMm2 <= largestMm2 * 1.001 || reduces(areaMm2)),
    )
    .map(({ size, material, insulationC }) => {
      const found = ampacity({ areaMm2: size.areaMm2, material, insulationC }, zones, powerRules(job.rules));
      return isPowerFault(found) ? 0 : found.ampacityA.value;
    });
  return Math.max(0, ...ampacities);
}
