import { describe, expect, test } from 'vitest';
import {
  continuousPoints,
  type NetworkInput,
  operatingPoints,
  solvePoint,
} from '../../../../lib/plan/power/operating-points.ts';
import { hardestPoints, notRunning } from '../../../../lib/plan/power/sizing/growth-attempts.ts';
import { LeastSizes } from '../../../../lib/plan/power/sizing/least-sizes.ts';
import { sizeForDrop } from '../../../../lib/plan/power/sizing/size-for-drop.ts';
import { sizePower } from '../../../../lib/plan/power/sizing/size-power.ts';
import { inJob } from '../../../read/problem-case.ts';
import type { Change } from '../../../read/small-shop.ts';
import { inShop } from '../../shop-changes.ts';
import { settledShop } from '../settled-power.ts';

/** The devices that are too low at any point that lasts, all of them solved. */
function darkAtAny(network: NetworkInput): readonly string[] {
  const lasting = operatingPoints.filter(({ name }) => continuousPoints.includes(name));
  const low = lasting.flatMap((point) => {
    const { state, elements } = solvePoint(network, point);
    const loads = elements.filter(({ kind }) => kind === 'load');
    return loads.filter(({ dropV = 0, cutoutV = 0 }) => state === 'no-solution' || dropV < cutoutV);
  });
  return [...new Set(low.map(({ of }) => of))].sort();
}

const feedLong = (metres: number) => inJob('to: amp.B+ }', `to: amp.B+, length: ${metres} m }`);
const long = inShop('red-8: { reels: [30 ft]', 'red-8: { reels: [400 ft]');
const rule = (text: string) => inShop('stock:\n', `rules: { ${text} }\nstock:\n`);

describe('whether devices run', () => {
  // The points between are told from those that are harder; the reference solves each of them.
  test.each<readonly [string, readonly Change[]]>([
    ['the rules of the house', []],
    ['an alternator that gives next to nothing at idle', [rule('alternator-idle-share: 5 %')]],
    [
      'a battery that is stronger at the end of its reserve than rested',
      [rule('voltage-engine-off: 12.9 V')],
    ],
  ])('is the same as with every point solved, by %s', (_, changes) => {
    const lengths = [1, 8, 14, 18, 22, 26, 30, 36, 50];
    const found = lengths.map((metres) => {
      const { sizing: settled } = settledShop(feedLong(metres), long, ...changes);
      const sizing = { ...settled, least: new LeastSizes() };
      const network = { ...sizing, ...sizePower(sizing) };
      expect([...notRunning(network)].sort()).toEqual(darkAtAny(network));
      return notRunning(network).has('amp');
    });
    expect(found[0]).toBe(false);
    expect(found.at(-1)).toBe(true);
  });
});

test('what was given up for one way is not tried again for a longer one', () => {
  const { sizing: settled } = settledShop(feedLong(40), long);
  const least = new LeastSizes();
  const first = sizeForDrop({ ...settled, least });
  const tried = least.held().tried.bare.get('amp') ?? 0;
  expect(tried).toBeGreaterThan(0);
  const again = sizeForDrop({ ...settled, least });
  expect([...again.conductors.values()].map(({ cable }) => cable.size.label)).toEqual(
    [...first.conductors.values()].map(({ cable }) => cable.size.label),
  );
  expect(least.held().tried.bare.get('amp')).toBe(tried);
});

describe('the points at which it is asked whether devices run', () => {
  const names = (
    changes: readonly Change[],
    loads: readonly { readonly ratedA: number; readonly musicA: number; readonly idleA: number }[],
  ) => {
    const { sizing } = settledShop(...changes);
    const [load] = sizing.loads;
    if (!load) throw new Error('The small shop has no load.');
    return hardestPoints({ job: sizing.job, loads: loads.map((currents) => ({ ...load, ...currents })) }).map(
      ({ name }) => name,
    );
  };
  const usual = { ratedA: 30, musicA: 10, idleA: 1 };

  test('are those that no other is harder than: each supply with its greatest loads', () => {
    expect(names([], [usual, usual])).toEqual(['rated-power', 'music', 'engine-off']);
    expect(names([], [usual, { ratedA: 5, musicA: 5, idleA: 5 }])).toEqual([
      'rated-power',
      'music',
      'engine-off',
    ]);
  });

  test('are more where one load is greater in silence, and where rest has the weaker battery', () => {
    const hungry = { ratedA: 30, musicA: 1, idleA: 2 };
    expect(names([], [usual, hungry])).toEqual(['rated-power', 'music', 'engine-off', 'idle', 'rest']);
    // Silence, greater than music, comes first with the alternator; the battery is the weaker with music.
    expect(names([], [hungry])).toEqual(['rated-power', 'engine-off', 'idle', 'rest']);
    expect(names([rule('voltage-engine-off: 12.9 V')], [usual])).toEqual([
      'rated-power',
      'music',
      'engine-off',
      'rest',
    ]);
  });

  test('are the earlier ones where all ask the same', () => {
    const steady = { ratedA: 10, musicA: 10, idleA: 10 };
    expect(names([], [steady])).toEqual(['rated-power', 'music', 'engine-off']);
    expect(names([], [])).toEqual(['rated-power', 'music', 'engine-off']);
  });
});
