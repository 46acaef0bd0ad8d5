import { cornersOf } from '../../audio/test-tone.ts';
import type { PlanSharedDelay } from '../../model/plan/index.ts';
import { printed } from '../../model/printed/index.ts';
import { deviceIdOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { listed } from '../words.ts';

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

function offText({ speaker, offMs, offM }: PlanSharedDelay['off'][number]): string {
  const centimetres = `${Number((100 * Math.abs(offM)).toFixed(1))} cm`;
  return `${speaker} ${printed('delay', Math.abs(offMs))} (${centimetres}) ${offMs < 0 ? 'early' : 'late'}`;
}

const shared: Rule = {
  id: 'delay-shared',
  judge(about) {
    return about.plan.audio.sharedDelays.map(({ outputs, delayMs, off }): Verdict<'delay-shared'> => {
      const speakers = off.map(({ speaker }) => speaker);
      const asked = off.map(({ askedMs }) => askedMs);
      const spreadMs = Math.max(...asked) - Math.min(...asked);
      const limitMs = (1000 * periodShare) / highestHz(about, speakers);
      return {
        level: spreadMs > limitMs + 1e-9 ? 'caution' : 'note',
        of: [...outputs, ...speakers],
        message: `${listed(speakers)} hang on ${listed(outputs)}, and an output has one delay: set to ${printed('delay', delayMs)}, half-way, it leaves ${listed(off.map(offText))}`,
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
