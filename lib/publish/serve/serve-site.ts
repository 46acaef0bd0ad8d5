import type { Audience } from '../../model/audience.ts';
import { type Problem, problemText } from '../../model/problem.ts';
import type { Page } from '../page/page.ts';
import { renderPage } from '../page/render-page.ts';
import { fileOf } from '../site/addresses.ts';
import { searchIndex } from '../site/search-index.ts';
import type { DrawingsOf, ShopSite } from '../site/shop-site.ts';
import { siteAssets } from '../site/site-assets.ts';
import { sitePages } from '../site/site-pages.ts';
import { openTemplates } from '../site/templates.ts';
import { liveReload, problemBanner, problemPage } from './live-page.ts';

/** What loading a shop's content gave: no site where it could not be read at all. */
export interface LoadedSite {
  readonly site: ShopSite | null;
  readonly problems: readonly Problem[];
}

export interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: string | Uint8Array;
}

export interface LiveSite {
  /** Takes what was loaded last. Where it holds no site, the last good one stays, with the problems on it. */
  readonly take: (loaded: LoadedSite) => void;
  /** The answer to a path such as `/jobs/a/`. */
  readonly answer: (path: string) => Promise<Answer>;
}

const types: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
};

interface Held {
  readonly pages: ReadonlyMap<string, Page>;
  /** Made when it is first asked for. */
  search: ReturnType<typeof searchIndex> | null;
}

/** A site that is rendered page by page as it is asked for, from what was loaded last. */
export function openLiveSite(drawingsOf: DrawingsOf, audience: Audience = 'bench'): LiveSite {
  let held: Held | null = null;
  let problems: readonly string[] = [];

  const take = (loaded: LoadedSite): void => {
    problems = loaded.problems.map(problemText);
    if (loaded.site === null) return;
    const pages = sitePages({ site: loaded.site, audience });
    held = { pages: new Map(pages.map((page) => [fileOf(page.address), page])), search: null };
  };

  const answer = async (path: string): Promise<Answer> => {
    const name = fileName(path);
    const page = held?.pages.get(name);
    if (page !== undefined) return pageAnswer(page, drawingsOf, problems);
    if (held === null && name.endsWith('.html')) return html(503, problemPage(problems));
    return (await fileAnswer(name, held)) ?? html(404, problemPage([`There is no page at ${path}.`]));
  };
  return { take, answer };
}

function fileName(path: string): string {
  const inside = path.replace(/^\/+/, '');
  return inside === '' || inside.endsWith('/') ? `${inside}index.html` : inside;
}

function html(status: number, body: string): Answer {
  return { status, type: 'text/html; charset=utf-8', body };
}

/** A page as a build would write it, with the problems above it and the script that reloads it. */
function pageAnswer(page: Page, drawingsOf: DrawingsOf, problems: readonly string[]): Answer {
  // Layouts are opened anew each time, so that a change to one is seen.
  const written = renderPage(page, openTemplates(), drawingsOf);
  const withProblems =
    problems.length === 0 ? written : written.replace(/<main\b/, () => `${problemBanner(problems)}\n<main`);
  return html(
    200,
    withProblems.replace('</body>', () => `${liveReload}\n</body>`),
  );
}

async function fileAnswer(name: string, held: Held | null): Promise<Answer | null> {
  const type = types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  const asset = siteAssets().find(({ path }) => path === name);
  if (asset !== undefined) return { status: 200, type, body: await asset.read() };
  if (held === null || !name.startsWith('pagefind/')) return null;
  held.search ??= searchIndex([...held.pages.values()]);
  const found = (await held.search).find(({ path }) => path === name);
  return found === undefined ? null : { status: 200, type, body: await found.read() };
}
