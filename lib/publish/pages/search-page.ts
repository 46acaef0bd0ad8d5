import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SearchRecord, SiteContext } from '../page/page.ts';
import { addresses, linkTo } from '../site/addresses.ts';

/** The search page: a plain index of everything, which a script turns into a search. */
export interface SearchBody {
  readonly groups: readonly { readonly title: string; readonly links: readonly Link[] }[];
}

const plurals = {
  Job: 'Jobs',
  Vehicle: 'Vehicles',
  Part: 'Parts',
  Guide: 'Guides',
} as const satisfies Record<SearchRecord['kind'], string>;

/** The search page over all pages that search knows. */
export function searchPage(context: SiteContext, pages: readonly Page[]): Page {
  const address = addresses.search;
  return {
    address,
    template: 'search.njk',
    runsSearch: true,
    model: () => {
      const records = pages.flatMap((page) => (page.search ? [{ page, record: page.search() }] : []));
      const body: SearchBody = {
        groups: Object.entries(plurals)
          .map(([kind, title]) => ({
            title,
            links: records
              .filter(({ record }) => record.kind === kind)
              .map(({ page, record }) => ({ title: record.title, href: linkTo(address, page.address) })),
          }))
          .filter((group) => group.links.length > 0),
      };
      return { ...chromeOf(context, { address, title: 'Search' }), body };
    },
  };
}
