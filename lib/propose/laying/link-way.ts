import type { JobFile, JobLink } from '../../model/content/job.ts';
import { routesOf } from '../../model/content/job-links.ts';
import { bodyId, linkEndOf } from '../../model/content/resolved-job.ts';
import { hingesBetween } from '../../model/content/run-hinges.ts';
import { chained, joinedRoute } from '../../model/content/run-ways.ts';
import type { Vehicle } from '../../model/content/vehicle.ts';
import { routeLengthM, type VehicleRoute } from '../../model/content/vehicle-route.ts';
import type { ZoneKind } from '../../model/vocabulary.ts';
import type { Draft } from '../draft/draft.ts';

/** Way on a board that a lead is chosen by before anything is placed (m); after the layout it is measured. */
export const onBoardM = 0.4;

/** The stretches of all routes of a run; none where its routes do not meet, which the reader tells. */
function runPasses(
  { routes }: Pick<Vehicle, 'routes'>,
  run: Pick<JobFile['runs'][string], 'route'>,
): VehicleRoute['passes'] {
  const named = routesOf(run).flatMap((id) => {
    const route = routes[id];
    return route ? [{ id, route }] : [];
  });
  const ways = chained(named);
  return ways ? joinedRoute(ways).passes : [];
}

/**
 * How far it is by a run between two devices, with the slack at each hinge of a door (m). A branch goes as far as it shares
 * the way of another link, and then by its leg.
 */
export function runLengthM(
  draft: Draft,
  run: Pick<JobFile['runs'][string], 'route'>,
  { from, to, branch }: Pick<JobLink, 'from' | 'to' | 'branch'>,
): number {
  const { rules, vehicle } = draft.around;
  const passes = runPasses(vehicle, run);
  const [one, other] = [from, to].map((end) => zoneAt(draft, end));
  const hinges = hingesBetween(
    passes.map(({ zone }) => zone),
    one,
    other,
  );
  const goesM = branch ? branch.after + branch.leg : routeLengthM({ passes });
  return goesM + hinges * rules['hinge-slack'].value;
}

/** The zone of an end of a link; of a ground point its own. */
function zoneAt(draft: Draft, end: string): ZoneKind | undefined {
  const { device, terminal } = linkEndOf(end);
  return device === bodyId ? draft.around.vehicle.grounds[terminal]?.zone : draft.device(device)?.zone;
}

/** How far a link of the job, by its id, goes before anything is placed (m). */
export function linkLengthM(draft: Draft, id: string): number {
  const link = draft.links[id];
  return link ? wayOf(draft, id, link).lengthM : 0;
}

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
  const passes = run ? runPasses(vehicle, run) : [];
  const zones = [...devices.map(({ zone }) => zone), ...passes.map(({ zone }) => zone)];
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
  return { lengthM: (run ? runLengthM(draft, run, link) : 0) + loopsM + boardsM, zones };
}
