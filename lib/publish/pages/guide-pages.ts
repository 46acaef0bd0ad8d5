import type { Guide } from '../../model/content/guide.ts';
import { rulesTold } from '../../model/printed/rule-figures.ts';
import { lengthStyle } from '../../model/quantity/length-text.ts';
import { chromeOf } from '../page/chrome.ts';
import { type GuidePicture, markdownHtml } from '../page/markdown.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { addresses, fileOf, linkTo, wayUp } from '../site/addresses.ts';
import { loneHas } from '../site/lone/lone-addresses.ts';
import type { PublishedPicture } from '../site/published-photo.ts';
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
  /** Its pictures in the site, by their files. Default: none. */
  readonly pictures?: Readonly<Record<string, PublishedPicture>>;
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
      guidePage(context, {
        address,
        above: [index.title, index.address],
        guide: () => guide,
        pictures: context.site.guidePictures?.[guide.slug] ?? {},
      }),
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

function pictureAt(
  from: string,
  pictures: Readonly<Record<string, PublishedPicture>>,
  file: string,
): GuidePicture | null {
  const picture = Object.hasOwn(pictures, file) ? pictures[file] : undefined;
  return picture ? { ...picture, src: `${wayUp(from)}${picture.path}` } : null;
}

/** False for a link to a page of the shop that the site of one job does not have; links to other hosts are the guide's own. */
function leadsSomewhere({ site }: SiteContext, from: string, href: string): boolean {
  const host = 'http://site.invalid';
  const url = new URL(href, `${host}/${fileOf(from)}`);
  return !site.isOneJob || url.origin !== host || loneHas(site, url.pathname);
}

/** The page of one guide. */
export function guidePage(context: SiteContext, { address, above, guide, pictures = {} }: PlacedGuide): Page {
  return {
    address,
    template: 'guide.njk',
    search: () => guideRecord(guide()),
    model: () => {
      const { title, summary } = guide();
      const around = {
        pictureOf: (file: string) => pictureAt(address, pictures, file),
        isThere: (href: string) => leadsSomewhere(context, address, href),
      };
      const body: GuideBody = { summary, html: markdownHtml(guide(), around) };
      return { ...chromeOf(context, { address, title, above: [above] }), body };
    },
  };
}
