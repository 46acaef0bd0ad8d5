import { type GainTarget, gainTarget } from '../../audio/gain.ts';
import type { ChannelLoad } from '../../audio/load/amplifier-load.ts';
import { type TestTone, type TonePath, testTone } from '../../audio/test-tone.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanChannel, PlanGain } from '../../model/plan/index.ts';
import { stemName } from '../../model/ports/pair-name.ts';
import { ratedSupplyV } from '../../power/network/rated-voltage.ts';
import type { PlanBook } from '../plan-book.ts';
import { remarkFault } from '../remark-fault.ts';
import { devicesById } from '../wiring/conductor-role.ts';
import { isSubwoofer } from './is-subwoofer.ts';
import type { CoilField, Output } from './load/amplifier-output.ts';
import { factsOfOutput } from './signal-inputs.ts';
import { sourcesOf } from './signal-sources.ts';

/** The load of a channel, and how far below full its gain is set for it (dB, 0 or below). */
interface GainedLoad {
  readonly load: ChannelLoad;
  readonly gainDb: number;
  readonly field: CoilField;
}

/**
 * What the gain of one channel is set for: the tone, the reading on the meter through everything that stands in the path
 * then, the margins to clipping. Without a tone that its path lets through there is no reading.
 */
export function channelGain(
  output: Output,
  channel: PlanChannel & { readonly powerW: number },
  { load, gainDb, field }: GainedLoad,
  job: Job,
  book: PlanBook,
): Pick<PlanChannel, 'gainVoltageV' | 'toneHz' | 'gain'> {
  const at = `audio.channels.${output.id}`;
  const isBass = channel.speakers.some((id) => isSubwoofer(job, id));
  const usualHz = job.rules[isBass ? 'tone-bass' : 'tone-others'].value;
  const overlapDb = job.rules['gain-overlap'].value;
  const tone = testTone({
    channel: output.id,
    filters: channel.filters,
    peaks: channel.peaks,
    usualHz,
    overlapDb,
    lowestDb: job.rules['tone-lowest'].value,
    nearDb: job.rules['tone-near-highest'].value,
    ...sourceRange(job, output),
  });
  if (isFault(tone)) {
    // A filter that nobody makes is told where it is written.
    const isFilter = tone.fault === 'filter-order-not-made' || tone.fault === 'filter-corner-unclear';
    if (!isFilter) remarkFault(tone, output.device, book);
    return { toneHz: usualHz, gainVoltageV: null, gain: null };
  }
  const target = gainTarget({
    channel: output.id,
    loadOhm: load.loadOhm.value,
    powerW: channel.powerW,
    speakersW: speakersLimitW(load, field),
    ratedSupplyV: ratedSupplyV(output.part.supply, job.rules, output.systemShare),
    supplyV: output.sizingV,
    regulated: output.part.supply.type === 'regulated',
    overlapDb,
    levelDb: gainDb,
    pathDb: tone.pathDb.value,
  });
  const toneHz = book.trace(`${at}.toneHz`, tone.frequencyHz);
  if (isFault(target)) {
    remarkFault(target, output.device, book);
    return { toneHz, gainVoltageV: null, gain: null };
  }
  return {
    toneHz,
    gainVoltageV: book.trace(`${at}.gainVoltageV`, target.meterV),
    gain: planGain(`${at}.gain`, tone, target, overlapDb, book),
  };
}

/** The range of what feeds a channel, from the lowest to the highest of its sources; left out where one is not known. */
function sourceRange(job: Job, { device, spec }: Output): Pick<TonePath, 'sourceHz'> {
  const devices = devicesById(job);
  const { outputs } = sourcesOf(job, devices, [{ device: device.id, terminal: spec.input }]);
  const ranges = outputs.map((end) => {
    const source = devices.get(end.device);
    return source && factsOfOutput(job, source, stemName(end.terminal)).bandwidth;
  });
  const known = ranges.flatMap((range) => range ?? []);
  if (known.length === 0 || known.length < ranges.length) return {};
  return {
    sourceHz: {
      from: Math.min(...known.map(({ from }) => from)),
      to: Math.max(...known.map(({ to }) => to)),
    },
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
    pathDb: book.trace(`${at}.pathDb`, tone.pathDb),
    state: tone.state,
  };
}

/** Power of the channel at which its first speaker has all that it may take. */
function speakersLimitW(load: ChannelLoad, { speakerW }: CoilField): number {
  const added = load.coils.reduce((sum, { powerW }) => sum + powerW.value, 0);
  const total = isFault(load.power) ? added : load.power.powerW.value;
  const share = new Map<string, number>();
  for (const { speaker, powerW } of load.coils)
    share.set(speaker, (share.get(speaker) ?? 0) + powerW.value / total);
  return Math.min(...[...share].map(([speaker, part]) => (speakerW.get(speaker) ?? 0) / part));
}
