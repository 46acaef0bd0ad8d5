import { addresses, linkTo } from '../site/addresses.ts';
import type { NavigationLink, SiteContext } from './page.ts';

/** The areas of a site by their titles, in the order in which every page names them. */
const areas: readonly (readonly [string, string])[] = [
  ['Jobs', addresses.jobs],
  ['Parts', addresses.parts],
  ['Vehicles', addresses.vehicles],
  ['Guides', addresses.guides],
  ['Writing', addresses.writing],
  ['Calculators', addresses.calculators],
  ['Search', addresses.search],
];

/** Areas that the site of one job alone does not have. */
const ofWholeShop: ReadonlySet<string> = new Set([addresses.writing, addresses.calculators]);

/** The way to each area that a site has, from an address in it. */
export function navigationFrom(
  address: string,
  site: Pick<SiteContext['site'], 'isOneJob'>,
): NavigationLink[] {
  return areas
    .filter(([, to]) => !(site.isOneJob && ofWholeShop.has(to)))
    .map(([title, to]) => ({ title, href: linkTo(address, to), current: address.startsWith(to) }));
}
