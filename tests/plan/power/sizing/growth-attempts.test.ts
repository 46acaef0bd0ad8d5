import { describe, expect, test } from 'vitest';
import {
  continuousPoints,
  type NetworkInput,
  operatingPoints,
  solvePoint,
} from '../../../../lib/plan/power/operating-points.ts';
import { notRunning } from '../../../../lib/plan/power/sizing/growth-attempts.ts';
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
