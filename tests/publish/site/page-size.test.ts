import { gzipSync } from 'node:zlib';
import { expect, it } from 'vitest';
import { jobDrawings } from '../../../lib/commands/drawings.ts';
import { pageWithFiles } from '../../../lib/publish/page/render-page.ts';
import { addresses } from '../../../lib/publish/site/addresses.ts';
import { namedAssets } from '../../../lib/publish/site/assets/named-assets.ts';
import { siteAssets } from '../../../lib/publish/site/site-assets.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { root } from '../../plan/demo.ts';
import { siteInFolder } from '../../shops/site-in-folder.ts';

/** What the HTML of a job may weigh, all its tables in it, bytes: as it is written, and as a server sends it. */
const most = { written: 300_000, sent: 49_000 };

it('the page of the largest job of the demo is soon there, with all its tables', async () => {
  const site = await siteInFolder(root);
  const [largest] = site.jobs.toSorted((a, b) => b.plan.wires.length - a.plan.wires.length);
  const address = addresses.job(largest?.plan.job.id ?? '');
  const page = sitePages({ site, audience: 'bench' }).find((one) => one.address === address);
  if (!page) throw new Error('The demo has no job.');
  const { names } = await namedAssets(siteAssets());
  const { html, files } = pageWithFiles(page, { templates: openTemplates({ names }), names }, jobDrawings());
  expect(files.length).toBeGreaterThan(10);
  expect(html.split('<table').length - 1).toBeGreaterThan(30);
  expect(Buffer.byteLength(html)).toBeLessThanOrEqual(most.written);
  expect(gzipSync(html, { level: 9 }).length).toBeLessThanOrEqual(most.sent);
});
