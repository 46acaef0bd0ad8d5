import type { ChannelLoad } from '../../audio/load/amplifier-load.ts';
import type { ChannelWiring } from '../../audio/load/channel-wiring.ts';
import { wiringText } from '../../audio/load/coil-wiring.ts';
import type { WithoutFiltered } from '../../audio/load/in-line-filter.ts';
import { plugResistance } from '../../audio/load/plug-resistance.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import type { PlanBook } from '../plan-book.ts';
import { remarkFault } from '../remark-fault.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { channelGain } from './channel-gain.ts';
import { askedLoad, planWirings, wayOutOfLowLoad } from './channel-wirings.ts';
import type { CoilField, Output } from './load/amplifier-output.ts';
import {
  endsOf,
  type LoadedChannel,
  type LoadedOutput,
  type OutputLoad,
  speakersOf,
} from './load/output-loads.ts';
import type { ChannelLevel } from './path/group-levels.ts';
import { peaksBefore } from './path/path-peaks.ts';
import { turningBefore } from './path/path-polarity.ts';
import { feedOf } from './signal-feed.ts';
import { filtersBefore } from './signal-path.ts';

/** A channel with what its coils get. */
export interface PlannedChannel extends LoadedChannel {
  readonly channel: PlanChannel;
  readonly load: ChannelLoad | null;
  readonly wiring: ChannelWiring | null;
}

/** What a channel is planned in. */
export interface ChannelSurroundings {
  readonly field: CoilField;
  readonly job: Job;
  readonly devices: DevicesById;
  /** What its speakers are to play at; null where that is all that it gives. */
  readonly level: ChannelLevel | null;
}

/** Plans one output with its load: power, gain voltage, what a meter reads at its plug. */
export function planChannel(
  { output, loaded }: LoadedOutput,
  { field, job, devices, level }: ChannelSurroundings,
  book: PlanBook,
): PlannedChannel {
  const { device, spec } = output;
  const filters = filtersBefore(job, devices, device, output.name, spec);
  const feeding = feedOf(job, { device: device.id, terminal: spec.input });
  const peaks = peaksBefore(devices, device, output.name, feeding, spec.positive);
  const { by } = turningBefore(job, devices, { id: output.id, amplifier: device.id });
  const empty = {
    ...emptyChannel(output, filters),
    peaks,
    ...(level && level.by.length > 0 && { level: { db: level.levelDb, by: [...level.by] } }),
    ...(by.length > 0 && { turnedBy: [...by] }),
  };
  const gainDb = level?.atGain ? level.levelDb : 0;
  if (loaded === null) return { channel: empty, load: null, wiring: null };
  if (!isFault(loaded)) return loadedChannel({ output, empty, loaded, gainDb, field, job, book });
  remarkFault(loaded, device, book);
  return { channel: empty, load: null, wiring: null };
}

interface Loaded {
  readonly output: Output;
  readonly empty: PlanChannel;
  readonly loaded: OutputLoad;
  /** How far below full its gain is set, 0 or below. */
  readonly gainDb: number;
  readonly field: CoilField;
  readonly job: Job;
  readonly book: PlanBook;
}

/** A channel whose coils make one load: held against its amplifier and against what the job asks. */
function loadedChannel({ output, empty, loaded, gainDb, field, job, book }: Loaded): PlannedChannel {
  const { wiring, coils, whole, mode, load, least } = loaded;
  const listed = planWirings({ channel: output.id, coils: whole.coils, mode, chosen: whole.wiring });
  const at = `audio.channels.${output.id}`;
  const channel: PlanChannel = {
    ...empty,
    loadOhm: book.trace(`${at}.loadOhm`, load.loadOhm),
    outputLoadOhm: book.trace(`${at}.outputLoadOhm`, load.outputLoadOhm),
    mayDrive: load.mayDrive,
    ...listed,
    wiring: wiringText(wiring.wiring),
    speakers: speakersOf(coils),
    ...(least && { least: { ohm: book.trace(`${at}.least.ohm`, least.ohm), atHz: least.atHz } }),
    dcResistanceOhm: readAtPlug(output.id, whole, job.rules, book),
  };
  askedLoad({ output, coils: whole.coils, mode, loadOhm: load.loadOhm.value }, book);
  if (isFault(load.power)) {
    remarkFault(wayOutOfLowLoad(load.power, listed.wirings), output.device, book);
    return { channel, load, wiring };
  }
  const powerW = book.trace(`${at}.powerW`, load.power.powerW);
  const powered = { ...channel, powerW, coils: coilPowers(at, load, book) };
  return {
    channel: { ...powered, ...channelGain(output, powered, { load, gainDb, field }, job, book) },
    load,
    wiring,
  };
}

/** What a meter reads across the coils as wired; null through a filter, whose capacitor lets no direct current pass. */
function readAtPlug(
  id: string,
  { wiring, coils }: WithoutFiltered,
  rules: HouseRules,
  book: PlanBook,
): PlanChannel['dcResistanceOhm'] {
  if (coils.some(({ inLine }) => inLine)) return null;
  const plug = plugResistance(id, wiring, coils, {
    least: rules['coil-dc-least'].value,
    most: rules['coil-dc-most'].value,
  });
  if (isFault(plug)) return null;
  const at = `audio.channels.${id}.dcResistanceOhm`;
  return {
    fromOhm: book.trace(`${at}.fromOhm`, plug.fromOhm),
    toOhm: book.trace(`${at}.toOhm`, plug.toOhm),
  };
}

function coilPowers(at: string, { coils }: ChannelLoad, book: PlanBook): PlanChannel['coils'] {
  return coils.map(({ coil, speaker, powerW, greatestPowerW }) => ({
    coil,
    speaker,
    powerW: book.trace(`${at}.coils.${coil}.powerW`, powerW),
    greatestPowerW: book.trace(`${at}.coils.${coil}.greatestPowerW`, greatestPowerW),
  }));
}

function emptyChannel(output: Output, filters: PlanFilter[]): PlanChannel {
  const { spec, bridgedWith } = output;
  return {
    ...endsOf(output),
    ...(bridgedWith ? { bridgedWith } : {}),
    loadOhm: null,
    outputLoadOhm: null,
    mayDrive: null,
    minimumOhm: spec.minimum,
    dcResistanceOhm: null,
    powerW: null,
    gainVoltageV: null,
    gain: null,
    toneHz: 0,
    filters,
    peaks: [],
    speakers: [],
    wiring: '',
    coils: [],
    wirings: [],
    wiringsInAll: null,
    wireLossDb: null,
    damping: null,
    belowDb: null,
    levelsDb: [],
  };
}
