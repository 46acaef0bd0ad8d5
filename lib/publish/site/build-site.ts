import { mkdir, mkdtemp, rename, rm, stat, utimes } from 'node:fs/promises';
import { join } from 'node:path';
import Eleventy from '@11ty/eleventy';
import type { Audience } from '../../model/audience.ts';
import type { Page } from '../page/page.ts';
import { renderPage } from '../page/render-page.ts';
import { shopSitePlugin } from './eleventy-plugin.ts';
import { searchIndex } from './search-index.ts';
import type { DrawingsOf, ShopSite } from './shop-site.ts';
import { siteAssets, writeSiteFiles } from './site-assets.ts';
import { digestOf } from './site-digest.ts';
import { sitePages } from './site-pages.ts';
import { clearOldSites, repairSite, type SitePlaces, swapSite } from './swap-site.ts';
import { openTemplates, projectFolder } from './templates.ts';

export interface BuildOptions {
  /** The folder that `dist` and `.rackleaf` are put into. */
  readonly root: string;
  readonly drawingsOf: DrawingsOf;
  /** Default: `bench`. */
  readonly audience?: Audience;
  /** Whether `dist` may be a link. Default: yes, where the system allows it. */
  readonly links?: boolean;
}

export interface BuiltSite {
  /** The folder that was built. */
  readonly folder: string;
  /** Where the current site is found. */
  readonly link: string;
  readonly digest: string;
  readonly pages: number;
  readonly files: number;
  readonly bytes: number;
}

/**
 * Where the site of an audience goes, or the packet of a job. The bench's is the shop's everyday site, in `dist`; the others stand
 * apart, so that a private value can't come into it. Addresses are the same in all.
 */
export function sitePlaces(root: string, audience: Audience, packetOf?: string): SitePlaces {
  if (audience === 'bench') return { store: join(root, '.rackleaf'), link: join(root, 'dist') };
  const store = join(root, '.rackleaf', audience, ...(packetOf === undefined ? [] : [packetOf]));
  return { store, link: join(store, 'dist') };
}

/**
 * Builds what an audience gets: one site for the bench and for the shop, and one packet a job for customers,
 * each in a folder of its own, so that nobody is handed what is another's. Addresses are the same in all.
 */
export async function buildSites(site: ShopSite, options: BuildOptions): Promise<BuiltSite[]> {
  if (options.audience !== 'customer') return [await buildSite(site, options)];
  const built: BuiltSite[] = [];
  for (const job of site.jobs) built.push(await buildSite({ ...site, jobs: [job] }, options));
  return built;
}

/**
 * Builds the site of a shop: pages, assets, search index into a folder of their own, which is named by the
 * digest of its content and then becomes `dist` in one step. Whatever fails before that step, the last good
 * site stays as it is; the error goes on with its cause.
 */
export async function buildSite(site: ShopSite, options: BuildOptions): Promise<BuiltSite> {
  const { root, drawingsOf, audience = 'bench', links = true } = options;
  const places = sitePlaces(root, audience, audience === 'customer' ? soleJob(site) : undefined);
  await mkdir(places.store, { recursive: true });
  await repairSite(places);
  const staging = await mkdtemp(join(places.store, 'building-'));
  try {
    const pages = sitePages({ site, audience });
    await writePages(pages, staging, drawingsOf);
    await writeSiteFiles(staging, siteAssets());
    await writeSiteFiles(staging, await searchIndex(pages));
    const { digest, files, bytes } = await digestOf(staging);
    const folder = join(places.store, `site-${digest}`);
    await settle(staging, folder);
    await swapSite(folder, places, links);
    await clearOldSites(places, folder);
    return { folder, link: places.link, digest, pages: pages.length, files, bytes };
  } catch (error) {
    throw new Error('The site was not built; the last good one is untouched.', { cause: error });
  } finally {
    await rm(staging, { recursive: true, force: true });
  }
}

/** The job of a packet. Throws where there are more: a packet of two customers is a bug. */
function soleJob({ jobs: [job, ...others] }: ShopSite): string {
  if (job === undefined || others.length > 0) throw new Error('A packet holds one job.');
  return job.plan.job.id;
}

/** Has the site generator write every page; what stands on each is made by the way that the server takes too. */
async function writePages(pages: readonly Page[], folder: string, drawingsOf: DrawingsOf): Promise<void> {
  const templates = openTemplates();
  const byAddress = new Map(pages.map((page) => [page.address, page]));
  const htmlOf = (address: string): string => {
    const page = byAddress.get(address);
    if (page === undefined) throw new Error(`No page has the address ${address}.`);
    return renderPage(page, templates, drawingsOf);
  };
  const eleventy = new Eleventy(join(projectFolder, 'site'), folder, {
    quietMode: true,
    configPath: false,
    config: (configuration) =>
      configuration.addPlugin(shopSitePlugin, { addresses: pages.map(({ address }) => address), htmlOf }),
  });
  eleventy.disableLogger();
  await eleventy.write();
}

/** Gives a finished folder its name. A folder of that name has the same content, and is only made newer. */
async function settle(staging: string, folder: string): Promise<void> {
  const stands = await stat(folder).then(
    () => true,
    () => false,
  );
  const now = new Date();
  await utimes(stands ? folder : staging, now, now);
  if (!stands) await rename(staging, folder);
}
