import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { type JobEntry, jobEntries } from '../site/job-list.ts';
import { counted } from '../words/words.ts';

/** The home page: who the shop is, its jobs, and the ways into everything else. */
export interface HomeBody {
  readonly address: readonly string[];
  readonly jobs: readonly JobEntry[];
  readonly ways: readonly Link[];
  readonly searchHref: string;
}

/** The home page of a shop's site. */
export function homePage(context: SiteContext): Page {
  const { site } = context;
  const address = addresses.home;
  const way = (title: string, to: string): Link => ({ title, href: linkTo(address, to) });
  return {
    address,
    template: 'home.njk',
    model: () => {
      const body: HomeBody = {
        address: site.shop.address,
        jobs: jobEntries(address, site.jobs),
        ways: [
          way(counted(site.jobs.length, 'job'), addresses.jobs),
          way(counted(Object.keys(site.parts).length, 'part'), addresses.parts),
          way(counted(Object.keys(site.vehicles).length, 'vehicle'), addresses.vehicles),
          ...(site.isOneJob ? [] : [way('Jobs by vehicle, part, board, size', addresses.reference)]),
          way(counted(site.guides.length, 'guide'), addresses.guides),
        ],
        searchHref: linkTo(address, addresses.search),
      };
      return { ...chromeOf(context, { address, title: `Build sheets of ${site.shop.name}` }), body };
    },
  };
}
