import { coilsWithoutChannel } from '../audio/channel-wiring.ts';
import { speakerDelays } from '../audio/delay.ts';
import { isFault } from '../audio/fault.ts';
import { coilsOf } from '../audio/wiring.ts';
import type { PlanAudio, PlanSpeaker } from '../model/plan/index.ts';
import { type Device, type Job, terminalId } from '../model/resolved-job.ts';
import {
  amplifierOutputs,
  type CoilField,
  coilField,
  type PlannedChannel,
  planChannel,
} from './audio-channels.ts';
import type { Circuit } from './circuit.ts';
import type { DevicesById } from './conductor-role.ts';
import { remarkFiltersNotMade } from './filters-made.ts';
import type { PlanBook } from './plan-book.ts';
import { remarkFault } from './remark-fault.ts';
import { withCurves } from './response-sums.ts';
import { planInputs, planOutputs } from './signal-inputs.ts';

/** The audio side of a plan, before lengths are known: every channel with its load, every speaker with its delay. */
export function planAudio(
  job: Job,
  devices: DevicesById,
  { roles }: Circuit,
  book: PlanBook,
): { readonly audio: PlanAudio; readonly channels: readonly PlannedChannel[] } {
  const linked = new Set(job.links.flatMap(({ from, to }) => [terminalId(from), terminalId(to)]));
  for (const device of job.devices) remarkFiltersNotMade(device, book);
  const outputs = amplifierOutputs(job, linked);
  const field = coilField(job, roles);
  const channels = outputs.map((output) =>
    planChannel(
      output,
      outputs.filter((other) => other !== output),
      field,
      job,
      devices,
      book,
      linked,
    ),
  );
  const played = field.terminals.filter(
    ({ positive, negative }) => linked.has(positive) || linked.has(negative),
  );
  remarkSilentCoils(job, played, channels, book);
  const speakers = job.devices.filter(({ spec, origin }) => spec?.kind === 'speaker' && origin === 'job');
  return {
    audio: withCurves(job, {
      channels: channels.map(({ channel }) => channel),
      speakers: planSpeakers(speakers, channels, job, book),
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
  book: PlanBook,
): void {
  const driven = new Set(channels.flatMap(({ wiring }) => (wiring ? coilsOf(wiring.wiring) : [])));
  for (const fault of coilsWithoutChannel(played, driven)) {
    const device = job.devices.find(({ id }) => id === fault.subjects[0]);
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

function planSpeakers(
  speakers: readonly Device[],
  channels: readonly PlannedChannel[],
  job: Job,
  book: PlanBook,
): PlanSpeaker[] {
  const delays = delaysOf(speakers, job, book);
  return speakers.map(({ id, seat, given }): PlanSpeaker => {
    const channel = channels.find(({ channel: { speakers: own } }) => own.includes(id)) ?? null;
    const polarities = channel?.wiring?.polarity.filter(({ coil }) => coil.startsWith(`${id}.`)) ?? [];
    const powers = channel?.load?.coils.filter(({ speaker }) => speaker === id) ?? [];
    return {
      id,
      delayMs: delays.get(id)?.delayMs ?? null,
      delaySamples: delays.get(id)?.delaySamples ?? null,
      mounted: given?.mounted ?? 'normal',
      reversedWhy: given?.reversed ?? null,
      distanceM: job.vehicle.places[seat ?? '']?.distance ?? null,
      channel: channel?.channel.id ?? null,
      polarity:
        polarities.length === 0
          ? 'unwired'
          : polarities.some(({ polarity }) => polarity === 'reversed')
            ? 'reversed'
            : 'normal',
      powerW: powers.length === 0 ? null : powers.reduce((sum, { powerW }) => sum + powerW.value, 0),
    };
  });
}

/** A delay holds only among speakers whose distances are known: the farthest of all may be the one left out. */
function remarkNotMeasured({ id, seat, path }: Device, book: PlanBook): void {
  book.remark(
    {
      rule: 'speaker-not-measured',
      level: 'note',
      of: [id],
      message: `${id} has no delay: its distance from the listener is not measured, and the delays of the others leave it out`,
      remedy: `write distance: of the place ${seat ?? 'where it stands'} in the vehicle's file`,
    },
    { path },
  );
}

interface Delay {
  readonly delayMs: number;
  readonly delaySamples: number;
}

/** Delays want a processor to set them in, and the distance of every speaker that plays. */
function delaysOf(speakers: readonly Device[], job: Job, book: PlanBook): ReadonlyMap<string, Delay> {
  const [processor] = job.devices.flatMap((device) =>
    device.spec?.kind === 'processor' ? [{ device, sampleRateHz: device.spec['sample-rate'] }] : [],
  );
  const measured = speakers.flatMap(({ id, seat }) => {
    const distanceM = job.vehicle.places[seat ?? '']?.distance;
    return distanceM === undefined ? [] : [{ speaker: id, distanceM }];
  });
  if (processor?.sampleRateHz === undefined || measured.length === 0) return new Map();
  const { device, sampleRateHz } = processor;
  for (const speaker of speakers)
    if (measured.every(({ speaker: id }) => id !== speaker.id)) remarkNotMeasured(speaker, book);
  const delays = speakerDelays({
    speakers: measured,
    airC: job.rules['air-temperature'].value,
    sampleRateHz,
  });
  if (isFault(delays)) {
    remarkFault({ ...delays, subjects: [device.id, ...delays.subjects] }, device, book);
    return new Map();
  }
  return new Map(
    delays.map(({ speaker, delayMs, delaySamples }) => {
      const at = `audio.speakers.${speaker}`;
      return [
        speaker,
        {
          delayMs: book.trace(`${at}.delayMs`, delayMs),
          delaySamples: book.trace(`${at}.delaySamples`, delaySamples),
        },
      ];
    }),
  );
}
