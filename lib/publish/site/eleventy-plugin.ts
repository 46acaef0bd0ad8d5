import type { EleventyConfiguration } from '@11ty/eleventy';
import { fileOf } from './addresses.ts';

export interface PluginOptions {
  readonly addresses: readonly string[];
  /** The whole HTML of the page at an address, by the one way that the server takes as well. */
  readonly htmlOf: (address: string) => Promise<string>;
}

/** Settings that hold for every site: only the pages that are added. */
export function siteSettings(configuration: EleventyConfiguration): void {
  // Timings are printed past this share of a build: drawings are most of one, and nobody asked.
  configuration.benchmarks.config.setMinimumThresholdPercent(100);
  configuration.setTemplateFormats(['njk']);
  configuration.setUseGitIgnore(false);
}

/**
 * Adds a template for each page. No page has a file, and no template holds more than the page's address: its HTML is
 * put in by a transform, just before it is written, so that memory holds one page at a time and not the site.
 */
export function shopSitePlugin(
  configuration: EleventyConfiguration,
  { addresses, htmlOf }: PluginOptions,
): void {
  siteSettings(configuration);
  for (const address of addresses) {
    const file = fileOf(address);
    configuration.addTemplate(file.replace(/html$/, 'njk'), address, { permalink: file });
  }
  configuration.addTransform('page', function () {
    const { url } = this.page;
    if (url === false) throw new Error('A page of the site has no address.');
    return htmlOf(url);
  });
}
