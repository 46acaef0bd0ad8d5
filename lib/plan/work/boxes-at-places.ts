import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanPick } from '../../model/plan/index.ts';
import { printedNumber } from '../../model/printed/index.ts';
import { standardGravity } from '../../model/quantity/gravity.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import { boxLeads, madeBoxLead } from '../audio/box-leads.ts';
import { strappedParts } from './loose-parts.ts';

/** A place of the vehicle where an enclosure stands: what a crash throws forward there, and what holds it. */
export interface BoxAtPlace {
  readonly seat: string;
  readonly massKg: number;
  readonly forceN: number;
  /** What its own lead joins: terminals of its speaker, each with the post that it comes from. */
  readonly leads: readonly string[];
  /** The leads of the job inside it, where none came with it: each link, with the speaker that it leads to. */
  readonly made: readonly { readonly link: string; readonly speaker: string }[];
  /** True where the job says that straps hold it, at the box or at the speaker in it. */
  readonly isStrapped: boolean;
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
    const isStrapped = there.some(({ given }) => given?.held === 'strap');
    return {
      seat,
      massKg,
      forceN: massKg * rules.retention.value * standardGravity,
      leads,
      made,
      isStrapped,
    };
  });
}

/** How many straps hold a box at least, one at each end; common practice, no source. */
const leastStraps = 2;

/** The straps of one box or other part: a part of the catalogue, or null where it has none, and how many hold it. */
export interface BoxStraps {
  readonly strap: string | null;
  readonly count: number;
  readonly forceN: number;
}

/**
 * The straps of each box, and of each other part off the boards, that straps hold: of the shelf before others, the weakest
 * of which two hold its load forward, else as many of the strongest as do. A load in kilograms at rest is one of m * g.
 */
export function boxStraps({
  parts,
  shop,
  ...job
}: Pick<Job, 'parts' | 'shop' | 'devices' | 'links' | 'rules'>): readonly BoxStraps[] {
  const inOrder = shelvedFirst(shop);
  const straps = partsOfKind(parts, 'fixing').flatMap(([id, { form, holds = 0 }]) =>
    form === 'strap' && holds > 0 ? [{ id, holdsN: holds * standardGravity }] : [],
  );
  const boxes = boxesAtPlaces(job).filter(({ isStrapped, massKg }) => isStrapped && massKg > 0);
  return [...boxes, ...strappedParts(job)].map(({ forceN }): BoxStraps => {
    const counted = straps.map(({ id, holdsN }) => {
      return { id, holdsN, count: Math.max(leastStraps, Math.ceil(forceN / holdsN - 1e-9)) };
    });
    const [best] = counted.toSorted(
      (a, b) => inOrder(a.id, b.id) || a.count - b.count || a.holdsN - b.holdsN || (a.id < b.id ? -1 : 1),
    );
    return { strap: best?.id ?? null, count: best?.count ?? leastStraps, forceN };
  });
}

/** Straps that the catalogue lacks: they have no part, and are to be bought all the same, for the load that is told. */
export function strapsToBuy(job: Parameters<typeof boxStraps>[0]): PlanPick[] {
  const lacking = boxStraps(job).filter(({ strap }) => strap === null);
  const quantity = lacking.reduce((sum, { count }) => sum + count, 0);
  if (quantity === 0) return [];
  const eachN = Math.max(...lacking.map(({ forceN, count }) => forceN / count));
  return [
    {
      part: 'box-strap',
      title: `Strap, for ${printedNumber('pull-newtons', eachN)} N each, not in the catalogue`,
      ...{ kind: 'fixing', quantity, unit: 'piece', stockQuantity: 0, short: quantity },
    },
  ];
}
