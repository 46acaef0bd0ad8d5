import { BestLayouts } from '../layout/best-layouts.ts';
import type { SearchGiven, SearchResult } from '../layout/layout-search.ts';
import { judgeLayout, type LayoutTask, proposal, settingOf } from '../layout/layout-setting.ts';
import { type StackLimits, searchStacked } from '../layout/raising/stacked-search.ts';
import { roughHouse } from '../layout/score/layout-house.ts';
import { tidied } from '../layout/tidying.ts';
import { sitesOfProposal } from './proposal-sites.ts';

/** How many layouts are given on to be wired. */
const most = 6;

/** Proposes placements as `searchStacked` does, and brings the parts of each into line. */
export function tidyLayouts(task: LayoutTask, limits: StackLimits, given: SearchGiven): SearchResult {
  const found = searchStacked(task, limits, {
    ...given,
    rules: { ...given.rules, house: roughHouse(given.rules.house) },
  });
  const setting = settingOf(task, given.rules, given.rules.house.stepM);
  const best = new BestLayouts(most);
  let { evaluations } = found;
  for (const one of found.proposals) {
    const { sites, evaluations: scored } = tidied(setting, sitesOfProposal(setting, one));
    evaluations += scored;
    const { cost, cautions } = judgeLayout(setting, sites);
    best.offer({ cost, cautions, sites });
  }
  return { ...found, evaluations, proposals: best.list.map(({ sites }) => proposal(setting, sites)) };
}
