import { type Fault, faultOf, isFault } from '../../model/fault.ts';
import { figure } from '../../model/printed/told.ts';
import { type AmplifierMode, type ChannelLoad, channelLoad } from './amplifier-load.ts';
import { wiringLoad } from './loads.ts';
import { enumerateNetworks, type Network } from './networks.ts';
import { type Coil, type Wiring, type WiringFault, wiringText } from './wiring.ts';

/** One way of wiring a set of coils, judged against the amplifier. */
export interface WiringChoice extends ChannelLoad {
  readonly wiring: Wiring;
  readonly text: string;
  /** Greatest over least share of power of a coil: 1 where all get the same. */
  readonly unevenness: number;
}

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
): readonly WiringChoice[] | WiringsFault {
  if (coils.length > mostCoils) return tooMany(channel, coils);
  const alike = groupAlike(coils);
  const networks = enumerateNetworks(
    alike.map((group) => group.length),
    mostWirings,
  );
  if (networks === null) return tooMany(channel, coils);
  const choices: WiringChoice[] = [];
  for (const network of networks.length === 0 ? [null] : networks) {
    const wiring = network && nameCoils(network, alike);
    const load = wiringLoad(channel, wiring, coils);
    if (isFault(load)) return load;
    if (!wiring) continue;
    const shares = load.shares.map(({ share }) => share);
    const unevenness = Math.max(...shares) / Math.min(...shares);
    choices.push({ ...channelLoad(channel, load, amplifier), wiring, text: wiringText(wiring), unevenness });
  }
  return choices.toSorted(bestFirst);
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
): readonly WiringChoice[] | WiringsFault | Fault<'load-not-possible'> {
  const choices = listWirings(channel, coils, amplifier);
  if (isFault(choices)) return choices;
  const fitting = choices.filter(({ loadOhm }) => Math.abs(loadOhm.value - askedOhm) <= 0.01 * askedOhm);
  if (fitting.length > 0) return fitting;
  const loads = choices.map(({ loadOhm }) => loadOhm.value).toSorted((a, b) => a - b);
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
function isUneven({ unevenness }: WiringChoice): boolean {
  return unevenness > 1.01;
}

function bestFirst(a: WiringChoice, b: WiringChoice): number {
  const powerOf = ({ power }: WiringChoice) => ('fault' in power ? -1 : power.powerW.value);
  return (
    Number(b.mayDrive) - Number(a.mayDrive) ||
    (a.mayDrive ? Number(isUneven(a)) - Number(isUneven(b)) : 0) ||
    powerOf(b) - powerOf(a) ||
    b.loadOhm.value - a.loadOhm.value ||
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
