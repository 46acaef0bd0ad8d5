import { renderPage } from '../../../lib/publish/page/render-page.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { sampleDrawings, sampleSite } from './sample-site.ts';

/** The HTML of a page of the sample site; null where the audience has none there. */
export function pageAt(address: string, audience: 'bench' | 'customer' = 'bench'): string | null {
  const page = sitePages({ site: sampleSite(), audience }).find((one) => one.address === address);
  return page ? renderPage(page, openTemplates(), sampleDrawings) : null;
}

/** A text as it stands in HTML. */
export const escaped = (text: string): string =>
  text
    .replaceAll('&', '&amp;')
    .replaceAll("'", '&#39;')
    .replaceAll('"', '&quot;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;');
