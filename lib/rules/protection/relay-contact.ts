import { type Device, terminalId } from '../../model/content/resolved-job.ts';
import { contactCurrentA, isRelay } from '../../model/kinds/index.ts';
import { liveSide } from '../live-side.ts';
import { deviceSpot } from '../look-up.ts';
import { ratedPoint } from '../operating-point.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { amps, ampsDrawn, listed } from '../words.ts';
import { fusesAt } from './fuses-side-by-side.ts';

/** The greatest current through the contact of a relay at some operating points (A), with the title of the point. */
function greatestThrough(
  { plan }: Case,
  { id }: Device,
  points: Case['plan']['power']['points'] = plan.power.points,
): { readonly title: string; readonly currentA: number } | undefined {
  return points
    .flatMap(({ title, elements }) =>
      elements
        .filter(({ of, kind }) => of === id && kind === 'joint')
        .map(({ currentA = 0 }) => ({ title, currentA: Math.abs(currentA) })),
    )
    .toSorted((a, b) => b.currentA - a.currentA)[0];
}

/** The fuses that protect a contact, and what they let through it (A): between two batteries those of the worse side. */
function letIn(about: Case, { id, facts, spec }: Device) {
  const contact = facts.elements.find(({ kind }) => kind === 'joint');
  const sides = contact ? [contact.from, ...(spec?.kind === 'isolating-relay' ? [contact.to] : [])] : [];
  const side = liveSide(about);
  return sides
    .map((terminal) => {
      const own = terminalId({ device: id, terminal });
      const open = { ...side, edges: side.edges.filter(({ kind, id: bar }) => kind !== 'bar' || bar !== id) };
      const fuses = fusesAt(about, spec?.kind === 'isolating-relay' ? open : side, own);
      return { fuses, letsInA: fuses.reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0) };
    })
    .reduce((worst, one) => (one.letsInA > worst.letsInA ? one : worst), { fuses: [], letsInA: 0 });
}

function judgeContact(about: Case, device: Device, limit: number): Verdict<'relay-contact-over-current'>[] {
  const { id } = device;
  const isOver = (currentA: number) => currentA > limit * (1 + 1e-9);
  const base = { limit, unit: 'A', ...deviceSpot(about.job, id) } as const;
  const rated = ratedPoint(about);
  const most = rated && greatestThrough(about, device, [rated]);
  const overRated = most !== undefined && isOver(most.currentA);
  const flow = overRated ? most : greatestThrough(about, device);
  if (flow && isOver(flow.currentA))
    return [
      {
        ...base,
        level: overRated ? 'stop' : 'caution',
        of: [id],
        message: `${flow.title}: ${ampsDrawn(flow.currentA)} flow through the contact of ${id}, and it is made for ${amps(limit)}`,
        value: flow.currentA,
        remedy: 'take a relay for the current, or switch by the turn-on input of the device instead',
      },
    ];
  const { fuses, letsInA } = letIn(about, device);
  if (!isOver(letsInA)) return [];
  const names = fuses.map((fuse) => fuse.id);
  return [
    {
      ...base,
      level: 'caution',
      of: [id, ...names],
      message: `the contact of ${id} is made for ${amps(limit)}, and ${listed(names)} before it would let ${ampsDrawn(letsInA)} through`,
      value: letsInA,
      remedy: `fit a fuse of at most ${amps(limit)} before it, or a relay for more`,
    },
  ];
}

const contactOverCurrent: Rule = {
  id: 'relay-contact-over-current',
  judge(about) {
    return about.job.devices.flatMap((device): Verdict<'relay-contact-over-current'>[] =>
      isRelay(device.spec) && device.origin === 'job'
        ? judgeContact(about, device, contactCurrentA(device.spec))
        : [],
    );
  },
};

export const relayContactRules: readonly Rule[] = [contactOverCurrent];
