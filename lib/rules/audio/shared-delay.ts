import { cornersOf } from '../../audio/test-tone.ts';
import { pointer } from '../../model/place.ts';
import type { PlanSharedDelay } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { deviceIdOf, deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Spot, Verdict } from '../rule.ts';
import { hertz, lengthIn, listed } from '../words.ts';

/** The top of hearing, for a path without a low-pass. */
const topHz = 20_000;

/**
 * How far apart the sound of two speakers may arrive, as a share of a period, before they no longer add: at a quarter
 * they are a right angle apart, 3 dB below in step.
 */
const periodShare = 0.25;

/** The highest frequency that all of the speakers play. */
function highestHz({ plan }: Case, speakers: readonly string[]): number {
  const channels = plan.audio.channels.filter((channel) =>
    channel.speakers.some((id) => speakers.includes(id)),
  );
  return Math.min(topHz, ...channels.map(({ filters }) => cornersOf(filters).lowPassHz ?? topHz));
}

type Off = PlanSharedDelay['off'][number];

function offText({ speaker, offMs, offM }: Off, length: (lengthM: number) => string): string {
  return `${speaker} ${printed('delay', Math.abs(offMs))}, ${length(Math.abs(offM))} of the way, ${offMs < 0 ? 'early' : 'late'}`;
}

/** Where the distance of a speaker is written. */
function distanceSpots({ job }: Case, speaker: string): Spot[] {
  const seat = deviceOf(job, speaker)?.seat ?? null;
  return seat === null ? [] : [{ path: pointer(['places', seat, 'distance']), file: 'vehicle' }];
}

/** What the speakers share: the one channel that drives them all, or else the one output before their channels. */
function sharedText({ plan }: Case, speakers: readonly string[], outputs: readonly string[]): string {
  const one = plan.audio.channels.find(({ speakers: own }) => speakers.every((id) => own.includes(id)));
  if (!one) return `share the output ${listed(outputs)}, and an output has one delay`;
  const before = outputs.includes(one.id)
    ? ''
    : `, which ${listed(outputs)} ${outputs.length === 1 ? 'drives' : 'drive'}`;
  return `share the channel ${one.id}${before}, and a channel has one delay`;
}

const shared: Rule = {
  id: 'delay-shared',
  judge(about) {
    return about.plan.audio.sharedDelays.map(({ outputs, delayMs, off }): Verdict<'delay-shared'> => {
      const speakers = off.map(({ speaker }) => speaker);
      const asked = off.map(({ askedMs }) => askedMs);
      const spreadMs = Math.max(...asked) - Math.min(...asked);
      const highest = highestHz(about, speakers);
      const limitMs = (1000 * periodShare) / highest;
      const length = lengthIn(about.job, ...speakers.flatMap((id) => distanceSpots(about, id)));
      const each = listed(off.map((one) => offText(one, length)));
      return {
        level: spreadMs > limitMs + 1e-9 ? 'caution' : 'note',
        of: [...outputs, ...speakers],
        message: `${listed(speakers)} ${sharedText(about, speakers, outputs)}: set to ${printed('delay', delayMs)}, half-way, it leaves ${each}; the delays that they ask for lie ${printed('delay', spreadMs)} apart, and up to ${printed('delay', limitMs)}, a quarter of a period at ${hertz(highest)}, the highest that they play, they still add`,
        value: spreadMs,
        limit: limitMs,
        unit: 'ms',
        remedy: 'give each an output and a channel of its own, or move them to like distances',
        ...deviceSpot(about.job, deviceIdOf(outputs[0] ?? '')),
      };
    });
  },
};

export const speakerDelayRules: readonly Rule[] = [shared];
