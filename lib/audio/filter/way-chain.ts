import type { VehicleSide } from '../../model/vocabulary.ts';

/** What decides which way follows another below it. */
export interface ChainedWay {
  readonly highPassHz?: number;
  readonly lowPassHz?: number;
  readonly side: VehicleSide;
  readonly isBass: boolean;
}

/** The ways that are heard on a side: its own, those in the middle, bass from anywhere. */
export function heardOn<W extends ChainedWay>(ways: readonly W[], side: VehicleSide): readonly W[] {
  return ways.filter((way) => way.isBass || way.side === 'middle' || way.side === side);
}

/** The ways that play to the top: each begins a chain. */
export function topsOf<W extends ChainedWay>(ways: readonly W[]): readonly W[] {
  return ways.filter(({ lowPassHz, isBass }) => lowPassHz === undefined && !isBass);
}

/** How far the low-pass of a way stands from the high-pass of the one above it, octaves; infinite without a low-pass. */
export function octavesApart(
  { lowPassHz = Number.POSITIVE_INFINITY }: ChainedWay,
  highPassHz: number,
): number {
  return Math.abs(Math.log2(lowPassHz / highPassHz));
}

/**
 * From a way down: to each the way heard on the side of the first whose low-pass is nearest to its high-pass (Hz), of those
 * that may follow it. No way stands in a chain twice.
 */
export function wayChain<W extends ChainedWay>(
  top: W,
  ways: readonly W[],
  mayFollow: (way: W, highPassHz: number) => boolean,
): readonly W[] {
  const chain = [top];
  const heard = heardOn(ways, top.side);
  for (;;) {
    const { highPassHz } = chain.at(-1) ?? top;
    if (highPassHz === undefined) return chain;
    const [next] = heard
      .filter((way) => !chain.includes(way) && mayFollow(way, highPassHz))
      .toSorted((a, b) => octavesApart(a, highPassHz) - octavesApart(b, highPassHz));
    if (!next) return chain;
    chain.push(next);
  }
}
