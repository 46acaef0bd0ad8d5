import { type Job, type Link, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import { linkName } from '../../model/ports/pair-name.ts';

/** True where the links of a speaker are proposed: they follow what is declared of its polarity. */
export function linksProposed(job: Job, speaker: string): boolean {
  const names = leadsTo(job, speaker).map(({ id }) => linkName(id));
  return (
    names.length > 0 &&
    names.every((name) =>
      job.proposals.some(({ path }) => path.length === 2 && path[0] === 'links' && path[1] === name),
    )
  );
}

/** The two conductors of a speaker swapped at it, as lines under `links:`; null where it has more than two, or fewer. */
export function swappedLines(job: Job, speaker: string): string | null {
  const [first, second, third] = leadsTo(job, speaker);
  if (!first || !second || third) return null;
  const own = (link: Link) => (link.from.device === speaker ? link.from : link.to);
  const lines = [lineOf(first, speaker, own(second), 'plus'), lineOf(second, speaker, own(first), 'minus')];
  const pair = linkName(first.id) === linkName(second.id) ? ` in place of ${linkName(first.id)}` : '';
  return `${lines.join(' and ')} under links:${pair}`;
}

/** The conductors between a speaker and what drives it, without those between its own coils. */
function leadsTo(job: Job, speaker: string): readonly Link[] {
  return job.links.filter(({ from, to }) => (from.device === speaker) !== (to.device === speaker));
}

function lineOf(link: Link, speaker: string, at: LinkEnd, sign: 'plus' | 'minus'): string {
  const other = link.from.device === speaker ? link.to : link.from;
  const name = linkName(link.id);
  const id = name === link.id ? name : `${name}-${sign}`;
  const cable = link.cable ? `, cable: ${link.cable.id}, conductors: [${link.cable.conductor}]` : '';
  return `${id}: { from: ${terminalId(other)}, to: ${terminalId(at)}${cable} }`;
}
