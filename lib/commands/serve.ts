import { join } from 'node:path';
import { serve as serveSite } from '../publish/serve/serve.ts';
import { jobDrawings } from './drawings.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { loadShop, siteOf } from './load-shop.ts';

/** `rackleaf serve`: the site to this machine alone, anew on every change, until it is interrupted. */
export async function serve(effects: Effects, port: number, stop: Promise<void>): Promise<ExitStatus> {
  let errors = false;
  const served = await serveSite({
    load: async () => {
      const shop = await loadShop(effects);
      errors = shop.problems.length > 0;
      return { site: siteOf(shop), problems: shop.problems };
    },
    drawingsOf: jobDrawings(),
    folders: [join(effects.root, 'content')],
    port,
    say: effects.tell,
  });
  effects.tell(`serving ${served.url}; Ctrl-C ends it`);
  await stop;
  await served.close();
  return errors ? exitStatus.inputErrors : exitStatus.done;
}
