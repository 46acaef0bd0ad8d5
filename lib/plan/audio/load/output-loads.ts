import { type AmplifierMode, type ChannelLoad, channelLoad } from '../../../audio/load/amplifier-load.ts';
import {
  type ChannelWiring,
  type ChannelWiringFault,
  type CoilTerminals,
  channelWiring,
} from '../../../audio/load/channel-wiring.ts';
import { type Coil, coilsOf, type WiringFault, wiringText } from '../../../audio/load/coil-wiring.ts';
import {
  type LeastLoad,
  leastLoad,
  type WithoutFiltered,
  withoutFiltered,
} from '../../../audio/load/in-line-filter.ts';
import { joinedNodes } from '../../../audio/load/joined-nodes.ts';
import { wiringLoad } from '../../../audio/load/loads.ts';
import { type Job, terminalId } from '../../../model/content/resolved-job.ts';
import { isFault } from '../../../model/fault.ts';
import { terminalsOf } from '../../../model/kinds/kind.ts';
import type { PlanChannel } from '../../../model/plan/index.ts';
import type { PlanBook } from '../../plan-book.ts';
import type { Circuit } from '../../power/circuit/circuit.ts';
import { type Island, islandsOf } from '../../power/circuit/circuit-islands.ts';
import { sizingVoltageAt, systemShare } from '../../power/sizing-voltage.ts';
import type { DevicesById } from '../../wiring/conductor-role.ts';
import { boxJoins } from '../box-leads.ts';
import { type BehindCrossover, crossoverAsCoil, planCrossovers, speakersBehind } from '../crossovers.ts';
import { type Miswired, remarkMiswired } from '../miswired.ts';
import type { Amplifier, Channel, CoilField, Output } from './amplifier-output.ts';

/** A channel with the load of its coils: all that supply and wires follow from, whatever it plays and by which filters. */
export interface LoadedChannel {
  readonly channel: Pick<
    PlanChannel,
    'id' | 'amplifier' | 'positive' | 'negative' | 'loadOhm' | 'powerW' | 'wiring' | 'speakers'
  >;
  readonly load: ChannelLoad | null;
}

/** What coils an output drives, and the load that they are. */
export interface OutputLoad {
  readonly wiring: ChannelWiring;
  readonly coils: readonly Coil[];
  /** What of it plays in the whole band. */
  readonly whole: WithoutFiltered;
  readonly mode: AmplifierMode;
  readonly load: ChannelLoad;
  /** Null where no filter in a lead lets a speaker in beside the others. */
  readonly least: LeastLoad | null;
}

/** An output with its load; null where nothing is linked to it, a fault where its coils make no load. */
export interface LoadedOutput {
  readonly output: Output;
  readonly loaded: OutputLoad | ChannelWiringFault | WiringFault | null;
}

/** Every output of a job with its load, the coils that are left to judge, and what stands behind crossovers. */
export interface LoadedOutputs {
  readonly outputs: readonly LoadedOutput[];
  readonly field: CoilField;
  readonly behind: readonly BehindCrossover[];
}

/** The loads of all outputs as linked. What is wired against the way that amplifiers work is told and left out of them. */
export function loadedOutputs(
  job: Job,
  devices: DevicesById,
  circuit: Circuit,
  book: PlanBook,
): LoadedOutputs {
  const linked = new Set(job.links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
  const outputs = amplifierOutputs(job, linked, islandsOf(circuit));
  const whole = coilField(job, circuit.roles);
  const miswired = remarkMiswired(job, devices, outputs, whole, book);
  const field = withoutMiswired(whole, miswired);
  return {
    field,
    behind: planCrossovers(job, field, linked, book),
    outputs: outputs.map((output) => ({
      output,
      loaded: loadOf(
        output,
        outputs.filter((other) => other !== output),
        field,
        miswired.channels.has(output.id) ? coilsReach(field) : linked,
      ),
    })),
  };
}

/** What of the channels supply and wires follow from. */
export function loadedChannels(
  job: Pick<Job, 'devices'>,
  { outputs, behind }: LoadedOutputs,
): LoadedChannel[] {
  return outputs.map(({ output, loaded }): LoadedChannel => {
    const channel = { ...endsOf(output), loadOhm: null, powerW: null, wiring: '', speakers: [] };
    if (loaded === null || isFault(loaded)) return { channel, load: null };
    const { load, wiring, coils } = loaded;
    return {
      channel: {
        ...channel,
        loadOhm: load.loadOhm.value,
        powerW: isFault(load.power) ? null : load.power.powerW.value,
        wiring: wiringText(wiring.wiring),
        speakers: speakersBehind(speakersOf(coils), behind, job),
      },
      load,
    };
  });
}

/** The speakers of some coils, each once. */
export function speakersOf(coils: readonly Coil[]): string[] {
  return [...new Set(coils.map(({ speaker }) => speaker))];
}

/** An output by its name and its terminals. */
export function endsOf({
  id,
  device,
  spec,
}: Output): Pick<PlanChannel, 'id' | 'amplifier' | 'positive' | 'negative'> {
  const [positive, negative] = [`${device.id}.${spec.positive}`, `${device.id}.${spec.negative}`];
  return { id, amplifier: device.id, positive, negative };
}

function loadOf(
  output: Output,
  others: readonly Output[],
  field: CoilField,
  linked: ReadonlySet<string>,
): LoadedOutput['loaded'] {
  const { positive, negative } = endsOf(output);
  if (!linked.has(positive) && !linked.has(negative)) return null;
  const wiring = channelWiring({
    channel: output.id,
    positive,
    negative,
    otherOutputs: others.map(endsOf).flatMap((other) => [other.positive, other.negative]),
    coils: field.terminals,
    joins: field.joins,
  });
  if (isFault(wiring)) return wiring;
  const own = new Set(coilsOf(wiring.wiring));
  const coils = field.coils.filter(({ id }) => own.has(id));
  const ohms = wiringLoad(output.id, wiring.wiring, coils);
  if (isFault(ohms)) return ohms;
  const whole = withoutFiltered(wiring.wiring, coils);
  const { spec, bridgedWith } = output;
  const mode: AmplifierMode = {
    mode: bridgedWith ? 'bridged' : 'stereo',
    minimumOhm: spec.minimum,
    rated: spec.powers.map((row) => ({ loadOhm: row.load, powerW: row.power })),
  };
  const least = whole.coils.length === coils.length ? null : leastLoad(wiring.wiring, coils);
  return { wiring, coils, whole, mode, load: channelLoad(output.id, ohms, mode), least };
}

/** The coils that are left to judge; those that are told as miswired are out of the way of the others. */
function withoutMiswired(field: CoilField, { coils }: Miswired): CoilField {
  return { ...field, terminals: field.terminals.filter(({ coil }) => !coils.has(coil)) };
}

/** Every terminal that a conductor joins to a coil. */
function coilsReach({ terminals, joins }: CoilField): ReadonlySet<string> {
  const nodeOf = joinedNodes(joins);
  const nodes = new Set(terminals.flatMap(({ positive, negative }) => [nodeOf(positive), nodeOf(negative)]));
  return new Set(joins.flat().filter((terminal) => nodes.has(nodeOf(terminal))));
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
        ...(coil.inductance === undefined ? {} : { inductanceH: coil.inductance }),
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
  return { coils, terminals, joins: [...joins, ...boxJoins(job)], speakerW };
}
