import { realEffects } from '../../lib/commands/effects.ts';
import { judgedPlan } from '../../lib/commands/judged-plan.ts';
import { loadShop, siteOf } from '../../lib/commands/load-shop.ts';
import type { ShopSite } from '../../lib/publish/site/shop-site.ts';
import { keptPlan } from './kept-plan.ts';

/** What the site of a shop in a folder is made from, as `build` has it; its plans are kept between files of tests. */
export async function siteInFolder(root: string): Promise<ShopSite> {
  const effects = { ...realEffects(root), watched: false };
  const kept = await loadShop(effects, undefined, (job, files) =>
    keptPlan(files, job.id, () => judgedPlan(job)),
  );
  const site = siteOf(kept);
  if (site === null) throw new Error(`The shop file in ${root} can not be read.`);
  return site;
}
