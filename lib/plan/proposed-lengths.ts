import { hasFields, type Proposal } from '../model/content/proposal.ts';
import { bodyId, type Job, type Link } from '../model/content/resolved-job.ts';
import { routeLengthM } from '../model/content/vehicle-route.ts';
import { roleBetween } from '../model/ports/conductor-roles.ts';
import { isQuantity, parseQuantity } from '../model/quantity/quantity.ts';
import { lengthOver } from '../propose/draft/shop-lengths.ts';
import { pickLead } from '../propose/laying/leads.ts';
import { type MadeLead, madeLeads } from '../propose/laying/made-leads.ts';
import { routedWays, type Settled } from './settle-sizes.ts';
import { type DevicesById, devicesById, terminalRole } from './wiring/conductor-role.ts';
import { loopM } from './wiring/wire-lengths.ts';

/** True for a job with a made lead or a ground lead of an assumed length that rules proposed: they follow from their ways. */
export function hasProposedLengths({ proposals }: Pick<Job, 'proposals'>): boolean {
  return proposals.some(
    ({ path, doubt, since }) => since === undefined && (path[0] === 'cables' || doubt === 'not-measured'),
  );
}

/**
 * A job whose proposed leads are as long as their ways ask for: each the shortest made one of its kind that covers run, way
 * on the board as laid and from there to the rim, and loops, the longest where none does; and whose assumed ground leads reach over the board.
 */
export function withProposedLengths(job: Job, devices: DevicesById, settled: Settled): Job {
  const ways = routedWays(job, settled.laid, settled.routed);
  const needM = (link: Link): number | null => {
    const way = ways.get(link.id);
    const isOnBoard = [link.from, link.to].some((end) => devices.get(end.device)?.board != null);
    if (way === undefined && isOnBoard) return null;
    const run = job.runs.find(({ id }) => id === link.run);
    const loopsM = [link.from, link.to].reduce((sum, end) => sum + loopM(job, devices, end), 0);
    return (way?.boardM ?? 0) + (way?.rimM ?? 0) + (run ? routeLengthM(run.route) : 0) + loopsM;
  };
  const used = new Map<string, number>();
  return withGroundLeads(
    withLeads(job, devices, (lead) => leadReaching(job, lead, needM, used)),
    needM,
  );
}

type NeedM = (link: Link) => number | null;

/** The lead that is picked for its ways, pieces on the shelf counted off; as it is where a way is not known. */
function leadReaching(
  job: Job,
  { part, links, alike }: ProposedLead,
  needM: NeedM,
  used: Map<string, number>,
): string {
  const needs = links.map(needM);
  if (needs.includes(null)) return part;
  const askedM = Math.max(...needs.map((need) => need ?? 0));
  return pickLead(job, alike, askedM, used)?.part ?? part;
}

/** A lead that a rule proposed, and the leads that may be taken in its place, the shortest first. */
interface ProposedLead {
  readonly cable: string;
  readonly part: string;
  readonly links: readonly Link[];
  readonly alike: readonly MadeLead[];
}

function proposedLeads(job: Job, devices: DevicesById): readonly ProposedLead[] {
  const proposed = new Set(
    job.proposals.flatMap(({ path: [section, id = ''], since }) =>
      section === 'cables' && since === undefined ? [id] : [],
    ),
  );
  return [...proposed].flatMap((cable): ProposedLead[] => {
    const links = job.links.filter((link) => link.cable?.id === cable);
    const [first] = links;
    const spec = job.parts[first?.cable?.part ?? ''];
    if (!first?.cable || spec?.kind !== 'cable' || spec['made-length'] === undefined) return [];
    const role = roleBetween([first.from, first.to].map((end) => terminalRole(devices, end)));
    const joint = devices.get(first.from.device)?.facts.terminals[first.from.terminal]?.joint ?? null;
    const alike = madeLeads(job.parts, role, joint).filter(
      ({ conductors, isY }) =>
        isY === spec['y-lead'] &&
        links.every(({ cable: own }) => conductors.some(({ name }) => name === own?.conductor)),
    );
    return [{ cable, part: first.cable.part, links, alike }];
  });
}

/**
 * A job whose proposed leads are the longest of their kind: what places are searched for with, since the lead that is taken
 * follows from its way and keeps nothing from anywhere.
 */
export function withLongestLeads(job: Job): Job {
  const devices = devicesById(job);
  return withLeads(job, devices, ({ part, alike }) => alike.at(-1)?.part ?? part);
}

/** A job whose proposed leads are of the parts that are chosen for them. */
function withLeads(job: Job, devices: DevicesById, choose: (lead: ProposedLead) => string): Job {
  const parts = new Map(
    proposedLeads(job, devices).flatMap((lead) => {
      const chosen = choose(lead);
      return chosen === lead.part ? [] : [[lead.cable, chosen] as const];
    }),
  );
  return parts.size === 0 ? job : withCables(job, parts);
}

function withCables(job: Job, parts: ReadonlyMap<string, string>): Job {
  const cables = Object.fromEntries(
    Object.entries(job.file.cables).map(([id, cable]) => [
      id,
      { ...cable, part: parts.get(id) ?? cable.part },
    ]),
  );
  return {
    ...job,
    file: { ...job.file, cables },
    links: job.links.map((link) => {
      const part = link.cable && parts.get(link.cable.id);
      return link.cable && part ? { ...link, cable: { ...link.cable, part } } : link;
    }),
    proposals: job.proposals.map((proposal) => {
      const part = proposal.path[0] === 'cables' ? parts.get(proposal.path[1] ?? '') : undefined;
      return part === undefined ? proposal : { ...proposal, value: { part } };
    }),
  };
}

/** Ground leads of a length that nobody measured: at least as long as their way on the board with its loop. */
function withGroundLeads(job: Job, needM: NeedM): Job {
  const lengths = new Map<string, string>();
  for (const { path, doubt, since } of job.proposals) {
    const link = job.links.find(({ id }) => path[0] === 'links' && id === path[1]);
    const length = link?.given?.length;
    const needed = link ? needM(link) : null;
    if (since !== undefined || doubt !== 'not-measured' || !link || length === undefined || needed === null)
      continue;
    const isGround = link.from.device === bodyId || link.to.device === bodyId;
    if (isGround && needed > length) lengths.set(link.id, lengthOver(job, needed));
  }
  if (lengths.size === 0) return job;
  return {
    ...job,
    links: job.links.map((link) => {
      const lengthM = parseQuantity(lengths.get(link.id) ?? '', 'length');
      return link.given && typeof lengthM === 'number' && isQuantity<'m'>(lengthM)
        ? { ...link, given: { ...link.given, length: lengthM } }
        : link;
    }),
    proposals: job.proposals.map((proposal) => {
      const length = proposal.path[0] === 'links' ? lengths.get(proposal.path[1] ?? '') : undefined;
      return length === undefined ? proposal : { ...proposal, value: withLength(proposal.value, length) };
    }),
  };
}

function withLength(value: Proposal['value'], length: string): Proposal['value'] {
  return hasFields(value) ? { ...value, length } : value;
}
