import { type AmplifierMode, type ChannelLoad, channelLoad } from '../../audio/load/amplifier-load.ts';
import {
  type ChannelWiring,
  type ChannelWiringFault,
  type CoilTerminals,
  channelWiring,
} from '../../audio/load/channel-wiring.ts';
import { type WiringLoad, wiringLoad } from '../../audio/load/loads.ts';
import { plugResistance } from '../../audio/load/plug-resistance.ts';
import { type Coil, coilsOf, type WiringFault, wiringText } from '../../audio/load/wiring.ts';
import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { HouseRules } from '../../model/house-rules.ts';
import { terminalsOf } from '../../model/kinds/kind.ts';
import type { PlanChannel, PlanFilter } from '../../model/plan/index.ts';
import type { PlanBook } from '../plan-book.ts';
import type { Island } from '../power/circuit/circuit-islands.ts';
import { sizingVoltageAt, systemShare } from '../power/sizing-voltage.ts';
import { remarkFault } from '../remark-fault.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import type { Amplifier, Channel, CoilField, Output } from './amplifier-output.ts';
import { channelGain } from './channel-gain.ts';
import { askedLoad, planWirings, wayOutOfLowLoad } from './channel-wirings.ts';
import { crossoverAsCoil } from './crossovers.ts';
import { peaksBefore } from './path-peaks.ts';
import { feedOf } from './signal-feed.ts';
import { filtersBefore } from './signal-path.ts';

/** A channel with what its coils get. */
export interface PlannedChannel {
  readonly channel: PlanChannel;
  readonly load: ChannelLoad | null;
  readonly wiring: ChannelWiring | null;
}

/** Every output of every amplifier of a job, bridged pairs taken together. */
export function amplifierOutputs(
  job: Job,
  linked: ReadonlySet<string>,
  islands: readonly Island[],
): Output[] {
  return job.devices.flatMap((device): Output[] => {
    const part = device.spec;
    if (part?.kind !== 'amplifier' || device.origin !== 'job') return [];
    const touched = (terminal: string) => linked.has(terminalId({ device: device.id, terminal }));
    const bridges = Object.entries(part.bridges).filter(([name, bridge]) =>
      isBridged(part, name, bridge, touched),
    );
    const taken = new Set(bridges.flatMap(([name]) => name.split('+')));
    const single = Object.entries(part.channels).filter(([name]) => !taken.has(name));
    const [positive = ''] = terminalsOf(part.terminals, 'supply-positive');
    const fed = terminalId({ device: device.id, terminal: positive });
    const own = {
      device,
      part,
      sizingV: sizingVoltageAt(job, islands, fed),
      systemShare: systemShare(job, islands, fed),
    };
    return [
      ...single.map(([name, spec]) => ({
        ...own,
        id: `${device.id}.${name}`,
        name,
        spec,
        bridgedWith: null,
      })),
      ...bridges.map(([name, spec]) => {
        const bridgedWith = name.split('+')[1] ?? null;
        return { ...own, id: `${device.id}.${name}`, name, spec, bridgedWith };
      }),
    ];
  });
}

/** Bridged: the outer terminals are linked, the inner ones of the two channels are not. */
function isBridged(
  part: Amplifier,
  name: string,
  bridge: Channel,
  touched: (terminal: string) => boolean,
): boolean {
  const members = name.split('+').flatMap((member) => part.channels[member] ?? []);
  const inner = members
    .flatMap(({ positive, negative }) => [positive, negative])
    .filter((terminal) => ![bridge.positive, bridge.negative].includes(terminal));
  return touched(bridge.positive) && touched(bridge.negative) && !inner.some(touched);
}

/** The coils of all speakers of a job, and its passive crossovers, each as the load that it is. */
export function coilField(job: Job, roles: ReadonlyMap<string, string>): CoilField {
  const coils: Coil[] = [];
  const terminals: CoilTerminals[] = [];
  const speakerW = new Map<string, number>();
  for (const device of job.devices) {
    const { id, spec, part } = device;
    const seen = crossoverAsCoil(device);
    if (seen) {
      coils.push(...seen.coils);
      terminals.push(...seen.terminals);
      for (const [speaker, powerW] of seen.speakerW) speakerW.set(speaker, powerW);
    }
    if (spec?.kind !== 'speaker') continue;
    speakerW.set(id, spec.power);
    for (const [name, coil] of Object.entries(spec.coils)) {
      const dcOhm = coil['direct-current'];
      coils.push({
        id: `${id}.${name}`,
        speaker: id,
        ...(part === null ? {} : { part }),
        nominalOhm: coil.nominal,
        ...(dcOhm === undefined ? {} : { dcOhm }),
      });
      terminals.push({
        coil: `${id}.${name}`,
        speaker: id,
        positive: `${id}.${coil.positive}`,
        negative: `${id}.${coil.negative}`,
      });
    }
  }
  const joins = job.links
    .filter((link) => roles.get(link.id) === 'speaker')
    .map(({ from, to }) => [terminalId(from), terminalId(to)] as const);
  return { coils, terminals, joins, speakerW };
}

/** Plans one output: its wiring as linked, load, power, gain voltage, what a meter reads at its plug. */
export function planChannel(
  output: Output,
  others: readonly Output[],
  field: CoilField,
  job: Job,
  devices: DevicesById,
  book: PlanBook,
  linked: ReadonlySet<string>,
): PlannedChannel {
  const { device, spec } = output;
  const filters = filtersBefore(job, devices, device, output.name, spec);
  const feeding = feedOf(job, { device: device.id, terminal: spec.input });
  const peaks = peaksBefore(devices, device, output.name, feeding, spec.positive);
  const empty = { ...emptyChannel(output, filters), peaks };
  if (!linked.has(empty.positive) && !linked.has(empty.negative))
    return { channel: empty, load: null, wiring: null };
  const wiring = channelWiring({
    channel: output.id,
    positive: empty.positive,
    negative: empty.negative,
    otherOutputs: others.flatMap((other) => [
      `${other.device.id}.${other.spec.positive}`,
      `${other.device.id}.${other.spec.negative}`,
    ]),
    coils: field.terminals,
    joins: field.joins,
  });
  if (isFault(wiring)) return faulty(wiring, empty, device, book);
  const own = new Set(coilsOf(wiring.wiring));
  const coils = field.coils.filter(({ id }) => own.has(id));
  const whole = wiringLoad(output.id, wiring.wiring, coils);
  if (isFault(whole)) return faulty(whole, empty, device, book);
  return loadedChannel({ output, empty, wiring, coils, whole, field, job, book });
}

interface Loaded {
  readonly output: Output;
  readonly empty: PlanChannel;
  readonly wiring: ChannelWiring;
  readonly coils: readonly Coil[];
  readonly whole: WiringLoad;
  readonly field: CoilField;
  readonly job: Job;
  readonly book: PlanBook;
}

/** A channel whose coils make one load: held against its amplifier and against what the job asks. */
function loadedChannel({ output, empty, wiring, coils, whole, field, job, book }: Loaded): PlannedChannel {
  const { device, spec } = output;
  const mode: AmplifierMode = {
    mode: output.bridgedWith ? 'bridged' : 'stereo',
    minimumOhm: spec.minimum,
    rated: spec.powers.map((row) => ({ loadOhm: row.load, powerW: row.power })),
  };
  const load = channelLoad(output.id, whole, mode);
  const listed = planWirings({ channel: output.id, coils, mode, chosen: wiring.wiring });
  const at = `audio.channels.${output.id}`;
  const channel: PlanChannel = {
    ...empty,
    loadOhm: book.trace(`${at}.loadOhm`, load.loadOhm),
    outputLoadOhm: book.trace(`${at}.outputLoadOhm`, load.outputLoadOhm),
    mayDrive: load.mayDrive,
    ...listed,
    wiring: wiringText(wiring.wiring),
    speakers: [...new Set(coils.map(({ speaker }) => speaker))],
    dcResistanceOhm: readAtPlug(output.id, wiring, coils, job.rules, book),
  };
  askedLoad({ output, coils, mode, loadOhm: load.loadOhm.value }, book);
  if (isFault(load.power)) {
    remarkFault(wayOutOfLowLoad(load.power, listed.wirings), device, book);
    return { channel, load, wiring };
  }
  const powerW = book.trace(`${at}.powerW`, load.power.powerW);
  const powered = { ...channel, powerW, coils: coilPowers(at, load, book) };
  return { channel: { ...powered, ...channelGain(output, powered, load, field, job, book) }, load, wiring };
}

/** What a meter reads across the coils as wired. */
function readAtPlug(
  id: string,
  { wiring }: ChannelWiring,
  coils: readonly Coil[],
  rules: HouseRules,
  book: PlanBook,
): PlanChannel['dcResistanceOhm'] {
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
  const { device, spec, bridgedWith } = output;
  return {
    id: output.id,
    amplifier: device.id,
    positive: `${device.id}.${spec.positive}`,
    negative: `${device.id}.${spec.negative}`,
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

function faulty(
  fault: ChannelWiringFault | WiringFault,
  channel: PlanChannel,
  device: Device,
  book: PlanBook,
): PlannedChannel {
  remarkFault(fault, device, book);
  return { channel, load: null, wiring: null };
}
