import { realEffects } from '../../lib/commands/effects.ts';
import { loadShop, siteOf } from '../../lib/commands/shop/load-shop.ts';
import type { ShopSite } from '../../lib/publish/site/shop-site.ts';
import { testCrew } from './test-crew.ts';

/** What the site of a shop in a folder is made from, as `build` has it; its plans are kept between files of tests. */
export async function siteInFolder(root: string): Promise<ShopSite> {
  const effects = { ...realEffects(root), watched: false };
  const site = siteOf(await loadShop(effects, testCrew(), { compares: false }));
  if (site === null) throw new Error(`The shop file in ${root} can not be read.`);
  return site;
}
