import { fileURLToPath } from 'node:url';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import type { Content } from '../../lib/read/read-content.ts';
import { ShopInFolder } from '../shops/shop-in-folder.ts';

/** The folder that holds `content/`. */
export const root = fileURLToPath(new URL('../..', import.meta.url));

const shop = new ShopInFolder(root);

/**
 * The jobs that the demo shop has today, for what must hold of whatever job stands there. What is asked of one job
 * by its name, or of its figures, is asked of `tests/boards/fixed-jobs.ts`, which does not change with the demo.
 */
export const demoJobs = shop.jobIds;

export function demoContent(): Content {
  return shop.content;
}

export function demoJob(id: string): ReadJob {
  return shop.job(id);
}

/** The judged plan of a demo job, not to be changed. */
export function demoPlan(id: string): BuildPlan {
  return shop.plan(id);
}
