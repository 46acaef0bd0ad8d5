import { chmodSync, existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { brokenLinks } from '../site/links-of-site.ts';
import { type Ran, ShopFolder } from './shop-folder.ts';

/* One job built alone, in a shop whose other jobs bear words that occur nowhere else. */

const shop = new ShopFolder([
  'content/shop.yaml',
  'large-60: { pieces: 2 }',
  'large-60: { pieces: 2 }\n  amp-a: { pieces: 1 }',
]);
afterAll(() => shop.remove());

/** Words of the other jobs. None may stand in the site of `demo`. */
const canary = 'zyx';
const [demo, other, stray] = ['demo', 'zyx-other', 'zyx-broken'].map((id) => `content/jobs/${id}.yaml`) as [
  string,
  string,
  string,
];

const site = join(shop.root, '.rackleaf/jobs/demo/dist');

/** All that a site says: the names of its files, and what stands in them, chunks of the search index opened. */
function told(folder: string): ReadonlyMap<string, string> {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((one) => one.isFile());
  return new Map(
    files.map((one) => {
      const path = join(one.parentPath, one.name);
      const bytes = readFileSync(path);
      const text = (bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes) : bytes).toString('utf8');
      // What is written as digits says nothing: fonts and marks of a page that is one file.
      return [path.slice(folder.length + 1), text.replace(/;base64,[A-Za-z0-9+/=]+/g, '')];
    }),
  );
}

/** Files of a site in whose name or text a word stands, whatever its letters. */
function filesWith(folder: string, word: string): string[] {
  return [...told(folder)]
    .filter(([path, text]) => `${path}\n${text}`.toLowerCase().includes(word))
    .map(([path]) => path);
}

beforeAll(async () => {
  const text = shop
    .read(demo)
    .replace('id: demo', 'id: zyx-other')
    .replace('title: One amplifier', 'title: Zyxtitle of the other')
    .replace('Ada Specimen', 'Zyxname Neighbour')
    .replace('555 0199', '555 zyx')
    .replace('QZX 471', 'ZYX 99')
    .replace('issued-on: 2026-03-14', 'issued-on: 2026-03-01')
    .replace('title: Bass amplifier', 'title: Zyxbass amplifier')
    .replace('The second output stays in its bag.', 'Zyxnote of the other job.')
    .replaceAll('main-fuse', 'zyx-main-fuse');
  shop.write(other, text);
  shop.write('content/guides/other.md', '---\ntitle: A way\nsummary: Of one job.\n---\nAs in ZYX-Other.\n');
  shop.write(
    'content/guides/owner.md',
    '---\ntitle: A call\nsummary: Whom to call.\n---\nAsk Zyxname Neighbour.\n',
  );
  // A part, a vehicle and stock that the job has nothing of.
  shop.write(
    'content/parts/more.yaml',
    'rackleaf: 1\nparts:\n  zyx-fuse: { kind: fuse, title: Zyxfuse, form: large-bolt-in, rating: 100 A }\n',
  );
  shop.write(
    'content/vehicles/zyx-van.yaml',
    shop
      .read('content/vehicles/wagon.yaml')
      .replace('id: wagon\ntitle: Estate car', 'id: zyx-van\ntitle: Zyxvan'),
  );
  expect((await shop.run('release', 'zyx-other')).status).toBe(0);
  // Frozen while the amplifier on the shelf is the other's: its plan names that.
  expect((await shop.run('release', 'demo')).status).toBe(0);
  shop.change(demo, 'revision: A\nstatus: released', 'revision: B\nstatus: draft');
  shop.write(stray, 'rackleaf: 1\nid: zyx-broken\ntitle: Zyxbroken\n');
}, 600_000);

describe('build --job', () => {
  let built: Ran;
  beforeAll(async () => {
    built = await shop.run('build', '--job', 'demo');
  }, 600_000);

  test('makes a site of its own, whatever is wrong in the files of other jobs', () => {
    expect(built.told).toContain(`open ${join(site, 'index.html')}`);
    expect(built.told).not.toContain('Zyxbroken');
    expect(built.status).toBe(0);
    expect(existsSync(join(shop.root, 'dist'))).toBe(false);
  });

  test('holds the job with its released revision, its vehicle, its parts, and what the vehicle came with', () => {
    const pages = [...told(site).keys()].filter((path) => path.endsWith('index.html'));
    for (const page of [
      'index.html',
      'jobs/demo/index.html',
      'jobs/demo/A/index.html',
      'jobs/demo/worksheet/index.html',
      'jobs/demo/packet/index.html',
      'parts/amp-a/index.html',
      'parts/battery-a/index.html',
      'vehicles/wagon/index.html',
      'guides/gain/index.html',
      'findings/index.html',
      'search/index.html',
    ])
      expect(pages).toContain(page);
    expect(pages.filter((page) => /^(?:writing|calculators|survey)\//.test(page))).toEqual([]);
  });

  test('has no word of another job, its customer, its parts or its vehicle, in the search index either', async () => {
    expect(filesWith(site, canary)).toEqual([]);
    const whole = await shop.run('build', '--keep-going');
    expect(whole.status).toBe(2);
    expect(filesWith(join(shop.root, 'dist'), canary).length).toBeGreaterThan(10);
  });

  test('tells how much of the shelf is promised, and not to whom', () => {
    const files = told(site);
    for (const page of ['jobs/demo/index.html', 'jobs/demo/A/index.html'])
      expect(files.get(page), page).toMatch(/promised to other jobs not counted/);
    expect(files.get('parts/amp-a/index.html')).toMatch(
      /Promised: 1 piece to other jobs|1 piece to demo, revision A; 1 piece to other jobs/,
    );
  });

  test('leads nowhere where nothing is', async () => {
    expect(await brokenLinks(site, '/a/b/')).toEqual([]);
  });

  test('tells which guides it leaves out, since they name another job or its customer', () => {
    expect(built.told).toContain('content/guides/other.md is left out: it names another job or its customer');
    expect(built.told).toContain('content/guides/owner.md is left out');
    expect(built.told).not.toContain('content/guides/gain.md');
  });

  test('is searched by itself: its index has records of its own pages', () => {
    const records = [...told(site)].filter(([path]) => path.endsWith('.pf_fragment')).map(([, text]) => text);
    expect(records.some((text) => text.includes('"url":"/jobs/demo/"'))).toBe(true);
    for (const text of records) {
      const [, url = ''] = /"url":"([^"]+)"/.exec(text) ?? [];
      expect(existsSync(join(site, url, 'index.html')), url).toBe(true);
    }
  });

  test('stands as it is while nothing changes, and tells the same', async () => {
    const before = statSync(site).ino;
    chmodSync(join(site, 'index.html'), 0o600);
    const again = await shop.run('build', '--job', 'demo');
    expect(again).toEqual(built);
    expect(statSync(site).ino).toBe(before);
    // Windows knows no such modes.
    if (process.platform !== 'win32')
      expect(statSync(join(site, 'index.html')).mode & 0o777, 'read by everyone again').toBe(0o644);
    rmSync(join(site, 'index.html'));
    await shop.run('build', '--job', 'demo');
    expect(existsSync(join(site, 'index.html'))).toBe(true);
  }, 600_000);

  test('takes an audience as the whole does: the shop has the customer, the owner the packet alone', async () => {
    const ofShop = await shop.run('build', '--job', 'demo', '--audience', 'shop');
    expect(ofShop.status).toBe(0);
    const folder = join(shop.root, '.rackleaf/shop/jobs/demo/dist');
    expect(filesWith(folder, 'ada specimen')).toContain('jobs/demo/index.html');
    expect(filesWith(folder, canary)).toEqual([]);
    expect(filesWith(site, 'ada specimen')).toEqual([]);
    await shop.run('build', '--job', 'demo', '--audience', 'customer');
    const packet = [...told(join(shop.root, '.rackleaf/customer/demo/dist')).keys()];
    expect(packet.filter((path) => !path.startsWith('assets/'))).toEqual(['jobs/demo/packet/index.html']);
    expect(existsSync(join(shop.root, '.rackleaf/customer/zyx-other'))).toBe(false);
  }, 600_000);

  test.each([
    ['a job that is not there', 'demmo', /there is no job "demmo".*"?demo"?/],
    ['one that can not be read', 'zyx-broken', /zyx-broken could not be read/],
  ])(
    'is refused for %s, with a word on what is near',
    async (_, id, says) => {
      const { status, told: text } = await shop.run('build', '--job', id);
      expect(status).toBe(2);
      expect(text).toMatch(says);
      expect(existsSync(join(shop.root, '.rackleaf/jobs', id))).toBe(false);
    },
    600_000,
  );
});
