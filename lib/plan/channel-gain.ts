import type { ChannelLoad } from '../audio/amplifier-load.ts';
import { isFault } from '../audio/fault.ts';
import { type GainTarget, gainTarget } from '../audio/gain.ts';
import { type TestTone, testTone } from '../audio/test-tone.ts';
import type { PlanChannel, PlanFilter, PlanGain } from '../model/plan/index.ts';
import type { Job } from '../model/resolved-job.ts';
import type { CoilField, Output } from './audio-channels.ts';
import { isSubwoofer } from './is-subwoofer.ts';
import type { PlanBook } from './plan-book.ts';
import { remarkFault } from './remark-fault.ts';

/** What the gain of one channel is set for: the tone, the reading on the meter, the margins to clipping. */
export function channelGain(
  output: Output,
  channel: PlanChannel & { readonly powerW: number },
  load: ChannelLoad,
  field: CoilField,
  job: Job,
  book: PlanBook,
): Pick<PlanChannel, 'gainVoltageV' | 'toneHz' | 'gain'> {
  const at = `audio.channels.${output.id}`;
  const isBass = channel.speakers.some((id) => isSubwoofer(job, id));
  const usualHz = job.rules[isBass ? 'tone-bass' : 'tone-others'].value;
  const overlapDb = job.rules['gain-overlap'].value;
  const tone = testTone({ channel: output.id, usualHz, overlapDb, ...bandOf(channel.filters) });
  const target = gainTarget({
    channel: output.id,
    loadOhm: load.loadOhm.value,
    powerW: channel.powerW,
    speakersW: speakersLimitW(load, field),
    ratedSupplyV: job.rules['voltage-rated'].value,
    supplyV: job.rules['voltage-sizing'].value,
    regulated: output.part.supply.type === 'regulated',
    overlapDb,
  });
  for (const result of [tone, target]) if (isFault(result)) remarkFault(result, output.device, book);
  return {
    toneHz: isFault(tone) ? usualHz : book.trace(`${at}.toneHz`, tone.frequencyHz),
    gainVoltageV: isFault(target) ? null : book.trace(`${at}.gainVoltageV`, target.meterV),
    gain: isFault(tone) || isFault(target) ? null : planGain(`${at}.gain`, tone, target, overlapDb, book),
  };
}

function planGain(
  at: string,
  tone: TestTone,
  target: GainTarget,
  overlapDb: number,
  book: PlanBook,
): PlanGain {
  return {
    targetPowerW: book.trace(`${at}.targetPowerW`, target.targetPowerW),
    targetV: book.trace(`${at}.targetV`, target.targetV),
    clipV: book.trace(`${at}.clipV`, target.clipV),
    toneMarginDb: book.trace(`${at}.toneMarginDb`, target.toneMarginDb),
    fullScaleMarginDb: book.trace(`${at}.fullScaleMarginDb`, target.fullScaleMarginDb),
    toneLevelDb: book.trace(`${at}.toneLevelDb`, tone.levelDb),
    overlapDb,
  };
}

/** The band that a path's filters leave: the highest high-pass corner to the lowest low-pass corner, in Hz. */
export function bandOf(filters: readonly PlanFilter[]): {
  readonly highPassHz?: number;
  readonly lowPassHz?: number;
} {
  const highs = filters.filter(({ pass }) => pass !== 'low-pass').map(({ cornerHz }) => cornerHz);
  const lows = filters.filter(({ pass }) => pass === 'low-pass').map(({ cornerHz }) => cornerHz);
  return {
    ...(highs.length > 0 ? { highPassHz: Math.max(...highs) } : {}),
    ...(lows.length > 0 ? { lowPassHz: Math.min(...lows) } : {}),
  };
}

/** Power of the channel at which its first speaker has all that it may take. */
function speakersLimitW(load: ChannelLoad, { speakerW }: CoilField): number {
  const total = load.coils.reduce((sum, { powerW }) => sum + powerW.value, 0);
  const share = new Map<string, number>();
  for (const { speaker, powerW } of load.coils)
    share.set(speaker, (share.get(speaker) ?? 0) + powerW.value / total);
  return Math.min(...[...share].map(([speaker, part]) => (speakerW.get(speaker) ?? 0) / part));
}
