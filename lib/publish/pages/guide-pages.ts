import type { Guide } from '../../model/content/guide.ts';
import { rulesTold } from '../../model/printed/rule-figures.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { chromeOf } from '../page/chrome.ts';
import { markdownHtml } from '../page/markdown.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { guideRecord } from '../site/search-fields.ts';
import { computationsSummary, computationsTitle } from './computations-page.ts';
import { findingsSummary, findingsTitle } from './findings-page.ts';

/** The index of guides. */
export interface GuidesBody {
  readonly guides: readonly (Link & { readonly summary: string })[];
}

/** The page of one guide. */
export interface GuideBody {
  readonly summary: string;
  /** Made from Markdown with markup of its own escaped. */
  readonly html: string;
}

/** The index of guides, and a page for each. */
export function guidePages(context: SiteContext): Page[] {
  const { guides, shop } = context.site;
  const tell = rulesTold(shop.rules, lengthStyle(shop));
  const all = guides
    .map((guide) => ({ ...guide, summary: tell(guide.summary), body: tell(guide.body) }))
    .sort((a, b) => (a.slug < b.slug ? -1 : 1));
  const index: Page = {
    address: addresses.guides,
    template: 'guides.njk',
    model: () => {
      const body: GuidesBody = {
        guides: [
          ...all.map(({ title, slug, summary }) => ({
            title,
            summary,
            href: linkTo(addresses.guides, addresses.guide(slug)),
          })),
          {
            title: findingsTitle,
            summary: findingsSummary,
            href: linkTo(addresses.guides, addresses.findings),
          },
          {
            title: computationsTitle,
            summary: computationsSummary,
            href: linkTo(addresses.guides, addresses.computations),
          },
        ],
      };
      return { ...chromeOf(context, { address: addresses.guides, title: 'Guides' }), body };
    },
  };
  return [index, ...all.map((guide) => guidePage(context, guide))];
}

function guidePage(context: SiteContext, guide: Guide): Page {
  const address = addresses.guide(guide.slug);
  return {
    address,
    template: 'guide.njk',
    search: () => guideRecord(guide),
    model: () => {
      const body: GuideBody = { summary: guide.summary, html: markdownHtml(guide) };
      return {
        ...chromeOf(context, { address, title: guide.title, above: [['Guides', addresses.guides]] }),
        body,
      };
    },
  };
}
