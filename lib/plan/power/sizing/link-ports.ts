import { type Job, type Link, type LinkEnd, terminalId } from '../../../model/content/resolved-job.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { entersPort } from '../../wiring/joints.ts';
import { reducerFor, takesReducer } from '../../wiring/reducers.ts';
import type { ConductorTask } from './conductor-task.ts';

/** A port at an end of a conductor, with the range of sizes that it takes. */
export interface LinkPort {
  readonly id: string;
  readonly smallestMm2: number;
  readonly largestMm2: number;
  /** The largest size by its name. */
  readonly largest: string;
  /** True where its joint could take a reducer, if there is one for the conductor. */
  readonly clamps: boolean;
  /** True for a conductor that a reducer of the catalogue brings in. */
  readonly reduces: (areaMm2: number) => boolean;
}

/**
 * The ports at both ends of a link whose parts say what they take. A lead that a maker supplies is none: the conductor is
 * spliced to it, and the splice alone has to take both.
 */
export function linkPorts(job: Job, devices: DevicesById, link: Link): LinkPort[] {
  const entered = [link.from, link.to].filter((end) => entersPort(job, link, end));
  return entered.flatMap((end) => portOf(job, devices, end) ?? []);
}

/** The least that all of some ports take (mm2). */
export function smallestOf(ports: readonly LinkPort[]): number {
  return Math.max(0, ...ports.map(({ smallestMm2 }) => smallestMm2));
}

/** What asks for the least size of a conductor: a port that takes nothing thinner, else what an earlier pass found. */
export function leastWhy(
  { leastMm2, why }: Pick<ConductorTask, 'leastMm2' | 'why'>,
  ports: readonly LinkPort[],
): string {
  const smallestMm2 = smallestOf(ports);
  const port = ports.find((one) => one.smallestMm2 === smallestMm2);
  if (port && smallestMm2 >= leastMm2 / 1.001) return `${port.id} takes nothing thinner`;
  return why ?? 'an earlier round between size and length asked for it, and a size never shrinks';
}

function portOf(
  { parts, links }: Pick<Job, 'parts' | 'links'>,
  devices: DevicesById,
  end: LinkEnd,
): LinkPort | null {
  const spec = devices.get(end.device)?.facts.terminals[end.terminal];
  const takes = spec?.takes;
  if (!takes || spec.joint === 'supplied-lead') return null;
  const id = terminalId(end);
  // A reducer holds one conductor: in a port that is shared it goes on none.
  const isHere = ({ device, terminal }: LinkEnd) => device === end.device && terminal === end.terminal;
  const sharing = links.filter((link) =>
    [link.from, link.to].some((one) => isHere(one) && entersPort({ links }, link, one)),
  );
  const alone = sharing.length < 2;
  return {
    id,
    smallestMm2: takes.from.areaMm2,
    largestMm2: takes.to.areaMm2,
    largest: takes.to.label,
    clamps: alone && takesReducer(spec.joint),
    reduces: (areaMm2) => alone && reducerFor(parts, areaMm2, spec) !== null,
  };
}
