import type { Environment } from 'nunjucks';
import type { KeepLater, LaterStep } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { fillPictures, picturesToken } from '../packet/packet-pictures.ts';
import { hasDrawingTokens } from '../page/drawing-token.ts';
import type { MadePage, Page, PageModel } from '../page/page.ts';
import { renderModel, withDrawingFiles } from '../page/render-page.ts';
import { oneFile } from './one-file.ts';
import type { PlanDrawing } from './shop-site.ts';
import { siteAssets } from './site-assets.ts';

/** Draws a plan, now or on another thread. */
export type DrawLater = (plan: BuildPlan) => readonly PlanDrawing[] | Promise<readonly PlanDrawing[]>;

/** All that a page follows from. */
interface PageInput {
  readonly template: string;
  readonly model: PageModel;
  /** The plan whose drawings it shows. */
  readonly plan: BuildPlan | null;
  /** Digest of the layouts. */
  readonly layouts: string;
}

export interface KeptPagesOptions {
  readonly templates: Environment;
  readonly layouts: string;
  readonly drawingsOf: DrawLater;
  readonly keep: KeepLater;
}

/** Pages in work at a time: their models are held meanwhile, and those of all others are not. */
const inWork = 8;

/** A page that is one file, its drawings in it. */
export async function wholeFile(page: Page, templates: Environment, drawingsOf: DrawLater): Promise<string> {
  const html = renderModel(page.template, page.model(), templates);
  const drawn =
    page.plan !== undefined && html.includes(picturesToken)
      ? fillPictures(html, await drawingsOf(page.plan), templates)
      : html;
  return oneFile(drawn, [...siteAssets(), ...(page.photos ?? [])]);
}

/** Makes pages as they are asked for: few at a time, since a site generator asks for all at once. */
export function keptPages({ templates, layouts, drawingsOf, keep }: KeptPagesOptions) {
  const step: LaterStep<PageInput, MadePage> = {
    id: 'page',
    compute: async ({ template, model, plan }) => {
      const html = renderModel(template, model, templates);
      if (plan === null || !hasDrawingTokens(html)) return { html, files: [] };
      return withDrawingFiles(html, templates, await drawingsOf(plan), model.top);
    },
  };
  const turns = Array.from({ length: inWork }, () => Promise.resolve());
  let asked = 0;
  return (page: Page): Promise<MadePage> => {
    const turn = asked % inWork;
    asked += 1;
    const made = (turns[turn] ?? Promise.resolve()).then(async () => {
      // What is put into one file follows from all assets: it is made anew, which is soon done.
      if (page.isOneFile) return { html: await wholeFile(page, templates, drawingsOf), files: [] };
      return keep(step, { template: page.template, model: page.model(), plan: page.plan ?? null, layouts });
    });
    turns[turn] = made.then(
      () => undefined,
      () => undefined,
    );
    return made;
  };
}
