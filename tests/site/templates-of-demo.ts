import type { ShopSite } from '../../lib/publish/site/shop-site.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';

/**
 * Templates whose pages the demo site has, whatever its jobs are: those that say how the tool is used, and what any shop
 * has. The short run looks at a page of each there; those of a job and what leads to it, at the sample's too.
 */
export const templatesOfDemo: ReadonlySet<string> = new Set([
  'calculators.njk',
  'calculator.njk',
  'calculators-file.njk',
  'catalogue.njk',
  'writing.njk',
  'blank-survey.njk',
  'guides.njk',
  'guide.njk',
  'jobs.njk',
  'parts.njk',
  'part.njk',
  'reference.njk',
  'reference-value.njk',
  'vehicles.njk',
  'vehicle.njk',
]);

/** The other templates of the sample's site but that of a job, whose drawings the sample does not have. */
export function templatesOfSample(site: ShopSite): ReadonlySet<string> {
  const templates = sitePages({ site, audience: 'bench' }).map(({ template }) => template);
  return new Set(templates.filter((one) => one !== 'job.njk' && !templatesOfDemo.has(one)));
}
