import { describe, expect, it } from 'vitest';
import type { Page } from '../../../lib/publish/page/page.ts';
import { renderModel } from '../../../lib/publish/page/render-page.ts';
import { neighboursIn } from '../../../lib/publish/pages/compare-pages.ts';
import { goneOnFrom, standingOf, successions } from '../../../lib/publish/pages/released-revisions.ts';
import { addresses } from '../../../lib/publish/site/addresses.ts';
import type { PublishedJob, ShopSite } from '../../../lib/publish/site/shop-site.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { otherJob, released, revisionA, revisionB, revisionC } from '../sample/released-jobs.ts';
import { sampleSite } from '../sample/sample-site.ts';

const job = released(revisionB, revisionA, revisionB);
const drawnOn = released(revisionC, revisionA, revisionB);

const templates = openTemplates({ strict: true });

function pagesOf(site: ShopSite): ReadonlyMap<string, Page> {
  return new Map(sitePages({ site, audience: 'bench' }).map((page) => [page.address, page]));
}

function htmlOf(pages: ReadonlyMap<string, Page>, address: string): string {
  const page = pages.get(address);
  if (!page) throw new Error(`There is no page ${address}.`);
  return renderModel(page.template, page.model(), templates);
}

const wordsOf = (html: string): string => html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

describe('a job that was released twice', () => {
  const pages = pagesOf(sampleSite([job]));

  it('has a page that tells what changed, with the board of one over the other', () => {
    const html = htmlOf(pages, '/jobs/well/B/changes/');
    expect(wordsOf(html)).toContain('What changed from A to B');
    expect(wordsOf(html)).toContain('M moved');
    expect(html).toContain('<svg');
    expect(html).toContain('href="../../../../jobs/well/A/index.html"');
    expect(html).toContain('href="../../../../jobs/well/index.html"');
    expect([...pages.keys()].filter((address) => address.endsWith('/changes/'))).toEqual([
      '/jobs/well/B/changes/',
    ]);
  });

  it('says on the first that it is superseded, on every printed page too, and leads to the one that stands', () => {
    const html = htmlOf(pages, addresses.revision('well', 'A'));
    expect(wordsOf(html)).toContain(
      'Revision A is superseded: do not build from it. Revision B stands. Go to revision B',
    );
    expect(html).toMatch(/@top-center \{ content: "SUPERSEDED: do not build from this sheet"/);
    expect(html).toMatch(/@left-middle \{ content: "SUPERSEDED"; writing-mode/);
    const sheets = html.split('<section class="sheet"').length - 1;
    expect(sheets).toBeGreaterThan(10);
    expect(html.split('<p class="sheet-line"><strong class="draft-word">SUPERSEDED').length - 1).toBe(sheets);
  });

  it('says on the second that it stands, and what changed since the first', () => {
    const html = htmlOf(pages, addresses.revision('well', 'B'));
    expect(wordsOf(html)).toContain('Revision B stands, as it was released.');
    const line = /jobs\/well\/B\/changes\/index.html">What changed since revision A<\/a>: ([^.]+)\./.exec(
      html,
    );
    const page = wordsOf(htmlOf(pages, '/jobs/well/B/changes/'));
    expect(page).toContain(`In all ${line?.[1]} .`);
    expect(html).not.toContain('SUPERSEDED');
  });

  it('leads from its page to each revision and to what changed', () => {
    const html = htmlOf(pages, addresses.job('well'));
    for (const [href, words] of [
      ['A/index.html', 'Revision A, as released, superseded'],
      ['B/index.html', 'Revision B, as released'],
      ['B/changes/index.html', 'What changed from A to B'],
    ])
      expect(html).toContain(`jobs/well/${href}">${words}</a>`);
    expect(html).not.toContain('frozen-line');
  });
});

describe('a job that goes on after its release', () => {
  it('tells on its page which revision stands, and what differs from it', () => {
    const pages = pagesOf(sampleSite([drawnOn]));
    const html = htmlOf(pages, addresses.job('well'));
    expect(wordsOf(html)).toContain(
      'Revision B is released and stands; this is revision C, drawn after it. Go to revision B . What differs from revision B',
    );
    expect(wordsOf(htmlOf(pages, addresses.changes('well')))).toContain('What changed from B to C');
    expect(wordsOf(htmlOf(pages, addresses.revision('well', 'B')))).toContain(
      'Revision B stands, as it was released. Revision C is drawn after it. Go to revision C',
    );
    expect(wordsOf(htmlOf(pages, addresses.revision('well', 'A')))).toContain('Revision B stands.');
  });

  it('leads from a superseded one to the page of the one that stands, not to the draft', () => {
    const to = standingOf(drawnOn, 'A', addresses.revision('well', 'A'), () => '').to;
    expect(to?.href).toBe('../../../jobs/well/B/index.html');
  });
});

describe('a job whose file says that it is superseded', () => {
  it('is superseded on the page of its last release too', () => {
    const gone = { ...revisionB, job: { ...revisionB.job, status: 'superseded' as const } };
    const says = standingOf(
      released(gone, revisionA, gone),
      'B',
      addresses.revision('well', 'B'),
      () => '',
    ).says;
    expect(says).toBe('Revision B is superseded: do not build from it.');
  });
});

describe('a job that was released once or never', () => {
  it('has nothing that changed', () => {
    for (const own of [released(revisionB, revisionB), released(revisionC)]) {
      expect(successions(own)).toEqual([]);
      expect(goneOnFrom(own, addresses.job('well'), () => '')).toBeNull();
    }
    const pages = pagesOf(sampleSite([released(revisionB, revisionB), otherJob]));
    expect([...pages.keys()].filter((address) => address.includes('changes'))).toEqual([]);
  });
});

describe('jobs of one vehicle', () => {
  it('are each held against the one before by its date, and the page of the vehicle leads there', () => {
    const pages = pagesOf(sampleSite([job, otherJob]));
    const html = htmlOf(pages, addresses.vehicleJob('sample-estate', 'well'));
    expect(wordsOf(html)).toContain('seat, revision A');
    expect(wordsOf(html)).toContain('G gone');
    expect(htmlOf(pages, addresses.vehicle('sample-estate'))).toContain(
      'vehicles/sample-estate/jobs/well/index.html">well against seat</a>',
    );
    expect(pages.has(addresses.vehicleJob('sample-estate', 'seat'))).toBe(false);
  });

  it('are as many pages as jobs less one, whatever their order', () => {
    const jobs = ['x', 'y', 'z'].map((id) => released({ ...revisionB, job: { ...revisionB.job, id } }));
    const turns = (own: readonly PublishedJob[]) =>
      neighboursIn(own, 'sample-estate').map(({ before, after }) => [before.plan.job.id, after.plan.job.id]);
    expect(turns(jobs)).toEqual([
      ['x', 'y'],
      ['y', 'z'],
    ]);
    expect(turns(jobs.toReversed())).toEqual(turns(jobs));
    expect(neighboursIn(jobs, 'another')).toEqual([]);
  });
});

describe('a copy for the customer', () => {
  it('has no page that compares', () => {
    const pages = sitePages({ site: sampleSite([drawnOn, otherJob]), audience: 'customer' });
    expect(pages.map(({ template }) => template)).not.toContain('compare.njk');
  });
});
