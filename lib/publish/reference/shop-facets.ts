import type { Audience } from '../../model/audience.ts';
import { nameDigest } from '../site/assets/asset-names.ts';
import type { PublishedJob, ShopSite } from '../site/shop-site.ts';
import { eachFacet, type FacetId, facetValues, inOrder } from './facets.ts';
import { factsOf } from './job-facts.ts';

/** One value of a facet with the jobs that have it. */
export interface FacetGroup {
  readonly value: string;
  /** Its part of an address. */
  readonly slug: string;
  readonly jobs: readonly PublishedJob[];
}

/** What the jobs of a shop are browsed by: of each facet its values, in order, and the jobs that have them. */
export function facetGroups(
  { jobs, shop }: Pick<ShopSite, 'jobs' | 'shop'>,
  audience: Audience,
): Readonly<Record<FacetId, readonly FacetGroup[]>> {
  const known = jobs.map((job) => ({ job, values: facetValues(factsOf(job.plan, audience), shop) }));
  return eachFacet((id) => {
    const held = new Map<string, PublishedJob[]>();
    for (const { job, values } of known)
      for (const value of values[id]) held.set(value, [...(held.get(value) ?? []), job]);
    const slugs = slugsOf([...held.keys()]);
    return [...held]
      .map(([value, own]) => ({ value, slug: slugs.get(value) ?? '', jobs: own }))
      .sort((a, b) => inOrder(a.value, b.value));
  });
}

/** Parts of addresses for values: their letters and digits; with a digest where that is none, or another has the same. */
export function slugsOf(values: readonly string[]): ReadonlyMap<string, string> {
  const plain = new Map(values.map((value) => [value, plainSlug(value)]));
  const count = (slug: string): number => [...plain.values()].filter((one) => one === slug).length;
  return new Map(
    [...plain].map(([value, slug]) => {
      const isOwn = slug !== '' && slug.length <= 60 && count(slug) === 1;
      return [value, isOwn ? slug : `${slug.slice(0, 60)}-${nameDigest(value)}`.replace(/^-/, '')];
    }),
  );
}

function plainSlug(value: string): string {
  return value
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');
}
