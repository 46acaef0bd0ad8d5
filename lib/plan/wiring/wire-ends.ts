import { type Job, type Link, type LinkEnd, terminalId } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { TerminalSpec } from '../../model/kinds/fields/terminal-spec.ts';
import type { WireEnd } from '../../model/plan/index.ts';
import type { Joint, Stud } from '../../model/vocabulary.ts';
import { type EndPreparation, type Port, prepareEnd } from '../../power/conductor/end-preparation.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { madeBoxLead } from '../audio/box-leads.ts';
import { torque } from '../bolt-torque.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import type { DevicesById } from './conductor-role.ts';
import { noPart, noShrink, noted, refusal, tabText } from './end-remarks.ts';
import { isTapped, joinedEnd, leadJoint, plugForm } from './joined-end.ts';
import { entersPort, joinedTo } from './joints.ts';
import { lugShrink } from './lug-shrink.ts';
import { dieOf, type PreparedEnd } from './prepared-end.ts';
import { type Reducer, reducerFor } from './reducers.ts';
import { stripLength } from './strip-lengths.ts';
import { type TerminalForm, terminalPart } from './terminal-parts.ts';
import { endLoopM } from './wire-lengths.ts';

type PortKind = 'set-screw' | 'stud' | 'plug' | 'push-on' | 'made-up';

/** How a joint takes a conductor: what kind of port it is, and what goes on the conductor's end. */
const portKinds: Readonly<Record<Joint, PortKind>> = {
  'set-screw': 'set-screw',
  'screw-clamp': 'set-screw',
  'binding-post': 'set-screw',
  stud: 'stud',
  'body-bolt': 'stud',
  'post-clamp': 'stud',
  'blade-tab': 'push-on',
  plug: 'plug',
  phono: 'made-up',
  solder: 'made-up',
  'supplied-lead': 'made-up',
};

const studM: Readonly<Record<Stud, number>> = {
  M4: 0.004,
  M5: 0.005,
  M6: 0.006,
  M8: 0.008,
  M10: 0.01,
  M12: 0.012,
};

/** Prepares one end of a conductor, together with whatever else ends in the same terminal. */
export function prepareWireEnd(
  job: Job,
  devices: DevicesById,
  link: Link,
  end: LinkEnd,
  sized: ReadonlyMap<string, SizedConductor>,
  labels: ReadonlyMap<string, string>,
): PreparedEnd {
  const spec = devices.get(end.device)?.facts.terminals[end.terminal];
  const own = sized.get(link.id);
  const id = terminalId(end);
  const tight = torque(job, spec, end.terminal);
  const base = {
    terminal: id,
    part: null,
    stripM: null,
    loopM: endLoopM(job, devices, link, end),
    ...(tight ? { torqueNm: tight.value } : {}),
  };
  if (link.fitted) return { end: { ...base, prep: 'as fitted', form: 'as-fitted' }, remarks: [] };
  const joined = joinedTo(job, link);
  if (joined?.terminal === id && own) {
    // Nothing of it is tightened in the port.
    const { torqueNm: _, ...bare } = base;
    const free = joined.alongM === null ? bare : { ...bare, loopM: 0 };
    return joinedEnd(job, joined, own, free, sized, labels.get(joined.trunk.id) ?? joined.trunk.id);
  }
  const kind = portKinds[spec?.joint ?? 'plug'];
  if (own && spec?.joint === 'supplied-lead') return leadJoint(job, own, spec, base, 'supplied-lead');
  if (!spec || !own || kind === 'made-up')
    return {
      end: {
        ...base,
        ...madeUp(job, link, spec),
      },
      remarks: [],
    };
  const made = endInPort(job, own, { id, spec, kind }, base, sized);
  if (made.end.form === 'crimp' && isTapped(job, devices.get(end.device), spec, own)) {
    const tapped = leadJoint(job, own, spec, base, plugForm(job, devices.get(end.device), end, spec));
    return { ...tapped, remarks: [...made.remarks, ...tapped.remarks] };
  }
  // What the port's maker says stands in its part; what the house assumes is told.
  return made.workings && tight?.trace.origin === 'assumed'
    ? { ...made, workings: { ...made.workings, torqueNm: tight } }
    : made;
}

/** An end on which nothing of the shelf goes: soldered, or with its plug on already; a lead whose wire has no size. */
function madeUp(job: Job, link: Link, spec: TerminalSpec | undefined): Pick<WireEnd, 'prep' | 'form'> {
  if (spec?.joint === 'solder') return { prep: 'solder', form: 'solder' };
  if (spec?.joint === 'supplied-lead')
    return { prep: "joined to the maker's own lead", form: 'supplied-lead' };
  return { prep: `made-up ${plugOf(job, link)}`, form: 'made-up' };
}

/** The plug of a made-up lead, as its part names it. */
function plugOf({ parts }: Pick<Job, 'parts'>, { cable }: Pick<Link, 'cable'>): string {
  const part = cable ? parts[cable.part] : undefined;
  return part?.kind === 'cable' && part.plugs !== undefined ? `${part.plugs} plug` : 'plug';
}

interface Place {
  readonly id: string;
  readonly spec: TerminalSpec;
  readonly kind: Exclude<PortKind, 'made-up'>;
}

/** The end of a conductor in its port: reduced, crimped, bare or refused, with whatever else shares the port. */
function endInPort(
  job: Job,
  own: SizedConductor,
  { id, spec, kind }: Place,
  base: Omit<WireEnd, 'prep'>,
  sized: ReadonlyMap<string, SizedConductor>,
): PreparedEnd {
  // A post of a box takes its run outside and the lead to the speaker inside: they do not share it.
  const isInside = madeBoxLead(job, own.link) !== null;
  const mates = job.links
    .filter(
      (other) =>
        [other.from, other.to].some((one) => terminalId(one) === id && entersPort(job, other, one)) &&
        (madeBoxLead(job, other) !== null) === isInside,
    )
    .flatMap((other) => sized.get(other.id) ?? []);
  const ordered = [own, ...mates.filter((mate) => mate !== own)];
  const reducer = ordered.length === 1 ? reducerFor(job.parts, own.cable.size.areaMm2, spec) : null;
  if (reducer)
    return { end: { ...base, ...reducedEnd(reducer), ...dieOf(job.parts, reducer.part) }, remarks: [] };
  // What is told of a port is told once, by the first of its wires that the vehicle did not come with.
  const first = mates.find(({ link }) => !link.fitted) === own;
  const wires = ordered.map(({ link }) => link.id);
  const result = prepareEnd(
    ordered.map(({ link: { id: wire }, cable }) => ({
      id: wire,
      areaMm2: cable.size.areaMm2,
      material: cable.material,
    })),
    portAt(id, spec, kind),
    powerRules(job.rules),
  );
  if (isFault(result)) return { end: { ...base, prep: 'not known', form: 'unknown' }, remarks: [] };
  if (result.prep === 'refused')
    return {
      end: { ...base, prep: 'refused', form: 'refused' },
      remarks: first ? [refusal(ordered, id, result, job.shop.units)] : [],
    };
  // A twin ferrule holds both: it is made for the thicker. One crimp holds all of them together.
  const areas = ordered.map(({ cable }) => cable.size.areaMm2);
  const areaMm2 =
    result.prep === 'twin-ferrule'
      ? Math.max(...areas)
      : result.prep === 'crimp'
        ? areas.reduce((sum, one) => sum + one, 0)
        : own.cable.size.areaMm2;
  return crimpedEnd(job, { own, wires, areaMm2, first }, spec, base, result);
}

interface Crimp {
  readonly own: SizedConductor;
  /** All that share the port, this one first. */
  readonly wires: readonly string[];
  /** What the terminal must take. */
  readonly areaMm2: number;
  /** Of all that share the port, the one that carries its notes. */
  readonly first: boolean;
}

/** What goes on an end that its port takes. */
function crimpedEnd(
  job: Job,
  { own, wires, areaMm2, first }: Crimp,
  spec: TerminalSpec,
  base: Omit<WireEnd, 'prep'>,
  result: Exclude<EndPreparation, { prep: 'refused' }>,
): PreparedEnd {
  const pushOn = portKinds[spec.joint] === 'push-on';
  const { link, cable } = own;
  const form = formOf(result, pushOn);
  const part = form ? terminalPart(job.parts, form, areaMm2, spec) : null;
  const clamped = portKinds[spec.joint] === 'set-screw';
  const strip = stripLength(job, { part, spec, clamped }, result.strip);
  const shrink = form === 'ring-lug' ? lugShrink(job, own, strip.value) : undefined;
  const { terminal } = base;
  return {
    end: {
      ...base,
      prep: prepText(result, pushOn, spec),
      form: result.prep,
      ...('ifTooWide' in result && result.ifTooWide && { ifTooWide: result.ifTooWide }),
      part,
      stripM: strip.value,
      ...(result.prep === 'lug' && spec.stud ? { stud: spec.stud, holeM: result.holeM } : {}),
      ...dieOf(job.parts, part),
      ...(shrink ? { shrink: { part: shrink.part, lengthM: shrink.length.value } } : {}),
    },
    workings: { stripM: strip, ...(shrink ? { shrinkM: shrink.length } : {}) },
    remarks: [
      ...(first ? result.notes.map((note) => noted(wires, terminal, note)) : []),
      ...(form && !part ? [noPart(own, terminal, form, spec, endedInstead(job, own, spec, form))] : []),
      ...(shrink && shrink.part === null ? [noShrink(link.id, terminal, cable.size.label)] : []),
    ],
  };
}

/** The thickest thinner size that is lawful but for the drop and has its terminal in the catalogue; null where none is. */
function endedInstead(
  { parts }: Pick<Job, 'parts'>,
  { thinner }: SizedConductor,
  spec: TerminalSpec,
  form: TerminalForm,
): string | null {
  const found = thinner.find(
    ({ candidate: { size }, misses }) =>
      misses.every(({ limit }) => limit === 'least-size') &&
      terminalPart(parts, form, size.areaMm2, spec) !== null,
  );
  return found?.candidate.size.label ?? null;
}

/** A terminal in the terms of the end's preparation. */
function portAt(
  id: string,
  { takes, stud, conductors, ferrule, 'ferrule-most': most }: TerminalSpec,
  kind: Exclude<PortKind, 'made-up'>,
): Port {
  if (kind === 'stud')
    return {
      kind,
      id,
      studM: stud === undefined ? null : studM[stud],
      ...(takes ? { largestMm2: takes.to.areaMm2 } : {}),
    };
  const range = {
    id,
    smallestMm2: takes?.from.areaMm2 ?? 0,
    largestMm2: takes?.to.areaMm2 ?? Number.MAX_VALUE,
  };
  return kind === 'set-screw'
    ? {
        kind,
        ...range,
        twin: conductors >= 2,
        ferrule: ferrule === 'required',
        ...(most && { largestFerruleMm2: most.areaMm2 }),
      }
    : { kind, ...range, most: conductors };
}

function reducedEnd({ part, pin, stripM }: Reducer): Pick<WireEnd, 'prep' | 'form' | 'part' | 'stripM'> {
  return { prep: `reducer, its pin ${pin.label}`, form: 'reducer', part, stripM };
}

function formOf(
  { prep }: Exclude<EndPreparation, { prep: 'refused' }>,
  pushOn: boolean,
): TerminalForm | null {
  const forms = {
    ferrule: 'ferrule',
    'twin-ferrule': 'twin-ferrule',
    lug: 'ring-lug',
    crimp: pushOn ? 'blade-receptacle' : null,
    bare: null,
  } as const;
  return forms[prep];
}

function prepText(
  result: Exclude<EndPreparation, { prep: 'refused' }>,
  pushOn: boolean,
  { stud, tab }: TerminalSpec,
): string {
  if (result.prep === 'lug') return `ring lug ${stud ?? ''}`.trimEnd();
  if (result.prep === 'ferrule' || result.prep === 'twin-ferrule')
    return `${result.prep.replace('-', ' ')} ${result.ferrule.areaMm2} mm2`;
  if (result.prep === 'crimp') return pushOn ? receptacleText(tab) : 'crimped plug contact';
  return 'bare, strands twisted';
}

/** A receptacle, by the width of its tab where that is told. */
function receptacleText(tab: number | undefined): string {
  return tab === undefined ? 'crimped blade receptacle' : `crimped blade receptacle ${tabText(tab)}`;
}
