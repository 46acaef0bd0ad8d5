import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { estimateSchema } from '../../lib/model/estimate/estimate.ts';
import { undeclaredLeaves, visibleTo } from '../../lib/publish/site/visible-to.ts';
import { ShopFolder, stopped } from './shop-folder.ts';

const demo = 'content/jobs/demo.yaml';
const shopPath = 'content/shop.yaml';

/** Words of an estimate, each written nowhere else in a shop. */
const canaries = [
  '431.7719',
  '17.3519',
  '8.7753',
  '97.3119',
  'Zyxhand',
  '2031-11-07',
  '151 min',
  '2 h 31',
] as const;

/** The small shop with prices, a rate and hours, all of them canaries. */
function pricedShop(): ShopFolder {
  const shop = new ShopFolder([demo, 'holder-a, in: bay', 'holder-a, in: bay, fuse: 60 A']);
  shop.change(
    shopPath,
    'name: Test bench\n',
    'name: Test bench\ncurrency: EUR\nprices:\n  amp-a: 97.3119 each\n  red-4: 2 per ft\nestimate: { labour: 431.7719 per h, markup: 17.3519 %, tax: 8.7753 % }\n',
  );
  const text = shop.read(demo);
  shop.write(demo, `${text}hours:\n  - { day: 2031-11-07, layer: power, worked: 151 min, by: Zyxhand }\n`);
  return shop;
}

/** All that stands in the files below a folder, those of the search index opened. */
function textsBelow(folder: string): readonly (readonly [string, string])[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((one) => one.isFile())
    .map(({ parentPath, name }) => {
      const bytes = readFileSync(join(parentPath, name));
      const text = (bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes) : bytes).toString('utf8');
      // Fonts and marks of a page that is one file say nothing.
      return [join(parentPath, name), text.replace(/;base64,[A-Za-z0-9+/=]+/g, '')] as const;
    });
}

/** Files below a folder in which a word of the estimate stands. */
function leaksBelow(folder: string): string[] {
  return textsBelow(folder).flatMap(([path, text]) =>
    canaries.filter((word) => text.includes(word)).map((word) => `${path}: ${word}`),
  );
}

describe('rackleaf estimate', () => {
  const shop = pricedShop();
  afterAll(() => shop.remove());

  test('tells the total, its lines, each part, what has no price, hours and what was worked', async () => {
    const { status, out } = await shop.run('estimate', 'demo');
    expect(status).toBe(0);
    expect(out).toMatch(/^demo, revision A: at least \d+\.\d\d EUR\n/);
    expect(out).toContain('  1 x Amplifier (amp-a): 97.32 EUR, 97.3119 each');
    expect(out).toContain('  1 x Woofer (woofer-a): no price');
    expect(out).toMatch(/\d+ parts have no price: not counted\./);
    expect(out).toMatch(/ {2}Labour: \d+\.\d\d EUR \(.*, 431\.7719 per h\)/);
    expect(out).toContain('In the vehicle already:');
    // 151 min at 431.7719 an hour: 1086.6259...
    expect(out).toContain('Worked so far 2 h 31 min on 2031-11-07: 1086.63 EUR at the rate.');
  });

  test('as JSON is the whole estimate, every leaf of it for the shop alone', async () => {
    const { out } = await shop.run('estimate', 'demo', '--json');
    const estimate = estimateSchema.parse(JSON.parse(out));
    const sum = estimate.sum.reduce((all, { minor }) => all + minor, 0);
    expect(estimate).toMatchObject({ job: 'demo', currency: 'EUR', isAtLeast: true, totalMinor: sum });
    expect(undeclaredLeaves(estimateSchema)).toEqual([]);
    expect(visibleTo(estimateSchema, estimate, 'bench')).toBeUndefined();
    expect(visibleTo(estimateSchema, estimate, 'customer')).toBeUndefined();
    expect(visibleTo(estimateSchema, estimate, 'shop')).toEqual(estimate);
  });

  test('writes the sheet where it is asked to, and says so beside what it prints', async () => {
    const { status, out, told } = await shop.run('estimate', 'demo', '--json', '--to', 'counter');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({ job: 'demo' });
    expect(told).toContain('counter/demo-A-estimate.html');
    const html = shop.read('counter/demo-A-estimate.html');
    for (const word of ['97.3119 each', '431.7719 per h', '17.3519 %', '8.7753 %', '2 h 31 min'])
      expect(html).toContain(word);
    expect(html).not.toContain('QZX 471');
  });

  test('knows its help, refuses what it does not understand, and names a job that is near', async () => {
    const help = await shop.run('estimate', '--help');
    expect(help).toMatchObject({ status: 0 });
    expect(help.out).toMatch(/^rackleaf estimate JOB \[--to FOLDER\] \[--json\]/);
    expect((await shop.run('estimate')).status).toBe(2);
    expect((await shop.run('estimate', 'demo', '--jsn')).status).toBe(2);
    const unknown = await shop.run('estimate', 'dem');
    expect(unknown).toMatchObject({ status: 2, out: '' });
    expect(unknown.told).toContain('there is no job "dem"');
  });

  test('of a released revision is made from its frozen plan', async () => {
    const own = pricedShop();
    await own.run('release', 'demo');
    const { status, told, out } = await own.run('estimate', 'demo');
    own.remove();
    expect({ status, told }).toEqual({ status: 0, told: 'from the frozen plan of revision A' });
    expect(out).toContain('97.32 EUR');
  });

  test('of a job that is stopped is told as one that may change, and ends with 1', async () => {
    const own = new ShopFolder(stopped);
    const { status, out } = await own.run('estimate', 'demo');
    own.remove();
    expect(status).toBe(1);
    expect(out).toContain('demo, revision A: no total: the shop states no currency');
    expect(out).toContain('A finding stops this job: what it takes may still change.');
  });

  test('a rate without a currency is an error at its place', async () => {
    const own = pricedShop();
    own.change(shopPath, 'currency: EUR\nprices:\n  amp-a: 97.3119 each\n  red-4: 2 per ft\n', '');
    const { status, told } = await own.run('estimate', 'demo');
    own.remove();
    expect(status).toBe(2);
    expect(told).toMatch(/content\/shop\.yaml:3:\d+: .*there is a rate, but no currency/);
  });
});

describe('nothing of an estimate', () => {
  const shop = pricedShop();
  beforeAll(async () => {
    expect((await shop.run('release', 'demo')).status).toBe(0);
  }, 600_000);
  afterAll(() => shop.remove());

  test('stands in the site of the bench, in its search index, or in what is frozen and kept for it', async () => {
    expect((await shop.run('build')).status).toBe(0);
    const site = join(shop.root, 'dist');
    expect(textsBelow(site).some(([path]) => path.endsWith('.pf_fragment'))).toBe(true);
    expect(leaksBelow(site)).toEqual([]);
    expect(leaksBelow(join(shop.root, 'content/jobs/demo'))).toEqual([]);
    expect(textsBelow(site).filter(([path]) => /estimate\/index\.html$/.test(path))).toEqual([]);
  }, 600_000);

  test('stands in a copy of a customer', async () => {
    await shop.run('build', '--audience', 'customer');
    expect(leaksBelow(join(shop.root, '.rackleaf/customer'))).toEqual([]);
  }, 600_000);

  test('stands in a file that is exported, in the plan or in what check says', async () => {
    const formats = ['svg', 'cut', 'dxf', 'labels', 'template', 'nest', 'csv'].flatMap((one) => [
      '--format',
      one,
    ]);
    expect((await shop.run('export', 'demo', '--to', 'out', ...formats)).status).toBe(0);
    expect(leaksBelow(join(shop.root, 'out'))).toEqual([]);
    const told = [await shop.run('plan', 'demo', '--json'), await shop.run('check', '--json')];
    for (const { out } of told) expect(canaries.filter((word) => out.includes(word))).toEqual([]);
  }, 600_000);

  test('is missing on the page of the shop, which leads to it from the job and from no search', async () => {
    expect((await shop.run('build', '--audience', 'shop')).status).toBe(0);
    const site = join(shop.root, '.rackleaf/shop/dist');
    const [, html = ''] = textsBelow(site).find(([path]) => path.endsWith('estimate/index.html')) ?? [];
    for (const word of ['97.3119 each', '431.7719 per h', '2 h 31 min']) expect(html).toContain(word);
    expect(shop.read('.rackleaf/shop/dist/jobs/demo/index.html')).toContain('estimate/index.html');
    const elsewhere = leaksBelow(site).filter((leak) => !leak.includes('estimate/index.html'));
    expect(elsewhere).toEqual([]);
  }, 600_000);
});
