import { type Device, type Job, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { Part } from '../../model/kinds/index.ts';
import type { WireEnd } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { formatLength, lengthStyle } from '../../model/quantity/length-text.ts';
import { spliceJoins, spliceTakes } from '../../power/conductor/joint-size.ts';
import { barrelStripM } from '../../power/conductor/strip-length.ts';
import { factsOfOutput } from '../audio/signal-inputs.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { noLeadSplice, noSplice } from './end-remarks.ts';
import { type Joined, jointPrep, narrowestSplice, splicePart } from './joints.ts';
import { dieOf, type PreparedEnd } from './prepared-end.ts';
import { stripLength } from './strip-lengths.ts';

/** An end that is joined to another wire: what the splice is, and how far it is stripped for it. */
export function joinedEnd(
  job: Job,
  joined: Joined,
  own: SizedConductor,
  base: Omit<WireEnd, 'prep'>,
  sized: ReadonlyMap<string, SizedConductor>,
  trunkLabel: string,
): PreparedEnd {
  const part = splicePart(job, joined, own.link, sized);
  const spec = part === null ? undefined : job.parts[part];
  const strip = stripLength(job, { part }, barrelStripM(own.cable.size.areaMm2));
  return {
    end: {
      ...base,
      ...jointPrep(trunkLabel, joined),
      part,
      stripM: strip.value,
      ...dieOf(job.parts, part),
    },
    workings: { stripM: strip },
    remarks:
      spec === undefined ? [noSplice(own, joined, sized.get(joined.trunk.id)?.cable.size.label ?? '')] : [],
  };
}

/** How a wire is joined to a lead that is there: to its end, to one that goes on, or to one that is cut at its plug. */
type LeadForm = 'supplied-lead' | 'tap' | 'cut-lead';

const said: Readonly<Record<LeadForm, string>> = {
  'supplied-lead': "joined to the maker's own lead",
  tap: 'joined to the lead at the plug',
  'cut-lead': 'joined to the lead of the plug, which is cut',
};

/** Devices of a vehicle that give signal, speaker level or turn-on from a plug of its harness. */
const sourceKinds: readonly Part['kind'][] = ['source-unit', 'amplifier', 'processor'];

/**
 * True for an end at a plug of the vehicle's own source: no contact for it is on the shelf, and the lead at the plug goes
 * on, so that it is opened and the wire joined to it. A cable that has its plug on goes into it.
 */
export function isTapped(
  job: Pick<Job, 'parts'>,
  device: Device | undefined,
  spec: TerminalSpec,
  { link }: Pick<SizedConductor, 'link'>,
): boolean {
  const kind = device?.spec?.kind;
  if (device?.origin !== 'vehicle' || kind === undefined || !sourceKinds.includes(kind)) return false;
  if (spec.joint !== 'plug') return false;
  const part = link.cable ? job.parts[link.cable.part] : undefined;
  return part?.kind !== 'cable' || part.plugs === undefined;
}

/**
 * How a wire is joined to the lead at a plug of the source. A speaker output plays into the wire alone where nothing else is
 * joined to it: the lead is cut and its far end, to the old speaker, capped, unless the source has to see that speaker or
 * nobody tried whether it does. Common practice, no source.
 */
export function plugForm(
  job: Job,
  device: Device | undefined,
  end: LinkEnd,
  { role }: Pick<TerminalSpec, 'role'>,
): LeadForm {
  const isSpeaker = role === 'speaker-out-positive' || role === 'speaker-out-negative';
  if (!device || !isSpeaker) return 'tap';
  const id = terminalId(end);
  const there = job.links.filter(({ from, to }) => [from, to].some((one) => terminalId(one) === id));
  const senses = factsOfOutput(job, device, stemName(end.terminal))['load-sensing'];
  return there.length === 1 && senses === false ? 'cut-lead' : 'tap';
}

/**
 * An end that is joined to a lead: by a splice from the shelf that takes both. Where nobody tells how thick the lead is it is
 * taken as thick as the wire, and the end says so.
 */
export function leadJoint(
  job: Job,
  own: SizedConductor,
  spec: TerminalSpec,
  { torqueNm: _, ...base }: Omit<WireEnd, 'prep'>,
  form: LeadForm,
): PreparedEnd {
  const { size } = own.cable;
  const lead = spec.lead ?? size;
  const takes = form === 'tap' ? spliceTakes : spliceJoins;
  const part = narrowestSplice(job, (splice) => takes(splice, lead.areaMm2, size.areaMm2));
  const strip = stripLength(job, { part }, barrelStripM(size.areaMm2));
  const long = spec['lead-length'];
  const prep = [
    said[form],
    spec.lead ? lead.label : `taken as ${lead.label}`,
    ...(long === undefined
      ? []
      : [`${formatLength(long, { ...lengthStyle(job.shop), direction: 'down' }).primary} long`]),
  ].join(', ');
  return {
    end: { ...base, prep, form, part, stripM: strip.value, ...dieOf(job.parts, part) },
    workings: { stripM: strip },
    remarks: part === null ? [noLeadSplice(own, base.terminal, prep)] : [],
  };
}
