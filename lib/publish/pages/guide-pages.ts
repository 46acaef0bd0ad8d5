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

/** An index as its page shows it. */
interface GuidesBody {
  readonly guides: readonly (Link & { readonly summary: string })[];
}

/** The page of one guide. */
interface GuideBody {
  readonly summary: string;
  /** Made from Markdown with markup of its own escaped. */
  readonly html: string;
}

/** What an index tells of a page that it leads to. */
interface IndexEntry extends Pick<Guide, 'title' | 'summary'> {
  readonly address: string;
}

/** An index of guides, and of what is found beside them. */
export interface GuideIndex {
  readonly address: string;
  readonly title: string;
  readonly entries: () => readonly IndexEntry[];
}

/** A guide where it stands, below the page that `above` names; it is asked for when its page is made. */
export interface PlacedGuide {
  readonly address: string;
  readonly above: readonly [title: string, address: string];
  readonly guide: () => Guide;
}

/** The index of guides, and a page for each. */
export function guidePages(context: SiteContext): Page[] {
  const { guides, shop } = context.site;
  const tell = rulesTold(shop.rules, lengthStyle(shop));
  const all = guides
    .map((guide) => ({ ...guide, summary: tell(guide.summary), body: tell(guide.body) }))
    .sort((a, b) => (a.slug < b.slug ? -1 : 1))
    .map((guide) => ({ guide, address: addresses.guide(guide.slug) }));
  const entries = [
    ...all.map(({ guide: { title, summary }, address }) => ({ title, summary, address })),
    { title: findingsTitle, summary: findingsSummary, address: addresses.findings },
    { title: computationsTitle, summary: computationsSummary, address: addresses.computations },
  ];
  const index = { address: addresses.guides, title: 'Guides' };
  return [
    guideIndexPage(context, { ...index, entries: () => entries }),
    ...all.map(({ guide, address }) =>
      guidePage(context, { address, above: [index.title, index.address], guide: () => guide }),
    ),
  ];
}

/** The page of an index. */
export function guideIndexPage(context: SiteContext, { address, title, entries }: GuideIndex): Page {
  return {
    address,
    template: 'guides.njk',
    model: () => {
      const body: GuidesBody = {
        guides: entries().map((entry) => {
          return { title: entry.title, summary: entry.summary, href: linkTo(address, entry.address) };
        }),
      };
      return { ...chromeOf(context, { address, title }), body };
    },
  };
}

/** The page of one guide. */
export function guidePage(context: SiteContext, { address, above, guide }: PlacedGuide): Page {
  return {
    address,
    template: 'guide.njk',
    search: () => guideRecord(guide()),
    model: () => {
      const { title, summary } = guide();
      const body: GuideBody = { summary, html: markdownHtml(guide()) };
      return { ...chromeOf(context, { address, title, above: [above] }), body };
    },
  };
}
