import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { ampsDrawn } from '../../model/printed/told.ts';
import { onShelf } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import { shortToInterruptA, statedShortA } from './fault-at-battery.ts';
import {
  carriesWarm,
  type FeedWay,
  feedAreaMm2,
  interruptsA,
  ratingFor,
  shelvedRatings,
} from './feed-sizes.ts';
import { noHolderText } from './no-main-fuse.ts';
import { compareShelved, isUntouched } from './turn-on.ts';

/** What a fuse at a battery has to do. */
export interface MainFuseDuty {
  readonly battery: DraftDevice;
  /** The place beside the battery. */
  readonly seat: string;
  readonly currentA: number;
  readonly ceilingA: number | null;
  readonly way: FeedWay;
  /** The port that its feed goes to. */
  readonly port: TerminalSpec | null;
  readonly name: string;
  readonly title: string;
  readonly about: string;
}

/** Share of the drop that the feed may take: the rest is for ways, ground and joints. Common practice, no source. */
const feedDropShare = 0.5;

/**
 * The holder of the fuse at a battery: one that the job has in that place and does not link, or to that battery alone, else
 * the smallest of the catalogue whose current, ports and interrupting rating suffice.
 */
export function mainFuseAt(draft: Draft, duty: MainFuseDuty): DraftDevice | null {
  const written = draft.own.find(
    (one) =>
      one.spec.kind === 'fuse-holder' &&
      one.seat === duty.seat &&
      (isUntouched(draft, one) || isFedOnly(draft, one, duty.battery)),
  );
  if (written) return written;
  const fitting = Object.entries(draft.around.parts).flatMap(([part, spec]) =>
    spec.kind === 'fuse-holder' && suffices(draft, spec, duty) ? [{ part, spec }] : [],
  );
  const areaM2 = ({ spec }: { spec: PartOf<'fuse-holder'> }) => spec.size.width * spec.size.depth;
  const [smallest, ...others] = fitting.toSorted(
    (a, b) => areaM2(a) - areaM2(b) || compareShelved(draft, a.part, b.part) || (a.part < b.part ? -1 : 1),
  );
  const cool = smallest && (coolerInstead(draft, duty, smallest.spec, others) ?? smallest);
  const interrupting = cool && interruptingInstead(draft, duty, cool.spec);
  const best = interrupting ?? cool;
  if (!best) {
    const { message, remedy } = noHolderText(draft, {
      ...duty,
      batteryId: duty.battery.id,
      shortA: statedShortA(duty.battery),
    });
    draft.ask(['devices', duty.about], message, remedy);
    return null;
  }
  const reason = interrupting ? interruptingReason(draft, duty) : usualReason(duty);
  const why: Why = { rule: 'supply', reason, cp: true };
  draft.addDevice(duty.name, { part: best.part, title: duty.title, in: duty.seat }, why, duty.about);
  return draft.device(duty.name);
}

/**
 * The holder of a form in which a smaller fuse is made, where no reel that goes into the ports carries that of the smallest
 * holder in the warmth of its way, and one carries the smaller fuse; else none.
 */
function coolerInstead<T extends { readonly part: string; readonly spec: PartOf<'fuse-holder'> }>(
  draft: Draft,
  duty: MainFuseDuty,
  smallest: PartOf<'fuse-holder'>,
  others: readonly T[],
): T | undefined {
  const ratedA = ratingIn(draft, smallest, duty);
  if (isCool(draft, smallest, duty) || ratedA === null) return undefined;
  const cooler = others.filter(
    ({ spec }) => (ratingIn(draft, spec, duty) ?? Infinity) < ratedA && isCool(draft, spec, duty),
  );
  return cooler.find(({ part }) => onShelf(draft.around, part) > 0) ?? cooler[0];
}

/** The rating that stands in a holder (A); null where none is made. */
function ratingIn({ around }: Draft, spec: PartOf<'fuse-holder'>, duty: MainFuseDuty): number | null {
  const leastA = duty.currentA * around.rules['fuse-margin'].value;
  return ratingFor(around, spec['fuse-form'], leastA, duty.ceilingA);
}

function isCool(draft: Draft, spec: PartOf<'fuse-holder'>, duty: MainFuseDuty): boolean {
  const ratingA = ratingIn(draft, spec, duty);
  const { way, currentA } = duty;
  const ports = portsOf(spec, duty);
  return ratingA !== null && carriesWarm(draft.around, { ratingA, currentA, way, ports, dropShare: 1000 });
}

/** The ports that the feed goes into: those of the holder, and the one at its far end. */
function portsOf({ terminals }: PartOf<'fuse-holder'>, { port }: MainFuseDuty): readonly TerminalSpec[] {
  const ends = Object.values(terminals).filter(({ role }) => role === 'feed-in' || role === 'feed-out');
  return [...ends, ...(port ? [port] : [])];
}

function interruptingReason(draft: Draft, { battery }: MainFuseDuty): string {
  const mostA = shortToInterruptA(draft, battery);
  return `the holder of the shelf whose fuse is nearest to the current with its margin and interrupts ${ampsDrawn(mostA)}, the most that ${battery.id} may drive into a short`;
}

function usualReason({ battery, currentA }: MainFuseDuty): string {
  const head = `the smallest holder that carries ${ampsDrawn(currentA)} with its margin`;
  return statedShortA(battery) > 0
    ? `${head}, takes the conductor and interrupts what ${battery.id} gives`
    : `${head} and takes the conductor`;
}

/** True for a holder whose lead from the battery is written, and nothing behind it. */
function isFedOnly(draft: Draft, holder: DraftDevice, battery: DraftDevice): boolean {
  const [input] = terminalsWith(holder, 'feed-in');
  const [output] = terminalsWith(holder, 'feed-out');
  const { plus } = postsOf(battery);
  if (input === undefined || output === undefined || plus === null) return false;
  const isFromIt = draft.linksAt(holder.id, input).some((id) => draft.linksAt(battery.id, plus).includes(id));
  return isFromIt && draft.isFree(holder.id, output) && !draft.isLeftOpen(holder.id, output);
}

/**
 * A holder of the shelf whose fuse, on the shelf too, interrupts what the battery may drive into a short, where that of
 * the smallest holder does not: the nearest rating first, and none so large that it is past what a fuse may be over its
 * need. None where the shelf has none: what is to be bought is then told.
 */
function interruptingInstead(draft: Draft, duty: MainFuseDuty, smallest: PartOf<'fuse-holder'>) {
  const { around } = draft;
  const needA = shortToInterruptA(draft, duty.battery);
  const ratedA = ratingIn(draft, smallest, duty);
  if (ratedA === null || interruptsA(around, smallest['fuse-form'], ratedA) >= needA) return undefined;
  const leastA = duty.currentA * around.rules['fuse-margin'].value;
  const mostA = leastA * around.rules['fuse-over-need'].value;
  const fitting = Object.entries(around.parts).flatMap(([part, spec]) => {
    if (spec.kind !== 'fuse-holder' || onShelf(around, part) === 0) return [];
    const ratings = shelvedRatings(around, spec['fuse-form'], needA);
    const ratingA = ratings.find((one) => one >= leastA && one <= Math.min(mostA, duty.ceilingA ?? mostA));
    return ratingA !== undefined && holds(draft, spec, duty, ratingA) ? [{ part, spec, ratingA }] : [];
  });
  const areaM2 = ({ spec }: { spec: PartOf<'fuse-holder'> }) => spec.size.width * spec.size.depth;
  const [best] = fitting.toSorted(
    (a, b) => a.ratingA - b.ratingA || areaM2(a) - areaM2(b) || (a.part < b.part ? -1 : 1),
  );
  return best;
}

function suffices(draft: Draft, spec: PartOf<'fuse-holder'>, duty: MainFuseDuty): boolean {
  const ratingA = ratingIn(draft, spec, duty);
  return ratingA !== null && holds(draft, spec, duty, ratingA);
}

/** True for a holder that takes a fuse of a rating, and a conductor which that protects. */
function holds(draft: Draft, spec: PartOf<'fuse-holder'>, duty: MainFuseDuty, ratingA: number): boolean {
  const { around } = draft;
  const form = spec['fuse-form'];
  if (ratingA > spec.current) return false;
  if (interruptsA(around, form, ratingA) < statedShortA(duty.battery)) return false;
  const ends = Object.values(spec.terminals).filter(({ role }) => role === 'feed-in' || role === 'feed-out');
  const ports = portsOf(spec, duty);
  const { way, currentA } = duty;
  if (feedAreaMm2(around, { ratingA, currentA, way, ports, dropShare: feedDropShare }) !== null) return true;
  // Where no reel keeps the drop in any port, the thickest will have to do: the drop is then told.
  const thickest = Math.max(0, ...ends.map(({ takes }) => takes?.to.areaMm2 ?? 0));
  return (
    thickest >= thickestPort(draft) &&
    feedAreaMm2(around, { ratingA, currentA, way, ports, dropShare: 1000 }) !== null
  );
}

/** The thickest conductor that any holder of the catalogue takes (mm2). */
function thickestPort({ around }: Draft): number {
  return Math.max(
    0,
    ...Object.values(around.parts).flatMap((part) =>
      part.kind === 'fuse-holder'
        ? Object.values(part.terminals).map(({ takes }) => takes?.to.areaMm2 ?? 0)
        : [],
    ),
  );
}

/** The positive and the negative post of a battery. */
export function postsOf(battery: DraftDevice): {
  readonly plus: string | null;
  readonly minus: string | null;
} {
  const [plus = null] = terminalsWith(battery, 'source-positive');
  const [minus = null] = terminalsWith(battery, 'source-negative');
  return { plus, minus };
}
