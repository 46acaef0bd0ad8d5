import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import {
  type Job,
  type Link,
  type LinkEnd,
  type Run,
  sharedTerminal,
  terminalId,
} from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { WireEnd } from '../../model/plan/index.ts';
import { type Splice, spliceTakes } from '../../power/conductor/joint-size.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import { trunkOf } from './branches.ts';

/** A link that is joined to the wire of another, before the port that both begin at or on the way of that one. */
export interface Joined {
  readonly trunk: Link;
  /** The port. */
  readonly terminal: string;
  readonly part: string | null;
  /** Where they are joined on the way of the other link. */
  readonly at: string | null;
  /** How far along its run from the shared terminal that is (m); null for a joint before the port. */
  readonly alongM: number | null;
}

/** What a link is joined to; null for one that enters its ports itself. */
export function joinedTo(job: Pick<Job, 'links'>, link: Link): Joined | null {
  const joint = link.given?.joint;
  const trunk = joint && trunkOf(job, link, joint.with);
  const terminal = trunk && sharedTerminal(link, trunk);
  if (!trunk || !terminal) return null;
  const { part = null, at = null, after: alongM = null } = joint;
  return { trunk, terminal, part, at, alongM };
}

/** How far a link goes by its run (m): one that is joined to another of the same run from there on alone. */
export function alongRunM(job: Pick<Job, 'links'>, link: Link, run: Run): number {
  const joined = joinedTo(job, link);
  const sharedM = joined?.trunk.run === run.id ? (joined.alongM ?? 0) : 0;
  return Math.max(0, routeLengthM(run.route) - sharedM);
}

/** True for an end of a link that lies on the way of another one, where the two are joined, and not at its terminal. */
export function liesOnWay(job: Pick<Job, 'links'>, link: Link, end: LinkEnd): boolean {
  const joined = joinedTo(job, link);
  return joined !== null && joined.alongM !== null && joined.terminal === terminalId(end);
}

/** True for an end that goes into its port, and is not joined to another wire before it. */
export function entersPort(job: Pick<Job, 'links'>, link: Link, end: LinkEnd): boolean {
  return joinedTo(job, link)?.terminal !== terminalId(end);
}

/** A part that joins wires, in the terms of the computation; null for any other. */
export function asSplice({ form, takes, 'other-side': other }: PartOf<'terminal'>): Splice | null {
  if (form !== 'butt-splice' && form !== 'solder-sleeve') return null;
  return { form, ...barrelOf(takes), ...(other && { other: barrelOf(other) }) };
}

function barrelOf({ from, to }: PartOf<'terminal'>['takes']): Pick<Splice, 'smallestMm2' | 'largestMm2'> {
  return { smallestMm2: from.areaMm2, largestMm2: to.areaMm2 };
}

type Joining = Pick<Job, 'links' | 'parts' | 'shop'>;

/** Conductors by their links, as thick as they are. */
type Sizes = ReadonlyMap<string, { readonly cable: { readonly size: { readonly areaMm2: number } } }>;

/** The splice of a joint: as written, else of those that take both conductors one that is on the shelf, the narrowest. */
export function splicePart(job: Joining, { trunk, part }: Joined, link: Link, sized: Sizes): string | null {
  if (part !== null) return part;
  const [trunkMm2, joinedMm2] = [trunk, link].map(({ id }) => sized.get(id)?.cable.size.areaMm2 ?? 0);
  if (trunkMm2 === undefined || joinedMm2 === undefined) return null;
  const best = bestSplice(job, (splice) => (spliceTakes(splice, trunkMm2, joinedMm2) ? 'as they are' : null));
  return best?.part ?? null;
}

/** How two ends go into a splice: as they are, or one of them folded back on itself. */
export type EndsInSplice = 'as they are' | 'lead' | 'wire';

/**
 * Of the splices that do, one that is on the shelf; of those one that takes the ends as they are before one for which an
 * end is folded back, a crimped one before one that is soldered, since a wire that is stiff with solder breaks where it
 * moves, and of those the narrowest. Common practice, no source. Null where the catalogue has none.
 */
export function bestSplice(
  job: Pick<Job, 'parts' | 'shop'>,
  endsIn: (splice: Splice) => EndsInSplice | null,
): { readonly part: string; readonly ends: EndsInSplice } | null {
  const inOrder = shelvedFirst(job.shop);
  const fitting = partsOfKind(job.parts, 'terminal').flatMap(([part, spec]) => {
    const splice = asSplice(spec);
    const ends = splice && endsIn(splice);
    return splice && ends ? [{ part, splice, ends }] : [];
  });
  const [best] = fitting.toSorted(
    (a, b) =>
      inOrder(a.part, b.part) ||
      Number(a.ends !== 'as they are') - Number(b.ends !== 'as they are') ||
      Number(isSoldered(a.splice)) - Number(isSoldered(b.splice)) ||
      a.splice.largestMm2 - b.splice.largestMm2 ||
      (a.part < b.part ? -1 : 1),
  );
  return best ?? null;
}

const isSoldered = ({ form }: Splice): boolean => form === 'solder-sleeve';

/** What an end says that is joined to another wire. */
export function jointPrep(
  trunkLabel: string,
  { at, alongM }: Pick<Joined, 'at' | 'alongM'>,
): Pick<WireEnd, 'prep' | 'form'> {
  const where = alongM === null ? 'before the port' : at === null ? 'on its way' : `at ${at}`;
  return { prep: `joined to ${trunkLabel} ${where}`, form: 'joint' };
}
