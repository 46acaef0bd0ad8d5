import { access } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { audiences } from '../../../lib/model/audience.ts';
import { renderPage } from '../../../lib/publish/page/render-page.ts';
import { sheetSections } from '../../../lib/publish/page/sheet-sections.ts';
import { sheetIds, sheets } from '../../../lib/publish/sheets/index.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { layoutsFolder, openTemplates } from '../../../lib/publish/site/templates.ts';
import { nothingPlanned } from '../../plan/nothing-planned.ts';
import { samplePlan } from '../sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../sample/sample-site.ts';

/** A plan as bare as the schema allows. */
function emptyPlan() {
  return samplePlan({
    findings: [],
    traces: {},
    items: [],
    ...nothingPlanned,
    branches: [],
    cables: [],
    measurements: [],
    steps: [],
    pick: [],
  });
}

describe('sheets', () => {
  it.each(sheetIds)('%s has its own id, and a partial of the same name', async (id) => {
    expect(sheets[id].id).toBe(id);
    await expect(access(join(layoutsFolder, `sheets/${id}.njk`))).resolves.toBeUndefined();
  });

  it('all have something to show of a plan that holds something of everything', () => {
    expect(sheetSections(samplePlan(), 'shop').map((section) => section.id)).toEqual([...sheetIds]);
    const bench = sheetIds.filter((id) => sheets[id].audiences.includes('bench'));
    expect(sheetSections(samplePlan(), 'bench').map((section) => section.id)).toEqual(bench);
  });

  it('leave only the cover of an empty plan', () => {
    expect(sheetSections(emptyPlan(), 'bench').map((section) => section.id)).toEqual(['cover']);
  });

  it('hand whoever is no builder the cover alone: what the owner takes home is the packet', () => {
    const ids = sheetSections(samplePlan(), 'customer').map((section) => section.id);
    expect(ids).toEqual(['cover']);
  });

  it('hold frozen models', () => {
    const [cover] = sheetSections(samplePlan(), 'bench');
    expect(Object.isFrozen(cover?.sheet)).toBe(true);
  });
});

describe('pages', () => {
  const templates = openTemplates({ strict: true });

  it.each(audiences)(
    'of a full and of an empty plan ask for nothing that they do not have: %s',
    (audience) => {
      for (const plan of [samplePlan(), emptyPlan()]) {
        const site = sampleSite([sampleJob(plan)]);
        for (const page of sitePages({ site, audience }))
          expect(renderPage(page, templates, sampleDrawings)).toContain('</html>');
      }
    },
  );

  it('escape every text of a shop', () => {
    const evil = '<img src=x onerror=alert(1)> "quoted" {{ doc }}';
    const plan = samplePlan();
    const site = sampleSite([sampleJob({ ...plan, job: { ...plan.job, title: evil, notes: [evil] } })]);
    for (const page of sitePages({ site, audience: 'shop' })) {
      const html = renderPage(page, templates, () => []);
      // The thumbnail of a board is the one image of ours.
      expect(html.replaceAll('<img class="hit-picture" src="', '')).not.toContain('<img');
      expect(html).not.toContain('onerror=alert(1)>');
      expect(html).not.toContain('<script>alert');
    }
  });

  it('say DRAFT where the status is draft or a finding stops the job, and nowhere else', () => {
    const plan = samplePlan();
    const [finding] = plan.findings;
    const stopped = finding === undefined ? [] : [{ ...finding, level: 'stop' as const }];
    const jobHtml = (own: typeof plan): string => {
      const pages = sitePages({ site: sampleSite([sampleJob(own)]), audience: 'bench' });
      const page = pages.find(({ address }) => address === '/jobs/sample-job/');
      return page === undefined ? '' : renderPage(page, templates, () => []);
    };
    expect(jobHtml({ ...plan, findings: stopped })).toContain('DRAFT');
    expect(jobHtml({ ...plan, job: { ...plan.job, status: 'draft' } })).toContain('DRAFT');
    expect(jobHtml(plan)).not.toContain('DRAFT');
  });

  it('hold each drawing once, on its own sheet', () => {
    const pages = sitePages({ site: sampleSite(), audience: 'bench' });
    const page = pages.find(({ address }) => address === '/jobs/sample-job/');
    const html = page === undefined ? '' : renderPage(page, templates, sampleDrawings);
    expect(html.split('<svg xmlns').length - 1).toBe(2);
    const section = /id="cut-and-drill"[\s\S]*?<\/section>/.exec(html)?.[0];
    expect(section).toContain('sample-job__cut-and-drill');
    expect(html).not.toContain('<!--drawings');
  });
});

describe('drawings of a page', () => {
  it('tell what found no room on them', () => {
    const site = sampleSite([sampleJob(samplePlan())]);
    const page = sitePages({ site, audience: 'bench' }).find(({ template }) => template === 'job.njk');
    if (!page) throw new Error('the sample has no page of a job');
    const drawings = (unplaced: readonly string[]) => () => [
      { sheet: 'placement', id: 'one', title: 'A board', svg: '<svg></svg>', unplaced },
    ];
    expect(renderPage(page, openTemplates(), drawings(['GAIN', 'LEVEL']))).toContain(
      'A board has no room for: GAIN, LEVEL.',
    );
    expect(renderPage(page, openTemplates(), drawings([]))).not.toContain('has no room for');
  });
});
