import type { JobHandOver } from '../../../lib/model/content/job.ts';
import { jobSchema } from '../../../lib/model/content/job.ts';
import { type ShopHandOver, shopSchema } from '../../../lib/model/content/shop.ts';
import type { BuildPlan } from '../../../lib/model/plan/index.ts';
import { packetPage } from '../../../lib/publish/pages/packet-page.ts';
import { wholeFile } from '../../../lib/publish/site/kept-pages.ts';
import type { PublishedPhoto } from '../../../lib/publish/site/published-photo.ts';
import type { PublishedJob } from '../../../lib/publish/site/shop-site.ts';
import { siteAssets } from '../../../lib/publish/site/site-assets.ts';
import { openTemplates } from '../../../lib/publish/site/templates.ts';
import { sampleJob, sampleSite, secrets } from '../sample/sample-site.ts';

/** A plan that may be handed over: installed, nothing stops it, every line of its record read as predicted or at its limit. */
export function readyPlan(plan: BuildPlan): BuildPlan {
  return {
    ...plan,
    job: { ...plan.job, status: 'installed' },
    findings: [],
    measurements: plan.measurements.map((line) => ({
      ...line,
      asBuilt: line.asBuilt ?? line.predicted ?? line.greatest ?? line.least ?? 0,
      state: 'agrees',
    })),
  };
}

/** What stands beside a plan in a packet. */
export interface Beside {
  readonly audience?: 'bench' | 'customer' | 'shop';
  readonly shop?: Partial<ShopHandOver>;
  readonly handOver?: JobHandOver | null;
  readonly serials?: Readonly<Record<string, string>>;
  readonly photos?: readonly PublishedPhoto[];
  /** The bytes of every photo. */
  readonly jpeg?: Uint8Array;
}

/** The packet of a plan as its file. */
export function packetOf(plan: BuildPlan, beside: Beside = {}): Promise<string> {
  const { audience = 'customer', shop = {}, handOver = null, serials = {}, photos = [] } = beside;
  const published: PublishedJob = {
    ...sampleJob(plan),
    customer: jobSchema.shape.customer.parse({ ...secrets }),
    handOver,
    serials,
    photos,
    revisions: [],
  };
  const site = sampleSite([published]);
  const own = shopSchema.shape['hand-over'].parse({ ...shop });
  const files = photos.map(({ path }) => ({ path, read: async () => beside.jpeg ?? new Uint8Array() }));
  const page = packetPage(
    { site: { ...site, photos: files, shop: { ...site.shop, 'hand-over': own } }, audience },
    published,
  );
  return wholeFile(page, {
    templates: openTemplates({ strict: true }),
    assets: siteAssets(),
    drawingsOf: () => [],
  });
}

/** What a reader sees of a page, without tags, styles and drawings' descriptions. */
export function wordsOf(html: string): string {
  return html
    .replace(/<style>[\s\S]*?<\/style>/g, '')
    .replace(/<[^>]+>/g, ' ')
    .replace(/&#39;/g, "'")
    .replace(/&amp;/g, '&')
    .replace(/\s+/g, ' ');
}
