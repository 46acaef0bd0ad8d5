import type { EleventyConfiguration } from '@11ty/eleventy';
import type { Environment } from 'nunjucks';
import { frozen } from '../frozen.ts';
import type { Page } from '../page/page.ts';
import { putDrawings } from '../page/render-page.ts';
import { fileOf } from './addresses.ts';
import type { DrawingsOf } from './shop-site.ts';

export interface PluginOptions {
  readonly pages: readonly Page[];
  readonly templates: Environment;
  readonly drawingsOf: DrawingsOf;
}

/** Settings that hold for every site: only the pages that are added, rendered with the project's layouts. */
export function siteSettings(configuration: EleventyConfiguration, templates: Environment): void {
  // Timings are printed past this share of a build: drawings are most of one, and nobody asked.
  configuration.benchmarks.config.setMinimumThresholdPercent(100);
  configuration.setTemplateFormats(['njk']);
  configuration.setUseGitIgnore(false);
  configuration.setLibrary('njk', templates);
}

/**
 * Adds a template for each page. No page has a file, and none holds its model: a template asks for it by the
 * page's address when it is rendered. Drawings are put in by a transform, just before the page is written,
 * so that memory follows the text of the pages and not their drawings.
 */
export function shopSitePlugin(configuration: EleventyConfiguration, options: PluginOptions): void {
  const { pages, templates, drawingsOf } = options;
  const byAddress = new Map(pages.map((page) => [page.address, page]));
  siteSettings(configuration, templates);
  templates.addGlobal('pageModel', (address: string) => {
    const page = byAddress.get(address);
    if (page === undefined) throw new Error(`No page has the address ${address}.`);
    return frozen(page.model());
  });
  for (const page of pages) addPage(configuration, page);
  configuration.addTransform('drawings', function (content) {
    const page = byAddress.get(this.page.url === false ? '' : this.page.url);
    return page === undefined ? content : putDrawings(content, page, templates, drawingsOf);
  });
}

function addPage(configuration: EleventyConfiguration, { address, template }: Page): void {
  configuration.addTemplate(
    fileOf(address).replace(/html$/, 'njk'),
    `{% set doc = pageModel(address) %}{% extends "${template}" %}`,
    { address, permalink: fileOf(address) },
  );
}
