import { join } from 'node:path';
import type { Audience } from '../model/audience.ts';
import { buildSites } from '../publish/site/build-site.ts';
import { jobDrawings } from './drawings.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus, statusOf } from './exit-status.ts';
import { anyStopped, loadShop, siteOf } from './load-shop.ts';
import { standingText, tellChanges, tellNoPacket, tellProblems } from './report.ts';

export interface BuildChoices {
  readonly audience: Audience;
  /** Builds what can be built although the input has errors. */
  readonly keepGoing: boolean;
}

/** `rackleaf build`: the site of the shop. With errors in the input the last good site stays as it is. */
export async function build(effects: Effects, { audience, keepGoing }: BuildChoices): Promise<ExitStatus> {
  const shop = await loadShop(effects);
  tellProblems(shop, effects);
  const site = siteOf(shop);
  if (!site || (shop.problems.length > 0 && !keepGoing)) {
    const count = shop.problems.length;
    effects.tell(
      `${count} error${count === 1 ? '' : 's'}: the site was not built, the last good one is untouched`,
    );
    return exitStatus.inputErrors;
  }
  for (const job of shop.jobs) {
    effects.tell(standingText(job));
    tellChanges(job, effects);
  }
  const refused = audience === 'customer' ? shop.jobs.filter((job) => tellNoPacket(job, effects)) : [];
  const sites = await buildSites(site, { root: effects.root, drawingsOf: jobDrawings(), audience });
  for (const { pages, files, folder } of sites)
    effects.tell(
      audience === 'customer'
        ? `${pages} pages, ${files} files: ${folder}`
        : `${pages} pages, ${files} files: open ${join(folder, 'index.html')}`,
    );
  return statusOf({ problems: shop.problems.length > 0, stopped: anyStopped(shop) || refused.length > 0 });
}
