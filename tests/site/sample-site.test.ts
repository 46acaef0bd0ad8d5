import { isLongRun } from '../long-run.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample/sample-site.ts';
import { describeSite } from './describe-site.ts';
import { templatesOfDemo } from './templates-of-demo.ts';

const plan = samplePlan();
const draft = {
  ...plan,
  job: { ...plan.job, id: 'draft-job', title: 'Draft of a board', status: 'draft' as const },
};

const jobs = [sampleJob(plan), sampleJob(draft)];

describeSite({
  name: 'a sample shop',
  site: sampleSite(jobs),
  drawingsOf: sampleDrawings,
  lookedAt: jobs,
  ...(!isLongRun && { lookedAtElsewhere: templatesOfDemo }),
});
