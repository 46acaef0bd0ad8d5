import type { JobLink } from '../../model/content/job.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { meetingPlaces } from '../../model/content/run-ways.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { isInLineFilter } from '../../model/kinds/index.ts';
import type { Draft } from '../draft/draft.ts';
import { endsOf, isOnePlace, routesBetween, type Whereabouts } from '../draft/ways.ts';

/**
 * Has the lead to a filter part from the wire of the speaker beside which it hangs where their ways part: in the last
 * place that both go through, so that one cable leads there and none back. A joint that is written, and one at the
 * speaker that is nearer to the filter, stays. Common practice, no source.
 */
export function joinOnWay(draft: Draft): void {
  for (const [id, link] of Object.entries(draft.links)) {
    if (!draft.isProposed('links', id) || link.joint) continue;
    const [speaker, filter] = [link.from, link.to].map((end) => draft.device(linkEndOf(end).device));
    if (speaker?.spec.kind !== 'speaker' || !isInLineFilter(filter?.spec)) continue;
    const [here, there] = endsOf(draft, link);
    const trunk = trunkAt(draft, id, link.from);
    if (!here || !there || !trunk) continue;
    const parting = partingPlace(draft, trunk.link, there);
    const ownM = wayM(draft, here, there);
    if (!parting || (ownM !== null && ownM <= parting.onwardM)) continue;
    draft.refineLink(
      id,
      { joint: { with: trunk.id, at: parting.place } },
      `joined to ${trunk.id} at ${parting.place}, the last place that the ways to ${speaker.id} and ${filter?.id} have in common`,
    );
  }
}

/** The link that brings a speaker its signal: another one at the terminal that this one leaves. */
function trunkAt(draft: Draft, id: string, from: string) {
  const found = Object.entries(draft.links).find(
    ([other, { to, joint }]) => other !== id && to === from && joint === undefined,
  );
  return found ? { id: found[0], link: found[1] } : null;
}

/** Of the places in which the routes of a link meet that from which the way to a place is shortest; null where none leads there. */
function partingPlace(draft: Draft, trunk: JobLink, there: Whereabouts) {
  const [from, to] = endsOf(draft, trunk);
  const [way] = from && to ? routesBetween(draft, from, to) : [];
  const onward = meetingPlaces(way?.ways ?? []).flatMap(({ place }) => {
    const onwardM = wayM(draft, { served: [place] }, there);
    return onwardM === null ? [] : [{ place, onwardM }];
  });
  const [best] = onward.toSorted((a, b) => a.onwardM - b.onwardM);
  return best ?? null;
}

/** How far it is between two places (m); null where no way leads there. */
function wayM(draft: Draft, one: Whereabouts, other: Whereabouts): number | null {
  if (isOnePlace(one, other)) return 0;
  const [way] = routesBetween(draft, one, other);
  return way ? routeLengthM(way.route) : null;
}
