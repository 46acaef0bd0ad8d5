import type { Job } from '../../model/content/resolved-job.ts';
import { standardGravity } from '../../model/quantity/gravity.ts';
import { boxLeads, madeBoxLead } from '../audio/box-leads.ts';

/** What holds a box in a crash. */
const boxHoldings = ['strap', 'bracket'] as const;
export type BoxHolding = (typeof boxHoldings)[number];

/** A place of the vehicle where an enclosure stands: what a crash throws forward there, and what holds it. */
export interface BoxAtPlace {
  readonly seat: string;
  readonly massKg: number;
  readonly forceN: number;
  /** What its own lead joins: terminals of its speaker, each with the post that it comes from. */
  readonly leads: readonly string[];
  /** The leads of the job inside it, where none came with it: each link, with the speaker that it leads to. */
  readonly made: readonly { readonly link: string; readonly speaker: string }[];
  /** What holds it where the job says so, at the box or at the speaker in it; what would not hold it in a crash is not told. */
  readonly held: BoxHolding | null;
}

/**
 * Enclosures that the job puts at places of the vehicle, each with the speakers there, which ride in it. The
 * load forward is the mass times the house rule `retention`, F = m * n * g.
 */
export function boxesAtPlaces({
  devices,
  links,
  rules,
}: Pick<Job, 'devices' | 'links' | 'rules'>): readonly BoxAtPlace[] {
  const inside = boxLeads({ devices, links });
  const ours = devices.filter(({ origin }) => origin === 'job');
  const seats = new Set(ours.flatMap(({ seat, spec }) => (spec?.kind === 'enclosure' ? (seat ?? []) : [])));
  return [...seats].map((seat) => {
    const there = ours.filter(
      (device) =>
        device.seat === seat && (device.spec?.kind === 'enclosure' || device.spec?.kind === 'speaker'),
    );
    const massKg = there.reduce((sum, { facts }) => sum + (facts.footprint?.massKg ?? 0), 0);
    const leads = inside.flatMap(({ box, speaker, post, end }) =>
      there.some(({ id }) => id === box) ? [`${post} to ${speaker}.${end}`] : [],
    );
    const made = links.flatMap((link) => {
      const lead = madeBoxLead({ devices }, link);
      return lead && there.some(({ id }) => id === lead.box)
        ? [{ link: link.id, speaker: lead.speaker }]
        : [];
    });
    const held = boxHoldings.find((one) => there.some(({ given }) => given?.held === one)) ?? null;
    return {
      seat,
      massKg,
      forceN: massKg * rules.retention.value * standardGravity,
      leads,
      made,
      held,
    };
  });
}
