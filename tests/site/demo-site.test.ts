import { fileURLToPath } from 'node:url';
import { jobDrawings } from '../../lib/commands/drawings.ts';
import { casesOf, isLongRun } from '../long-run.ts';
import { siteInFolder } from '../shops/site-in-folder.ts';
import { describeSite } from './describe-site.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const site = await siteInFolder(root);

describeSite({
  name: 'the demo shop',
  site,
  drawingsOf: jobDrawings(),
  lookedAt: casesOf(site.jobs, (_, index) => index === 0),
  usedElsewhere: !isLongRun,
});
