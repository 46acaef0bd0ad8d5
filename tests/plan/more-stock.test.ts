import fc from 'fast-check';
import { expect, test } from 'vitest';
import { planJob } from '../../lib/plan/plan-job.ts';
import { judge } from '../../lib/rules/index.ts';
import { type Change, smallShop } from '../read/small-shop.ts';
import { jobOf } from './plan-small-shop.ts';

const reels = ['red-4', 'black-4', 'red-8', 'black-8'] as const;
const fuses = ['large-60', 'large-80'] as const;
const anyShelf = fc.record({ reels: fc.subarray([...reels]), fuses: fc.subarray([...fuses]) });

/** The stops of the small shop's job with just these reels and fuses on the shelf, and whether every fuse has a rating. */
function planWith(shelf: readonly string[]) {
  const missing: Change[] = [
    ...reels.map((id) => [id, `${id}: { reels: [30 ft] }`, `${id}: { reels: [1 ft] }`] as const),
    ...fuses.map((id) => [id, `${id}: { pieces: 2 }`, `${id}: { pieces: 0 }`] as const),
  ].flatMap(([id, found, instead]): Change[] =>
    shelf.includes(id) ? [] : [['content/shop.yaml', found, instead]],
  );
  const job = jobOf(smallShop(...missing));
  const { plan, remarks } = planJob(job);
  const stops = judge(job, plan, remarks).filter(({ level }) => level === 'stop');
  return { stops: stops.length, feasible: plan.power.fuses.every(({ ratingA }) => ratingA !== null) };
}

test('more reels and fuses on the shelf never add a stop, nor take a rating away', () => {
  fc.assert(
    fc.property(anyShelf, anyShelf, (some, more) => {
      const few = [...some.reels, ...some.fuses];
      const before = planWith(few);
      const after = planWith([...few, ...more.reels, ...more.fuses]);
      expect(after.stops).toBeLessThanOrEqual(before.stops);
      expect(after.feasible || !before.feasible).toBe(true);
    }),
    { numRuns: 12 },
  );
});
