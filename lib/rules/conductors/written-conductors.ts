import { bodyId, type Link, terminalId } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { ZoneKind } from '../../model/vocabulary.ts';
import { deviceOf, partOf } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';

const spotOf = ({ path, origin }: Link): Spot => ({ path, file: origin });

/** Of a pair one conductor speaks for both. */
const speaksForPair = ({ id }: Link) => !id.endsWith('.-');

const linkTwice: Rule = {
  id: 'link-twice',
  judge({ job }) {
    const endsOf = ({ from, to }: Link) => [terminalId(from), terminalId(to)].toSorted().join(' ');
    return job.links.filter(speaksForPair).flatMap((link, k, links): Verdict<'link-twice'>[] => {
      const first = links.slice(0, k).find((other) => endsOf(other) === endsOf(link));
      if (!first) return [];
      return [
        {
          level: 'caution',
          of: [link.id, first.id],
          message: `${link.id} joins ${terminalId(link.from)} to ${terminalId(link.to)}, and so does ${first.id}`,
          remedy: 'take one out; where two in parallel are meant, accept this with the reason',
          ...spotOf(link),
        },
      ];
    });
  },
};

const leadShort: Rule = {
  id: 'lead-shorter-than-written',
  judge({ job }) {
    return job.links.flatMap((link): Verdict<'lead-shorter-than-written'>[] => {
      const lead = partOf(job, link.cable?.part ?? null);
      const madeM = lead?.kind === 'cable' ? lead['made-length'] : undefined;
      const value = link.given?.length;
      if (madeM === undefined || value === undefined || value <= madeM + 1e-9 || !speaksForPair(link))
        return [];
      const length = lengthIn(job, spotOf(link), {
        path: pointer(['parts', link.cable?.part ?? '']),
        file: 'part',
      });
      return [
        {
          level: 'stop',
          of: [link.id],
          message: `${link.id} is written as ${length(value)} long, and its lead ${link.cable?.id} is made ${length(madeM)} long`,
          value,
          limit: madeM,
          unit: 'm',
          remedy: 'name a longer lead, or correct the length',
          path: `${link.path}${pointer(['length'])}`,
        },
      ];
    });
  },
};

/** No conductor from the engine bay reaches the cargo area in less (m); common practice, no source. */
const leastToCargoM = 1.5;
const apart: readonly ZoneKind[] = ['engine-bay', 'cargo'];

function zoneOf({ job }: Case, { device, terminal }: Link['from']): ZoneKind | undefined {
  const found = deviceOf(job, device);
  return found?.groundZones[terminal] ?? found?.zone;
}

const tooFarApart: Rule = {
  id: 'ends-too-far-apart',
  judge(about) {
    return about.job.links.filter(speaksForPair).flatMap((link): Verdict<'ends-too-far-apart'>[] => {
      const value = link.given?.length ?? link.fitted?.length;
      const zones = [link.from, link.to].map((end) => zoneOf(about, end));
      const isGrounded = [link.from, link.to].some(({ device }) => device === bodyId);
      const isApart = isGrounded && apart.every((zone) => zones.includes(zone));
      if (value === undefined || !isApart || value >= leastToCargoM) return [];
      const length = lengthIn(about.job, spotOf(link));
      return [
        {
          level: 'caution',
          of: [link.id],
          message: `${link.id} is written as ${length(value)} long, and leads from the ${zones[0]} to the ${zones[1]}`,
          value,
          limit: leastToCargoM,
          unit: 'm',
          remedy: 'name the ground point or terminal that lies beside it, or correct the length',
          ...spotOf(link),
        },
      ];
    });
  },
};

export const writtenConductorRules: readonly Rule[] = [linkTwice, leadShort, tooFarApart];
