import { type SpeakerDelay, speakerDelays, speedOfSound } from '../../audio/delay.ts';
import { joinedNodes } from '../../audio/load/joined-nodes.ts';
import { sharedDelay } from '../../audio/shared-delay.ts';
import { type Device, type Job, terminalId } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanChannel, PlanSharedDelay } from '../../model/plan/index.ts';
import type { PlanBook } from '../plan-book.ts';
import { remarkFault } from '../remark-fault.ts';
import { devicesById } from '../wiring/conductor-role.ts';
import { setBefore } from './passed-on.ts';
import { channelInputs } from './signal-path.ts';

/** What is set for a speaker. */
export interface Delay {
  readonly delayMs: number;
  readonly delaySamples: number;
}

/** The delays of a job: of each speaker, and of those that share an output the compromise. */
export interface Delays {
  readonly bySpeaker: ReadonlyMap<string, Delay>;
  readonly shared: readonly PlanSharedDelay[];
}

const none: Delays = { bySpeaker: new Map(), shared: [] };

/**
 * Delays want a processor to set them in, and the distance of every speaker that plays behind it: one that something else
 * feeds can't be delayed, and the others don't wait for it. One output has one delay: speakers that hang on one channel,
 * or on channels behind one output, get that half-way between what they ask for.
 */
export function planDelays(
  all: readonly Device[],
  channels: readonly PlanChannel[],
  job: Job,
  book: PlanBook,
): Delays {
  const [processor] = job.devices.flatMap((device) =>
    device.spec?.kind === 'processor' ? [{ device, sampleRateHz: device.spec['sample-rate'] }] : [],
  );
  const groups = outputGroups(job, channels).filter(
    ({ outputs }) => processor && outputs.some((id) => id.startsWith(`${processor.device.id}.`)),
  );
  const speakers = all.filter(({ id }) => groups.some((group) => group.speakers.includes(id)));
  const measured = speakers.flatMap(({ id, seat }) => {
    const distanceM = job.vehicle.places[seat ?? '']?.distance;
    return distanceM === undefined ? [] : [{ speaker: id, distanceM }];
  });
  if (processor?.sampleRateHz === undefined || measured.length === 0) return none;
  const { device, sampleRateHz } = processor;
  for (const speaker of speakers)
    if (measured.every(({ speaker: id }) => id !== speaker.id)) remarkNotMeasured(speaker, book);
  const airC = job.rules['air-temperature'].value;
  const delays = speakerDelays({ speakers: measured, airC, sampleRateHz });
  const speed = speedOfSound(airC);
  const fault = isFault(delays) ? delays : isFault(speed) ? speed : null;
  if (fault) remarkFault({ ...fault, of: [device.id, ...fault.of] }, device, book);
  if (isFault(delays) || isFault(speed)) return none;
  const toleranceMs = 1000 * job.rules['delay-tolerance'].value;
  const shared = groups.flatMap(({ outputs, speakers: ids }) =>
    shareOne(
      outputs,
      delays.filter(({ speaker }) => ids.includes(speaker)),
      { sampleRateHz, toleranceMs, speedMPerS: speed.value },
      book,
    ),
  );
  return { bySpeaker: bySpeaker(delays, shared, book), shared };
}

function bySpeaker(
  delays: readonly SpeakerDelay[],
  shared: readonly PlanSharedDelay[],
  book: PlanBook,
): ReadonlyMap<string, Delay> {
  return new Map(
    delays.map((delay) => {
      const compromise = shared.find(({ off }) => off.some(({ speaker }) => speaker === delay.speaker));
      if (compromise)
        return [delay.speaker, { delayMs: compromise.delayMs, delaySamples: compromise.delaySamples }];
      const at = `audio.speakers.${delay.speaker}`;
      return [
        delay.speaker,
        {
          delayMs: book.trace(`${at}.delayMs`, delay.delayMs),
          delaySamples: book.trace(`${at}.delaySamples`, delay.delaySamples),
        },
      ];
    }),
  );
}

interface Setting {
  readonly sampleRateHz: number;
  readonly speedMPerS: number;
  /** Delays that differ by less are one. */
  readonly toleranceMs: number;
}

function shareOne(
  outputs: readonly string[],
  delays: readonly SpeakerDelay[],
  setting: Setting,
  book: PlanBook,
): PlanSharedDelay[] {
  const asked = delays.map(({ delayMs }) => delayMs.value);
  if (delays.length < 2 || Math.max(...asked) - Math.min(...asked) <= setting.toleranceMs) return [];
  const found = sharedDelay(delays, setting);
  const at = `audio.sharedDelays.${outputs.join('+')}`;
  for (const { speaker } of delays) {
    book.trace(`audio.speakers.${speaker}.delayMs`, found.delayMs);
    book.trace(`audio.speakers.${speaker}.delaySamples`, found.delaySamples);
  }
  return [
    {
      outputs: [...outputs],
      delayMs: book.trace(`${at}.delayMs`, found.delayMs),
      delaySamples: book.trace(`${at}.delaySamples`, found.delaySamples),
      off: found.off.map((one) => ({ ...one })),
    },
  ];
}

/** Speakers that hang on one output: of a channel, of channels behind one output of what feeds them. */
function outputGroups(
  job: Job,
  channels: readonly PlanChannel[],
): readonly { readonly outputs: readonly string[]; readonly speakers: readonly string[] }[] {
  const fed = channels
    .filter(({ speakers }) => speakers.length > 0)
    .map((channel) => {
      const feeds = channelInputs(job, channel).flatMap((input) =>
        setBefore(job, devicesById(job), input).map(terminalId),
      );
      return { channel, feeds };
    });
  const groupOf = joinedNodes(
    fed.flatMap(({ channel, feeds }) => feeds.map((feed) => [channel.id, feed] as const)),
  );
  const names = [...new Set(fed.map(({ channel }) => groupOf(channel.id)))];
  return names.map((name) => {
    const own = fed.filter(({ channel }) => groupOf(channel.id) === name);
    const feeds = [...new Set(own.flatMap((one) => one.feeds))];
    return {
      outputs: feeds.length > 0 ? feeds : own.map(({ channel }) => channel.id),
      speakers: [...new Set(own.flatMap(({ channel }) => channel.speakers))],
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
