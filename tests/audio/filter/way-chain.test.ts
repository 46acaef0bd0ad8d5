import { describe, expect, it } from 'vitest';
import {
  type ChainedWay,
  heardOn,
  octavesApart,
  topsOf,
  wayChain,
} from '../../../lib/audio/filter/way-chain.ts';

/* Ways of a three-way front with a subwoofer, as a shop crosses them: common practice, no source. */
const way = (
  name: string,
  side: ChainedWay['side'],
  highPassHz?: number,
  lowPassHz?: number,
  isBass = false,
) => ({
  ...{ name, side, isBass },
  ...(highPassHz !== undefined && { highPassHz }),
  ...(lowPassHz !== undefined && { lowPassHz }),
});
const tweeter = way('tweeter', 'left', 3150);
const middle = way('middle', 'left', 400, 3150);
const woofer = way('woofer', 'left', 80, 400);
const sub = way('sub', 'right', 25, 80, true);
const other = way('other', 'right', 400, 3150);
const centre = way('centre', 'middle', 300, 5000);
const all = [other, centre, sub, woofer, middle, tweeter];
const always = (one: ChainedWay): boolean => one.lowPassHz !== undefined;

const names = (ways: readonly { readonly name: string }[]) => ways.map(({ name }) => name);

describe('a chain of ways', () => {
  it('goes from the top to the way whose low-pass is nearest, on its own side, down to bass from anywhere', () => {
    expect(names(topsOf(all))).toEqual(['tweeter']);
    expect(names(wayChain(tweeter, all, always))).toEqual(['tweeter', 'middle', 'woofer', 'sub', 'centre']);
  });

  it('ends where none may follow', () => {
    const within = (octaves: number) => (one: ChainedWay, highPassHz: number) =>
      octavesApart(one, highPassHz) <= octaves;
    expect(names(wayChain(tweeter, all, within(1)))).toEqual(['tweeter', 'middle', 'woofer', 'sub']);
    // 5,000 Hz over 3,150 Hz are 0.667 octaves; 3,150 Hz over itself none.
    expect(octavesApart(centre, 3150)).toBeCloseTo(0.667, 3);
    expect(names(wayChain(tweeter, [tweeter, centre], within(0.66)))).toEqual(['tweeter']);
    expect(names(wayChain(tweeter, [tweeter, centre], within(0.67)))).toEqual(['tweeter', 'centre']);
  });

  it('has no way twice, and ends at one without a high-pass', () => {
    const open = way('open', 'left', undefined, 3150);
    expect(names(wayChain(tweeter, [tweeter, open, woofer], always))).toEqual(['tweeter', 'open']);
    expect(octavesApart(tweeter, 100)).toBe(Number.POSITIVE_INFINITY);
  });

  it('hears on a side its own, those in the middle, and bass from anywhere', () => {
    expect(names(heardOn(all, 'right'))).toEqual(['other', 'centre', 'sub']);
  });
});
