import { type Job, type Link, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanCable, PlanRun, PlanSize, PlanWire } from '../../model/plan/index.ts';
import { linkName } from '../../model/ports/pair-name.ts';
import type { WireSize } from '../../model/quantity/wire-size.ts';
import { traced } from '../../model/trace.ts';
import type { ConductorSign } from '../../model/vocabulary.ts';
import type { CableCandidate } from '../../power/conductor/conductor-choice.ts';
import type { PlanBook } from '../plan-book.ts';
import type { SizedConductor } from '../power/sizing/conductor-sizing.ts';
import type { DevicesById } from './conductor-role.ts';
import { wireLabels } from './label-numbers.ts';
import { isNoReel, remarkNoReels } from './no-reel.ts';
import type { PreparedEnd } from './prepared-end.ts';
import { wireZones } from './runs/run-zones.ts';
import { speakerSigns } from './speaker-conductors.ts';
import { remarkSilentBarrels, silentBarrel } from './strip-lengths.ts';
import { wireDiameter, wireDiameterM } from './wire-diameter.ts';
import { prepareWireEnd } from './wire-ends.ts';
import type { WireLengths } from './wire-lengths.ts';

/** What the wire list is made from. */
export interface WireInput {
  readonly job: Job;
  readonly devices: DevicesById;
  readonly sized: ReadonlyMap<string, SizedConductor>;
  readonly lengths: WireLengths;
  readonly runs: readonly PlanRun[];
}

/** The wire list: every conductor with its label, size, length, way and both of its ends. */
export function planWires(input: WireInput, book: PlanBook): PlanWire[] {
  const { job, devices, sized } = input;
  const roles = new Map([...sized].map(([id, { role }]) => [id, role]));
  const labels = wireLabels(job, roles);
  const signs = speakerSigns(job, roles);
  const silent: string[] = [];
  const wires = job.links.flatMap((link): PlanWire[] => {
    const own = sized.get(link.id);
    if (!own) return [];
    const prepared = [link.from, link.to].map((end) =>
      prepareWireEnd(job, devices, link, end, sized, labels),
    );
    const [from, to] = prepared;
    if (!from || !to) return [];
    writeRemarks(link, own, prepared, book);
    silent.push(...prepared.flatMap(silentBarrel));
    writeWorkings(input, own, prepared, book);
    const name = { label: labels.get(link.id) ?? '', ...signOf(own, signs.get(link.id)) };
    return [planWire(input, link, own, name, [from.end, to.end])];
  });
  remarkTwins(job, wires, book);
  remarkSilentBarrels(silent, book);
  remarkNoReels(
    job,
    job.links.flatMap(({ id }) => sized.get(id) ?? []),
    book,
  );
  return wires;
}

/** One note for all twin ferrules of the job, with the terminal and the wires of each. */
function remarkTwins(job: Job, wires: readonly PlanWire[], book: PlanBook): void {
  const twins = new Map<string, string[]>();
  for (const { id, ends } of wires)
    for (const { terminal, form } of ends)
      if (form === 'twin-ferrule') twins.set(terminal, [...(twins.get(terminal) ?? []), id]);
  const [first] = [...twins.values()].flat();
  const link = job.links.find(({ id }) => id === first);
  if (!link) return;
  const each = [...twins].map(([terminal, own]) => `${terminal} (${own.join(' and ')})`);
  book.remark(
    {
      rule: 'port-note',
      level: 'note',
      of: [...new Set([...twins.values()].flat()), ...twins.keys()],
      message: `twin ferrules are not in DIN 46228-4, and stand in ${each.join(', ')}`,
      remedy:
        'take the size that the maker of the ferrule names for both wires, and check its fit on the bench before the vehicle',
    },
    { path: link.path, file: link.origin === 'vehicle' ? 'vehicle' : 'job' },
  );
}

function writeRemarks(
  link: Link,
  own: SizedConductor,
  prepared: readonly PreparedEnd[],
  book: PlanBook,
): void {
  const file = link.origin === 'vehicle' ? 'vehicle' : 'job';
  for (const remark of [
    ...own.remarks.filter((one) => !isNoReel(one)),
    ...prepared.flatMap(({ remarks }) => remarks),
  ])
    book.remark(remark, { path: link.path, file });
}

/** How both ends came about, and how thick the conductor is taken to be where heat-shrink goes over it. */
function writeWorkings(
  { job, lengths }: WireInput,
  { link, cable }: SizedConductor,
  prepared: readonly PreparedEnd[],
  book: PlanBook,
): void {
  const at = `wires.${link.id}`;
  prepared.forEach(({ workings = {} }, index) => {
    for (const [field, working] of Object.entries(workings))
      book.trace(`${at}.ends.${index === 0 ? 'A' : 'B'}.${field}`, working);
  });
  const { lengthM, measured, cutAs = 'computed', parts } = lengths(link.id);
  const working = {
    origin: cutAs,
    rule: 'wire-length',
    formula: parts.length > 0 ? parts.map(([name]) => name).join(' + ') : measured,
    citation: 'as written, or measured along runs and board; loops by house rule',
    inputs: parts.map(([name, value]) => [name, value, 'm'] as const),
  };
  book.trace(`${at}.lengthM`, traced(lengthM, 'm', working));
  const outside = wireDiameter(job, cable);
  if (outside && prepared.some(({ end }) => end.shrink)) book.trace(`${at}.outsideM`, outside);
}

function planWire(
  { job, devices, lengths, runs }: WireInput,
  link: Link,
  { role, cable }: SizedConductor,
  name: Pick<PlanWire, 'label' | 'sign'>,
  ends: PlanWire['ends'],
): PlanWire {
  const { lengthM, measured, cutAs } = lengths(link.id);
  const run = runs.find(({ id }) => id === link.run);
  const boards = [link.from, link.to].flatMap(({ device }) => devices.get(device)?.board ?? []);
  const reel = job.parts[cable.part];
  return {
    id: link.id,
    link: linkName(link.id),
    ...name,
    origin: link.origin,
    from: terminalId(link.from),
    to: terminalId(link.to),
    role,
    size: planSize(cable),
    diameterM: wireDiameterM(job, cable),
    colour: reel?.kind === 'wire' ? reel.colour : cableColour(job, link),
    lengthM,
    measured,
    ...(cutAs && { cutAs }),
    part: reel?.kind === 'wire' ? cable.part : null,
    ...(link.cable ? { cable: link.cable.id, conductor: link.cable.conductor } : {}),
    board: boards[0] ?? null,
    run: link.run,
    zones: wireZones(job, devices, link, lengthM),
    covering: throughout(run),
    ends,
  };
}

/** The sign of a conductor that has one; of a speaker conductor that has none, that it has none. */
function signOf({ role }: SizedConductor, sign: ConductorSign | undefined): Pick<PlanWire, 'sign'> {
  if (sign !== undefined) return { sign };
  return role === 'speaker' ? { sign: null } : {};
}

/** The coverings of a wire that is covered on the whole of its run; where a stretch is bare, the run alone tells. */
function throughout(run: PlanRun | undefined): string[] {
  const coverings = (run?.passes ?? []).map(({ covering }) => covering);
  return coverings.includes(null) ? [] : [...new Set(coverings.flatMap((covering) => covering ?? []))];
}

/** A candidate's size as the plan prints it. */
export function planSize({ size }: Pick<CableCandidate, 'size'>): PlanSize {
  return { label: size.label, awg: /^(.+) AWG$/.exec(size.label)?.[1] ?? null, areaMm2: size.areaMm2 };
}

function cableColour(job: Job, { cable }: Link): string | null {
  const part = cable ? job.parts[cable.part] : undefined;
  return part?.kind === 'cable' && cable ? (part.conductors[cable.conductor]?.colour ?? null) : null;
}

/** Every cable of the job, conductor by conductor: the wire that each carries, or that it is spare. */
export function planCables(job: Job, wires: readonly PlanWire[]): PlanCable[] {
  return Object.entries(job.file.cables).flatMap(([id, { part }]): PlanCable[] => {
    const spec = job.parts[part];
    if (spec?.kind !== 'cable') return [];
    const own = wires.filter(({ cable }) => cable === id);
    const conductors = Object.entries(spec.conductors).map(([name, { colour, size }]) => {
      return {
        name,
        colour,
        size: sizeOf(size),
        wire: own.find(({ conductor }) => conductor === name)?.id ?? null,
      };
    });
    const diameterM = spec['outside-diameter'];
    const lengthM = Math.max(0, ...own.map((wire) => wire.lengthM));
    return [{ id, part, lengthM, ...(diameterM !== undefined && { diameterM }), conductors }];
  });
}

function sizeOf({ label, awg, areaMm2 }: WireSize): PlanSize {
  return { label, awg, areaMm2 };
}
