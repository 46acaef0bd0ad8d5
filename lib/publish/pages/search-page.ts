import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SearchRecord, SiteContext } from '../page/page.ts';
import { facetIds, facets } from '../reference/facets.ts';
import { addresses, linkTo } from '../site/addresses.ts';

/** The search page: a plain index of everything, which a script turns into a search. */
export interface SearchBody {
  /** What can be chosen beside words: what some job has. */
  readonly facets: readonly { readonly id: string; readonly title: string }[];
  /** The way to the shop reference; null where there is none. */
  readonly referenceHref: string | null;
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
        facets: facetIds
          .filter((id) => records.some(({ record }) => record.facets[id].length > 0))
          .map((id) => ({ id, title: facets[id].title })),
        referenceHref: context.site.isOneJob ? null : linkTo(address, addresses.reference),
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
