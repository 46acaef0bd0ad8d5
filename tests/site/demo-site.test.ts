import { fileURLToPath } from 'node:url';
import { jobDrawings } from '../../lib/commands/drawings.ts';
import { realEffects } from '../../lib/commands/effects.ts';
import { loadShop, siteOf } from '../../lib/commands/load-shop.ts';
import { describeSite } from './describe-site.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));
const site = siteOf(await loadShop({ ...realEffects(root), watched: false }));
if (site === null) throw new Error('The shop file of the demo can not be read.');

describeSite({
  name: 'the demo shop',
  site,
  drawingsOf: jobDrawings(),
});
