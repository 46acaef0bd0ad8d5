import type { Response } from '../../audio/filter/complex.ts';
import { levelDb, type Path, pathResponse } from '../../audio/filter/filter-response.ts';
import { frequencies, sumResponse } from '../../audio/filter/response-curve.ts';
import { type ChainedWay, octavesApart, topsOf, wayChain } from '../../audio/filter/way-chain.ts';
import { cornersOf } from '../../audio/test-tone.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import { isFault } from '../../model/fault.ts';
import type { PlanAudio, PlanChannel, PlanSpeaker, PlanSum } from '../../model/plan/index.ts';
import { isOdd } from './path/path-polarity.ts';

/** From 20 Hz to 20 kHz, about six points an octave and both ends: enough for a drawing on paper. */
const drawn = frequencies({ fromHz: 20, toHz: 20_000, points: 61 });
/** Nothing below this is drawn. */
const floorDb = -100;

/** One way: a channel with its response and what decides which way it hands over to. */
interface Way extends ChainedWay {
  readonly channel: PlanChannel;
  readonly response: Response;
}

/** The channels with their sampled responses, and the sums of the ways that hand over to each other. */
export function withCurves(job: Job, audio: Omit<PlanAudio, 'curves'>): PlanAudio {
  const ways = audio.channels.flatMap((channel) => wayOf(job, channel, audio.speakers) ?? []);
  const responses = new Map(ways.map(({ channel, response }) => [channel.id, response]));
  return {
    ...audio,
    channels: audio.channels.map((channel) => {
      const response = responses.get(channel.id);
      return response && channel.filters.length + channel.peaks.length > 0
        ? { ...channel, levelsDb: levelsOf(response) }
        : channel;
    }),
    curves: { frequenciesHz: drawn.map((hz) => rounded(hz)), sums: sumsOf(ways) },
  };
}

/** Rounded to 0.01 dB; JSON knows no minus zero, so none goes into the plan. */
const rounded = (value: number): number => Number(value.toFixed(2)) + 0;

function levelsOf(response: Response): number[] {
  return drawn.map((hz) => rounded(Math.max(floorDb, levelDb(response(hz)))));
}

function wayOf(job: Job, channel: PlanChannel, speakers: readonly PlanSpeaker[]): Way | null {
  const own = speakers.filter(({ id }) => channel.speakers.includes(id));
  const [first] = own;
  if (!first) return null;
  // A cone that is turned round and wired reversed moves as the others do, as does one that a switch turns over as well.
  const isTurned = isOdd(channel.turnedBy ?? []);
  const path: Path = {
    id: channel.id,
    filters: channel.filters,
    peaks: channel.peaks,
    reversed: ((first.polarity === 'reversed') !== (first.mounted === 'reversed')) !== isTurned,
  };
  const response = pathResponse(path);
  if (isFault(response)) return null;
  const devices = job.devices.filter(({ id }) => channel.speakers.includes(id));
  const isBass = devices.some(({ spec }) => spec?.kind === 'speaker' && spec.band === 'subwoofer');
  const sides = new Set(devices.map(({ side }) => side));
  const [side = 'middle'] = sides.size === 1 ? sides : [];
  return { channel, response, ...cornersOf(channel.filters), side, isBass };
}

/**
 * One sum for each way that plays to the top: it, and the ways below that it hands over to, each with its low-pass within
 * an octave of the high-pass above it.
 */
function sumsOf(ways: readonly Way[]): PlanSum[] {
  return topsOf(ways).flatMap((top) => {
    const chain = wayChain(top, ways, (way, highPassHz) => octavesApart(way, highPassHz) <= 1);
    return chain.length < 2 ? [] : [sumOf(chain)];
  });
}

function sumOf(chain: readonly Way[]): PlanSum {
  const sum = sumResponse(chain.map(({ response }) => response));
  const handovers = chain.slice(1).flatMap((lower, index) => {
    const upper = chain[index];
    if (upper?.highPassHz === undefined || lower.lowPassHz === undefined) return [];
    const frequencyHz = Math.sqrt(upper.highPassHz * lower.lowPassHz);
    const alone = [upper, lower].map(({ response }) => levelDb(response(frequencyHz)));
    return [
      {
        upper: upper.channel.id,
        lower: lower.channel.id,
        frequencyHz: rounded(frequencyHz),
        sumDb: rounded(Math.max(floorDb, levelDb(sum(frequencyHz)))),
        louderDb: rounded(Math.max(floorDb, ...alone)),
      },
    ];
  });
  const [top] = chain;
  return {
    id: top?.channel.id ?? '',
    channels: chain.map(({ channel }) => channel.id),
    levelsDb: levelsOf(sum),
    handovers,
  };
}
