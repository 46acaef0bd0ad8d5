import { kinds } from '../../model/kinds/index.ts';
import { chromeOf } from '../page/chrome.ts';
import type { Link, Page, SiteContext } from '../page/page.ts';
import { type FacetId, facetIds, facets } from '../reference/facets.ts';
import { type JobHit, jobHits } from '../reference/job-hits.ts';
import { ranksBoards } from '../reference/past-boards.ts';
import { type FacetGroup, facetGroups } from '../reference/shop-facets.ts';
import { addresses, linkTo } from '../site/addresses.ts';
import { counted } from '../words/words.ts';

/** The index of the shop reference: what its jobs are browsed by. */
export interface ReferenceBody {
  readonly searchHref: string;
  /** The way to past boards by the work that they ask for to serve again; null where the reader may not know of it. */
  readonly likeHref: string | null;
  readonly facets: readonly {
    readonly id: string;
    readonly title: string;
    readonly groups: readonly ValueGroup[];
  }[];
}

interface ValueGroup {
  /** Kind of the parts in it; empty where a facet is not divided. */
  readonly title: string;
  readonly values: readonly (Link & { readonly jobs: string })[];
}

/** The jobs that have one value of a facet. */
export interface ReferenceValueBody {
  readonly facet: string;
  readonly jobs: readonly JobHit[];
}

/**
 * The page of a value: of a part and of a vehicle their own, which tell where they are used. Where two have one title, or
 * none has it any more, the value has a page of the reference.
 */
function addressOf({ site }: SiteContext, facet: FacetId, { value, slug }: FacetGroup): string {
  const own = {
    part: () =>
      Object.entries(site.parts).flatMap(([id, { title }]) => (title === value ? [addresses.part(id)] : [])),
    vehicle: () =>
      Object.values(site.vehicles).flatMap(({ id, title }) =>
        title === value ? [addresses.vehicle(id)] : [],
      ),
  };
  const [address, ...others] = facet === 'part' || facet === 'vehicle' ? own[facet]() : [];
  return address === undefined || others.length > 0 ? addresses.referenceValue(facet, slug) : address;
}

function groupsOf(context: SiteContext, facet: FacetId, all: readonly FacetGroup[]): ValueGroup[] {
  const value = (group: FacetGroup) => ({
    title: group.value,
    href: linkTo(addresses.reference, addressOf(context, facet, group)),
    jobs: counted(group.jobs.length, 'job'),
  });
  if (facet !== 'part') return [{ title: '', values: all.map(value) }];
  const kindOf = new Map(
    Object.values(context.site.parts).map((part) => [part.title, kinds[part.kind].plural]),
  );
  const titles = [...new Set(all.map((group) => kindOf.get(group.value) ?? 'Others'))].sort();
  return titles.map((title) => ({
    title,
    values: all.filter((group) => (kindOf.get(group.value) ?? 'Others') === title).map(value),
  }));
}

/** The index of the shop reference, and a page for each value that has none of its own. */
export function referencePages(context: SiteContext): Page[] {
  const { site, audience } = context;
  const all = facetGroups(site, audience);
  const index: Page = {
    address: addresses.reference,
    template: 'reference.njk',
    model: () => {
      const body: ReferenceBody = {
        searchHref: linkTo(addresses.reference, addresses.search),
        likeHref: ranksBoards(context) ? linkTo(addresses.reference, addresses.like) : null,
        facets: facetIds
          .filter((id) => all[id].length > 0)
          .map((id) => ({ id, title: facets[id].title, groups: groupsOf(context, id, all[id]) })),
      };
      const above = [['Jobs', addresses.jobs]] as const;
      return { ...chromeOf(context, { address: addresses.reference, title: 'Reference', above }), body };
    },
  };
  const each = facetIds.flatMap((id) =>
    all[id].flatMap((group): Page[] => {
      const address = addresses.referenceValue(id, group.slug);
      return addressOf(context, id, group) === address ? [valuePage(context, id, group)] : [];
    }),
  );
  return [index, ...each];
}

function valuePage(context: SiteContext, facet: FacetId, { value, slug, jobs }: FacetGroup): Page {
  const address = addresses.referenceValue(facet, slug);
  const { title } = facets[facet];
  return {
    address,
    template: 'reference-value.njk',
    model: () => {
      const body: ReferenceValueBody = {
        facet: title,
        jobs: jobHits(address, jobs, context.audience),
      };
      const above = [
        ['Jobs', addresses.jobs],
        ['Reference', addresses.reference],
      ] as const;
      return { ...chromeOf(context, { address, title: `${title}: ${value}`, above }), body };
    },
  };
}
