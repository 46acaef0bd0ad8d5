import { samplePlan } from '../publish/sample-plan.ts';
import { sampleDrawings, sampleJob, sampleSite } from '../publish/sample-site.ts';
import { describeSite } from './describe-site.ts';

const plan = samplePlan();
const draft = {
  ...plan,
  job: { ...plan.job, id: 'draft-job', title: 'Draft of a board', status: 'draft' as const },
};

describeSite({
  name: 'a sample shop',
  site: sampleSite([sampleJob(plan), sampleJob(draft)]),
  drawingsOf: sampleDrawings,
  // Twenty sheets, the cover and the two cards on two pages each; one of the two drawings stands among the text of its sheet.
  printed: { 'sample-job': 22, 'draft-job': 22 },
});
