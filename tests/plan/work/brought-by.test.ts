import { describe, expect, test } from 'vitest';
import type { ReleasedFacts } from '../../../lib/model/content/built.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { builtJob } from '../../../lib/plan/built/built-job.ts';
import { shelfTakes } from '../../../lib/plan/work/shelf-takes.ts';
import { orderList } from '../../../lib/shelf/order-list.ts';
import { inJob } from '../../read/problem-case.ts';
import { type Change, smallShop } from '../../read/small-shop.ts';
import { planKept } from '../plan-kept.ts';
import { jobOf } from '../plan-small-shop.ts';

const plan = (released: ReleasedFacts, ...changes: readonly Change[]): BuildPlan =>
  planKept(jobOf(smallShop(...changes), { demo: released })).plan;
const none: ReleasedFacts = { labels: {}, built: [] };

const brought = inJob('part: amp-a', 'part: amp-a\n    brought-by: customer');
/** A second amplifier of the kind, which the shop brings. */
const second = [
  inJob('  sub: { part', '  spare: { part: holder-a, in: bay, brought-by: customer }\n  sub: { part'),
  inJob('  feed: {', '  second: { from: main-fuse.OUT, to: spare.IN, length: 1 ft }\n  feed: {'),
  inJob('left-open:\n', 'left-open:\n  spare.OUT: not used yet\n'),
];

describe('a device that the customer brings', () => {
  const own = plan(none, brought);

  test('is on the pick list as such, not short, and is said of the device', () => {
    const rows = own.pick.filter(({ part }) => part === 'amp-a');
    expect(rows).toEqual([
      {
        ...{ part: 'amp-a', title: 'Amplifier', kind: 'amplifier', quantity: 1, unit: 'piece' },
        ...{ stockQuantity: 0, short: 0, broughtBy: 'customer' },
      },
    ]);
    expect(own.items.find(({ id }) => id === 'amp')?.broughtBy).toBe('customer');
    expect(own.items.find(({ id }) => id === 'sub')).not.toHaveProperty('broughtBy');
  });

  test('is not taken from the shelf, and not ordered', () => {
    const shop = { stock: {}, prices: {} };
    const ordered = (one: BuildPlan) => {
      const { known: _, ...takes } = shelfTakes(one);
      return orderList(shop, [{ job: 'demo', revision: 'A', ...takes }]).map(({ part }) => part);
    };
    expect(ordered(plan(none))).toContain('amp-a');
    expect(ordered(own)).not.toContain('amp-a');
    expect(ordered(own)).toContain('woofer-a');
  });

  test('stands beside one of the same part that the shop brings, each in its row', () => {
    const both = plan(none, ...second);
    const rows = both.pick.filter(({ part }) => part === 'holder-a');
    expect(rows.map(({ quantity, broughtBy }) => [quantity, broughtBy])).toEqual([
      [1, undefined],
      [1, 'customer'],
    ]);
    expect(shelfTakes(both).pieces['holder-a']).toBe(1);
  });
});

describe('on a revision that is built in', () => {
  const first = plan(none, brought);
  const released: ReleasedFacts = { labels: {}, built: [builtJob(first)], takes: { A: shelfTakes(first) } };
  const next = inJob(
    'revision: A\n',
    'revision: B\nrevisions:\n  - { revision: A, date: 2026-03-14, what: First issue, installed: 2026-03-20 }\n  - { revision: B, date: 2026-05-01, what: More }\n',
  );

  test('what the customer brought is in place, and is asked for once only', () => {
    expect(plan(released, next, brought).pick).toEqual([]);
  });

  test('what is brought for the first time is on the list, and nothing of the shelf for it', () => {
    const { pick } = plan(released, next, brought, ...second);
    expect(pick.filter(({ kind }) => kind === 'fuse-holder')).toMatchObject([
      { part: 'holder-a', quantity: 1, short: 0, broughtBy: 'customer' },
    ]);
  });

  test('a device that the shop brings in place of the one of the customer is taken from the shelf', () => {
    expect(plan(released, next).pick).toMatchObject([{ part: 'amp-a', quantity: 1 }]);
  });
});
