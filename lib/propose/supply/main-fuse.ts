import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { ampsDrawn } from '../../model/printed/told.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { type DraftDevice, terminalsWith } from '../draft/draft-device.ts';
import { carriesWarm, type FeedWay, feedAreaMm2, interruptsA, ratingFor } from './feed-sizes.ts';
import { noHolderText } from './no-main-fuse.ts';
import { isUntouched, shelvedFirst } from './turn-on.ts';

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

/** What fuses at a lithium battery interrupt, where nobody states what it gives (A). */
const unknownShortA = 20_000;

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
    (a, b) => areaM2(a) - areaM2(b) || shelvedFirst(draft, a.part, b.part) || (a.part < b.part ? -1 : 1),
  );
  const best = smallest && (coolerInstead(draft, duty, smallest.spec, others) ?? smallest);
  if (!best) {
    const { message, remedy } = noHolderText(draft, {
      ...duty,
      batteryId: duty.battery.id,
      shortA: shortA(duty.battery),
    });
    draft.ask(['devices', duty.about], message, remedy);
    return null;
  }
  const why: Why = {
    rule: 'supply',
    reason: `the smallest holder that carries ${ampsDrawn(duty.currentA)} with its margin, takes the conductor and interrupts what ${duty.battery.id} gives`,
    cp: true,
  };
  draft.addDevice(duty.name, { part: best.part, title: duty.title, in: duty.seat }, why, duty.about);
  return draft.device(duty.name);
}

/**
 * The holder of a form in which a smaller fuse is made, where no reel that goes into the ports carries that of the smallest
 * holder in the warmth of its way, and one carries the smaller fuse; else none.
 */
function coolerInstead<T extends { readonly spec: PartOf<'fuse-holder'> }>(
  draft: Draft,
  duty: MainFuseDuty,
  smallest: PartOf<'fuse-holder'>,
  others: readonly T[],
): T | undefined {
  const ratedA = ratingIn(draft, smallest, duty);
  if (isCool(draft, smallest, duty) || ratedA === null) return undefined;
  return others.find(
    ({ spec }) => (ratingIn(draft, spec, duty) ?? Infinity) < ratedA && isCool(draft, spec, duty),
  );
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

/** True for a holder whose lead from the battery is written, and nothing behind it. */
function isFedOnly(draft: Draft, holder: DraftDevice, battery: DraftDevice): boolean {
  const [input] = terminalsWith(holder, 'feed-in');
  const [output] = terminalsWith(holder, 'feed-out');
  const { plus } = postsOf(battery);
  if (input === undefined || output === undefined || plus === null) return false;
  const isFromIt = draft.linksAt(holder.id, input).some((id) => draft.linksAt(battery.id, plus).includes(id));
  return isFromIt && draft.isFree(holder.id, output) && !draft.isLeftOpen(holder.id, output);
}

function suffices(draft: Draft, spec: PartOf<'fuse-holder'>, duty: MainFuseDuty): boolean {
  const { around } = draft;
  const form = spec['fuse-form'];
  const ratingA = ratingIn(draft, spec, duty);
  if (ratingA === null || ratingA > spec.current) return false;
  if (interruptsA(around, form, ratingA) < shortA(duty.battery)) return false;
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

/** What a battery gives into a dead short at its posts, by its maker (A); of one that nobody states, nothing is asked. */
function shortA({ spec }: DraftDevice): number {
  if (spec.kind !== 'battery') return 0;
  return spec['short-circuit'] ?? (spec.chemistry === 'lithium' ? unknownShortA : 0);
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
