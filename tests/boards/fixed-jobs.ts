import { fileURLToPath } from 'node:url';
import type { ReadJob } from '../../lib/model/content/resolved-job.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';
import type { Content } from '../../lib/read/read-content.ts';
import { ShopInFolder } from '../shops/shop-in-folder.ts';

/** The folder that holds the fixed shop's `content/`. */
export const fixedRoot = fileURLToPath(new URL('.', import.meta.url));

const shop = new ShopInFolder(fixedRoot);

/** Three jobs that stay as they are, whatever becomes of the demo: what the tool makes of them is measured. */
export const fixedJobs = ['estate-side-well', 'under-seat-five', 'van-three-amps'] as const;
export type FixedJob = (typeof fixedJobs)[number];

export function fixedContent(): Content {
  return shop.content;
}

export function fixedJob(id: FixedJob): ReadJob {
  return shop.job(id);
}

/** The judged plan of a fixed job, not to be changed. */
export function fixedPlan(id: FixedJob): BuildPlan {
  return shop.plan(id);
}
