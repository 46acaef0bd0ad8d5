import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, readdir, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { jobSchema } from '../../../lib/model/content/job.ts';
import { pageWithFiles } from '../../../lib/publish/page/render-page.ts';
import { namedAssets } from '../../../lib/publish/site/assets/named-assets.ts';
import { buildSite, buildSites, sitePlaces } from '../../../lib/publish/site/build-site.ts';
import { siteAssets } from '../../../lib/publish/site/site-assets.ts';
import { digestOf, filesBelow } from '../../../lib/publish/site/site-digest.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { readyPlan } from '../packet/ready-plan.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite, secrets } from '../sample/sample-site.ts';

let root = '';
beforeEach(async () => {
  root = await mkdtemp(join(tmpdir(), 'rackleaf-build-'));
});
afterEach(() => rm(root, { recursive: true, force: true }));

const drawingsOf = sampleDrawings;

/** The sample site with another title, so that its bytes differ. */
function otherSite(title: string) {
  const plan = samplePlan();
  return sampleSite([sampleJob({ ...plan, job: { ...plan.job, title } })]);
}

/** Bytes of a file as text, search index files opened. */
async function readable(path: string): Promise<string> {
  const bytes = await readFile(path);
  return bytes[0] === 0x1f && bytes[1] === 0x8b ? gunzipSync(bytes).toString() : bytes.toString();
}

const privateValues = Object.values(secrets);

/** Files of a site in which a private value stands, by their path. */
async function leaksIn(folder: string): Promise<Record<string, string[]>> {
  const found: Record<string, string[]> = {};
  for (const file of await filesBelow(folder)) {
    const text = `${file}\n${await readable(join(folder, file))}`.toLowerCase();
    const told = privateValues.filter((secret) => text.includes(secret.toLowerCase()));
    if (told.length > 0) found[file] = told;
  }
  return found;
}

/** The sample site as the bench has it, built once for all that only read it. */
describe('a built site', () => {
  let own = '';
  let folder = '';
  beforeAll(async () => {
    own = await mkdtemp(join(tmpdir(), 'rackleaf-built-'));
    ({ folder } = await buildSite(sampleSite(), { root: own, drawingsOf }));
  });
  afterAll(() => rm(own, { recursive: true, force: true }));

  it('writes what the server gives for the same page', async () => {
    const page = sitePages({ site: sampleSite(), audience: 'bench' }).find(
      ({ address }) => address === '/jobs/sample-job/',
    );
    const { names } = await namedAssets(siteAssets());
    const look = { templates: openTemplates({ names }), names };
    const served = page && pageWithFiles(page, look, drawingsOf);
    expect(await readFile(join(folder, 'jobs/sample-job/index.html'), 'utf8')).toBe(served?.html);
    expect(served?.files.length).toBeGreaterThan(0);
    for (const { path, text } of served?.files ?? [])
      expect(await readFile(join(folder, 'jobs/sample-job', path), 'utf8')).toBe(text);
  });

  it('asks nothing of any other place: every reference is relative', async () => {
    const pages = (await filesBelow(folder)).filter((file) => /\.(html|css|svg)$/.test(file));
    for (const page of pages) {
      const text = await readFile(join(folder, page), 'utf8');
      // What stands in the page itself, as in the one file of the calculators, is asked of nobody.
      expect(text).not.toMatch(/(?:href|src|action)="(?!data:)(?:[a-z]+:|\/)/);
      expect(text).not.toMatch(/url\(["']?(?!data:)(?:[a-z]+:|\/)/);
    }
  });

  it('links to nothing that is not there', async () => {
    const missing: string[] = [];
    for (const page of (await filesBelow(folder)).filter((file) => /\.(html|svg)$/.test(file))) {
      const text = await readFile(join(folder, page), 'utf8');
      const ids = new Set([...text.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id));
      for (const [, link = ''] of text.matchAll(/(?:href|src)="([^"]+)"/g)) {
        if (link.startsWith('data:')) continue;
        const [path = '', anchor] = link.split('#');
        if (path === '' ? !ids.has(anchor) : !existsSync(join(folder, page, '..', path)))
          missing.push(`${page}: ${link}`);
      }
    }
    expect(missing).toEqual([]);
  });

  it('holds no private value for the bench', async () => {
    expect(await leaksIn(folder)).toEqual({});
  });
});

describe('buildSite', () => {
  it('gives the same bytes for the same shop, whatever the order of its jobs', async () => {
    const second = samplePlan();
    const jobs = [sampleJob(), sampleJob({ ...second, job: { ...second.job, id: 'another-job' } })];
    const one = await buildSite(sampleSite(jobs), { root, drawingsOf });
    const other = await buildSite(sampleSite([...jobs].reverse()), { root, drawingsOf });
    expect(other.digest).toBe(one.digest);
    expect(one.folder).toBe(join(root, 'dist'));
  });

  it('leaves the last good site untouched when a build fails, and no rubbish behind', async () => {
    const good = await buildSite(sampleSite(), { root, drawingsOf });
    const fails = () => {
      throw new Error('a drawing failed');
    };
    await expect(buildSite(otherSite('Other'), { root, drawingsOf: fails })).rejects.toThrow('last good one');
    expect((await digestOf(good.folder)).digest).toBe(good.digest);
    expect(await readdir(join(root, '.rackleaf'))).toEqual([]);
  });

  it('leaves the site alone, and nothing beside it', async () => {
    for (const title of ['One', 'Two']) await buildSite(otherSite(title), { root, drawingsOf });
    expect(await readFile(join(root, 'dist/index.html'), 'utf8')).toContain('Two');
    expect((await readdir(root)).sort()).toEqual(['.rackleaf', 'dist']);
    expect(await readdir(join(root, '.rackleaf'))).toEqual([]);
  });

  it('leaves a site of the same bytes where it stands, and puts right one that was altered', async () => {
    const { folder, digest } = await buildSite(sampleSite(), { root, drawingsOf });
    const { ino } = await stat(folder);
    await buildSite(sampleSite(), { root, drawingsOf });
    expect((await stat(folder)).ino).toBe(ino);
    await writeFile(join(folder, 'index.html'), 'altered');
    await buildSite(sampleSite(), { root, drawingsOf });
    expect((await digestOf(folder)).digest).toBe(digest);
  });

  it('takes the place of a link to a site that an earlier version kept, and clears that away', async () => {
    await mkdir(join(root, '.rackleaf/site-0123456789ab'), { recursive: true });
    await writeFile(join(root, '.rackleaf/site-0123456789ab/index.html'), 'old');
    await symlink('.rackleaf/site-0123456789ab', join(root, 'dist'), 'dir');
    const { folder, digest } = await buildSite(sampleSite(), { root, drawingsOf });
    expect((await digestOf(folder)).digest).toBe(digest);
    expect(await readdir(join(root, '.rackleaf'))).toEqual([]);
  });

  it('lets two builds at a time both end well, with the site of one of them', async () => {
    const built = await Promise.all(
      ['One', 'Two'].map((title) => buildSite(otherSite(title), { root, drawingsOf })),
    );
    const { digest } = await digestOf(join(root, 'dist'));
    expect(built.map((one) => one.digest)).toContain(digest);
    expect((await readdir(root)).sort()).toEqual(['.rackleaf', 'dist']);
  });
});

describe('private values', () => {
  /** Files of an audience's site in which a private value stands, by their path. */
  async function leaks(
    audience: 'customer' | 'shop',
    site = sampleSite(),
  ): Promise<Record<string, string[]>> {
    return leaksIn((await buildSite(site, { root, drawingsOf, audience })).folder);
  }

  it('stand in the shop record on the pages of the job alone', async () => {
    expect(await leaks('shop')).toEqual({
      'jobs/sample-job/index.html': privateValues,
      'jobs/sample-job/A/index.html': privateValues,
    });
  });

  it('stand in a packet that is made as far as it must name whose it is', async () => {
    const { name, plate } = secrets;
    const ready = sampleSite([{ ...sampleJob(readyPlan(samplePlan())), revisions: [] }]);
    expect(await leaks('customer', ready)).toEqual({ 'jobs/sample-job/packet/index.html': [name, plate] });
  });

  it('come with no index of other jobs and no search in the copy of a customer, and not at all where it is refused', async () => {
    const { folder } = await buildSite(sampleSite(), { root, drawingsOf, audience: 'customer' });
    expect(await leaksIn(folder)).toEqual({});
    const pages = (await filesBelow(folder)).filter((file) => !file.startsWith('assets/'));
    expect(pages).toEqual(['jobs/sample-job/packet/index.html']);
  });

  it('come in one packet a customer, so that none holds a word of another', async () => {
    const plan = readyPlan(samplePlan());
    const vehicle = { ...plan.vehicle, title: 'Other vehicle' };
    const other = sampleJob({ ...plan, job: { ...plan.job, id: 'other-job' }, vehicle });
    const customer = jobSchema.shape.customer.parse({ name: 'Vwx Neighbour' });
    const jobs = [sampleJob(plan), { ...other, customer, revisions: [] }];
    const built = await buildSites(sampleSite(jobs), { root, drawingsOf, audience: 'customer' });
    expect(built.map((one) => one.folder)).toEqual(
      ['sample-job', 'other-job'].map((id) => sitePlaces(root, 'customer', id).site),
    );
    const told = async (folder = ''): Promise<string> => {
      const files = await filesBelow(folder);
      return (await Promise.all(files.map((file) => readable(join(folder, file))))).join() + files.join();
    };
    const [first, second] = [await told(built[0]?.folder), await told(built[1]?.folder)];
    expect(first).toContain(secrets.name);
    expect(second).toContain('Vwx Neighbour');
    for (const word of ['Vwx Neighbour', 'other-job', 'Other vehicle']) expect(first).not.toContain(word);
    for (const word of [...privateValues, 'sample-job']) expect(second).not.toContain(word);
  });

  it('never come in one packet for two', async () => {
    const plan = samplePlan();
    const jobs = [sampleJob(), sampleJob({ ...plan, job: { ...plan.job, id: 'other-job' } })];
    const building = buildSite(sampleSite(jobs), { root, drawingsOf, audience: 'customer' });
    await expect(building).rejects.toThrow('one job');
  });
});
