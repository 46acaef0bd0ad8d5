import type { BuiltJob } from '../../model/content/built.ts';
import type { WrittenJob } from '../../model/content/job.ts';
import { hasFields, type Proposal } from '../../model/content/proposal.ts';
import type { Draft } from '../draft/draft.ts';
import { isPlain } from '../draft/plain-link.ts';
import { type BuiltLink, builtLinks, fitsAtBothEnds, said } from './built-links.ts';

/** What a released revision proposed and the next one keeps, each family in the order in which it is taken over. */
export interface HeldProposals {
  readonly devices: readonly Proposal[];
  readonly links: readonly Proposal[];
  readonly cables: readonly Proposal[];
  /** In which of these cables links lie that the job wrote itself. */
  readonly cabled: readonly CabledLink[];
  readonly runs: readonly Proposal[];
}

/**
 * What of a released revision's proposals a later one stays with: all that still fits what the job says today. A link goes
 * where an end of it is gone, stands elsewhere, is left open or taken by a link that is written now, or where the job names
 * it; a holder or block goes with it once less than two links are left at it, since it leads nowhere then.
 */
export function heldProposals(draft: Draft, written: WrittenJob, built: BuiltJob): HeldProposals {
  const named = new Set(written.anew);
  const open = built.proposals.filter(({ path }) => !path.some((key) => named.has(key)));
  const of = (section: string) =>
    open.filter(({ path }) => path[0] === section && path.length === 2 && !isWritten(draft, path));
  const devices = new Map(of('devices').flatMap((one) => (stands(draft, one) ? [[nameOf(one), one]] : [])));
  const fitting = builtLinks(of('links')).filter((link) => fitsAtBothEnds(draft, link, { built, devices }));
  const { kept, links } = withoutDeadEnds(draft, devices, fitting);
  const cabled = cabledLinks(draft, open);
  const cables = of('cables').filter(
    (one) => [...links, ...cabled].some(({ cable }) => cable === nameOf(one)) && partIs(draft, one, 'cable'),
  );
  const known = new Set([...cables.map(nameOf), ...Object.keys(draft.cables)]);
  const joined = links.filter(({ cable }) => cable === null || known.has(cable));
  return {
    devices: kept,
    links: joined.map(({ proposal }) => proposal),
    cables,
    cabled: cabled.filter(({ cable }) => known.has(cable)),
    runs: heldRuns(draft, of('runs'), joined),
  };
}

/** A link of the job, and the conductors that were proposed for it. */
export interface CabledLink {
  readonly link: string;
  readonly cable: string;
  readonly conductors: readonly string[];
  readonly proposal: Proposal;
}

/** The links that the job still writes without a conductor, with the cable that they were to lie in. */
function cabledLinks(draft: Draft, proposals: readonly Proposal[]): readonly CabledLink[] {
  return proposals.flatMap((proposal): CabledLink[] => {
    const { path, value: cable } = proposal;
    const [section, link = '', field] = path;
    if (section !== 'links' || field !== 'cable' || typeof cable !== 'string') return [];
    const own = draft.links[link];
    const beside = proposals.find((one) => one.path.join('.') === `links.${link}.conductors`)?.value;
    if (!own || !isPlain(own) || own.cable !== undefined || !Array.isArray(beside)) return [];
    return [{ link, cable, conductors: beside.filter((one) => typeof one === 'string'), proposal }];
  });
}

const nameOf = ({ path }: Proposal): string => path[1] ?? '';

function isWritten(draft: Draft, [section, id = '']: readonly string[]): boolean {
  const { links, cables, runs } = draft;
  if (section === 'devices') return draft.device(id) !== null;
  return id in (section === 'links' ? links : section === 'cables' ? cables : runs);
}

function partIs(draft: Draft, proposal: Proposal, kind: string): boolean {
  return draft.around.parts[said(proposal, 'part') ?? '']?.kind === kind;
}

/** True where a device that was proposed still has its part and its place. */
function stands(draft: Draft, proposal: Proposal): boolean {
  const { parts, vehicle } = draft.around;
  const [board, seat] = [said(proposal, 'on'), said(proposal, 'in')];
  const hasPlace = board !== null ? board in draft.boards : seat !== null && seat in vehicle.places;
  return (said(proposal, 'part') ?? '') in parts && hasPlace;
}

/** Takes out devices that less than two links are left at, and their links, until none is left so. */
function withoutDeadEnds(
  draft: Draft,
  devices: ReadonlyMap<string, Proposal>,
  fitting: readonly BuiltLink[],
): { readonly kept: readonly Proposal[]; readonly links: readonly BuiltLink[] } {
  let kept = [...devices.values()];
  let links = fitting;
  const written = Object.values(draft.links).flatMap(({ from, to }) => [from, to]);
  for (;;) {
    const at = (id: string) =>
      [...written, ...links.flatMap(({ from, to }) => [from, to])].filter((end) => end.startsWith(`${id}.`));
    const dead = new Set(kept.map(nameOf).filter((id) => at(id).length < 2));
    if (dead.size === 0) return { kept, links };
    kept = kept.filter((one) => !dead.has(nameOf(one)));
    links = links.filter(({ from, to }) => ![from, to].some((end) => dead.has(end.split('.', 1)[0] ?? '')));
  }
}

/** The runs of what is left, on routes that the vehicle still has. */
function heldRuns(draft: Draft, runs: readonly Proposal[], links: readonly BuiltLink[]): readonly Proposal[] {
  const inRuns = new Set(Object.values(draft.runs).flatMap((run) => run.links));
  const own = new Set(
    [...links.map(({ id }) => id), ...Object.keys(draft.links)].filter((id) => !inRuns.has(id)),
  );
  return runs.flatMap((run): Proposal[] => {
    const { value } = run;
    if (!hasFields(value) || !Array.isArray(value.links)) return [];
    const routes = Array.isArray(value.route) ? value.route : [value.route];
    const left = value.links.filter((id) => typeof id === 'string' && own.has(id));
    const { vehicle } = draft.around;
    const isThere = left.length > 0 && routes.every((id) => typeof id === 'string' && id in vehicle.routes);
    return isThere ? [{ ...run, value: { ...value, links: left } }] : [];
  });
}
