import type { Job, Link } from '../../model/content/resolved-job.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import type { PlanChannel } from '../../model/plan/index.ts';
import { linkEntry, linkName } from '../../model/ports/pair-name.ts';
import { amps, ampsDrawn } from '../../model/printed/told.ts';
import { spliceTakes } from '../../power/conductor/joint-size.ts';
import type { PlanBook } from '../plan-book.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { asSplice, type Joined, joinedTo } from './joints.ts';

interface Judging {
  readonly job: Job;
  readonly sized: ReadonlyMap<string, SizedConductor>;
  readonly channels: readonly PlanChannel[];
}

/** Stops a joint whose splice does not take its wires, and one whose common wire carries less than what both draw. */
export function remarkJoints({ job, sized, channels }: Judging, book: PlanBook): void {
  for (const link of job.links) {
    const joined = joinedTo(job, link);
    const own = sized.get(link.id);
    const trunk = joined && sized.get(joined.trunk.id);
    if (!joined || !own || !trunk) continue;
    remarkSplice(job, joined, own, trunk, book);
    if (own.role === 'speaker') remarkCurrent(link, joined, trunk, channels, book);
  }
}

function remarkSplice(
  { parts }: Pick<Job, 'parts'>,
  { part, terminal }: Joined,
  own: SizedConductor,
  trunk: SizedConductor,
  book: PlanBook,
): void {
  const spec = part === null ? undefined : parts[part];
  const splice = spec?.kind === 'terminal' ? asSplice(spec) : null;
  if (part === null || spec?.kind !== 'terminal' || !splice) return;
  const [trunkSize, ownSize] = [trunk.cable.size, own.cable.size];
  if (spliceTakes(splice, trunkSize.areaMm2, ownSize.areaMm2)) return;
  const { takes, 'other-side': other } = spec;
  const range = [takes, ...(other ? [other] : [])].map(rangeText).join(' and ');
  book.remark(
    {
      rule: 'joint-off-size',
      level: 'stop',
      of: [own.link.id, trunk.link.id, terminal, part],
      message: `${part} is made for ${range}, and is to join ${own.link.id} (${ownSize.label}) to ${trunk.link.id} (${trunkSize.label}), which is on both sides of it`,
      remedy: `take part: out of joint: at ${linkName(own.link.id)}, and one that takes both is chosen; or name one made for them`,
      writesAt: [linkEntry(own.link.id)],
    },
    { path: own.link.path },
  );
}

const rangeText = ({ from, to }: PartOf<'terminal'>['takes']): string =>
  from.label === to.label ? to.label : `${from.label} to ${to.label}`;

/** Up to the joint the wire to the port carries all that the output gives. */
function remarkCurrent(
  link: Link,
  { trunk: { id }, terminal }: Joined,
  trunk: SizedConductor,
  channels: readonly PlanChannel[],
  book: PlanBook,
): void {
  const channel = channels.find(({ positive, negative }) => terminal === positive || terminal === negative);
  const ampacityA = trunk.judged?.ampacity.ampacityA.value;
  if (!channel || channel.powerW === null || !channel.loadOhm || ampacityA === undefined) return;
  const currentA = Math.sqrt(channel.powerW / channel.loadOhm);
  if (currentA <= ampacityA) return;
  book.remark(
    {
      rule: 'joint-overloaded',
      level: 'stop',
      of: [link.id, id, terminal],
      message: `up to the joint ${id} (${trunk.cable.size.label}) carries all that ${channel.id} gives, ${ampsDrawn(currentA)}, and may carry ${amps(ampacityA)}`,
      value: currentA,
      limit: ampacityA,
      unit: 'A',
      remedy: `write a larger size: at ${linkName(id)}`,
      writesAt: [linkEntry(id)],
    },
    { path: link.path },
  );
}
