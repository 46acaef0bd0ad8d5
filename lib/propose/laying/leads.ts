import { linkEndOf } from '../../model/content/resolved-job.ts';
import { routeLengthM } from '../../model/content/vehicle-route.ts';
import { onShelf } from '../draft/around.ts';
import type { Draft, Why } from '../draft/draft.ts';
import { madeLeads } from './made-leads.ts';
import { linkRole } from './runs.ts';

/** Links that lie in one made lead. */
interface Lead {
  readonly name: string;
  readonly links: readonly { readonly id: string; readonly side: 'left' | 'right' | null }[];
}

/** Way on a board that a lead is chosen by before anything is placed (m); after the layout it is chosen by its real one. */
const onBoardM = 0.4;

/** Gives the line links their leads, left and right in one, and the level controls theirs. */
export function chooseLeads(draft: Draft): void {
  const used = new Map<string, number>();
  for (const lead of leadsOf(draft)) giveLead(draft, lead, used);
}

function leadsOf(draft: Draft): readonly Lead[] {
  const leads = new Map<string, Lead['links'][number][]>();
  for (const [id, { lead, side }] of draft.leads) {
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

/** The shortest made lead that covers run, loops and way on the board; pieces on the shelf are counted off. */
function giveLead(draft: Draft, { name, links }: Lead, used: Map<string, number>): void {
  const [first] = links;
  const link = first && draft.links[first.id];
  if (!first || !link || link.cable !== undefined) return;
  const role = linkRole(draft, link);
  const made = madeLeads(draft.around.parts, role, jointOf(draft, link.from));
  if (made.length === 0) return;
  const asked = neededM(draft, first.id);
  const shelved = (part: string) => Number(onShelf(draft.around, part) > (used.get(part) ?? 0));
  const long = made.filter(({ lengthM }) => lengthM >= asked);
  const [best] = long.toSorted((a, b) => a.lengthM - b.lengthM || shelved(b.part) - shelved(a.part));
  const chosen = best ?? made.at(-1);
  if (!chosen) return;
  used.set(chosen.part, (used.get(chosen.part) ?? 0) + 1);
  const cable = draft.freeName(`lead-${name}`, 'line');
  const why: Why = {
    rule: 'cables',
    reason: 'the shortest made lead that covers its run, its loops and its way on the board',
    cp: true,
  };
  draft.addCable(cable, chosen.part, why, linkEndOf(link.to).device);
  for (const { id, side } of links) {
    const conductor = chosen.conductors.find((one) => one.side === side) ?? chosen.conductors[0];
    if (conductor) draft.refineLink(id, { cable, conductors: [conductor.name] });
  }
}

function jointOf(draft: Draft, reference: string): string | null {
  const { device, terminal } = linkEndOf(reference);
  return draft.device(device)?.facts.terminals[terminal]?.joint ?? null;
}

function neededM(draft: Draft, id: string): number {
  const { rules, vehicle } = draft.around;
  const run = Object.values(draft.runs).find(({ links }) => links.includes(id));
  const route = run && vehicle.routes[run.route];
  if (!route) return onBoardM;
  return routeLengthM(route) + rules['loop-vehicle'].value + onBoardM;
}
