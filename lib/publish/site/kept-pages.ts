import type { Environment } from 'nunjucks';
import type { KeepLater, LaterStep } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { fillPictures, picturesToken } from '../packet/packet-pictures.ts';
import { hasDrawingTokens } from '../page/drawing-token.ts';
import type { MadePage, Page, PageModel } from '../page/page.ts';
import { finishedPage, renderModel, withFilesBeside } from '../page/render-page.ts';
import type { AssetNames } from './assets/asset-names.ts';
import type { NamedAssets } from './assets/named-assets.ts';
import { oneFile } from './one-file.ts';
import type { PlanDrawing } from './shop-site.ts';
import type { SiteAsset } from './site-assets.ts';

/** Draws a plan, now or on another thread. */
export type DrawLater = (plan: BuildPlan) => readonly PlanDrawing[] | Promise<readonly PlanDrawing[]>;

/** All that a page follows from. */
interface PageInput {
  readonly template: string;
  readonly model: PageModel;
  /** The plan whose drawings it shows. */
  readonly plan: BuildPlan | null;
  readonly runsSearch: boolean;
  /** Digest of the layouts. */
  readonly layouts: string;
  /** What the assets are called that it asks for. */
  readonly names: AssetNames;
}

export interface KeptPagesOptions {
  /** The layouts, which ask for assets by the names of `assets`. */
  readonly templates: Environment;
  readonly assets: NamedAssets;
  readonly layouts: string;
  readonly drawingsOf: DrawLater;
  readonly keep: KeepLater;
}

/** Pages in work at a time: their models are held meanwhile, and those of all others are not. */
const inWork = 8;

/** How a page becomes one file: the assets that it takes in go by the names that its layouts ask for. */
export interface WholeFileOptions {
  readonly templates: Environment;
  readonly assets: readonly SiteAsset[];
  readonly drawingsOf: DrawLater;
}

/** A page that is one file, its drawings in it. */
export async function wholeFile(
  page: Page,
  { templates, assets, drawingsOf }: WholeFileOptions,
): Promise<string> {
  const html = renderModel(page.template, page.model(), templates);
  const drawn =
    page.plan !== undefined && html.includes(picturesToken)
      ? fillPictures(html, await drawingsOf(page.plan), templates)
      : html;
  return oneFile(drawn, [...assets, ...(page.photos ?? [])]);
}

/** Makes pages as they are asked for: few at a time, since a site generator asks for all at once. */
export function keptPages({ templates, assets, layouts, drawingsOf, keep }: KeptPagesOptions) {
  const { names, files } = assets;
  const step: LaterStep<PageInput, MadePage> = {
    id: 'page',
    compute: async ({ template, model, plan, runsSearch }) => {
      const html = renderModel(template, model, templates);
      const drawings = plan !== null && hasDrawingTokens(html) ? await drawingsOf(plan) : null;
      return finishedPage({ html, drawings, top: model.top, runsSearch }, { templates, names });
    },
  };
  const turns = Array.from({ length: inWork }, () => Promise.resolve());
  let asked = 0;
  return (page: Page): Promise<MadePage> => {
    const turn = asked % inWork;
    asked += 1;
    const made = (turns[turn] ?? Promise.resolve()).then(async () => {
      // What is put into one file follows from all assets: it is made anew, which is soon done.
      if (page.isOneFile)
        return { html: await wholeFile(page, { templates, assets: files, drawingsOf }), files: [] };
      const { template, plan = null, runsSearch = false } = page;
      const kept = await keep(step, { template, model: page.model(), plan, runsSearch, layouts, names });
      return withFilesBeside(kept, page);
    });
    turns[turn] = made.then(
      () => undefined,
      () => undefined,
    );
    return made;
  };
}
