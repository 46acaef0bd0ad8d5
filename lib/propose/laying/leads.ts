import { linkEndOf } from '../../model/content/resolved-job.ts';
import { toldBy } from '../../model/ports/carried-by-name.ts';
import { sameLengthM } from '../../shelf/shelf-lengths.ts';
import { type Around, onShelf } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { pairOf, terminalAt } from '../draft/draft-device.ts';
import { isPlain } from '../draft/plain-link.ts';
import { onBoardM, runLengthM } from './link-way.ts';
import { type MadeLead, madeLeads } from './made-leads.ts';
import { linkRole } from './runs.ts';

/** Links that lie in one made lead. */
interface Lead {
  readonly name: string;
  readonly links: readonly { readonly id: string; readonly side: 'left' | 'right' | null }[];
}

/**
 * Gives the line links their leads: those from an output that holds too few plugs a Y-lead, else left and right in one;
 * and the level controls theirs.
 */
export function chooseLeads(draft: Draft): void {
  const used = new Map<string, number>();
  const parted = partedLinks(draft);
  for (const links of parted) giveYLead(draft, links, used);
  const inYLead = new Set(parted.flat());
  for (const lead of [...leadsOf(draft, inYLead), ...writtenLeads(draft)]) giveLead(draft, lead, used);
}

/**
 * Line links that the job writes without a conductor, those between the same two devices in twos: a lead is all that they
 * can lie in where no reel of the catalogue is for signal. A link whose length or colour is written is left as it is.
 */
function writtenLeads(draft: Draft): readonly Lead[] {
  const isReel = Object.values(draft.around.parts).some(
    (part) => part.kind === 'wire' && part.for.includes('signal'),
  );
  if (isReel) return [];
  const between = new Map<string, Lead['links'][number][]>();
  for (const [id, link] of Object.entries(draft.links)) {
    if (draft.isProposed('links', id) || !isPlain(link) || linkRole(draft, link) !== 'signal') continue;
    if (link.cable !== undefined || link.length !== undefined) continue;
    const [from, to] = [linkEndOf(link.from), linkEndOf(link.to)];
    if (jointOf(draft, link.from) === null || jointOf(draft, link.from) !== jointOf(draft, link.to)) continue;
    const side = toldBy(from.terminal)?.side ?? toldBy(to.terminal)?.side ?? null;
    const name = `${from.device}-${to.device}`;
    between.set(name, [...(between.get(name) ?? []), { id, side }]);
  }
  return [...between].flatMap(([name, links]) =>
    inTwos(
      name,
      // Of two that nothing tells the sides of, the first is the left one, as leads are plugged: common practice, no source.
      links.map((one, at) => ({ ...one, side: one.side ?? (at % 2 === 0 ? 'left' : 'right') })),
    ),
  );
}

/** Proposed line links that begin at one output together, more than it holds plugs. */
function partedLinks(draft: Draft): readonly (readonly string[])[] {
  const at = new Map<string, string[]>();
  for (const id of draft.leads.keys()) {
    const link = draft.links[id];
    if (!link || !draft.isProposed('links', id)) continue;
    at.set(link.from, [...(at.get(link.from) ?? []), id]);
  }
  return [...at].flatMap(([from, links]) => (links.length > plugsHeld(draft, from) ? [links] : []));
}

function plugsHeld(draft: Draft, reference: string): number {
  const { device: id, terminal } = linkEndOf(reference);
  const device = draft.device(id);
  const names = (device && pairOf(device, terminal)) ?? [terminal];
  return Math.min(...names.map((name) => (device && terminalAt(device, name)?.conductors) ?? 1));
}

/** The shortest Y-lead of the catalogue that is long enough for each of its links. */
function giveYLead(draft: Draft, links: readonly string[], used: Map<string, number>): void {
  const [first = ''] = links;
  const from = draft.links[first]?.from ?? '';
  const leads = yLeadsAt(draft, from).filter(({ conductors }) => conductors.length >= links.length);
  const asked = Math.max(...links.map((id) => neededM(draft, id)));
  const chosen = pickLead(draft.around, leads, asked, used);
  if (!chosen) return;
  const { device, terminal } = linkEndOf(from);
  const cable = draft.freeName(`y-${terminal.toLowerCase()}`, device);
  const why: Why = {
    rule: 'cables',
    reason: `${from} holds one plug and feeds ${links.length} inputs: the shortest Y-lead that reaches both, of the shelf where one there is not too long`,
    cp: true,
  };
  draft.addCable(cable, chosen.part, why, linkEndOf(draft.links[first]?.to ?? '').device);
  for (const [at, id] of links.entries()) {
    const conductor = chosen.conductors[at];
    if (conductor) draft.refineLink(id, { cable, conductors: [conductor.name] });
  }
}

/** The Y-leads of the catalogue that plug into an output, by how a link names it. */
export function yLeadsAt(draft: Draft, reference: string): readonly MadeLead[] {
  return madeLeads(draft.around.parts, 'signal', jointOf(draft, reference)).filter(({ isY }) => isY);
}

function leadsOf(draft: Draft, inYLead: ReadonlySet<string>): readonly Lead[] {
  const leads = new Map<string, Lead['links'][number][]>();
  for (const [id, { lead, side }] of draft.leads) {
    if (inYLead.has(id)) continue;
    const links = leads.get(lead) ?? [];
    leads.set(lead, [...links, { id, side }]);
  }
  const controls = Object.entries(draft.links).flatMap(([id, link]): Lead[] =>
    draft.isProposed('links', id) && linkRole(draft, link) === 'control'
      ? [{ name: id.replace(/-lead$/, ''), links: [{ id, side: null }] }]
      : [],
  );
  const signals = [...leads].flatMap(([name, links]) => inTwos(name, links));
  return [...signals, ...controls];
}

/** Left and right lie in one lead; a second left begins another. */
function inTwos(name: string, links: readonly Lead['links'][number][]): readonly Lead[] {
  const leads: { name: string; links: Lead['links'][number][] }[] = [];
  for (const link of links) {
    const last = leads.find((one) => one.links.length === 1 && one.links[0]?.side !== link.side);
    if (last) last.links.push(link);
    else leads.push({ name: leads.length === 0 ? name : `${name}-${link.side ?? link.id}`, links: [link] });
  }
  return leads;
}

/** The made lead that covers run, loops and way on the board. */
function giveLead(draft: Draft, { name, links }: Lead, used: Map<string, number>): void {
  const [first] = links;
  const link = first && draft.links[first.id];
  if (!first || !link || link.cable !== undefined) return;
  const role = linkRole(draft, link);
  const made = madeLeads(draft.around.parts, role, jointOf(draft, link.from)).filter(({ isY }) => !isY);
  const chosen = pickLead(draft.around, made, neededM(draft, first.id), used);
  if (!chosen) return;
  const cable = draft.freeName(`lead-${name}`, 'line');
  const why: Why = {
    rule: 'cables',
    reason:
      'the shortest made lead, of the shelf where one there is not too long, that covers its run, its loops and its way on the board; what it is over lies in one open loop',
    cp: true,
  };
  draft.addCable(cable, chosen.part, why, linkEndOf(link.to).device);
  for (const { id, side } of links) {
    const conductor = chosen.conductors.find((one) => one.side === side) ?? chosen.conductors[0];
    const laid = conductor && { cable, conductors: [conductor.name] };
    if (laid && draft.isProposed('links', id)) draft.refineLink(id, laid);
    else if (laid) draft.cableLink(id, laid, why);
  }
}

/**
 * The shortest lead of the shelf that is long enough, as long as what it is over can lie in a loop (house rule); else the
 * shortest that is, which is ordered, and the longest where none is. `used`: pieces that are taken already, by part, to
 * which this one is added.
 */
export function pickLead(
  around: Pick<Around, 'shop' | 'rules'>,
  made: readonly MadeLead[],
  askedM: number,
  used: Map<string, number>,
): MadeLead | null {
  const overM = around.rules['lead-over'].value;
  const reaching = made
    .filter(({ lengthM }) => lengthM >= askedM)
    .toSorted((a, b) => a.lengthM - b.lengthM || (a.part < b.part ? -1 : 1));
  const shelved = reaching.find(
    ({ part, lengthM }) =>
      onShelf(around, part) > (used.get(part) ?? 0) && lengthM - askedM <= overM + sameLengthM,
  );
  const chosen = shelved ?? reaching[0] ?? made.at(-1) ?? null;
  if (chosen) used.set(chosen.part, (used.get(chosen.part) ?? 0) + 1);
  return chosen;
}

function jointOf(draft: Draft, reference: string): string | null {
  const { device, terminal } = linkEndOf(reference);
  return draft.device(device)?.facts.terminals[terminal]?.joint ?? null;
}

function neededM(draft: Draft, id: string): number {
  const link = draft.links[id];
  const run = Object.values(draft.runs).find(({ links }) => links.includes(id));
  if (!run || !link) return onBoardM;
  return runLengthM(draft, run, link) + draft.around.rules['loop-vehicle'].value + onBoardM;
}
