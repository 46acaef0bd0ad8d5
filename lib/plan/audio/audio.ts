import { coilsWithoutChannel } from '../../audio/load/channel-wiring.ts';
import { coilsOf } from '../../audio/load/coil-wiring.ts';
import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import type { PlanAudio, PlanSpeaker } from '../../model/plan/index.ts';
import type { Polarity } from '../../model/vocabulary.ts';
import type { PlanBook } from '../plan-book.ts';
import type { Circuit } from '../power/circuit/circuit.ts';
import { remarkFault } from '../remark-fault.ts';
import type { DevicesById } from '../wiring/conductor-role.ts';
import { type PlannedChannel, planChannel } from './audio-channels.ts';
import { type BehindCrossover, polaritiesBehind, speakersBehind } from './crossovers.ts';
import { remarkFiltersNotMade } from './filters-made.ts';
import type { CoilField } from './load/amplifier-output.ts';
import { loadedChannels, loadedOutputs } from './load/output-loads.ts';
import { groupLevels } from './path/group-levels.ts';
import { withCurves } from './response-sums.ts';
import { planInputs, planOutputs } from './signal-inputs.ts';
import { type Delays, planDelays } from './speaker-delays.ts';

/** The audio side of a plan, before lengths are known: every channel with its load, every speaker with its delay. */
export function planAudio(
  job: Job,
  devices: DevicesById,
  circuit: Circuit,
  book: PlanBook,
): { readonly audio: PlanAudio; readonly channels: readonly PlannedChannel[] } {
  const linked = new Set(job.links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
  for (const device of job.devices) remarkFiltersNotMade(device, book);
  const { outputs, field, behind } = loadedOutputs(job, devices, circuit, book);
  const driven = loadedChannels(job, { outputs, field, behind }).map(({ channel }) => channel);
  const levels = groupLevels(job, devices, driven);
  const channels = outputs.map((output) => {
    const level = levels.get(output.output.id) ?? null;
    const planned = planChannel(output, { field, job, devices, level }, book);
    const speakers = speakersBehind(planned.channel.speakers, behind, job);
    return { ...planned, channel: { ...planned.channel, speakers } };
  });
  const played = field.terminals.filter(
    ({ positive, negative }) => linked.has(positive) || linked.has(negative),
  );
  remarkSilentCoils(job, played, channels, behind, book);
  const speakers = job.devices.filter(({ spec, origin }) => spec?.kind === 'speaker' && origin === 'job');
  const planned = channels.map(({ channel }) => channel);
  const delays = planDelays(speakers, planned, job, book);
  return {
    audio: withCurves(job, {
      channels: planned,
      speakers: planSpeakers(speakers, { channels, behind }, delays.bySpeaker, job),
      sharedDelays: [...delays.shared],
      inputs: planInputs(job, devices, book),
      outputs: planOutputs(job, devices),
    }),
    channels,
  };
}

/** Stops linked coils that neither a channel nor the source unit drives. */
function remarkSilentCoils(
  job: Job,
  played: CoilField['terminals'],
  channels: readonly PlannedChannel[],
  behind: readonly BehindCrossover[],
  book: PlanBook,
): void {
  const driven = new Set([
    ...channels.flatMap(({ wiring }) => (wiring ? coilsOf(wiring.wiring) : [])),
    ...behind.flatMap(({ coils }) => coils.map(({ coil }) => coil)),
  ]);
  for (const fault of coilsWithoutChannel(played, driven)) {
    const device = job.devices.find(({ id }) => id === fault.of[0]);
    if (device && !isDrivenElsewhere(device, job)) remarkFault(fault, device, book);
  }
}

/** True for a speaker that a device other than an amplifier of the job drives, such as the source unit. */
function isDrivenElsewhere(device: Device, job: Job): boolean {
  return job.links.some(({ from, to }) => {
    const other = from.device === device.id ? to.device : to.device === device.id ? from.device : null;
    return job.devices.some(({ id, spec }) => id === other && spec?.kind === 'source-unit');
  });
}

interface Driving {
  readonly channels: readonly PlannedChannel[];
  readonly behind: readonly BehindCrossover[];
}

function planSpeakers(
  speakers: readonly Device[],
  { channels, behind }: Driving,
  delays: Delays['bySpeaker'],
  job: Job,
): PlanSpeaker[] {
  return speakers.map(({ id, seat, given }): PlanSpeaker => {
    const channel = channels.find(({ channel: { speakers: own } }) => own.includes(id)) ?? null;
    const passive = behind.find(({ speaker }) => speaker === id) ?? null;
    const polarities = coilPolarities(id, channel, passive);
    const powers = channel?.load?.coils.filter(({ speaker }) => speaker === id) ?? [];
    return {
      id,
      delayMs: delays.get(id)?.delayMs ?? null,
      delaySamples: delays.get(id)?.delaySamples ?? null,
      mounted: given?.mounted ?? 'normal',
      reversedWhy: given?.reversed ?? null,
      distanceM: job.vehicle.places[seat ?? '']?.distance ?? null,
      channel: channel?.channel.id ?? null,
      polarity: polarityOf(polarities.map(({ polarity }) => polarity)),
      reversedCoils: polarities.filter(({ polarity }) => polarity === 'reversed').map(({ coil }) => coil),
      powerW: powers.length === 0 ? null : powers.reduce((sum, { powerW }) => sum + powerW.value, 0),
      ...(passive && { passive: [...passive.filters] }),
    };
  });
}

/** The coils of a speaker on its channel, at its outputs or behind the crossover at them. */
function coilPolarities(
  id: string,
  channel: PlannedChannel | null,
  passive: BehindCrossover | null,
): readonly { readonly coil: string; readonly polarity: Polarity }[] {
  const all = channel?.wiring?.polarity ?? [];
  const at = (device: string) => all.filter(({ coil }) => coil.startsWith(`${device}.`));
  return passive ? polaritiesBehind(passive, at(passive.crossover)[0]?.polarity) : at(id);
}

/** The polarity of a speaker by that of its coils. */
function polarityOf(coils: readonly Polarity[]): PlanSpeaker['polarity'] {
  const [first] = coils;
  if (!first) return 'unwired';
  return coils.every((polarity) => polarity === first) ? first : 'opposed';
}
