import { type Fault, faultOf, isFault, isPositive } from '../model/fault.ts';
import { preferredFrequencies, preferredFrequenciesHz } from '../model/tables/preferred-frequencies.ts';
import { commonPractice, type Traced, traced } from '../model/trace.ts';
import type { ToneState } from '../model/vocabulary.ts';
import type { Filter, FilterFault } from './filter/filter-response.ts';
import { type PathLevel, pathLevel, type ShapedPath } from './filter/path-level.ts';

/** What a path plays, and which tones there are to set its gain with. */
export interface TonePath extends ShapedPath {
  /**
   * The tone that the shop uses for a path of this kind: 50 Hz for bass, 1 kHz for others, unless it sets its
   * own.
   */
  readonly usualHz: number;
  /**
   * How far below full scale the tone is recorded, 0 or more: what a full-scale passage asks for beyond the
   * tone.
   */
  readonly overlapDb: number;
  /** How far the path may be below its highest level at the tone. */
  readonly lowestDb: number;
  /** How far below the highest that the tones reach another tone may lie. */
  readonly nearDb: number;
  /** What the source gives, where that is known: no other tone can be played. */
  readonly sourceHz?: { readonly from: number; readonly to: number };
}

export interface TestTone {
  readonly frequencyHz: Traced<number>;
  /** Level of the recorded tone against full scale, 0 or below. */
  readonly levelDb: Traced<number>;
  /** Level of the path at the tone against its highest after commissioning, 0 or below. */
  readonly pathDb: Traced<number>;
  readonly state: ToneState;
}

export type ToneFault = Fault<'band-empty' | 'overlap-unclear' | 'tone-not-played'> | FilterFault;

/**
 * The test tone to set the gain of a path with, and the level of the path at it: L, the response of everything in the
 * path less its highest one, never above 0. The shop's usual tone serves where L is within `lowestDb` (common
 * practice); else the third-octave tone (ISO 266) nearest to it of those within `nearDb` of the highest that such tones
 * reach. Where none of them does, equalising and boosts stand flat while the gain is set, and L is that of the filters
 * against the highest level of the whole path.
 */
export function testTone(path: TonePath): TestTone | ToneFault {
  const fault = toneFault(path);
  if (fault) return fault;
  const whole = pathLevel(path);
  if (isFault(whole)) return whole;
  const found = bestTone(path, whole);
  if (found !== null && isHighEnough(found.levelDb - whole.highestDb, path))
    return toneOf(path, found, whole, whole, 'as-loaded');
  const bare = pathLevel({ ...path, peaks: [] });
  if (isFault(bare)) return bare;
  const flat = bestTone(path, bare);
  if (flat !== null && isHighEnough(flat.levelDb - bare.highestDb, path))
    return toneOf(path, flat, bare, whole, 'equalising-flat');
  return notPlayed(path);
}

interface Chosen {
  readonly frequencyHz: number;
  readonly levelDb: number;
}

const isHighEnough = (levelDb: number, { lowestDb }: TonePath) => levelDb >= -lowestDb - 1e-9;

/** The usual tone where it is high enough, else the best of the recorded ones; null where none can be played. */
function bestTone(path: TonePath, level: PathLevel): Chosen | null {
  const { from, to } = path.sourceHz ?? { from: 0, to: Number.POSITIVE_INFINITY };
  const tones = [path.usualHz, ...preferredFrequenciesHz]
    .filter((hz) => hz >= from && hz <= to)
    .map((frequencyHz): Chosen => ({ frequencyHz, levelDb: level.atDb(frequencyHz) }));
  const [usual] = tones;
  if (usual === undefined) return null;
  if (usual.frequencyHz === path.usualHz && isHighEnough(usual.levelDb - level.highestDb, path)) return usual;
  const highestDb = Math.max(...tones.map(({ levelDb }) => levelDb));
  const octaves = ({ frequencyHz }: Chosen) => Math.abs(Math.log2(frequencyHz / path.usualHz));
  const [nearest] = tones
    .filter(({ levelDb }) => levelDb >= highestDb - path.nearDb - 1e-9)
    .toSorted((a, b) => octaves(a) - octaves(b));
  return nearest ?? null;
}

/** A tone with its working: `level` is that of the path while the gain is set, `whole` the one after commissioning. */
function toneOf(
  path: TonePath,
  { frequencyHz, levelDb }: Chosen,
  level: PathLevel,
  whole: PathLevel,
  state: ToneState,
): TestTone {
  const { usualHz, overlapDb, lowestDb, nearDb, sourceHz } = path;
  const isUsual = frequencyHz === usualHz;
  return {
    state,
    frequencyHz: traced(frequencyHz, 'Hz', {
      rule: 'test-tone-frequency',
      formula: isUsual
        ? `f = ${usualHz} Hz, where the path is within ${lowestDb} dB of its highest level`
        : `f = the third-octave tone nearest to ${usualHz} Hz of those within ${nearDb} dB of the highest in the band, as ${usualHz} Hz lies outside`,
      ...(isUsual ? { citation: commonPractice, mark: 'cp' as const } : preferredFrequencies),
      inputs: [
        ...path.filters.map(({ pass, cornerHz }) => [pass, cornerHz, 'Hz'] as const),
        ...(sourceHz
          ? [['source from', sourceHz.from, 'Hz'] as const, ['source to', sourceHz.to, 'Hz'] as const]
          : []),
      ],
    }),
    // Zero is written without a sign.
    levelDb: traced(overlapDb === 0 ? 0 : -overlapDb, 'dB', {
      rule: 'test-tone-level',
      formula: 'level = -overlap, against full scale',
      citation: commonPractice,
      mark: 'cp',
      inputs: [['overlap', overlapDb, 'dB']],
    }),
    pathDb: traced(Math.min(0, levelDb - whole.highestDb), 'dB', {
      rule: 'path-level-at-tone',
      formula: `L = the sum of the parts at f, less the highest level Lmax of the path after commissioning, at most 0${state === 'as-loaded' ? '' : '; equalising and boosts flat while the gain is set'}`,
      citation: 'Definition of the level in dB; the responses of the filters',
      inputs: [['f', frequencyHz, 'Hz'], ...level.partsAt(frequencyHz), ['Lmax', whole.highestDb, 'dB']],
    }),
  };
}

function notPlayed({ channel, sourceHz, lowestDb }: TonePath): ToneFault {
  const range = sourceHz ? `, and its source gives ${sourceHz.from} to ${sourceHz.to} Hz` : '';
  return faultOf(
    'tone-not-played',
    [channel],
    `no test tone comes within ${lowestDb} dB of the highest level of channel ${channel}${range}`,
    'feed the path from an output that gives its band, or move its corners apart',
  );
}

/** The corners between which filters let a band through, in Hz. */
export function cornersOf(filters: readonly Pick<Filter, 'pass' | 'cornerHz'>[]): {
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

function toneFault(path: TonePath): ToneFault | null {
  const { channel, usualHz, overlapDb, filters } = path;
  const { highPassHz = 0, lowPassHz = Number.POSITIVE_INFINITY } = cornersOf(filters);
  if (!(highPassHz >= 0 && lowPassHz > highPassHz && isPositive(usualHz)))
    return faultOf(
      'band-empty',
      [channel],
      `the high-pass of channel ${channel} at ${highPassHz} Hz is not below its low-pass at ${lowPassHz} Hz`,
      'correct the corners, so that the path plays something',
    );
  if (!(Number.isFinite(overlapDb) && overlapDb >= 0 && overlapDb <= 20))
    return faultOf(
      'overlap-unclear',
      [channel],
      `a gain overlap of ${overlapDb} dB on channel ${channel} is outside 0 to 20 dB`,
      'write how far below full scale the test tone is recorded, such as 5 dB',
    );
  return null;
}
