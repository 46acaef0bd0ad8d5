import { routesOf } from '../../model/content/job-links.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { shelfLengths } from '../../shelf/shelf-lengths.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { linkLengthM } from './link-way.ts';
import { carries } from './runs.ts';

/**
 * Gives each speaker-level pair of a run that lies beside supply wires a twisted pair of its own, where the shelf has one
 * for all of them, each in one piece: what a feed induces in the one conductor it induces in the other, and the floating
 * input takes the difference. Common practice, no source. False where the run does not lie so, or the shelf has none.
 */
export function twistBesideSupply(draft: Draft, run: string, pairs: readonly string[]): boolean {
  const supply = besideSupply(draft, run);
  const part = supply === null ? null : pairOnShelf(draft, pairs);
  if (supply === null || part === null) return false;
  for (const id of pairs) {
    const cable = draft.freeName(`pair-${id}`, run);
    const why: Why = {
      rule: 'cables',
      reason: `a twisted pair for ${id}, from the shelf: the run ${run} lies beside the supply of ${supply}, and a twist keeps its noise out`,
      cp: true,
    };
    draft.addCable(cable, part.id, why, linkEndOf(draft.links[id]?.to ?? '').device);
    draft.refineLink(id, { cable, conductors: [...part.conductors] });
  }
  return true;
}

/** A run of supply wires that shares a zone with a run on its side of the vehicle; null where none does. */
function besideSupply(draft: Draft, run: string): string | null {
  const own = spotsOf(draft, run);
  const beside = Object.entries(draft.runs).find(
    ([other, { links }]) =>
      other !== run &&
      links.some((id) => carries(draft, id, 'power')) &&
      spotsOf(draft, other).some((spot) => own.includes(spot)),
  );
  return beside?.[0] ?? null;
}

/** The zones of the routes of a run, each with its side. */
function spotsOf({ around: { vehicle }, runs }: Draft, run: string): readonly string[] {
  const named = runs[run];
  const routes = named ? routesOf(named).flatMap((id) => vehicle.routes[id] ?? []) : [];
  return routes.flatMap(({ side, passes }) => passes.map(({ zone }) => `${side} ${zone}`));
}

/** A twisted pair for signal of which the shelf has a piece for each of some links; null where it has none. */
function pairOnShelf(draft: Draft, links: readonly string[]) {
  const { parts, shop } = draft.around;
  const lengthsM = links.map((id) => linkLengthM(draft, id)).toSorted((a, b) => b - a);
  for (const [id, spec] of Object.entries(parts).toSorted(([a], [b]) => (a < b ? -1 : 1))) {
    if (spec.kind !== 'cable' || spec.form !== 'twisted-pair' || spec['made-length'] !== undefined) continue;
    const conductors = Object.keys(spec.conductors);
    if (conductors.length !== 2 || !spec.for.includes('signal')) continue;
    const left = shelfLengths(shop.stock[id]).map(({ freeM }) => freeM);
    const isEnough = lengthsM.every((lengthM) => {
      const at = left.findIndex((freeM) => freeM >= lengthM);
      if (at >= 0) left[at] = (left[at] ?? 0) - lengthM;
      return at >= 0;
    });
    if (isEnough) return { id, conductors };
  }
  return null;
}
