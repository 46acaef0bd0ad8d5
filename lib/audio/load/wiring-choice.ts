import { type Fault, faultOf, isFault } from '../../model/fault.ts';
import { figure } from '../../model/printed/told.ts';
import { powerAtLoad } from '../rated-power.ts';
import { type AmplifierMode, type ChannelLoad, channelLoad, isAtLeast } from './amplifier-load.ts';
import { enumerateNetworks, type Network } from './coil-networks.ts';
import { type Coil, type Wiring, type WiringFault, wiringFault, wiringText } from './coil-wiring.ts';
import { loadsOf, wiringLoad } from './loads.ts';

/** One way of wiring a set of coils as it is ranked: its numbers alone. `wiringChoice` has their workings. */
export interface RankedWiring {
  readonly wiring: Wiring;
  readonly text: string;
  readonly loadOhm: number;
  readonly mayDrive: boolean;
  /** Null where none is known. */
  readonly powerW: number | null;
  /** Greatest over least share of power of a coil: 1 where all get the same. */
  readonly unevenness: number;
}

/** The same, judged against the amplifier, each number with its working. */
export interface WiringChoice extends ChannelLoad, Pick<RankedWiring, 'wiring' | 'text' | 'unevenness'> {}

export type WiringsFault = WiringFault | Fault<'too-many-wirings'>;

/** More ways than this are of no use on a sheet and of no end in a search. */
const mostWirings = 2000;
const mostCoils = 8;

/**
 * Every distinct way of wiring the coils in series, in parallel or mixed, each coil once, with its load,
 * whether the amplifier may drive it, and the power in each coil. Coils of one part and one nominal load are
 * interchangeable: ways that differ only by which of them stands where are one way, written so that the coils
 * of a speaker stay together. First those that may be driven, those with the same power in every coil before the
 * others, the most power first; then those that may not, highest load first.
 */
export function listWirings(
  channel: string,
  coils: readonly Coil[],
  amplifier: AmplifierMode,
): readonly RankedWiring[] | WiringsFault {
  if (coils.length > mostCoils) return tooMany(channel, coils);
  const alike = groupAlike(coils);
  const networks = enumerateNetworks(
    alike.map((group) => group.length),
    mostWirings,
  );
  if (networks === null) return tooMany(channel, coils);
  const wirings = networks.map((network) => nameCoils(network, alike));
  // Each joins every coil once: what is wrong with one is wrong with the coils, and so with all.
  const fault = wiringFault(channel, wirings[0] ?? null, coils);
  return fault ?? ranked(channel, wirings, coils, amplifier);
}

function ranked(
  channel: string,
  wirings: readonly Wiring[],
  coils: readonly Coil[],
  amplifier: AmplifierMode,
): readonly RankedWiring[] {
  const loadOf = loadsOf(coils);
  const ways = wirings.map((wiring): RankedWiring => {
    const { ohm, shares } = loadOf(wiring);
    const power = powerAtLoad(channel, ohm, amplifier);
    const parts = shares.map(({ share }) => share);
    return {
      wiring,
      text: wiringText(wiring),
      loadOhm: ohm,
      mayDrive: isAtLeast(ohm, amplifier.minimumOhm),
      powerW: isFault(power) ? null : power.powerW.value,
      unevenness: Math.max(...parts) / Math.min(...parts),
    };
  });
  return ways.toSorted(bestFirst);
}

/**
 * A way that was listed, with the workings of its numbers: made for those that are shown, of which there are few.
 * Throws on a wiring of other coils than it was listed for.
 */
export function wiringChoice(
  channel: string,
  { wiring, text, unevenness }: RankedWiring,
  coils: readonly Coil[],
  amplifier: AmplifierMode,
): WiringChoice {
  const load = wiringLoad(channel, wiring, coils);
  if (isFault(load)) throw new Error(load.message);
  return { ...channelLoad(channel, load, amplifier), wiring, text, unevenness };
}

/**
 * The ways of wiring the coils that give the asked load, within 1 %. Where none does, the fault tells the
 * loads that can be had.
 */
export function wiringsForLoad(
  channel: string,
  coils: readonly Coil[],
  amplifier: AmplifierMode,
  askedOhm: number,
): readonly RankedWiring[] | WiringsFault | Fault<'load-not-possible'> {
  const choices = listWirings(channel, coils, amplifier);
  if (isFault(choices)) return choices;
  const fitting = choices.filter(({ loadOhm }) => Math.abs(loadOhm - askedOhm) <= 0.01 * askedOhm);
  if (fitting.length > 0) return fitting;
  const loads = choices.map(({ loadOhm }) => loadOhm).toSorted((a, b) => a - b);
  // They are written into the job just so: a job's load is found within 1 %.
  const possible = [...new Set(loads.map(figure))].join(', ');
  return faultOf(
    'load-not-possible',
    [channel, ...coils.map((coil) => coil.id)],
    `${coils.length === 1 ? 'the coil' : `the ${coils.length} coils`} of channel ${channel} can't be wired to ${figure(askedOhm)} ohm; what can be had is ${possible} ohm`,
    'ask for one of these loads, or use speakers with other coils',
  );
}

function tooMany(channel: string, coils: readonly Coil[]): Fault<'too-many-wirings'> {
  return faultOf(
    'too-many-wirings',
    [channel],
    `${coils.length} coils on channel ${channel} can be wired in more ways than are listed (up to ${mostCoils} coils and ${mostWirings} ways)`,
    'write the wiring in the job, or spread the coils over more channels',
  );
}

/** Coils of one speaker, or speakers side by side, that get different powers play apart: nobody wires them so by choice. */
function isUneven({ unevenness }: RankedWiring): boolean {
  return unevenness > 1.01;
}

function bestFirst(a: RankedWiring, b: RankedWiring): number {
  const powerOf = ({ powerW }: RankedWiring) => powerW ?? -1;
  return (
    Number(b.mayDrive) - Number(a.mayDrive) ||
    (a.mayDrive ? Number(isUneven(a)) - Number(isUneven(b)) : 0) ||
    powerOf(b) - powerOf(a) ||
    b.loadOhm - a.loadOhm ||
    a.unevenness - b.unevenness ||
    (a.text < b.text ? -1 : 1)
  );
}

/** Coils by part and nominal load, in the order of their speakers. */
function groupAlike(coils: readonly Coil[]): readonly (readonly string[])[] {
  const bySpeaker = grouped(coils, (coil) => coil.speaker).flat();
  const alike = grouped(bySpeaker, (coil) => `${coil.nominalOhm} ${coil.part ?? ''}`);
  return alike.map((group) => group.map((coil) => coil.id));
}

function grouped(coils: readonly Coil[], keyOf: (coil: Coil) => string): readonly (readonly Coil[])[] {
  const groups = new Map<string, Coil[]>();
  for (const coil of coils) groups.set(keyOf(coil), [...(groups.get(keyOf(coil)) ?? []), coil]);
  return [...groups.values()];
}

/** Puts the coils of each kind into the network in turn, so that neighbours get coils of one speaker. */
function nameCoils(network: Network, alike: readonly (readonly string[])[]): Wiring {
  const left = alike.map((group) => [...group]);
  const name = (part: Network): Wiring =>
    part.kind === 'leaf'
      ? { kind: 'coil', coil: left[part.type]?.shift() ?? '' }
      : { kind: part.kind, members: part.members.map(name) };
  return name(network);
}
