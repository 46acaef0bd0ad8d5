import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type BuildPlan, buildPlanSchema, type PlanPick } from '../../lib/model/plan/index.ts';
import { ShopFolder } from './shop-folder.ts';

const [demo, second] = ['content/jobs/demo.yaml', 'content/jobs/second.yaml'];
const shopPath = 'content/shop.yaml';

let shop: ShopFolder;
beforeEach(() => {
  shop = new ShopFolder();
  shop.write(second, shop.read(demo).replace('id: demo', 'id: second'));
});
afterEach(() => shop.remove());

async function planOf(job: string): Promise<BuildPlan> {
  const { out } = await shop.run('plan', job, '--json');
  return buildPlanSchema.parse(JSON.parse(out));
}

async function pickOf(job: string, part: string): Promise<PlanPick> {
  const own = (await planOf(job)).pick.find((one) => one.part === part);
  if (!own) throw new Error(`${job} takes no ${part}.`);
  return own;
}

const toDemo = (quantity: number) => [{ job: 'demo', revision: 'A', quantity }];

describe('what a released job takes that is not built in yet', () => {
  test('is offered to no other job, and is told by the name of that one', async () => {
    shop.change(shopPath, 'red-4: { reels: [30 ft] }', 'red-4: { reels: [42 ft] }');
    const fuse = await pickOf('second', 'large-60');
    expect(fuse).toMatchObject({ stockQuantity: 2, short: 0 });
    expect(fuse.promised).toBeUndefined();
    expect((await shop.run('release', 'demo')).status).toBe(0);
    const frozen = await planOf('demo');
    expect(await pickOf('second', 'large-60')).toMatchObject({ stockQuantity: 1, promised: toDemo(1) });
    for (const { part, unit, quantity, reels = [] } of frozen.pick.filter(
      (one) => one.unit === 'm' && one.stockQuantity > 0,
    )) {
      const own = await pickOf('second', part);
      expect(own).toMatchObject({ unit, promised: toDemo(expect.closeTo(quantity, 3)) });
      const [reel] = own.reels ?? [];
      expect(reel?.promisedM).toBeCloseTo(quantity, 3);
      // Of one reel of it: what is left there after both is what one job leaves, less what the other takes.
      expect(reel?.leftM).toBeCloseTo((reels[0]?.leftM ?? Number.NaN) - own.quantity, 2);
    }
    // A shorter reel that came since is free: the sheets of the released job name the other, of 42 ft.
    shop.change(shopPath, 'red-4: { reels: [42 ft] }', 'red-4: { reels: [42 ft, 25 ft] }');
    const red = await pickOf('second', 'red-4');
    expect(red.reels).toMatchObject([{ lengthM: 7.62 }]);
    expect(red.reels?.[0]?.promisedM).toBeUndefined();
    shop.change(shopPath, 'large-80: { pieces: 2 }', 'large-80: { pieces: 2 }\n  amp-a: { pieces: 1 }');
    expect((await shop.run('check', 'second')).out).toMatch(
      /1 piece of amp-a \(the job takes 1, the shelf has 0; 1 piece promised to demo revision A not counted\), 1 piece of lead-a,/,
    );
  }, 600_000);

  test('is offered again once its file says that it is built in, by status or by the day of its revision', async () => {
    await shop.run('release', 'demo');
    expect((await pickOf('second', 'large-60')).stockQuantity).toBe(1);
    shop.change(demo, 'status: released', 'status: installed');
    expect(await pickOf('second', 'large-60')).toMatchObject({ stockQuantity: 2, short: 0 });
    shop.change(demo, 'revision: A\nstatus: installed', 'revision: B\nstatus: draft');
    expect((await pickOf('second', 'large-60')).stockQuantity).toBe(1);
    shop.write(
      demo,
      `${shop.read(demo)}revisions:\n  - { revision: A, date: 2026-02-09, what: First issue, installed: 2026-02-20 }\n`,
    );
    expect((await pickOf('second', 'large-60')).stockQuantity).toBe(2);
  }, 600_000);

  test('does not stand in the way of its own next revision, which takes its place once it is released', async () => {
    await shop.run('release', 'demo');
    shop.change(demo, 'revision: A\nstatus: released', 'revision: B\nstatus: draft');
    const own = await pickOf('demo', 'large-60');
    expect(own).toMatchObject({ stockQuantity: 2 });
    expect(own.promised).toBeUndefined();
    expect((await shop.run('release', 'demo')).status).toBe(0);
    expect((await pickOf('second', 'large-60')).promised).toEqual([
      { job: 'demo', revision: 'B', quantity: 1 },
    ]);
  }, 600_000);

  test('beyond what the shelf has is told at its line of the stock, though no job that is drawn takes it', async () => {
    await shop.run('release', 'demo');
    await shop.run('release', 'second');
    expect((await shop.run('check')).out).not.toMatch(/stock-promised-over/);
    shop.change(shopPath, 'large-60: { pieces: 2 }', 'large-60: { pieces: 1 }');
    const line =
      shop
        .read(shopPath)
        .split('\n')
        .findIndex((one) => one.includes('large-60')) + 1;
    const { out, status } = await shop.run('check', '--plain');
    expect(status).toBe(0);
    expect(out).toMatch(
      new RegExp(
        `^content/shop\\.yaml:${line}:\\d+: warning: caution: the shelf has 1 piece of large-60, and 2 pieces are promised to demo revision A and second revision A: 1 piece too many; .*\\[stock-promised-over\\]`,
        'm',
      ),
    );
    expect(JSON.parse((await shop.run('check', '--json')).out).shop).toMatchObject([
      { rule: 'stock-promised-over', value: 1, limit: 2 },
    ]);
  }, 600_000);
});
