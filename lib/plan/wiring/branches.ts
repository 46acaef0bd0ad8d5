import { type Job, type Link, sharedTerminal } from '../../model/content/resolved-job.ts';
import { linkName } from '../../model/ports/pair-name.ts';

/** The link that another one leaves: of a pair, the conductor at the same terminal. */
export function trunkOf(job: Pick<Job, 'links'>, link: Link, from: string): Link | undefined {
  return job.links.find((other) => linkName(other.id) === from && sharedTerminal(link, other) !== null);
}
