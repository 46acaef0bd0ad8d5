import { randomUUID } from 'node:crypto';
import { lstat, mkdir } from 'node:fs/promises';
import { join } from 'node:path';
import Eleventy from '@11ty/eleventy';
import type { Audience } from '../../model/audience.ts';
import { computeAnew, computeLater, type Keep, type KeepLater } from '../../model/keep.ts';
import { onceEach } from '../../plan/once-each.ts';
import type { MadePage, Page } from '../page/page.ts';
import { type NamedAssets, namedAssets } from './assets/named-assets.ts';
import { FilesBeside } from './disk/files-beside.ts';
import { letEveryoneRead, letEveryoneThrough } from './disk/readable-site.ts';
import {
  buildingPrefix,
  clearStore,
  removed,
  repairSite,
  type SitePlaces,
  swapSite,
} from './disk/swap-site.ts';
import { shopSitePlugin } from './eleventy-plugin.ts';
import { type DrawLater, keptPages } from './kept-pages.ts';
import type { ShopSite } from './shop-site.ts';
import { siteAssets, writeSiteFiles } from './site-assets.ts';
import { digestOf } from './site-digest.ts';
import { sitePages } from './site-pages.ts';
import { layoutsFolder, openTemplates, projectFolder } from './templates.ts';
import { searchIndex } from './write-search-index.ts';

export interface BuildOptions {
  /** The folder that `dist` and `.rackleaf` are put into. */
  readonly root: string;
  readonly drawingsOf: DrawLater;
  /** Default: `bench`. */
  readonly audience?: Audience;
  /** Keeps the pages of the bench, which hold no private value. Default: keeps none. */
  readonly keep?: KeepLater;
  /** Keeps what pages work out beside their plans, which holds no private value. Default: keeps none. */
  readonly keepStep?: Keep;
  /** The job that the site is made for alone: it stands in a folder of its own. Left out for the site of the shop. */
  readonly job?: string;
}

export interface BuiltSite {
  /** The folder in which it stands. */
  readonly folder: string;
  readonly digest: string;
  readonly pages: number;
  readonly files: number;
  readonly bytes: number;
}

/**
 * Where the site of an audience goes, or of a job alone. The bench's is the shop's everyday site, in `dist`; the others stand
 * apart, so that a private value can't come into it. Addresses are the same in all.
 */
export function sitePlaces(root: string, audience: Audience, job?: string): SitePlaces {
  const kept = join(root, '.rackleaf');
  if (audience === 'bench' && job === undefined) return { store: kept, site: join(root, 'dist') };
  const ofAudience = audience === 'bench' ? kept : join(kept, audience);
  const ofJob = job === undefined ? [] : audience === 'customer' ? [job] : ['jobs', job];
  const store = join(ofAudience, ...ofJob);
  return { store, site: join(store, 'dist') };
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
 * Builds the site of a shop: pages, assets, search index, all into a folder aside, which then takes the place of the
 * last one. Whatever fails before that step, the last good site stays as it is; the error goes on with its cause.
 * A site of the same bytes is left where it stands.
 */
export async function buildSite(site: ShopSite, options: BuildOptions): Promise<BuiltSite> {
  const { root, drawingsOf, audience = 'bench', keep = computeLater, keepStep = computeAnew, job } = options;
  const places = sitePlaces(root, audience, audience === 'customer' ? soleJob(site) : job);
  const staging = join(places.store, `${buildingPrefix}${randomUUID()}`);
  try {
    await mkdir(staging, { recursive: true });
    await repairSite(places);
    const pages = sitePages({ site, audience, keep: keepStep });
    const assets = await namedAssets(siteAssets());
    await writePages(pages, staging, {
      assets,
      drawingsOf,
      keep: audience === 'bench' ? keep : computeLater,
    });
    await writeSiteFiles(staging, assets.files);
    // A packet holds its photos itself.
    if (audience !== 'customer') await writeSiteFiles(staging, site.photos ?? []);
    await writeSiteFiles(staging, await searchIndex(pages));
    const { digest, files, bytes } = await digestOf(staging);
    await letEveryoneRead(staging);
    if (await stands(places.site, digest)) await letEveryoneRead(places.site);
    else await swapSite(staging, places);
    if (audience === 'bench') await letEveryoneThrough(root, places.site);
    await clearStore(places);
    return { folder: places.site, digest, pages: pages.length, files, bytes };
  } catch (error) {
    throw new Error('The site was not built; the last good one is untouched.', { cause: error });
  } finally {
    await removed(staging);
  }
}

/** True where the site of an audience, or of a job alone, stands as it was built, byte for byte; everyone can read it then. */
export async function siteStands(
  root: string,
  audience: Exclude<Audience, 'customer'>,
  digest: string,
  job?: string,
): Promise<boolean> {
  const { site } = sitePlaces(root, audience, job);
  if (!(await stands(site, digest))) return false;
  await letEveryoneRead(site);
  return true;
}

/** Digest of what comes with every site: its layouts, its assets. */
export async function lookDigest(): Promise<string> {
  const [layouts, site] = [await digestOf(layoutsFolder), await digestOf(join(projectFolder, 'site'))];
  return `${layouts.digest} ${site.digest}`;
}

/** True where a folder of this content stands there; a link to one, as earlier versions made, is none. */
async function stands(site: string, digest: string): Promise<boolean> {
  try {
    return (await lstat(site)).isDirectory() && (await digestOf(site)).digest === digest;
  } catch {
    return false;
  }
}

/** The job of a packet. Throws where there are more: a packet of two customers is a bug. */
function soleJob({ jobs: [job, ...others] }: ShopSite): string {
  if (job === undefined || others.length > 0) throw new Error('A packet holds one job.');
  return job.plan.job.id;
}

/** What the pages of a site look like: its layouts, by their digest, and what its assets are called. */
interface Layouts {
  readonly digest: string;
  readonly names: NamedAssets['names'];
}

/** The layouts of a look, each compiled when the first page asks for it, whatever is built of them after. */
const templatesOf = onceEach(
  ({ names }: Layouts) => openTemplates({ names }),
  ({ digest, names }) => `${digest} ${Object.values(names).join(' ')}`,
);

interface PageMeans {
  readonly assets: NamedAssets;
  readonly drawingsOf: DrawLater;
  readonly keep: KeepLater;
}

/** Has the site generator write every page; what stands on each is made by the way that the server takes too. */
async function writePages(
  pages: readonly Page[],
  folder: string,
  { assets, drawingsOf, keep }: PageMeans,
): Promise<void> {
  const { digest: layouts } = await digestOf(layoutsFolder);
  const templates = templatesOf({ digest: layouts, names: assets.names });
  const make = keptPages({ templates, assets, layouts, drawingsOf, keep });
  const byAddress = new Map(pages.map((page) => [page.address, page]));
  // What waits for assets is made ahead: where another page fails, nothing is still on its way into the folder.
  const ahead = new Map<string, MadePage>();
  for (const page of pages.filter(({ isOneFile }) => isOneFile)) ahead.set(page.address, await make(page));
  const beside = new FilesBeside(folder);
  const htmlOf = async (address: string): Promise<string> => {
    const page = byAddress.get(address);
    if (page === undefined) throw new Error(`No page has the address ${address}.`);
    const { html, files } = ahead.get(address) ?? (await make(page));
    await beside.write(address, files);
    return html;
  };
  const eleventy = new Eleventy(join(projectFolder, 'site'), folder, {
    quietMode: true,
    configPath: false,
    config: (configuration) =>
      configuration.addPlugin(shopSitePlugin, { addresses: pages.map(({ address }) => address), htmlOf }),
  });
  eleventy.disableLogger();
  try {
    await eleventy.write();
  } finally {
    await beside.end();
  }
}
