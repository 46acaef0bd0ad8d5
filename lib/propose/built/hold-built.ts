import type { BuiltJob } from '../../model/content/built.ts';
import type { WrittenJob } from '../../model/content/job.ts';
import type { Proposal } from '../../model/content/proposal.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { said } from './built-links.ts';
import { heldFixings } from './held-fixings.ts';
import { heldProposals } from './held-proposals.ts';

/**
 * Takes over into a job what the revision that it is built on proposed, before any rule proposes anew. Returns the boards
 * whose fixings are taken over.
 */
export function holdBuilt(
  draft: Draft,
  written: WrittenJob,
  built: BuiltJob,
  isAsked: boolean,
): ReadonlySet<string> {
  if (isAsked) {
    const { devices, links, cables, cabled, runs } = heldProposals(draft, written, built);
    const aboutOf = (id: string): string =>
      links
        .flatMap((link) => [said(link, 'from'), said(link, 'to')])
        .filter((end) => end !== null)
        .map((end) => linkEndOf(end).device)
        .find((one) => one !== id && one in written.devices) ?? id;
    const takeOver = (one: Proposal, about: string | null): void =>
      draft.takeOver(one, whyOf(one, built), about);
    for (const one of devices) takeOver(one, aboutOf(one.path[1] ?? ''));
    for (const one of links) {
      const ends = [said(one, 'to'), said(one, 'from')].map((end) => linkEndOf(end ?? '').device);
      takeOver(one, ends.find((id) => id in written.devices) ?? aboutOf(ends[0] ?? ''));
    }
    for (const one of [...cables, ...runs]) takeOver(one, null);
    for (const { link, proposal, ...laid } of cabled) draft.cableLink(link, laid, whyOf(proposal, built));
  }
  const fixings = heldFixings(draft, written, built);
  for (const one of fixings) draft.takeOver(one, whyOf(one, built), null);
  return new Set(fixings.map(({ path }) => path[1] ?? ''));
}

function whyOf({ rule, reason, mark, doubt }: Proposal, { revision }: BuiltJob): Why {
  return { rule, reason, ...(mark && { cp: true }), ...(doubt && { doubt }), since: revision };
}
