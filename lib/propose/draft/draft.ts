import { z } from 'zod';
import type { FilterText } from '../../model/content/filter.ts';
import type { JobDevice, JobFile, JobLink } from '../../model/content/job.ts';
import type { fixingSchema } from '../../model/content/job-board.ts';
import { deviceSchema } from '../../model/content/job-device.ts';
import { linkSchema, runSchema } from '../../model/content/job-links.ts';
import type { InputUse } from '../../model/content/part-as-used.ts';
import { type Proposal, type ProposalDoubt, writtenValueSchema } from '../../model/content/proposal.ts';
import { linkEndOf } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import { matchesPattern } from '../../model/ports/port-pattern.ts';
import { commonPractice } from '../../model/trace.ts';
import type { Around } from './around.ts';
import { fixedBy, outlined, type ShapeText, shaped } from './draft-board.ts';
import { type DraftDevice, fittedDraftDevices, jobDraftDevice, terminalsNamed } from './draft-device.ts';
import type { DraftBoard, LaidIn, LeadSide, OpenedJob, Why } from './draft-terms.ts';
import type { Undecided } from './undecided.ts';

export type { LeadSide, OpenedJob, Why } from './draft-terms.ts';

const cableSchema = z.object({ part: z.string() });
const writtenRecord = z.record(z.string(), writtenValueSchema);
type LinkText = z.input<typeof linkSchema>;
type DeviceText = z.input<typeof deviceSchema>;
/**
 * A job while it is completed. What is written is taken over and never changed; each proposal is written as the job file
 * would have it, read by the schema of the job file, and noted with its reason.
 */
export class Draft {
  readonly around: Around;
  readonly proposals: Proposal[] = [];
  readonly undecided: Undecided[] = [];
  readonly #job: OpenedJob;
  readonly #devices = new Map<string, DraftDevice>();
  readonly #fitted: readonly DraftDevice[];
  readonly #links: Record<string, JobLink>;
  readonly #cables: Record<string, { part: string }>;
  readonly #runs: JobFile['runs'];
  readonly #leftOpen: Record<string, string>;
  readonly #boards: Record<string, DraftBoard>;
  readonly #taken = new Map<string, string[]>();
  readonly #leads = new Map<string, LeadSide>();
  /** Where something that the job does not write is told: at the device that asked for it. */
  readonly #spots = new Map<string, string>();

  constructor(job: OpenedJob, around: Around) {
    this.#job = job;
    this.around = around;
    this.#links = { ...job.links };
    this.#cables = { ...job.cables };
    this.#runs = { ...job.runs };
    this.#leftOpen = { ...job['left-open'] };
    this.#boards = { ...job.boards };
    for (const [id, given] of Object.entries(job.devices)) this.#put(id, given);
    this.#fitted = fittedDraftDevices(around.vehicle, around.parts);
    for (const [id, link] of Object.entries(job.links)) this.#take(id, link);
  }

  #put(id: string, given: JobDevice): void {
    const { vehicle, parts } = this.around;
    const device = jobDraftDevice(id, given, this.#job, vehicle, parts);
    if (device) this.#devices.set(id, device);
  }

  /** The devices of the job as written, then those proposed, then those of the vehicle. */
  get devices(): readonly DraftDevice[] {
    return [...this.#devices.values(), ...this.#fitted];
  }

  /** The devices of the job alone. */
  get own(): readonly DraftDevice[] {
    return [...this.#devices.values()];
  }
  device(id: string): DraftDevice | null {
    return this.#devices.get(id) ?? this.#fitted.find((one) => one.id === id) ?? null;
  }

  get links(): Readonly<Record<string, JobLink>> {
    return this.#links;
  }

  get boards(): Readonly<Record<string, DraftBoard>> {
    return this.#boards;
  }

  get runs(): JobFile['runs'] {
    return this.#runs;
  }
  get cables(): Readonly<Record<string, { readonly part: string }>> {
    return this.#cables;
  }

  /** The space of the vehicle that a board goes into. */
  spaceOf(board: string): string | null {
    return this.#boards[board]?.space ?? this.#job.space ?? null;
  }

  /** The links at a terminal; one that names a port by a pattern holds the first free one. */
  linksAt(device: string, terminal: string): readonly string[] {
    return this.#taken.get(`${device}.${terminal}`) ?? [];
  }

  isFree(device: string, terminal: string): boolean {
    return this.linksAt(device, terminal).length === 0;
  }

  /** True where a terminal is written as left open. */
  isLeftOpen(device: string, terminal: string): boolean {
    return Object.keys(this.#leftOpen).some((reference) => {
      const end = linkEndOf(reference);
      return end.device === device && (end.terminal === terminal || matchesPattern(end.terminal, terminal));
    });
  }

  /** True for what is proposed anew, false for what is written or taken over from a released revision. */
  isProposed(...path: readonly string[]): boolean {
    return this.proposals.some((one) => one.since === undefined && one.path.join('.') === path.join('.'));
  }

  /** A name that nothing has yet, with what tells it apart where it is taken. */
  freeName(name: string, apart: string): string {
    const taken = (one: string) =>
      one in this.#links || one in this.#cables || one in this.#runs || this.device(one) !== null;
    return taken(name) ? `${name}-${apart}` : name;
  }

  /** Takes over what a released revision proposed, word for word. */
  takeOver(
    { path: [section, id = '', , fixing = ''], value }: Proposal,
    why: Why,
    about: string | null,
  ): void {
    const path = section === 'boards' ? [section, id, 'fixings', fixing] : [section ?? '', id];
    this.#note(path, value, why, about);
    if (section === 'devices') this.#putDevice(id, value);
    else if (section === 'links') this.#putLink(id, value);
    else if (section === 'cables') this.#cables[id] = cableSchema.parse(value);
    else if (section === 'runs') this.#runs[id] = runSchema.parse(value);
    else this.#fix(id, fixing, value);
  }

  addDevice(id: string, value: DeviceText, why: Why, about: string): void {
    this.#note(['devices', id], value, why, about);
    this.#putDevice(id, value);
  }

  #putDevice(id: string, value: unknown): void {
    const { in: place, ...given } = deviceSchema.parse(value);
    this.#put(id, { ...given, ...(typeof place === 'string' && { in: place }) });
  }

  addLink(id: string, value: LinkText, why: Why, about: string): void {
    this.#note(['links', id], value, why, about);
    this.#putLink(id, value);
  }

  #putLink(id: string, value: unknown): void {
    const link = linkSchema.parse(value);
    this.#links[id] = link;
    this.#take(id, link);
  }

  /** Has a link that was proposed before lie in a cable, or be of a length. */
  refineLink(id: string, more: Partial<LinkText>, reason?: string, doubt?: ProposalDoubt): void {
    const at = this.proposals.findIndex(({ path }) => path[0] === 'links' && path[1] === id);
    const before = this.proposals[at];
    if (!before) throw new Error(`The link ${id} was not proposed, so it stays as it is.`);
    const value = { ...writtenRecord.parse(before.value), ...writtenRecord.parse(more) };
    this.#links[id] = linkSchema.parse(value);
    const why = reason === undefined ? before.reason : `${before.reason}; ${reason}`;
    this.proposals[at] = { ...before, value, reason: why, ...(doubt && { doubt }) };
  }

  /** Has a link that the job wrote, and said no conductor of, lie in a cable. */
  cableLink(id: string, { cable, conductors }: LaidIn, why: Why): void {
    const link = this.#links[id];
    if (!link) return;
    const laid = { cable, conductors: [...conductors] };
    const { device } = linkEndOf(link.to);
    for (const [key, value] of Object.entries(laid)) this.#note(['links', id, key], value, why, device);
    this.#links[id] = { ...link, ...laid };
  }

  /** Notes which lead a link lies in beside the one of the other side. */
  inLead(id: string, lead: LeadSide): void {
    this.#leads.set(id, lead);
  }

  /** The links that lie in one lead together, by its name. */
  get leads(): ReadonlyMap<string, LeadSide> {
    return this.#leads;
  }

  addCable(id: string, part: string, why: Why, about: string): void {
    this.#note(['cables', id], { part }, why, about);
    this.#cables[id] = { part };
  }

  addRun(id: string, value: z.input<typeof runSchema>, why: Why, about: string): void {
    this.#note(['runs', id], value, why, about);
    this.#runs[id] = runSchema.parse(value);
  }

  /** The outline of a board that has none, and its place and its spacers where it does not say them either. */
  shapeBoard(id: string, value: ShapeText, why: Why): void {
    for (const [key, own] of Object.entries(value)) this.#note(['boards', id, key], own, why, null);
    this.#boards[id] = shaped(this.#boards[id] ?? { fixings: {}, ribs: {} }, value);
  }

  addFixing(board: string, id: string, value: z.input<typeof fixingSchema>, why: Why): void {
    if (this.#boards[board]) this.#note(['boards', board, 'fixings', id], value, why, null);
    this.#fix(board, id, value);
  }

  #fix(board: string, id: string, value: unknown): void {
    const given = this.#boards[board];
    if (given) this.#boards[board] = fixedBy(given, id, value);
  }

  /** Filters of an output, or what an output of a processor plays. */
  addAtOutput(
    device: DraftDevice,
    output: string,
    value: { readonly filters: readonly FilterText[] } | { readonly mix: readonly string[] },
    why: Why,
  ): void {
    const given = this.#devices.get(device.id)?.given;
    if (!given) return;
    const [key, list] =
      'filters' in value ? (['filters', value.filters] as const) : (['mix', value.mix] as const);
    this.#note(['devices', device.id, key, output], [...list], why, device.id);
    const read = deviceSchema.shape[key].parse({ [output]: [...list] });
    this.#put(device.id, { ...given, [key]: { ...given[key], ...read } });
  }

  /** How the inputs of an amplifier are used: what its terminals and channels are follows from it. */
  useInputs(device: DraftDevice, key: keyof InputUse, names: readonly string[], why: Why): void {
    const given = this.#devices.get(device.id)?.given;
    if (!given) return;
    this.#note(['devices', device.id, key], [...names], why, device.id);
    this.#put(device.id, { ...given, [key]: [...names] });
    // A link to an input that is a pair now lies at both of its ends.
    this.#taken.clear();
    for (const [id, link] of Object.entries(this.#links)) this.#take(id, link);
  }

  leaveOpen(device: string, terminal: string, why: Why): void {
    this.#note(['left-open', `${device}.${terminal}`], why.reason, why, device);
    this.#leftOpen[`${device}.${terminal}`] = why.reason;
  }

  /** What can't be decided, at its place. */
  ask(path: readonly string[], message: string, remedy: string, links: readonly string[] = []): void {
    this.undecided.push({ path, message, remedy, links });
  }

  #note(path: readonly string[], value: unknown, why: Why, about: string | null): void {
    const { rule, reason, cp, doubt, since } = why;
    this.proposals.push({
      path: [...path],
      rule,
      reason: reason === '' ? commonPractice : reason,
      value: writtenValueSchema.parse(value),
      ...(cp && { mark: 'cp' as const }),
      ...(doubt && { doubt }),
      ...(since !== undefined && { since }),
    });
    if (about !== null) this.#spots.set(pointer(path), pointer(['devices', about]));
  }

  #take(id: string, { from, to }: JobLink): void {
    for (const reference of [from, to])
      for (const terminal of this.#terminalsOf(reference))
        this.#taken.set(terminal, [...(this.#taken.get(terminal) ?? []), id]);
  }

  #terminalsOf(reference: string): readonly string[] {
    const { device: id, terminal: name } = linkEndOf(reference);
    const device = this.device(id);
    return device ? terminalsNamed(device, name, (one) => this.isFree(id, one)) : [reference];
  }

  /** The completed job, and where what it does not write is told. */
  finish(): { readonly job: JobFile; readonly spots: ReadonlyMap<string, string> } {
    const devices = Object.fromEntries(
      [...this.#devices].flatMap(([id, { given }]) => (given ? [[id, given] as const] : [])),
    );
    const job = {
      ...this.#job,
      // A device whose part is not known stays as it is written: the reader tells it.
      devices: { ...this.#job.devices, ...devices },
      links: this.#links,
      cables: this.#cables,
      runs: this.#runs,
      boards: outlined(this.#boards),
      'left-open': this.#leftOpen,
    };
    return { job, spots: this.#spots };
  }
}
