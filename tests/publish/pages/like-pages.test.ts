import { parseHTML } from 'linkedom';
import { beforeAll, describe, expect, it } from 'vitest';
import { pastBoards } from '../../../lib/like/past-board.ts';
import { planOfBoardsSchema } from '../../../lib/like/plan-of-boards.ts';
import { mostTold, nearestBoards } from '../../../lib/like/rank-boards.ts';
import { wishOfBoard } from '../../../lib/like/shop-wishes.ts';
import type { Keep } from '../../../lib/model/keep.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import type { SiteContext } from '../../../lib/publish/page/page.ts';
import { renderModel } from '../../../lib/publish/page/render-page.ts';
import { thumbnailFiles, thumbnailOf } from '../../../lib/publish/reference/thumbnail-file.ts';
import { loneSite } from '../../../lib/publish/site/lone/lone-job.ts';
import type { PublishedJob, ShopSite } from '../../../lib/publish/site/shop-site.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { leavesHiddenFrom } from '../../../lib/publish/site/visible-to.ts';
import { fixedContent, fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { metres } from '../../shelf/takes.ts';
import { testCrew } from '../../shops/test-crew.ts';
import { sampleJob, sampleSite, secrets } from '../sample/sample-site.ts';

const { parts, vehicles, shop } = fixedContent();
const published = (plan: BuildPlan): PublishedJob => ({ ...sampleJob(plan), revisions: [] });
const site: ShopSite = {
  ...sampleSite(fixedJobs.map((id) => published(fixedPlan(id)))),
  ...(shop && { shop }),
  parts,
  vehicles,
};
const templates = openTemplates({ strict: true });
const { keep } = testCrew();

/** Addresses of past boards on a site. */
function addressesOf(of: SiteContext): string[] {
  return sitePages(of).flatMap(({ address }) => (address.startsWith('/like/') ? [address] : []));
}

/** The HTML at an address; empty where the site has no such page. */
function htmlAt(address: string, of: Partial<SiteContext> = {}): string {
  const page = sitePages({ site, audience: 'bench', keep, ...of }).find((one) => one.address === address);
  return page ? renderModel(page.template, page.model(), templates) : '';
}

/** The HTML of every page of past boards on a site. */
function rankings(of: SiteContext): string[] {
  return sitePages(of)
    .filter(({ address }) => address.startsWith('/like/'))
    .map(({ template, model }) => renderModel(template, model(), templates));
}

const textOf = (one: { readonly textContent: string | null } | null): string =>
  one?.textContent?.trim() ?? '';

/** The hits of a page, as a reader has them. */
function hitsOf(html: string) {
  const { document } = parseHTML(html);
  return [...document.querySelectorAll('.near')].map((near) => ({
    head: textOf(near.querySelector('h3')),
    href: near.querySelector('h3 a')?.getAttribute('href') ?? '',
    picture: near.querySelector('img')?.getAttribute('src') ?? '',
    loading: near.querySelector('img')?.getAttribute('loading') ?? '',
    facts: new Map(
      [...near.querySelectorAll('dl div')].map((one) => [
        textOf(one.querySelector('dt')),
        textOf(one.querySelector('dd')),
      ]),
    ),
    changes: [...near.querySelectorAll('tbody tr')].map((row) =>
      [...row.children].map((cell) => textOf(cell)),
    ),
    command: textOf(near.querySelector('pre')),
  }));
}

const hrefsOf = (html: string): string[] =>
  [...html.matchAll(/href="([^"]+)"/g)].map(([, href = '']) => href);

describe('past boards that would fit', () => {
  it('have an index that leads to each space of each vehicle and to each job', () => {
    const hrefs = hrefsOf(htmlAt('/like/'));
    const spaces = Object.values(vehicles).flatMap((vehicle) =>
      Object.keys(vehicle.spaces).map((space) => `/like/spaces/${vehicle.id}/${space}/`),
    );
    const all = [...spaces, ...fixedJobs.map((job) => `/like/jobs/${job}/`)];
    expect(spaces.length).toBeGreaterThan(2);
    for (const address of all) expect(hrefs).toContain(`..${address}index.html`);
    expect(addressesOf({ site, audience: 'bench' }).sort()).toEqual(['/like/', ...all].sort());
  });

  it('are reached from the reference, from the vehicle and from the job', () => {
    expect(hrefsOf(htmlAt('/reference/'))).toContain('../like/index.html');
    expect(hrefsOf(htmlAt('/vehicles/van/'))).toContain('../../like/spaces/van/bulkhead/index.html');
    expect(hrefsOf(htmlAt('/jobs/under-seat-five/'))).toContain('../../like/jobs/under-seat-five/index.html');
  });

  it('are not led to from a job that has no board, nor from a revision that was frozen', () => {
    const bare = { ...fixedPlan('under-seat-five'), boards: [] };
    const of = { site: { ...site, jobs: [published(bare), sampleJob()] } };
    expect(htmlAt('/jobs/under-seat-five/', of)).not.toContain('like/jobs/');
    expect(htmlAt('/like/jobs/under-seat-five/', of)).toBe('');
    expect(htmlAt('/jobs/sample-job/', of)).toContain('like/jobs/sample-job/');
    expect(htmlAt('/jobs/sample-job/A/', of)).not.toContain('like/jobs/');
  });
});

describe('the past boards of a job', () => {
  let html = '';
  beforeAll(() => {
    html = htmlAt('/like/jobs/under-seat-five/');
  });

  it('are those of other jobs, ranked as the command does, each with its thumbnail and the way to its sheets', () => {
    const [own] = pastBoards(fixedPlan('under-seat-five'));
    const wish = own && shop ? wishOfBoard({ shop, parts, vehicles }, own) : null;
    if (!wish) throw new Error('The job has no board.');
    const others = fixedJobs.filter((id) => id !== 'under-seat-five').map(fixedPlan);
    const nearest = nearestBoards(wish, others.flatMap(pastBoards), mostTold, keep);
    const hits = hitsOf(html);
    expect(hits.length).toBe(2);
    expect(hits.map(({ href }) => href)).toEqual(
      nearest.map(({ board }) => `../../../jobs/${board.job}/index.html`),
    );
    expect(hits.map(({ head }) => head)).toEqual(nearest.map(({ board }, at) => `${at + 1}. ${board.title}`));
    for (const [at, { board, minutes }] of nearest.entries()) {
      const plan = others.find(({ job }) => job.id === board.job);
      expect(hits[at]?.picture).toBe(`../../../${plan && thumbnailOf(plan, board.board)?.path}`);
      expect(hits[at]?.loading).toBe('lazy');
      expect(hits[at]?.facts.get('Work')).toBe(`${minutes} min`);
    }
  });

  it('tell what would have to change in the order of labour, with minutes that make up the whole', () => {
    for (const { facts, changes } of hitsOf(html)) {
      const minutes = changes.map(([, work = '']) => Number.parseInt(work, 10));
      expect(changes.length).toBeGreaterThan(2);
      expect(minutes).toEqual(minutes.toSorted((a, b) => b - a));
      expect(`${minutes.reduce((sum, one) => sum + one, 0)} min`).toBe(facts.get('Work'));
    }
  });

  it('tell outline, place and what is alike, and what to type to begin from one', () => {
    const [first] = hitsOf(html);
    expect(first?.facts.get('Outline')).toMatch(/^(Rectangle|Curved edges|Straight edges).*, \d+ by \d+ in$/);
    expect(first?.facts.get('In this space')).toMatch(/^(Goes in at x .+, y |Does not go in)/);
    expect(first?.facts.get('Alike')).toBe('No part in common; may stay: dist, ground-bar');
    expect(first?.command).toBe(
      'rackleaf new job NAME --like estate-side-well --vehicle hatchback --space under-left-seat',
    );
  });

  it('are led by the twin of a job, which has nothing to change', () => {
    const plan = fixedPlan('van-three-amps');
    const twin = { ...plan, job: { ...plan.job, id: 'twin', title: 'The twin' } };
    const of = { site: { ...site, jobs: [...site.jobs, published(twin)] } };
    const [first] = hitsOf(htmlAt('/like/jobs/van-three-amps/', of));
    expect(first?.head).toBe('1. The twin');
    expect(first?.facts.get('Work')).toBe('Nothing to change');
    expect(first?.facts.get('Alike')).toMatch(/^As wanted: .*\bamp-sub\b.*; made for this space$/);
    expect(first?.changes).toEqual([]);
    expect(first?.picture).toBe(`../../../${thumbnailOf(twin)?.path}`);
  });

  it('say so where no other job has a board, and where the space is gone', () => {
    const alone = { site: { ...site, jobs: [published(fixedPlan('under-seat-five'))] } };
    expect(htmlAt('/like/jobs/under-seat-five/', alone)).toContain('No other job has a board yet.');
    const { hatchback: _, ...left } = vehicles;
    const gone = htmlAt('/like/jobs/under-seat-five/', { site: { ...site, vehicles: left } });
    expect(gone).toContain('no longer in the files of the shop');
    expect(hitsOf(gone)).toEqual([]);
  });
});

describe('the past boards of a space', () => {
  it('are led by the one that was made for it, every part of which stays', () => {
    const hits = hitsOf(htmlAt('/like/spaces/van/bulkhead/'));
    expect(hits.length).toBe(3);
    expect(hits[0]?.href).toBe('../../../../jobs/van-three-amps/index.html');
    expect(hits[0]?.facts.get('Alike')).toBe('Every part stays; made for this space');
    expect(hits[0]?.facts.get('Work')).toBe('Nothing to change');
  });

  it('offer no beginning from one that no work makes serve', () => {
    const { hatchback } = vehicles;
    const space = hatchback?.spaces['under-left-seat'];
    if (!hatchback || !space) throw new Error('The shop has another hatchback.');
    const flat = { ...hatchback, spaces: { 'under-left-seat': { ...space, depth: metres(0.03) } } };
    const of = { site: { ...site, vehicles: { ...vehicles, hatchback: flat } } };
    const hits = hitsOf(htmlAt('/like/spaces/hatchback/under-left-seat/', of));
    expect(hits.length).toBe(3);
    for (const { facts, changes, command } of hits) {
      expect(facts.get('Work')).toBe('Can not serve');
      expect(changes[0]?.[1]).toBe('no way');
      expect(command).toBe('');
    }
  });
});

describe('who is told of past boards', () => {
  it('is who may see every leaf of a plan that they are ranked by: who builds, and no customer', () => {
    expect(leavesHiddenFrom(planOfBoardsSchema, 'bench')).toEqual([]);
    expect(leavesHiddenFrom(planOfBoardsSchema, 'shop')).toEqual([]);
    expect(leavesHiddenFrom(planOfBoardsSchema, 'customer')).toContain('/boards/*/holes/*/purpose');
    for (const audience of ['bench', 'shop'] as const)
      expect(addressesOf({ site, audience }).length).toBeGreaterThan(5);
    expect(addressesOf({ site, audience: 'customer' })).toEqual([]);
  });

  it('is nobody on the site of one job, which leads to no other', () => {
    const { site: lone } = loneSite(site, 'under-seat-five', []);
    expect(addressesOf({ site: lone, audience: 'bench' })).toEqual([]);
    for (const address of ['/jobs/under-seat-five/', '/vehicles/hatchback/'])
      expect(htmlAt(address, { site: lone })).not.toContain('/like/');
  });

  it('is told nothing of customers, of their vehicles or of the very devices', () => {
    const serial = 'ZYX-SERIAL-77';
    const canaries = [...Object.values(secrets), serial, 'zyx note'];
    const jobs = site.jobs.map((job) => ({
      ...job,
      plan: { ...job.plan, job: { ...job.plan.job, notes: ['zyx note'] } },
      serials: { amp: serial },
    }));
    for (const audience of ['bench', 'shop'] as const)
      for (const told of rankings({ site: { ...site, jobs }, audience, keep })) {
        expect(told).toContain('</html>');
        const text = told.toLowerCase();
        expect(canaries.filter((one) => text.includes(one.toLowerCase()))).toEqual([]);
      }
  });
});

describe('what is kept of a ranking', () => {
  /** Renders every ranking of a site; counts what had to be computed. */
  function computedFor(of: ShopSite, store: Map<string, unknown>): number {
    let computed = 0;
    const counting: Keep = (step, input) => {
      const key = `${step.id} ${JSON.stringify(input)}`;
      const known = store.has(key);
      const value = keep(step, input);
      if (!known) computed += 1;
      store.set(key, true);
      return value;
    };
    rankings({ site: of, audience: 'bench', keep: counting });
    return computed;
  }

  it('serves again where nothing changed, and after edits that no place on a board follows from', () => {
    const store = new Map<string, unknown>();
    expect(computedFor(site, store)).toBeGreaterThan(5);
    expect(computedFor(site, store)).toBe(0);
    const jobs = site.jobs.map(({ plan, ...job }) => ({
      ...job,
      plan: {
        ...plan,
        job: { ...plan.job, title: 'Another title' },
        power: { ...plan.power, loads: plan.power.loads.map((one) => ({ ...one, ratedA: one.ratedA + 1 })) },
      },
    }));
    expect(computedFor({ ...site, jobs }, store)).toBe(0);
  });

  it('is searched for anew where a space changed, for that space alone', () => {
    const store = new Map<string, unknown>();
    const all = computedFor(site, store);
    const { hatchback } = vehicles;
    const space = hatchback?.spaces['under-left-seat'];
    if (!hatchback || !space) throw new Error('The shop has another hatchback.');
    const outline = space.outline.map(([x, y]): [typeof x, typeof y] => [metres(x * 1.01), y]);
    const wider = { ...hatchback, spaces: { 'under-left-seat': { ...space, outline } } };
    const anew = computedFor({ ...site, vehicles: { ...vehicles, hatchback: wider } }, store);
    expect(anew).toBeGreaterThan(0);
    expect(anew).toBeLessThan(all / 2);
  });
});

describe('the thumbnails of past boards', () => {
  it('lie beside the pages of their jobs', () => {
    for (const id of fixedJobs) {
      const plan = fixedPlan(id);
      const files = sitePages({ site, audience: 'bench' })
        .find(({ address }) => address === `/jobs/${id}/`)
        ?.beside?.();
      expect(files).toEqual(thumbnailFiles(plan));
      for (const { id: board } of plan.boards)
        expect(files?.map(({ path }) => `jobs/${id}/${path}`)).toContain(thumbnailOf(plan, board)?.path);
    }
  });
});
