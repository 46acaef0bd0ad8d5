import { readFileSync } from 'node:fs';
import { frozenPlans } from '../../lib/commands/shop/frozen-plans.ts';
import { type BuildPlan, planFormat } from '../../lib/model/plan/index.ts';
import { frozenPath } from '../../lib/read/frozen-file.ts';

const jobs = ['estate-side-well', 'under-seat-five', 'van-three-amps'] as const;

/** A plan as it was frozen in a format, read by the tool of today. */
export function frozenIn(format: number, job: (typeof jobs)[number]): BuildPlan {
  const path = new URL(`../frozen/format-${format}/${job}.plan.json`, import.meta.url);
  const { frozen } = frozenPlans([{ path: frozenPath(job, 'A'), text: readFileSync(path, 'utf8') }]);
  const [read] = frozen;
  if (!read) throw new Error(`The plan of ${job} was not read.`);
  return read.plan;
}

/** Plans of every job and of every format that there was. */
export function everyFrozen(): BuildPlan[] {
  const formats = Array.from({ length: planFormat + 1 }, (_, format) => format);
  return formats.flatMap((format) => jobs.map((job) => frozenIn(format, job)));
}
