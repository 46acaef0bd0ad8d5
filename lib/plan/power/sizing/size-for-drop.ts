import type { OperatingPoint } from '../../../model/plan/index.ts';
import { voltsAllowed, voltsLost } from '../../../model/printed/told.ts';
import { wholeUp } from '../../../model/quantity/safe-rounding.ts';
import type { LossSide } from '../../../model/vocabulary.ts';
import { candidatesFor } from '../../wiring/cable-candidates.ts';
import { losesLug } from '../../wiring/terminal-parts.ts';
import { deviceDrops } from '../feed-and-ground-drop.ts';
import { groundLossV, type WholeDrop, wholeDrops } from '../known-drops.ts';
import type { NetworkInput } from '../operating-points.ts';
import type { SizedConductor } from './conductor-sizing.ts';
import { attemptOf, attempts, isLimitOwn, nextAttempt } from './growth-attempts.ts';
import type { GrownFor, LeastSizes, PortEnds, Tried } from './least-sizes.ts';
import { nextSizeMm2 } from './next-size.ts';
import { entersPorts, fitsPorts } from './ports-fit.ts';
import type { PowerSizing } from './power-sizing.ts';
import type { SizedPower } from './size-power.ts';
import { conductorDrops, notOnShelf, SizesTried, type Trial } from './sizes-tried.ts';

/** Rounds that growing conductors may take; each one grows a conductor by one size, so more would be a bug. */
const mostRounds = 400;

/** True where both terminals of a link take a size. */
type Fits = typeof entersPorts;

const bareFits: Fits = (job, _, link, areaMm2) => fitsPorts(job, link, areaMm2);

/**
 * Sizes the supply side so that every device keeps the drop limits at rated power, feed and ground solved together
 * in the network. While a device misses a limit, the conductor on its way that drops most grows by one size, as far as
 * its ports take it bare, the catalogue has lugs for it and its attempt allows; one size of one conductor is enough where
 * what is left over the limit is little. A drop is a caution: thick wire at a small port takes more room and hand than it
 * saves volts, so that reducers are taken only where a device would not run or the shop wrote the limit, and fewer then
 * miss one. What leaves a drop over its limit all the same is paid for in vain: such growth is given up, unless the
 * device would not run without it.
 */
export function sizeForDrop(sizing: PowerSizing): SizedPower {
  const known = new SizesTried();
  const bare = grown(sizing, known, 'bare', bareFits);
  const best =
    bare.missing > 0 && mayReduce(sizing, known, bare)
      ? fewerMissing(bare, grown(sizing, known, 'reduced', entersPorts))
      : bare;
  sizing.least.adopt(best.least.held());
  return best.sized;
}

function fewerMissing(bare: Grown, reduced: Grown): Grown {
  return reduced.missing < bare.missing ? reduced : bare;
}

function mayReduce(sizing: PowerSizing, known: SizesTried, { least }: Grown): boolean {
  return isLimitOwn(sizing.job) || known.at({ ...sizing, least: least.copy() }).dark().size > 0;
}

/** A conductor that grew by one size. */
interface Step {
  readonly link: string;
  readonly areaMm2: number;
  readonly why: string;
  readonly grown: GrownFor;
}

/** What growing came to, and how many devices still miss a limit. */
interface Grown {
  readonly sized: SizedPower;
  readonly least: LeastSizes;
  readonly missing: number;
}

/**
 * Grows for every device by the first of its attempts that reaches its goal, each beginning with nothing grown that did
 * not stand before. What came to nothing is noted beside the least sizes.
 */
function grown(sizing: PowerSizing, known: SizesTried, ends: PortEnds, fits: Fits): Grown {
  const tried = sizing.least.tried(ends);
  for (let restart = 0; restart <= attempts.length * sizing.loads.length; restart += 1) {
    const run = growWith(sizing, known, fits, tried);
    if (run === null) continue;
    sizing.least.giveUp(ends, tried);
    return run;
  }
  throw new Error('The conductors did not settle on what they may grow by.');
}

/** Grows until each device has reached its goal; null where one can't, which then begins its next attempt. */
function growWith(sizing: PowerSizing, known: SizesTried, fits: Fits, tried: Tried): Grown | null {
  const thickest = { shelf: new Set<string>(), bought: new Set<string>() };
  let least = sizing.least.copy();
  let undo: { readonly before: LeastSizes; readonly link: string } | null = null;
  let bought: ReadonlySet<string> | null = null;
  const nearEnough = new Set<string>();
  let littleBefore: ReadonlySet<string> | null = null;
  for (let round = 0; round < mostRounds; round += 1) {
    const own = { ...sizing, least };
    const trial = known.at(own);
    const { sized, point } = trial;
    bought ??= notOnShelf(sized);
    if (undo && ![...notOnShelf(sized)].every((id) => bought?.has(id))) {
      // A size from the shelf may ask for one that is not there, such as that of its ground.
      thickest.shelf.add(undo.link);
      least = undo.before;
      undo = null;
      continue;
    }
    const { worst: miss, missing, little } = missedDrops(trial, tried, nearEnough);
    littleBefore ??= little;
    const attempt = miss ? attemptOf(tried, miss.item) : undefined;
    if (!miss || !attempt) {
      if (!raiseFlows(own, sized, point)) return { sized, least, missing };
      undo = null;
      continue;
    }
    const maxed = attempt.offShelf ? thickest.bought : thickest.shelf;
    const isEnough = miss.isLittle && hasGrown(own, sized, point, miss);
    // What only brings a drop nearer that was near before is grown in vain.
    if (isEnough && !littleBefore.has(miss.item)) {
      nearEnough.add(miss.item);
      undo = null;
      continue;
    }
    const step = isEnough ? null : nextStep(own, sized, point, { miss, maxed, fits });
    if (step === null) {
      nextAttempt(tried, miss.item, trial);
      return null;
    }
    undo = attempt.offShelf ? null : { before: least.copy(), link: step.link };
    if (attempt.offShelf) bought = null;
    least.raise(step.link, step.areaMm2, step.why, step.grown);
  }
  throw new Error('The conductors did not settle while growing for their drop.');
}

/**
 * Holds each fuse against what flows through it at the voltages that its devices really get: constant power draws more
 * the lower they are. True where a fuse is to be chosen anew for it.
 */
function raiseFlows(
  { least }: PowerSizing,
  { fuses }: SizedPower,
  { state, elements }: OperatingPoint,
): boolean {
  if (state !== 'solved') return false;
  const flows = new Map(elements.map(({ id, currentA }) => [id, Math.abs(currentA ?? 0)]));
  let raised = false;
  for (const { edge, ratedA } of fuses) {
    const flowA = wholeUp((flows.get(`${edge.id}:fuse`) ?? 0) * 10) / 10;
    if (flowA <= ratedA) continue;
    least.raiseFlow(edge.id, flowA);
    raised = true;
  }
  return raised;
}

interface Miss {
  readonly item: string;
  readonly side: LossSide;
  readonly text: string;
  readonly lostV: number;
  readonly allowedV: number;
  /** True where the drop is over its limit by no more than the house rule calls little, and the device runs with it. */
  readonly isLittle: boolean;
}

/**
 * The device that is farthest from its limits, then the one that does not run, and how many devices miss a limit. Those
 * near enough are left at that.
 */
function missedDrops(
  { network, point, dark }: Trial,
  tried: Tried,
  nearEnough: ReadonlySet<string>,
): { readonly worst: Miss | null; readonly missing: number; readonly little: ReadonlySet<string> } {
  const { rules } = network.job;
  const limit = rules['drop-limit'].value;
  const groundLimitV = rules['ground-drop-limit'].value;
  const goalOf = (item: string) => attemptOf(tried, item)?.goal;
  if (point.state === 'no-solution') {
    const open = network.loads.filter(({ item }) => goalOf(item) !== undefined);
    const [heaviest] = open.toSorted((a, b) => b.ratedA - a.ratedA);
    const text = `${heaviest?.item} could not be fed`;
    return {
      worst: heaviest
        ? { item: heaviest.item, side: 'both', text, lostV: 0, allowedV: 0, isLittle: false }
        : null,
      missing: network.loads.length,
      little: new Set(),
    };
  }
  const excess = (drop: WholeDrop) => Math.max(drop.share / limit, groundLossV(drop) / groundLimitV);
  const missed = wholeDrops(deviceDrops(network, point))
    .filter((drop) => excess(drop) > 1)
    .toSorted((a, b) => excess(b) - excess(a));
  // Whether a device runs is asked once all limits that can be kept are: it takes solving every point that music comes to.
  const worst =
    missed.find(({ item }) => goalOf(item) === 'limit' && !nearEnough.has(item)) ??
    missed.find(({ item }) => goalOf(item) === 'run' && dark().has(item));
  // A limit that the shop wrote is held as it is written.
  const bound = isLimitOwn(network.job) ? 0 : rules['drop-over-little'].value;
  const little = new Set(missed.filter((drop) => excess(drop) <= 1 + bound).map(({ item }) => item));
  if (!worst) return { worst: null, missing: missed.length, little };
  const isLittle = goalOf(worst.item) === 'limit' && little.has(worst.item) && !dark().has(worst.item);
  return { worst: { ...missOf(worst, network), isLittle }, missing: missed.length, little };
}

function missOf(worst: WholeDrop, { job }: NetworkInput): Omit<Miss, 'isLittle'> {
  const limit = job.rules['drop-limit'].value;
  const groundLimitV = job.rules['ground-drop-limit'].value;
  const onlyGround = worst.share <= limit;
  const foundV = onlyGround ? groundLossV(worst) : worst.feedDropV + worst.groundDropV + (worst.liftedV ?? 0);
  // The share is the drop over the voltage for sizing, whose allowed share it is held against.
  const allowedV = onlyGround ? groundLimitV : (limit * foundV) / worst.share;
  return {
    item: worst.item,
    side: onlyGround ? 'ground' : 'both',
    lostV: foundV,
    allowedV,
    text: `${worst.item} would lose ${voltsLost(foundV)} ${onlyGround ? 'on the ground side' : 'on feed and ground'} at rated power, ${voltsAllowed(allowedV)} are allowed`,
  };
}

/** What grows one conductor: for whom, and which are as thick as they come. */
interface Growing {
  readonly miss: Miss;
  readonly maxed: Set<string>;
  readonly fits: Fits;
}

/** The sized conductors by which a device loses too much: all on its way, or its ground side alone. */
function wayOf(
  { circuit, paths }: PowerSizing,
  { conductors }: SizedPower,
  { item, side }: Miss,
): readonly SizedConductor[] {
  return circuit.edges
    .filter((edge) => paths.downstream(edge).some(({ device }) => device.id === item))
    .flatMap(({ id }) => conductors.get(id) ?? [])
    .filter(({ role }) => side === 'both' || role === 'ground');
}

/** True where the conductor has grown that loses most of what a device loses, by the size that each began with. */
function hasGrown(sizing: PowerSizing, sized: SizedPower, point: OperatingPoint, miss: Miss): boolean {
  const dropV = conductorDrops(point);
  const grown = ({ link }: SizedConductor) => sizing.least.of(link.id).grown;
  // A drop goes as one over the area.
  const before = (one: SizedConductor) =>
    (dropV(one.link.id) * one.cable.size.areaMm2) / (grown(one)?.from ?? one.cable.size).areaMm2;
  const [most] = wayOf(sizing, sized, miss).toSorted((a, b) => before(b) - before(a));
  return most !== undefined && grown(most) !== undefined;
}

/** The conductor that drops most on the way of a device, by one size; null where none can grow. */
function nextStep(
  sizing: PowerSizing,
  sized: SizedPower,
  point: OperatingPoint,
  { miss, maxed, fits }: Growing,
): Step | null {
  const { job, devices, sizer, least } = sizing;
  const dropV = conductorDrops(point);
  const onWay = wayOf(sizing, sized, miss)
    .filter(({ chosen, link }) => chosen === 'computed' && !maxed.has(link.id))
    .toSorted((a, b) => dropV(b.link.id) - dropV(a.link.id));
  for (const { link, role, cable, judged, lengthM } of onWay) {
    const next = nextSizeMm2(candidatesFor(job, link, role), cable, lengthM);
    // A port may not take the next size; growing on would only turn a drop into a conductor that fits nowhere.
    const ports = judged?.misses.some(({ limit }) => limit === 'port') ?? false;
    const bends = next !== null && next < sizer.underMm2(link.id) / 1.001;
    const ended = next !== null && !losesLug(job, link, { from: cable.size.areaMm2, to: next });
    if (next !== null && bends && !ports && ended && fits(job, devices, link, next)) {
      const { item, side, lostV, allowedV } = miss;
      const from = least.of(link.id).grown?.from ?? cable.size;
      return {
        link: link.id,
        areaMm2: next,
        why: `with ${cable.size.label} ${miss.text}`,
        grown: { from, with: cable.size, item, side, lostV, allowedV },
      };
    }
    maxed.add(link.id);
  }
  return null;
}
