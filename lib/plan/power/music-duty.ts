import type { HouseRules } from '../../model/house-rules.ts';
import { commonPractice, type Traced, traced } from '../../model/trace.ts';

/** A channel that is loaded: its name, its rated power (W), whether it plays bass. */
export interface PlayedChannel {
  readonly id: string;
  readonly powerW: number;
  readonly bass: boolean;
}

/**
 * The average output of an amplifier with music, as a share of its rated output: channels that play bass count at the
 * duty of heavy bass, the others at that of music, each by its power. Duties: common practice.
 */
export function musicDuty(channels: readonly PlayedChannel[], rules: HouseRules): Traced<number> {
  const [usual, heavy] = [rules['music-duty'].value, rules['music-duty-bass'].value];
  const playing = channels.filter(({ powerW }) => powerW > 0);
  const sumW = (some: readonly PlayedChannel[]) => some.reduce((sum, { powerW }) => sum + powerW, 0);
  const bass = playing.filter((one) => one.bass);
  const others = playing.filter((one) => !one.bass);
  const common = { rule: 'music-duty', citation: commonPractice, mark: 'cp' } as const;
  if (bass.length === 0 || others.length === 0) {
    const only = bass.length > 0 ? heavy : usual;
    return traced(only, '', { ...common, formula: 'd', inputs: [['d', only, '']] });
  }
  return traced((usual * sumW(others) + heavy * sumW(bass)) / sumW(playing), '', {
    ...common,
    formula: '(d * P + b * B) / (P + B)',
    inputs: [
      ['d', usual, ''],
      ['P', sumW(others), 'W'],
      ['b', heavy, ''],
      ['B', sumW(bass), 'W'],
    ],
  });
}
