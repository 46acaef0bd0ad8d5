import { isLongRun } from '../long-run.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { describeSite } from './describe-site.ts';

const plan = samplePlan();
const draft = {
  ...plan,
  job: { ...plan.job, id: 'draft-job', title: 'Draft of a board', status: 'draft' as const },
};

/** Pages that say how the tool is used, whatever the shop: the site of the demo has the same. */
const ofTheTool: ReadonlySet<string> = new Set([
  'calculators.njk',
  'calculator.njk',
  'calculators-file.njk',
  'catalogue.njk',
  'writing.njk',
  'blank-survey.njk',
]);

const jobs = [sampleJob(plan), sampleJob(draft)];

describeSite({
  name: 'a sample shop',
  site: sampleSite(jobs),
  drawingsOf: sampleDrawings,
  lookedAt: jobs,
  ...(!isLongRun && { lookedAtElsewhere: ofTheTool }),
});
