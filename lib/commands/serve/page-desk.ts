import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { MadePage, Page } from '../../publish/page/page.ts';
import type { SeenFile } from '../../publish/serve/file-looks.ts';
import type { MadeFile, PageMade, PageWish } from '../../publish/serve/page-maker.ts';
import { scopeOf } from '../../publish/serve/scopes.ts';
import { namedAssets } from '../../publish/site/assets/named-assets.ts';
import { keptPages } from '../../publish/site/kept-pages.ts';
import { siteAssets } from '../../publish/site/site-assets.ts';
import { digestOf } from '../../publish/site/site-digest.ts';
import { sitePages } from '../../publish/site/site-pages.ts';
import { layoutsFolder, openTemplates } from '../../publish/site/templates.ts';
import { searchIndex } from '../../publish/site/write-search-index.ts';
import { contentFiles } from '../../read/read-content.ts';
import type { Crew } from '../crew/crew.ts';
import { type Effects, realEffects } from '../effects.ts';
import { shopSchemas } from '../kept/schema-steps.ts';
import { type LoadedShop, loadShop, siteOf, siteWithPhotos } from '../shop/load-shop.ts';

/** Makes pages from the files of a shop, by the one way that a build takes. One for each thread. */
export class PageDesk {
  readonly #root: string;
  readonly #crew: Crew;
  #pages: { readonly layouts: string; readonly make: (page: Page) => Promise<MadePage> } | null = null;

  /** @param crew Plans and draws on the thread of the desk. */
  constructor(root: string, crew: Crew) {
    this.#root = root;
    this.#crew = crew;
  }

  /** The page that a build of these files would write at the address. */
  async page({ address, files, layouts }: PageWish): Promise<PageMade> {
    const shop = await this.#load(files);
    const { problems } = shop;
    const scope = scopeOf(address);
    if (scope.kind === 'job' && shop.unreadJobs.includes(scope.job)) return { state: 'unread', problems };
    const failed = shop.failed.find(({ id }) => scope.kind === 'job' && id === scope.job);
    if (failed) throw new Error(failed.failure);
    const made = await siteWithPhotos(this.#effects(), shop);
    if (made === null) return { state: 'unread', problems };
    const { site } = made;
    const pages = sitePages({ site, audience: 'bench', keep: this.#crew.keep });
    const page = pages.find((one) => one.address === address);
    if (page === undefined) return { state: 'absent', problems };
    const make = await this.#maker(layouts);
    return { state: 'made', ...(await make(page)), problems: [...problems, ...made.problems] };
  }

  /** The search index over every page of these files. */
  async search({ files }: Pick<PageWish, 'files'>): Promise<MadeFile[]> {
    const site = siteOf(await this.#load(files));
    if (site === null) return [];
    const made = await searchIndex(sitePages({ site, audience: 'bench' }));
    return Promise.all(made.map(async ({ path, read }) => ({ path, content: await read() })));
  }

  /** The schemas for editors of these files. */
  async schemas({ files }: Pick<PageWish, 'files'>): Promise<readonly SourceFile[]> {
    return shopSchemas(contentFiles(await this.#sources(files)), this.#crew.read, this.#crew.keep);
  }

  #effects(): Effects {
    return { ...realEffects(this.#root), watched: false };
  }

  async #load(files: readonly SeenFile[]): Promise<LoadedShop> {
    const sources = await this.#sources(files);
    return loadShop({ ...this.#effects(), readContent: async () => sources }, this.#crew, {
      compares: false,
    });
  }

  async #sources(files: readonly SeenFile[]): Promise<readonly SourceFile[]> {
    return (await Promise.all(files.map((file) => this.#source(file)))).flat();
  }

  /** A file as readers take it: a frozen plan is large, and so is read here and now; what is no text is left out. */
  async #source({ path, text, fault }: SeenFile): Promise<SourceFile[]> {
    if (text !== null) return [{ path, text }];
    if (fault !== null) return [{ path, text: '' }];
    if (!path.endsWith('.json')) return [];
    const read = await readFile(join(this.#root, path), 'utf8').catch(() => null);
    return read === null ? [] : [{ path, text: read }];
  }

  /** Makes pages as a build does, with the layouts opened anew where they changed. */
  async #maker(layouts: string): Promise<(page: Page) => Promise<MadePage>> {
    if (this.#pages?.layouts === layouts) return this.#pages.make;
    const { digest } = await digestOf(layoutsFolder);
    const assets = await namedAssets(siteAssets());
    const make = keptPages({
      templates: openTemplates({ names: assets.names }),
      assets,
      layouts: digest,
      drawingsOf: async (plan) => {
        const done = await this.#crew.task('draw', plan);
        if (done.state === 'failed') throw new Error(done.failure);
        return done.value;
      },
      keep: this.#crew.keepLater,
    });
    this.#pages = { layouts, make };
    return make;
  }
}
