import type { BuildPlan } from '../../model/plan/index.ts';
import type { SiteContext } from '../page/page.ts';
import { withStylesInHead } from '../page/page-policy.ts';
import { renderModel } from '../page/render-page.ts';
import { addresses } from '../site/addresses.ts';
import { oneFile } from '../site/one-file.ts';
import { siteAssets } from '../site/site-assets.ts';
import { openTemplates } from '../site/templates.ts';
import { comparePage } from './compare-pages.ts';

/** A plan with what it is called beside another. */
interface NamedPlan {
  readonly name: string;
  readonly plan: BuildPlan;
}

/** The page that holds one plan against another as one file, which leads to no other page. */
export function compareFile(context: SiteContext, before: NamedPlan, after: NamedPlan): Promise<string> {
  const face = { address: addresses.home, title: `${after.name}, against ${before.name}`, above: [] };
  const page = comparePage(context, { ...before, address: null }, { ...after, address: null }, face);
  const model = { ...page.model(), navigation: [], trail: [], search: null };
  return oneFile(withStylesInHead(renderModel(page.template, model, openTemplates())), siteAssets());
}
