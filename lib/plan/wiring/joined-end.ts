import { type Device, type Job, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { Part } from '../../model/kinds/index.ts';
import type { WireEnd } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { formatLength, lengthStyle } from '../../model/quantity/length-text.ts';
import { awgSize, type WireSize } from '../../model/quantity/wire-size.ts';
import { awgSizes } from '../../model/tables/awg-sizes.ts';
import type { ConductorRole } from '../../model/vocabulary.ts';
import { foldedEnd, type Splice, spliceJoins, spliceTakes } from '../../power/conductor/joint-size.ts';
import { barrelStripM } from '../../power/conductor/strip-length.ts';
import { factsOfOutput } from '../audio/signal-inputs.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import { noLeadSplice, noSplice } from './end-remarks.ts';
import { bestSplice, type EndsInSplice, type Joined, jointPrep, splicePart } from './joints.ts';
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

/** Conductors that are joined to thin leads: of a feed or a ground without a size nobody knows how thick its lead is. */
const thinRoles: readonly ConductorRole[] = ['signal', 'speaker', 'turn-on', 'control'];

/**
 * How thick a lead is: as its part tells, else for a thin conductor by the house rule, and elsewhere as thick as the wire.
 * A number between two made sizes counts as the thinner.
 */
function leadSize(
  { rules }: Pick<Job, 'rules'>,
  { cable, role }: SizedConductor,
  { lead }: TerminalSpec,
): Pick<WireSize, 'label' | 'areaMm2'> {
  if (lead) return lead;
  if (!thinRoles.includes(role)) return cable.size;
  const number = rules['lead-untold'].value;
  return awgSize(awgSizes.findLast((awg) => Number(awg) >= number) ?? String(number));
}

/**
 * An end that is joined to a lead: by a splice from the shelf that takes both, where none does with the thinner of them
 * folded back on itself. Where nobody tells how thick the lead is the end says what it is taken for.
 */
export function leadJoint(
  job: Job,
  own: SizedConductor,
  spec: TerminalSpec,
  { torqueNm: _, ...base }: Omit<WireEnd, 'prep'>,
  form: LeadForm,
): PreparedEnd {
  const { size } = own.cable;
  const lead = leadSize(job, own, spec);
  const best = bestSplice(job, (splice) => endsInSplice(splice, form, lead.areaMm2, size.areaMm2));
  const folded = best && best.ends !== 'as they are' ? best.ends : null;
  const part = best?.part ?? null;
  const strip = stripLength(job, { part }, barrelStripM(size.areaMm2));
  const long = spec['lead-length'];
  const prep = [
    said[form],
    spec.lead ? lead.label : `taken as ${lead.label}`,
    ...(long === undefined
      ? []
      : [`${formatLength(long, { ...lengthStyle(job.shop), direction: 'down' }).primary} long`]),
    ...(folded ? [foldedText[folded]] : []),
  ].join(', ');
  return {
    end: {
      ...base,
      ...{ prep, form, part, stripM: strip.value },
      ...(folded && { folded }),
      ...dieOf(job.parts, part),
    },
    workings: { stripM: strip },
    remarks: part === null ? [noLeadSplice(own, base.terminal, prep, spec.lead !== undefined)] : [],
  };
}

const foldedText = {
  lead: 'the lead folded back double in the splice',
  wire: 'the wire folded back double in the splice',
} as const;

/** How a lead and a wire go into a splice; null where they don't. A lead that goes on is opened, and not folded. */
function endsInSplice(splice: Splice, form: LeadForm, leadMm2: number, wireMm2: number): EndsInSplice | null {
  if (form === 'tap') return spliceTakes(splice, leadMm2, wireMm2) ? 'as they are' : null;
  if (spliceJoins(splice, leadMm2, wireMm2)) return 'as they are';
  const folded = foldedEnd(splice, leadMm2, wireMm2);
  return folded === null ? null : folded === 0 ? 'lead' : 'wire';
}
