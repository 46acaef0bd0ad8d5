import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import { type Job, type Link, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { PlanJoint, PlanWire, WireEnd } from '../../model/plan/index.ts';
import { type Splice, spliceTakes } from '../../power/conductor/joint-size.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import { sharedTerminal, trunkOf } from './branches.ts';

/** A link that is joined to the wire of another before the port that both begin at. */
export interface Joined {
  readonly trunk: Link;
  /** The port. */
  readonly terminal: string;
  readonly part: string | null;
}

/** What a link is joined to; null for one that enters its ports itself. */
export function joinedTo(job: Pick<Job, 'links'>, link: Link): Joined | null {
  const joint = link.given?.joint;
  const trunk = joint && trunkOf(job, link, joint.with);
  const terminal = trunk && sharedTerminal(link, trunk);
  return trunk && terminal ? { trunk, terminal, part: joint.part ?? null } : null;
}

/** True for an end that goes into its port, and is not joined to another wire before it. */
export function entersPort(job: Pick<Job, 'links'>, link: Link, end: LinkEnd): boolean {
  return joinedTo(job, link)?.terminal !== terminalId(end);
}

/** A part that joins wires, in the terms of the computation; null for any other. */
export function asSplice({ form, takes }: PartOf<'terminal'>): Splice | null {
  if (form !== 'butt-splice' && form !== 'solder-sleeve') return null;
  return { form, smallestMm2: takes.from.areaMm2, largestMm2: takes.to.areaMm2 };
}

type Joining = Pick<Job, 'links' | 'parts' | 'shop'>;

/** Conductors by their links, as thick as they are. */
type Sizes = ReadonlyMap<string, { readonly cable: { readonly size: { readonly areaMm2: number } } }>;

/** The splice of a joint: as written, else of those that take both conductors one that is on the shelf, the narrowest. */
export function splicePart(job: Joining, { trunk, part }: Joined, link: Link, sized: Sizes): string | null {
  if (part !== null) return part;
  const [trunkMm2, joinedMm2] = [trunk, link].map(({ id }) => sized.get(id)?.cable.size.areaMm2 ?? 0);
  if (trunkMm2 === undefined || joinedMm2 === undefined) return null;
  return narrowestSplice(job, (splice) => spliceTakes(splice, trunkMm2, joinedMm2));
}

/** Of the splices that do, one that is on the shelf, and of those the narrowest; null where the catalogue has none. */
export function narrowestSplice(
  job: Pick<Job, 'parts' | 'shop'>,
  does: (splice: Splice) => boolean,
): string | null {
  const inOrder = shelvedFirst(job.shop);
  const fitting = partsOfKind(job.parts, 'terminal').flatMap(([id, spec]) => {
    const splice = asSplice(spec);
    return splice && does(splice) ? [{ id, splice }] : [];
  });
  const [best] = fitting.toSorted(
    (a, b) => inOrder(a.id, b.id) || a.splice.largestMm2 - b.splice.largestMm2 || (a.id < b.id ? -1 : 1),
  );
  return best?.id ?? null;
}

/** Every joint of a job: one after the other along the wire where several lie on it, the first nearest to the port. */
export function planJoints(job: Job, wires: readonly PlanWire[]): PlanJoint[] {
  const apartM = job.rules['joint-from-port'].value;
  const before = new Map<string, number>();
  return job.links.flatMap((link): PlanJoint[] => {
    const joined = joinedTo(job, link);
    const wire = wires.find(({ id }) => id === link.id);
    const trunk = joined && wires.find(({ id }) => id === joined.trunk.id);
    if (!joined || !wire || !trunk) return [];
    const key = `${trunk.id} ${joined.terminal}`;
    const nth = (before.get(key) ?? 0) + 1;
    before.set(key, nth);
    return [
      {
        ...{ id: wire.id, label: wire.label, trunk: trunk.id, trunkLabel: trunk.label },
        ...{ terminal: joined.terminal, distanceM: nth * apartM },
        part: wire.ends.find(({ terminal }) => terminal === joined.terminal)?.part ?? null,
      },
    ];
  });
}

/** What an end says that is joined to another wire. */
export function jointPrep(trunkLabel: string): Pick<WireEnd, 'prep' | 'form'> {
  return { prep: `joined to ${trunkLabel} before the port`, form: 'joint' };
}
