import { magnitude, type Response } from './filter/complex.ts';
import { levelDb } from './filter/filter-response.ts';
import { frequencies } from './filter/response-curve.ts';

/** A way with the corners of its band; one that it lacks is left open to that end. */
export interface PlayedWay {
  readonly id: string;
  readonly response: Response;
  readonly highPassHz?: number;
  readonly lowPassHz?: number;
}

/** A stretch between two corners that no way plays. */
export interface Gap {
  readonly below: PlayedWay & { readonly lowPassHz: number };
  readonly above: PlayedWay & { readonly highPassHz: number };
  /** From corner to corner. */
  readonly octaves: number;
  /** The most that all ways together can reach where it is deepest: their magnitudes added. */
  readonly deepestDb: number;
}

/**
 * Where nobody plays: stretches between a low-pass and the next high-pass above it in which all ways together, each at
 * its full magnitude as if all were in phase, stay more than `lowestDb` below their band. What they make of each other's
 * phase is another matter, and only lowers it.
 */
export function gapsBetween(ways: readonly PlayedWay[], lowestDb: number): readonly Gap[] {
  const lows = ways.flatMap(({ lowPassHz }) => lowPassHz ?? []);
  const highs = ways.flatMap(({ highPassHz }) => highPassHz ?? []);
  const [fromHz, toHz] = [Math.min(...lows), Math.max(...highs)];
  if (!(fromHz < toHz) || !Number.isFinite(fromHz)) return [];
  const points = Math.ceil(24 * Math.log2(toHz / fromHz)) + 2;
  const gaps = frequencies({ fromHz, toHz, points }).flatMap((hz) => {
    const db = mostDb(ways, hz, -lowestDb);
    return db < -lowestDb - 1e-9 ? (gapAt(ways, hz, db) ?? []) : [];
  });
  const pairs = new Map<string, Gap>();
  for (const gap of gaps) {
    const key = `${gap.below.id} ${gap.above.id}`;
    const before = pairs.get(key);
    if (!before || gap.deepestDb < before.deepestDb) pairs.set(key, gap);
  }
  return [...pairs.values()];
}

/** The most that ways can add up to at a frequency, in dB; where some of them reach `enoughDb`, what these do. */
function mostDb(ways: readonly PlayedWay[], hz: number, enoughDb: number): number {
  const enough = 10 ** (enoughDb / 20);
  let sum = 0;
  for (const { response } of ways) {
    sum += magnitude(response(hz));
    if (sum >= enough) break;
  }
  return levelDb({ re: sum, im: 0 });
}

/** The ways whose corners lie nearest below and above a frequency. */
function gapAt(ways: readonly PlayedWay[], hz: number, deepestDb: number): Gap | null {
  const below = ways
    .flatMap((way) =>
      way.lowPassHz !== undefined && way.lowPassHz <= hz ? [{ ...way, lowPassHz: way.lowPassHz }] : [],
    )
    .toSorted((a, b) => b.lowPassHz - a.lowPassHz)[0];
  const above = ways
    .flatMap((way) =>
      way.highPassHz !== undefined && way.highPassHz >= hz ? [{ ...way, highPassHz: way.highPassHz }] : [],
    )
    .toSorted((a, b) => a.highPassHz - b.highPassHz)[0];
  if (!below || !above) return null;
  return { below, above, octaves: Math.log2(above.highPassHz / below.lowPassHz), deepestDb };
}
