import { describe, expect, test } from 'vitest';
import { isKink, thinnerBounds } from '../../../../lib/plan/power/sizing/bend-bounds.ts';
import type { SizedConductor } from '../../../../lib/plan/power/sizing/conductor-sizing.ts';
import { inJob } from '../../../read/problem-case.ts';
import { settledShop } from '../settled-power.ts';

const kink = (id: string) => ({ rule: 'bend-too-tight', level: 'stop', of: [id] });

/** The small shop's supply with its amplifier on a board: tail and feed to it are power, `ground` leads off it. */
function shop(change: (one: SizedConductor) => SizedConductor = (one) => one) {
  const { sizing, power } = settledShop(inJob('holder-a, in: bay', 'holder-a, in: bay, fuse: 60 A'));
  const devices = sizing.job.devices.map((one) =>
    one.id === 'amp' ? { ...one, board: 'main' } : { ...one, board: null },
  );
  const sized = new Map([...power.conductors].map(([id, one]) => [id, change(one)]));
  return { job: { devices }, sized, mm2: (id: string) => sized.get(id)?.cable.size.areaMm2 ?? Number.NaN };
}

test('a wire kinks where its bend is a stop, and where anything else is told it does not', () => {
  expect(isKink(kink('feed'))).toBe(true);
  expect(isKink({ ...kink('feed'), level: 'caution' })).toBe(false);
  expect(isKink({ ...kink('feed'), rule: 'wire-without-way' })).toBe(false);
});

describe('what kinks becomes thinner', () => {
  test('and with it what goes to the same device on the board, and nothing else', () => {
    const { job, sized, mm2 } = shop();
    const bounds = thinnerBounds(job, [kink('feed')], sized, new Map());
    expect(bounds).toEqual(
      new Map([
        ['feed', mm2('feed')],
        ['ground', mm2('feed')],
      ]),
    );
    // The fuse before the feed lies off the board: its tail is no mate.
    expect(mm2('tail')).toBeGreaterThan(0);
  });

  test('under a bound that stood before and is tighter, no further; under a wider one, further', () => {
    const { job, sized, mm2 } = shop();
    const tight = new Map([['ground', 1]]);
    expect(thinnerBounds(job, [kink('feed')], sized, tight)).toEqual(
      new Map([
        ['ground', 1],
        ['feed', mm2('feed')],
      ]),
    );
    expect(thinnerBounds(job, [kink('feed')], sized, new Map([['feed', 1000]]))?.get('feed')).toBe(
      mm2('feed'),
    );
  });

  test('not what is over its bound already: then nothing lawful was thinner', () => {
    const { job, sized, mm2 } = shop();
    const stood = new Map(['feed', 'ground'].map((id) => [id, mm2('feed')]));
    expect(thinnerBounds(job, [kink('feed')], sized, stood)).toBeNull();
    const nearly = new Map(['feed', 'ground'].map((id) => [id, mm2('feed') * 1.0005]));
    expect(thinnerBounds(job, [kink('feed')], sized, nearly)).toBeNull();
  });

  test('for the kink of a ground as for that of a feed', () => {
    const { job, sized, mm2 } = shop();
    expect(thinnerBounds(job, [kink('ground')], sized, new Map())?.get('feed')).toBe(mm2('ground'));
  });

  test('not what was given', () => {
    const { job, sized, mm2 } = shop((one) => (one.link.id === 'ground' ? { ...one, chosen: 'given' } : one));
    expect(thinnerBounds(job, [kink('feed')], sized, new Map())).toEqual(new Map([['feed', mm2('feed')]]));
  });

  test('not a wire that is none of the supply, nor for one', () => {
    const speaker = shop((one) => (one.link.id === 'ground' ? { ...one, role: 'speaker' } : one));
    expect([...(thinnerBounds(speaker.job, [kink('feed')], speaker.sized, new Map()) ?? [])].length).toBe(1);
    expect(thinnerBounds(speaker.job, [kink('ground')], speaker.sized, new Map())).toBeNull();
  });

  test('not for a caution, for what is not sized, or for nothing', () => {
    const { job, sized } = shop();
    expect(thinnerBounds(job, [{ ...kink('feed'), level: 'caution' }], sized, new Map())).toBeNull();
    expect(thinnerBounds(job, [kink('strange')], sized, new Map())).toBeNull();
    expect(
      thinnerBounds(job, [{ rule: 'bend-too-tight', level: 'stop', of: [] }], sized, new Map()),
    ).toBeNull();
    expect(thinnerBounds(job, [], sized, new Map([['feed', 3]]))).toBeNull();
  });
});
