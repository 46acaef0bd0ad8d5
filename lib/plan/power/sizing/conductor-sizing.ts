import type { Job, Link } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import type { Remark } from '../../../model/remark.ts';
import type { Chosen, ConductorRole } from '../../../model/vocabulary.ts';
import { type Ampacity, ampacity, type RunZone } from '../../../power/conductor/ampacity.ts';
import {
  type CableCandidate,
  type ConductorChoice,
  type ConductorDuty,
  goesIn,
  type JudgedCable,
  nearestToFit,
} from '../../../power/conductor/conductor-choice.ts';
import { powerRules } from '../../../power/house-power-rules.ts';
import { candidatesFor, fixedCandidate, isGiven } from '../../wiring/cable-candidates.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { noneFits } from './conductor-none-fits.ts';
import type { ConductorTask } from './conductor-task.ts';
import type { GrownFor } from './least-sizes.ts';
import { type LinkPort, leastWhy, linkPorts, smallestOf } from './link-ports.ts';
import { choose, largestGround, largestInHeat, type SizeChoice } from './smaller-choice.ts';
import { shortOnShelf, thinnerThan } from './thinner-cables.ts';

/** A conductor with the cable that was chosen or given for it. */
export interface SizedConductor {
  readonly link: Link;
  readonly role: ConductorRole;
  readonly cable: CableCandidate;
  readonly judged: JudgedCable | null;
  readonly lengthM: number;
  /** Hottest ambient of its way (C). */
  readonly hottestC: number;
  /** What it must be able to carry, from its fuses (A). */
  readonly neededA: number;
  readonly chosen: Chosen;
  readonly reason: string;
  /** True where its feed alone asks for its size. */
  readonly byFeed: boolean;
  /** For what drop it grew to its size; null where its fuse, a port or its feed asks for that. */
  readonly grown: GrownFor | null;
  readonly remarks: readonly Remark[];
  /** Cables of the catalogue that are thinner, judged in its place, thick to thin; none for one that the vehicle has. */
  readonly thinner: readonly JudgedCable[];
  /** The thinnest cable that carries its fuse and was passed over for its length on the shelf; null where there is none. */
  readonly shortOf: CableCandidate | null;
  /** Cables of the catalogue that would do where the given one does not carry its fuse, thin to thick. */
  readonly alternatives: readonly JudgedCable[];
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
  const { choice, onShelf } =
    (given ? null : chooseUnder(duty, candidates, job, task)) ?? chooseFrom(duty, candidates, job, task);
  const judged = choice.chosen ?? nearestToFit(choice.considered) ?? null;
  const cable = judged?.candidate ?? candidates[0] ?? nothingKnown();
  const byFeed = !given && choice.governed.includes('conductance');
  return {
    link,
    role,
    cable,
    judged,
    lengthM: task.lengthM,
    hottestC: Math.max(...task.zones.map(({ ambientC }) => ambientC)),
    neededA: task.neededA,
    chosen: given ? 'given' : 'computed',
    reason: given ? `given: ${cable.size.label}` : reasonOf(task, cable, choice, byFeed),
    byFeed,
    grown: !given && task.grown && byLeast(task, cable) && !byFeed ? task.grown : null,
    remarks: given ? [] : remarksOf(job, devices, task, candidates.length, choice, onShelf),
    thinner: thinnerThan(cable, given ? consideredInstead(job, devices, task) : choice.considered),
    shortOf:
      given || !judged
        ? null
        : shortOnShelf(task, smallestOf(linkPorts(job, devices, link)), judged, choice.considered),
    alternatives: given && link.origin === 'job' ? lawfulInstead(job, devices, task, judged) : [],
  };
}

interface ShelfChoice {
  readonly choice: SizeChoice;
  readonly onShelf: boolean;
}

/**
 * The choice of what is thin enough for its bends; null where nothing bounds it, or nothing as thin is lawful. A ground is
 * not taken under its feed for that.
 */
function chooseUnder(
  duty: ConductorDuty,
  candidates: readonly CableCandidate[],
  job: Job,
  task: ConductorTask,
): ShelfChoice | null {
  const isThin = ({ size }: CableCandidate) => size.areaMm2 < task.underMm2 / 1.001;
  const [stiff] = candidates
    .filter((one) => !isThin(one))
    .toSorted((a, b) => a.size.areaMm2 - b.size.areaMm2);
  if (!stiff) return null;
  const { choice, onShelf } = chooseFrom(duty, candidates.filter(isThin), job, task);
  if (!choice.chosen || choice.smaller !== undefined) return null;
  const bent = `${stiff.size.label} has no room for its bend on the board`;
  return { choice: { ...choice, bent }, onShelf };
}

/**
 * The choice from the shelf; where that is short from the catalogue, so that the pick list says what to buy; and for a
 * ground that can't be as large as its feed, the one that conducts best of those that fit.
 */
function chooseFrom(
  duty: ConductorDuty,
  candidates: readonly CableCandidate[],
  job: Job,
  task: ConductorTask,
): ShelfChoice {
  const shelf = choose(duty, candidates, job);
  if (shelf.chosen) return { choice: shelf, onShelf: true };
  const shelves = [candidates, candidates.map(withoutStock)];
  const full = choose(duty, candidates.map(withoutStock), job);
  if (full.chosen) return { choice: full, onShelf: false };
  for (const [k, cables] of shelves.entries()) {
    const choice = largestInHeat(duty, cables, job, task, full);
    if (choice) return { choice, onShelf: k === 0 };
  }
  if (!duty.leastSm) return { choice: full, onShelf: false };
  for (const [k, cables] of shelves.entries()) {
    const choice = largestGround(duty, cables, job, task, full);
    if (choice) return { choice, onShelf: k === 0 };
  }
  return { choice: full, onShelf: false };
}

/** The cables of the catalogue, judged in the place of a given conductor; none where it is not the job that gives it. */
function consideredInstead(job: Job, devices: DevicesById, task: ConductorTask): readonly JudgedCable[] {
  if (task.link.origin !== 'job') return [];
  const open: Link = { ...task.link, given: null, cable: null };
  const candidates = candidatesFor(job, open, task.role).map(withoutStock);
  return choose(dutyOf(job, devices, { ...task, link: open }, false), candidates, job).considered;
}

/** What would be lawful in the place of a given conductor that does not carry its fuse; empty where it does. */
function lawfulInstead(
  job: Job,
  devices: DevicesById,
  task: ConductorTask,
  judged: JudgedCable | null,
): readonly JudgedCable[] {
  if (!judged || judged.ampacity.ampacityA.value >= task.neededA) return [];
  return consideredInstead(job, devices, task).filter(({ misses }) => misses.length === 0);
}

/** What an earlier size, a feed or a port asked for says more than the limit of the next smaller cable. */
function reasonOf(
  { why, leastMm2, feed }: ConductorTask,
  { size }: CableCandidate,
  { chosen, reason, smaller, bent }: SizeChoice,
  byFeed: boolean,
): string {
  if (bent !== undefined) return `${size.label}: ${bent}; ${reason}`;
  if (smaller !== undefined) return `${size.label}: ${smaller}`;
  if (byFeed && chosen !== null && feed) return `${size.label}: ${feed.why}`;
  const governs = why !== null && chosen !== null && byLeast({ leastMm2 }, { size });
  return governs ? `${size.label}: ${why}` : reason;
}

/** True where a cable is as thick as an earlier pass, its port or its drop asked for. */
function byLeast(
  { leastMm2 }: Pick<ConductorTask, 'leastMm2'>,
  { size }: Pick<CableCandidate, 'size'>,
): boolean {
  return leastMm2 > size.areaMm2 / 1.001 - 1e-9;
}

function nothingKnown(): CableCandidate {
  return { part: '', size: { label: 'none', areaMm2: 0 }, material: 'copper', insulationC: null };
}

function withoutStock({ stockM: _, ...candidate }: CableCandidate): CableCandidate {
  return candidate;
}

/** A size that was given is judged by the rules, so only the fuse is put to it here. */
function dutyOf(job: Job, devices: DevicesById, task: ConductorTask, given: boolean): ConductorDuty {
  const ports = linkPorts(job, devices, task.link);
  const smallestPort = smallestOf(ports);
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
          ports,
          leastMm2: Math.max(task.leastMm2, smallestPort),
          leastWhy: leastWhy(task, ports),
          leastSm: task.feed?.conductanceSm ?? 0,
          // A ground has no fuse of its own that its warm ampacity would be held against.
          ...(task.role === 'power' && { warmFuseA: task.neededA }),
        }),
  };
}

function remarksOf(
  job: Job,
  devices: DevicesById,
  task: ConductorTask,
  candidates: number,
  { chosen, reason, considered }: ConductorChoice,
  onShelf: boolean,
): Remark[] {
  const { id } = task.link;
  const of = [id];
  if (candidates === 0) return [noReel(task)];
  if (!chosen) return [noneFits(task, linkPorts(job, devices, task.link), considered, reason)];
  if (onShelf) return [];
  return [
    {
      of,
      rule: 'conductor-not-on-shelf',
      level: 'caution',
      message: `no reel on the shelf has ${chosen.candidate.size.label} in one piece for ${id}`,
      remedy: 'buy it before the build: the pick list says how much',
    },
  ];
}

/** Nothing in the catalogue may be cut for a use; all that lack the same reel have the same words. */
function noReel({ link, role }: ConductorTask): Remark {
  const colour = link.given?.colour;
  const reel = `put a reel for it into the catalogue (rackleaf new part, kind wire, with for: [${role}]), or write ${role} beside the others under for: of a reel that will do`;
  return {
    of: [link.id],
    rule: 'conductor-no-reel',
    level: 'stop',
    message: `no reel of the catalogue is for ${role} conductors${colour === undefined ? '' : ` in ${colour}`}`,
    remedy: [reel, ...(colour === undefined ? [] : ['or leave colour: out'])].join('; '),
  };
}

/** The most that a conductor could carry with any cable that it may have; what was given counts alone (A). */
export function greatestAmpacityA(...asked: CablesOf): number {
  const [, , link] = asked;
  const carried = carriedBy(asked, isGiven(link) ? () => true : goesIn);
  return Math.max(0, ...carried.map(({ ampacityA }) => ampacityA.value));
}

/**
 * The most that a conductor could carry at the true ambient of its way with a cable that goes into its ports as it is (A):
 * above it a thicker one would have to go in by reducers. Infinite for one that was given, which stands as it is.
 */
export function bareWarmAmpacityA(...asked: CablesOf): number {
  const [job, , link] = asked;
  if (fixedCandidate(job, link) || isGiven(link)) return Number.POSITIVE_INFINITY;
  const bare = (areaMm2: number, { largestMm2 }: LinkPort) => goesIn(areaMm2, { largestMm2 });
  return Math.max(0, ...carriedBy(asked, bare).map(({ cautionA }) => cautionA.value));
}

type CablesOf = readonly [
  job: Job,
  devices: DevicesById,
  link: Link,
  role: ConductorRole,
  zones: readonly RunZone[],
];

/** What each cable carries that a conductor may have and that its ports let in. */
function carriedBy(
  [job, devices, link, role, zones]: CablesOf,
  enters: (areaMm2: number, port: LinkPort) => boolean,
): readonly Ampacity[] {
  const fixed = fixedCandidate(job, link);
  const ports = linkPorts(job, devices, link);
  const rules = powerRules(job.rules);
  return (fixed ? [fixed] : candidatesFor(job, link, role))
    .filter(({ size: { areaMm2 } }) => ports.every((port) => enters(areaMm2, port)))
    .flatMap(({ size, material, insulationC }) => {
      const found = ampacity({ areaMm2: size.areaMm2, material, insulationC }, zones, rules);
      return isFault(found) ? [] : [found];
    });
}
