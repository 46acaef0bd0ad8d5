import { describe, expect, it } from 'vitest';
import { renderModel } from '../../../lib/publish/page/render-page.ts';
import { thumbnailFiles, thumbnailOf } from '../../../lib/publish/reference/thumbnail-file.ts';
import { usesOfPart } from '../../../lib/publish/reference/where-used.ts';
import { loneSite } from '../../../lib/publish/site/lone/lone-job.ts';
import type { ShopSite } from '../../../lib/publish/site/shop-site.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { writerFor } from '../../../lib/publish/words/written.ts';
import { fixedContent, fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleJob, sampleSite } from '../sample/sample-site.ts';

const { parts, vehicles } = fixedContent();
const site: ShopSite = {
  ...sampleSite(fixedJobs.map((id) => ({ ...sampleJob(fixedPlan(id)), revisions: [] }))),
  parts,
  vehicles,
};
const templates = openTemplates({ strict: true });

/** The HTML at an address of a site; null where it has no such page. */
function pageAt(address: string, of: ShopSite = site): string | null {
  const page = sitePages({ site: of, audience: 'bench' }).find((one) => one.address === address);
  return page ? renderModel(page.template, page.model(), templates) : null;
}

/** Addresses below the reference. */
const referenceOf = (of: ShopSite): string[] =>
  sitePages({ site: of, audience: 'bench' }).flatMap(({ address }) =>
    address.startsWith('/reference/') ? [address] : [],
  );

describe('the shop reference', () => {
  it('leads from each value to a page, and to those of parts and vehicles that have one', () => {
    const html = pageAt('/reference/') ?? '';
    const hrefs = [...html.matchAll(/<li><a href="\.\.\/([^"#]+)index\.html">/g)].map(
      ([, path]) => `/${path}`,
    );
    const known = new Set(sitePages({ site, audience: 'bench' }).map(({ address }) => address));
    expect(hrefs.length).toBeGreaterThan(30);
    expect(hrefs.filter((address) => !known.has(address))).toEqual([]);
    expect(hrefs).toContain('/parts/amp-four/');
    expect(hrefs).toContain('/vehicles/van/');
    expect(hrefs).toContain('/reference/wire-size/1-0-awg/');
    for (const address of referenceOf(site).filter((one) => one !== '/reference/'))
      expect(hrefs).toContain(address);
  });

  it('shows the jobs that have a value, each with its thumbnail, and no other', () => {
    const html = pageAt('/reference/wire-size/1-0-awg/') ?? '';
    const jobs = [...html.matchAll(/<a href="[^"]*jobs\/([^/"]+)\/index\.html">/g)].map(([, id]) => id);
    expect(jobs).toEqual(
      fixedJobs.filter((id) =>
        fixedPlan(id).wires.some(
          ({ origin, role, size }) => origin === 'job' && role === 'power' && size.label === '1/0 AWG',
        ),
      ),
    );
    const thumbnail = thumbnailOf(fixedPlan('van-three-amps'));
    expect(html).toContain(`src="../../../${thumbnail?.path}"`);
    expect(html).toContain('loading="lazy"');
  });

  it('gives a value its own page where two parts have its title, so that no job is lost', () => {
    const four = parts['amp-four'];
    const twice: ShopSite = { ...site, parts: { ...parts, ...(four && { 'amp-four-again': four }) } };
    const address = referenceOf(twice).find((one) => one.startsWith('/reference/part/'));
    expect(address).toBe('/reference/part/four-channel-amplifier-4-x-75-w/');
    expect(pageAt(address ?? '', twice)).toContain('jobs/estate-side-well/');
  });

  it('is none on the site of one job, and search knows of no other job there', () => {
    const { site: lone } = loneSite(site, 'under-seat-five', []);
    expect(referenceOf(lone)).toEqual([]);
    const told = JSON.stringify(
      sitePages({ site: lone, audience: 'bench' }).flatMap(({ search }) => search?.() ?? []),
    );
    expect(told).toContain('under-seat-five');
    expect(told).not.toMatch(/van-three-amps|estate-side-well|Panel van/);
    expect(pageAt('/search/', lone)).not.toContain('/reference/');
  });

  it('is none in the packet of a customer', () => {
    const addresses = sitePages({ site, audience: 'customer' }).map(({ address }) => address);
    expect(addresses.filter((address) => !address.endsWith('/packet/'))).toEqual([]);
  });
});

describe('where a part is used', () => {
  const write = writerFor({ units: 'inch', fraction: 16 });

  it('is told by the devices that are of it, the board that is cut from it, the length or the pieces taken', () => {
    const plan = samplePlan();
    expect(usesOfPart(plan, 'amp-4x75', write)).toEqual(['Front amplifier']);
    expect(usesOfPart(plan, 'birch-12', write)).toEqual(['Main board']);
    const [line] = plan.pick;
    if (!line) throw new Error('The sample takes nothing.');
    const taken = {
      ...plan,
      pick: [{ ...line, part: 'reel', unit: 'm' as const, quantity: 1.001 * 0.3048 * 3 }],
    };
    // Taken from the shelf: never told as less.
    expect(usesOfPart(taken, 'reel', write)).toEqual(['3 ft 1/16 in']);
    expect(
      usesOfPart({ ...plan, pick: [{ ...line, part: 'lug', unit: 'piece', quantity: 2 }] }, 'lug', write),
    ).toEqual(['2 pieces']);
    expect(
      usesOfPart(
        { ...plan, pickBeyond: { revision: 'A', inPlace: [{ part: 'old', title: 'Old' }] } },
        'old',
        write,
      ),
    ).toEqual(['in place since an earlier revision']);
    expect(usesOfPart(plan, 'nothing', write)).toEqual([]);
  });

  it('stands on the page of the part, for every job that has it', () => {
    const html = pageAt('/parts/amp-four/') ?? '';
    expect(html).toContain('Front amplifier');
    expect(html).toContain('jobs/estate-side-well/');
    expect(html).toContain('jobs/van-three-amps/');
    expect(html).not.toContain('jobs/under-seat-five/');
  });
});

describe('a thumbnail', () => {
  it('is small, says no text but its title, and asks for nothing', () => {
    for (const id of fixedJobs) {
      const [{ text = '', path = '' } = {}] = thumbnailFiles(fixedPlan(id));
      expect(path).toMatch(/^drawings\/thumbnail\.[0-9a-f]{8}\.svg$/);
      expect(Buffer.byteLength(text)).toBeLessThan(12_000);
      expect(text).not.toMatch(/<text|<script|href=|url\(|@import/);
      expect(text.split('data-of').length).toBe(1);
    }
  });

  it('shows every part of its board within the paper', () => {
    const plan = fixedPlan('van-three-amps');
    const [{ text = '' } = {}] = thumbnailFiles(plan);
    const numbers = [...text.matchAll(/ d="([^"]+)"/g)].flatMap(([, d = '']) =>
      [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)] as const),
    );
    expect(numbers.length).toBeGreaterThan(4 * (plan.boards[0]?.placements.length ?? 0));
    for (const [x, y] of numbers) {
      expect(x).toBeGreaterThanOrEqual(0);
      expect(x).toBeLessThanOrEqual(48);
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(36);
    }
  });

  it('is one for each board of a job, the one that carries most before the others', () => {
    const [board] = samplePlan().boards;
    if (!board) throw new Error('The sample has no board.');
    const [first] = board.placements;
    const small = { ...board, id: 'small', title: 'Small board', placements: first ? [first] : [] };
    const plan = {
      ...samplePlan(),
      boards: [
        { ...small, placements: [] },
        small,
        { ...board, placements: [...board.placements, ...small.placements] },
      ],
    };
    expect(thumbnailFiles(plan).map(({ title }) => title)).toEqual([
      `${board.title}, from its mounting side`,
      'Small board, from its mounting side',
    ]);
    expect(thumbnailOf(plan)?.title).toContain(board.title);
    expect(thumbnailOf(plan, 'small')?.title).toContain('Small board');
    expect(thumbnailOf(plan, 'ghost')).toBeNull();
  });

  it('is none where no board carries anything', () => {
    const [board] = samplePlan().boards;
    for (const boards of [[], board ? [{ ...board, placements: [] }] : []]) {
      expect(thumbnailFiles({ ...samplePlan(), boards })).toEqual([]);
      expect(thumbnailOf({ ...samplePlan(), boards })).toBeNull();
    }
  });
});
