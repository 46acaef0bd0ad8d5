import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { jobDrawings } from '../../lib/commands/drawings.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { casesOf, isLongRun } from '../long-run.ts';
import { sampleSite } from '../publish/sample/sample-site.ts';
import { siteInFolder } from '../shops/site-in-folder.ts';
import { describeSite } from './describe-site.ts';
import { templatesOfDemo, templatesOfSample } from './templates-of-demo.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const site = await siteInFolder(root);

describeSite({
  name: 'the demo shop',
  site,
  drawingsOf: jobDrawings(),
  lookedAt: casesOf(site.jobs, (_, index) => index === 0),
  ...(!isLongRun && { lookedAtElsewhere: templatesOfSample(sampleSite()), usedElsewhere: true }),
});

test('the demo site has a page of each template that is looked at here alone', () => {
  const templates = sitePages({ site, audience: 'bench' }).map(({ template }) => template);
  expect([...templatesOfDemo].filter((one) => !templates.includes(one))).toEqual([]);
});
