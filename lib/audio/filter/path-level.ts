import type { Figure } from '../../model/trace.ts';
import { type Filter, type FilterFault, levelDb, pathResponse } from './filter-response.ts';
import { isShaped, type Peak, peakResponse } from './peak.ts';
import { highestLevelDb } from './response-curve.ts';

/** Everything between the source and the terminals of a channel that shapes its response. */
export interface ShapedPath {
  readonly channel: string;
  readonly filters: readonly Filter[];
  readonly peaks: readonly Peak[];
}

/** The level of a path at any frequency, and its highest level, in dB. */
export interface PathLevel {
  /** Never above the true level: a peak of unknown shape counts with its cut, and with none of its boost. */
  readonly atDb: (frequencyHz: number) => number;
  /** Never below the true highest level: a peak of unknown shape counts with its whole boost. */
  readonly highestDb: number;
  /** The share of each part at a frequency, as a working lists it. */
  readonly partsAt: (frequencyHz: number) => readonly Figure[];
}

/**
 * The level of a path after commissioning. Of a peak that only its height is known of, the bounds are taken that make
 * the reading of a meter the lower one.
 */
export function pathLevel({ channel, filters, peaks }: ShapedPath): PathLevel | FilterFault {
  const response = pathResponse({ id: channel, filters, peaks });
  if ('fault' in response) return response;
  const unshaped = peaks.filter((peak) => !isShaped(peak));
  const cutDb = unshaped.reduce((sum, { gainDb }) => sum + Math.min(0, gainDb), 0);
  const boostDb = unshaped.reduce((sum, { gainDb }) => sum + Math.max(0, gainDb), 0);
  const marks = [
    ...filters.map(({ cornerHz }) => cornerHz),
    ...peaks.flatMap(({ centreHz }) => centreHz ?? []),
  ];
  return {
    atDb: (frequencyHz) => levelDb(response(frequencyHz)) + cutDb,
    highestDb: highestLevelDb(response, marks) + boostDb,
    partsAt: (frequencyHz) => [
      ...filters.map((filter) => filterAt(channel, filter, frequencyHz)),
      ...peaks.map((peak) => peakAt(peak, frequencyHz)),
    ],
  };
}

function filterAt(channel: string, filter: Filter, frequencyHz: number): Figure {
  const response = pathResponse({ id: channel, filters: [filter] });
  const name = `${filter.pass} at ${filter.cornerHz} Hz`;
  return [name, 'fault' in response ? 'not made' : levelDb(response(frequencyHz)), 'dB'];
}

function peakAt(peak: Peak, frequencyHz: number): Figure {
  const { centreHz, gainDb } = peak;
  const name = `${gainDb} dB at ${centreHz === null ? 'an unknown centre' : `${centreHz} Hz`}`;
  return [name, isShaped(peak) ? levelDb(peakResponse(peak)(frequencyHz)) : Math.min(0, gainDb), 'dB'];
}
