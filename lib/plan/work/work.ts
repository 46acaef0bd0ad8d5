import { linkEndOf } from '../../model/content/resolved-job.ts';
import type { BuildPlan, PlanMeasurement, PlanStep, PlanWire } from '../../model/plan/index.ts';
import { type LengthName, printedLength } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';
import { wholeUp } from '../../model/quantity/safe-rounding.ts';
import type { WorkLayer } from '../../model/vocabulary.ts';
import { type WorkTimeName, workMinutes } from '../../model/work-times.ts';
import type { GroundBolt } from '../wiring/ground-bolts.ts';
import type { BoxAtPlace } from './boxes-at-places.ts';
import type { LoosePart } from './loose-parts.ts';

/** What the order of work follows from. */
export interface Work {
  readonly plan: Pick<
    BuildPlan,
    | 'items'
    | 'wires'
    | 'joints'
    | 'runs'
    | 'cables'
    | 'boards'
    | 'power'
    | 'audio'
    | 'controls'
    | 'measurements'
  >;
  /** The shop's own times in seconds, by name. */
  readonly times: Readonly<Record<string, number | undefined>>;
  /** What the job says must be in place before a device. */
  readonly declared: readonly Wait[];
  /** How the shop writes lengths. */
  readonly tape: LengthStyle;
  /** How far apart ties stand, by house rule (m). */
  readonly tiesM: { readonly board: number; readonly vehicle: number };
  /** What may be left across the open fuse of a bank when the fuse goes in, by house rule (V). */
  readonly bankWithinV: number;
  /** Less than this a ground reads from end to end, and any other conductor, by house rule (ohm). */
  readonly continuityOhm: { readonly ground: number; readonly wire: number };
  /** How far below its voltage a gain may read, of the voltage, by house rule. */
  readonly gainUnder: number;
  /** Nominal voltage of the vehicle's system (V): a lamp that charges a bank is made for it. */
  readonly systemV: number;
  /** How far up each source stands where it is just clean, as was found in the vehicle: `source-unit at volume 26 of 30`. */
  readonly sourcesAt: readonly string[];
  /** Tweeters that play from a channel of their own, with nothing before them that guards them. */
  readonly activeTweeters: readonly string[];
  /** Openings that are still to be cut: for which speaker, at which place, and how wide its maker asks for (m). */
  readonly openings: readonly {
    readonly item: string;
    readonly seat: string;
    readonly cutOutM: number | null;
  }[];
  /** Speakers that are let into a panel of the vehicle: the opening that each asks for (m), and how deep it goes in. */
  readonly letIn: readonly {
    readonly item: string;
    readonly cutOutM: number | null;
    readonly depthM: number;
  }[];
  /** What has to stay reachable in the space of each board, by its names there. */
  readonly reachable: readonly { readonly board: string; readonly things: readonly string[] }[];
  /** Places where an enclosure is mounted: its mass with that of its speakers (kg), and the forward load of its fixings (N). */
  readonly boxes: readonly BoxAtPlace[];
  /** Parts on boards whose screws come out behind. */
  readonly screwsOut: readonly string[];
  /** Parts off the boards that have holes for screws. */
  readonly loose: readonly LoosePart[];
  /** What fastens the lugs at each ground point. */
  readonly groundBolts: readonly GroundBolt[];
  /** The fans that the job fits, each with the space whose air it moves. */
  readonly fans: readonly { readonly item: string; readonly space: string | null }[];
}

/** What only some fields of the plan are read for. */
export interface WithPlan<F extends keyof Work['plan']> {
  readonly plan: Pick<Work['plan'], F>;
}

/** One thing that waits for another, with the reason. */
export interface Wait {
  /** The item that waits. */
  readonly item: string;
  /** The item, or the wire (a link's id), that must be in place before it. */
  readonly after: string;
  readonly why: string;
}

/** A step before it is known when it begins. */
export interface Step extends Omit<PlanStep, 'after' | 'startMinute' | 'critical' | 'layer'> {
  readonly layer: WorkLayer;
}
type Dependency = PlanStep['waitsFor'][number];

/** A step; what is left out is empty. */
export function step(
  id: string,
  waitsFor: readonly Dependency[],
  own: Pick<Step, 'layer' | 'place' | 'by' | 'text' | 'proof'> & Partial<Step>,
): Step {
  return { id, waitsFor: [...waitsFor], tools: [], minutes: 0, installs: [], acts: [], ...own };
}

/** Minutes of some pieces of work of one kind, whole ones: no work is told as shorter than it takes. */
export function minutesFor({ times }: Work, name: WorkTimeName, pieces = 1): number {
  return wholeUp(workMinutes(times, name).minutes * pieces);
}

/** A length as the shop writes it, rounded to its safe side. */
export function lengthText({ tape }: Work, name: LengthName, lengthM: number): string {
  return printedLength(name, lengthM, tape).primary;
}

/** True where the job adds something of a kind. */
export function adds({ plan }: Work, kind: string): boolean {
  return plan.items.some((item) => item.kind === kind && item.origin === 'job');
}

/** True where the job has something that is set to play: amplifiers, channels, or controls that wait for power. */
export function hasSound(work: Work): boolean {
  const { audio, controls } = work.plan;
  const waits = controls.some(({ final }) => final.during !== 'presets');
  return adds(work, 'amplifier') || audio.channels.length > 0 || waits;
}

/** What ground wires of one place come together on, such as `ground-bar`; empty where they go to the body one by one. */
export function groundBars({ plan }: Work, wires: readonly PlanWire[]): readonly string[] {
  const ends = wires
    .filter(({ role }) => role === 'ground')
    .flatMap((wire) => [itemOf(wire.from), itemOf(wire.to)]);
  return plan.items.flatMap(({ id, kind }) => (kind === 'distribution' && ends.includes(id) ? [id] : []));
}

/** Ids of the readings that are taken at one time. */
export function readingsOf({ plan }: Work, when: PlanMeasurement['when']): readonly string[] {
  return plan.measurements.filter((one) => one.when === when).map(({ id }) => id);
}

/** The item of a terminal id: `amp` of `amp.B+`. */
export function itemOf(terminal: string): string {
  return linkEndOf(terminal).device;
}

/** The boards that a wire ends on; null for an end in the vehicle. */
function boardsOf({ plan }: WithPlan<'items'>, wire: PlanWire): readonly (string | null)[] {
  return wire.ends.map(({ terminal }) => plan.items.find(({ id }) => id === itemOf(terminal))?.board ?? null);
}

/**
 * The board on whose bench a wire is laid: both ends are on it, or one is and no run carries the other away, so that
 * its tail is coiled until the board is in the vehicle. Null for a wire that is laid at the vehicle.
 */
export function benchOf(work: WithPlan<'items'>, wire: PlanWire): string | null {
  const [from, to] = boardsOf(work, wire);
  if (wire.run !== null) return null;
  if (from && to) return from === to ? from : null;
  return from ?? to ?? null;
}

/** True for a wire that is connected at the vehicle, at one end or both. */
export function endsInVehicle(work: Work, wire: PlanWire): boolean {
  const [from, to] = boardsOf(work, wire);
  return from === null || from !== to;
}

/** The wires that the job adds; what the vehicle came with is in place. */
export function ownWires({ plan }: WithPlan<'wires'>): readonly PlanWire[] {
  return plan.wires.filter(({ origin }) => origin === 'job');
}

/** How many pieces are laid: the conductors of a cable, and the two of a pair, go as one. */
export function pieces(wires: readonly PlanWire[]): number {
  return new Set(wires.map(({ cable, link }) => (cable === undefined ? `link ${link}` : `cable ${cable}`)))
    .size;
}

/** Labels of wires as one list, those of a pair or cable beside each other. */
export function labelsOf(wires: readonly PlanWire[]): string {
  return wires.map(({ label }) => label).join(', ');
}
