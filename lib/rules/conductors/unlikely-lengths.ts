import type { Link } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { houseRule } from '../house-rule-of.ts';
import { deviceOf, routeSpot, stretchSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';

/** Routes that are longer than any vehicle asks for, at the longest of their passes. */
function longRoutes({ job }: Case): readonly Verdict<'length-unlikely'>[] {
  const { value: limit, from } = houseRule(job, 'run-longest');
  return job.runs.flatMap((run) => {
    const { id, routeId, route } = run;
    const value = routeLengthM(route);
    if (value <= limit + 1e-9) return [];
    const lengths: readonly number[] = route.passes.map(({ length }) => length);
    const longest = lengths.indexOf(Math.max(...lengths));
    const spot = stretchSpot(run, longest, 'length');
    const length = lengthIn(job, spot, routeSpot(run));
    return [
      {
        level: 'caution',
        of: [id, routeId],
        message: `the route ${routeId} of the run ${id} is ${length(value)} long by its passes, ${length(Math.max(...lengths))} of it in the ${route.passes[longest]?.zone}; a way through a vehicle is hardly longer than ${length(limit)}`,
        value,
        limit,
        unit: 'm',
        remedy: 'check the number and its unit with the tape, or accept this with the reason',
        ...from,
        ...spot,
      },
    ];
  });
}

/** What a link may be long at most, and against what it is held. */
function longestOf({ job, plan }: Case, { from, to }: Link) {
  const [a, b] = [from, to].map(({ device }) => deviceOf(job, device)?.board ?? null);
  const board = a !== null && a === b ? plan.boards.find(({ id }) => id === a) : undefined;
  if (!board) return { ...houseRule(job, 'run-longest'), against: 'a lead in a vehicle' };
  const { value: share, from: source } = houseRule(job, 'board-lead-longest');
  return {
    value: share * (board.widthM + board.heightM),
    from: source,
    against: `a lead between two parts of ${board.id}`,
  };
}

/** Lengths that are written for a link. */
function longLinks(about: Case): readonly Verdict<'length-unlikely'>[] {
  const { job } = about;
  return job.links.flatMap((link) => {
    const value = link.given?.length;
    // Of a pair one conductor speaks for both.
    if (value === undefined || link.id.endsWith('.-')) return [];
    const { value: limit, from, against } = longestOf(about, link);
    if (value <= limit + 1e-9) return [];
    const path = `${link.path}/length`;
    const length = lengthIn(job, { path });
    const name = link.id.replace(/\.\+$/, '');
    return [
      {
        level: 'caution',
        of: [name, ...(name === link.id ? [] : [link.id])],
        message: `${name} is written as ${length(value)} long; ${against} is hardly longer than ${length(limit)}`,
        value,
        limit,
        unit: 'm',
        remedy:
          'check the number and its unit, leave length: out to have it measured, or accept this with the reason',
        ...from,
        path,
      },
    ];
  });
}

const unlikely: Rule = {
  id: 'length-unlikely',
  judge: (about) => [...longRoutes(about), ...longLinks(about)],
};

export const unlikelyLengthRules: readonly Rule[] = [unlikely];
