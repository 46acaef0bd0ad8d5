import type { JobLink } from '../../model/content/job.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { hingesOf, routeLengthM } from '../../model/content/vehicle-route.ts';
import type { ZoneKind } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';

/** Way on a board that a lead is chosen by before anything is placed (m); after the layout it is measured. */
export const onBoardM = 0.4;

/** How far a link goes before anything is placed, and through what. */
export interface LinkWay {
  /** With the loops at its ends and a way on the board, or as its length is written (m). */
  readonly lengthM: number;
  /** The zones of its run; of a link that stays in one place, those of the devices at its ends. */
  readonly zones: readonly ZoneKind[];
}

/** The way of a link by its run, with service loops at both ends: more in the vehicle and at a speaker than on the board. */
export function wayOf(draft: Draft, id: string, link: JobLink): LinkWay {
  const { rules, vehicle } = draft.around;
  const devices = [link.from, link.to].flatMap((end) => draft.device(linkEndOf(end).device) ?? []);
  const run = Object.values(draft.runs).find(({ links }) => links.includes(id));
  const route = run && vehicle.routes[run.route];
  const zones = [...devices.map(({ zone }) => zone), ...(route?.passes.map(({ zone }) => zone) ?? [])];
  if (link.length !== undefined) return { lengthM: link.length, zones };
  const loopsM = devices.reduce((sum, { board, spec }) => {
    const loop =
      board !== null
        ? 'loop-board'
        : ['speaker', 'enclosure'].includes(spec.kind)
          ? 'loop-speaker'
          : 'loop-vehicle';
    return sum + rules[loop].value;
  }, 0);
  const boardsM = devices.some(({ board }) => board !== null) ? onBoardM : 0;
  const hingesM = route ? hingesOf(route).length * rules['hinge-slack'].value : 0;
  return { lengthM: (route ? routeLengthM(route) : 0) + hingesM + loopsM + boardsM, zones };
}
