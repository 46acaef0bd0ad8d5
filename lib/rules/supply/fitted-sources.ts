import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import { deviceSpot, hasRole } from '../look-up.ts';
import type { Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

/** A source with its kind, which an id that says it already does without. */
const named = (kind: string, id: string): string => (id.includes(kind) ? id : `the ${kind} ${id}`);

/** Posts of a source that no link of the vehicle or the job ends at. */
function openPosts(job: Job, { id, facts }: Device): readonly string[] {
  const linked = new Set(job.links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
  return Object.keys(facts.terminals)
    .map((terminal) => terminalId({ device: id, terminal }))
    .filter((post) => hasRole(job, post, 'source-positive', 'source-negative') && !linked.has(post));
}

/** What the link is called that lacks at a post, and where it leads. */
function missingLink(job: Job, kind: 'battery' | 'alternator', post: string): string {
  if (hasRole(job, post, 'source-positive'))
    return kind === 'battery' ? `its lead at ${post}` : `the charge lead from ${post} to the battery`;
  return kind === 'battery'
    ? `the battery strap from ${post} to a ground point of the body`
    : `the way of its case from ${post} to a ground point of the body`;
}

const fittedNotLinked: Rule = {
  id: 'fitted-source-not-linked',
  judge({ job }) {
    return job.devices.flatMap((device): Verdict<'fitted-source-not-linked'>[] => {
      const { id, spec, origin } = device;
      if (origin !== 'vehicle' || (spec?.kind !== 'battery' && spec?.kind !== 'alternator')) return [];
      const { kind } = spec;
      const open = openPosts(job, device);
      if (open.length === 0) return [];
      const missing = listed(open.map((post) => missingLink(job, kind, post)));
      const all = !job.links.some(({ from, to }) => from.device === id || to.device === id);
      return [
        {
          level: 'stop',
          of: [id, ...open],
          message: all
            ? `${named(kind, id)} is fitted, but linked to nothing: ${missing} ${open.length > 1 ? 'are' : 'is'} missing. The plan counts on a lead that nobody described`
            : `at ${named(kind, id)} ${missing} is missing. The plan counts on a lead that nobody described`,
          remedy: `write ${open.length > 1 ? 'them' : 'it'} under links: of the vehicle, with size and length as fitted`,
          ...deviceSpot(job, id),
        },
      ];
    });
  },
};

export const fittedSourceRules: readonly Rule[] = [fittedNotLinked];
