import type { Link } from '../../model/content/resolved-job.ts';
import type { Shop } from '../../model/content/shop.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import { linkEntry, linkName } from '../../model/ports/pair-name.ts';
import { listed } from '../../model/printed/listed.ts';
import { tapeText } from '../../model/quantity/tape-text.ts';
import type { Remark } from '../../model/remark.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import type { EndPreparation } from '../../power/conductor/end-preparation.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import type { Joined } from './joints.ts';
import type { TerminalForm } from './terminal-parts.ts';

/** Conductors that may be joined before a port: what feeds or grounds is parted at a distribution part, where it is fused. */
const joinable: readonly ConductorRole[] = ['signal', 'speaker', 'turn-on', 'control'];

/** A port that takes none of the conductors that end in it. */
export function refusal(
  sharing: readonly SizedConductor[],
  terminal: string,
  { reason, alternatives }: Extract<EndPreparation, { prep: 'refused' }>,
  units: Shop['units'],
): Remark {
  const wires = sharing.map(({ link }) => link.id);
  const joints = jointsFor(sharing, units);
  return {
    rule: 'port-refuses-conductor',
    level: 'stop',
    of: [...wires, terminal],
    message: wires.length > 1 ? `${reason}: ${wires.join(' and ')}` : reason,
    remedy: [...joints, ...alternatives].join('; or ') || 'use another terminal',
    ...(joints.length > 0 && {
      writesAt: (sharing.some(isBranch) ? sharing.filter(isBranch) : sharing.slice(1)).map(({ link }) =>
        linkEntry(link.id),
      ),
    }),
  };
}

const isBranch = ({ link }: SizedConductor): boolean => link.given?.branch !== undefined;

/** The lines that join all but the first of the conductors of a port before it; none where that is not lawful. */
function jointsFor(sharing: readonly SizedConductor[], units: Shop['units']): readonly string[] {
  const [first, ...others] = sharing;
  if (!first || others.length === 0 || !sharing.every(({ role }) => joinable.includes(role))) return [];
  const parting = sharing.find(({ link }) => link.given?.branch);
  if (parting) return [partingJoint(parting.link, units)];
  const line = `joint: { with: ${linkName(first.link.id)} }`;
  const names = others.map(({ link }) => linkName(link.id));
  return [
    `join it before the port: write ${line} at the ${names.length === 1 ? 'link' : 'links'} ${listed(names)}`,
  ];
}

/** A branch parts on the way: one wire leads up to there, and the joint lies where they part. */
function partingJoint({ id, given }: Link, units: Shop['units']): string {
  const { from = '', after = 0, leg = 0 } = given?.branch ?? {};
  return `lead one wire up to where they part and join them there: at the link ${linkName(id)} write joint: { with: ${from}, after: ${tapeText(after, units)} } and length: ${tapeText(leg, units)}, with what its loop takes, in place of branch:`;
}

/** No splice of the catalogue takes two conductors side by side. */
export function noSplice(own: SizedConductor, { trunk, terminal }: Joined, trunkSize: string): Remark {
  return {
    rule: 'terminal-not-in-catalogue',
    level: 'caution',
    of: [own.link.id, trunk.id, terminal],
    message: `no butt splice or solder sleeve that joins ${own.cable.size.label} to ${trunkSize} is in the catalogue`,
    remedy:
      'add one (kind: terminal, form: solder-sleeve or butt-splice, takes: with its sizes), so that the pick list can count it',
  };
}

/** No splice of the catalogue takes a conductor and a lead that is there. */
export function noLeadSplice(own: SizedConductor, terminal: string, prep: string, isTold: boolean): Remark {
  return {
    rule: 'terminal-not-in-catalogue',
    level: 'caution',
    of: [own.link.id, terminal],
    message: `no butt splice or solder sleeve of the catalogue takes both ${own.link.id} (${own.cable.size.label}) and what it is joined to: ${prep}`,
    remedy: `${isTold ? '' : 'gauge the lead, and write its size as lead: at its terminal; or '}add one (kind: terminal, form: solder-sleeve or butt-splice, takes: with its sizes), so that the pick list can count it`,
  };
}

/** What is to be known of a port that takes them. */
export function noted(wires: readonly string[], terminal: string, note: string): Remark {
  return {
    rule: 'port-note',
    level: 'note',
    of: [...wires, terminal],
    message: `${terminal}, ${wires.join(' and ')}: ${note}`,
    remedy: 'check the fit on the bench before the vehicle',
  };
}

/** No terminal of the catalogue goes on an end. */
export function noPart(
  { link: { id: wire }, cable: { size } }: Pick<SizedConductor, 'link' | 'cable'>,
  terminal: string,
  form: TerminalForm,
  { tab }: Pick<TerminalSpec, 'tab'>,
  instead: string | null,
): Remark {
  const width = form === 'blade-receptacle' && tab !== undefined ? tabText(tab) : null;
  return {
    rule: 'terminal-not-in-catalogue',
    level: 'caution',
    of: [wire, terminal],
    message: `no ${form.replaceAll('-', ' ')} for ${size.label}${width === null ? '' : ` on a tab of ${width}`} is in the catalogue`,
    remedy: `add the part${width === null ? '' : `, with tab: ${width}`}, so that the pick list can count it${instead === null ? '' : `; or write size: ${instead} at ${linkName(wire)}, which is lawful too and has one`}`,
    ...(instead !== null && { writesAt: [linkEntry(wire)] }),
  };
}

/** The width of a tab as the trade calls it, in millimetres to a tenth. */
export function tabText(tabM: number): string {
  return `${Number((tabM * 1000).toFixed(1))} mm`;
}

/** No heat-shrink of the catalogue goes over a lug. */
export function noShrink(wire: string, terminal: string, size: string): Remark {
  return {
    rule: 'heat-shrink-none-fits',
    level: 'caution',
    of: [wire, terminal],
    message: `no heat-shrink of the catalogue goes over the lug of ${size} and closes on it`,
    remedy: 'add heat-shrink of a higher ratio, so that the pick list can count it',
  };
}
