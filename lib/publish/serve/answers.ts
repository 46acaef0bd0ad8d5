import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Environment } from 'nunjucks';
import type { PageModel } from '../page/page.ts';
import { notCurrentRules } from '../page/print-rules.ts';
import { addresses, drawingsFolder, linkTo, wayUp } from '../site/addresses.ts';
import { unnamedPath } from '../site/assets/asset-names.ts';
import type { NamedAssets } from '../site/assets/named-assets.ts';
import { keptPhotoAt } from '../site/published-photo.ts';
import type { SiteAsset } from '../site/site-assets.ts';
import { projectFolder } from '../site/templates.ts';
import { livePage } from './live-page.ts';
import type { LiveSite } from './live-site.ts';
import { type Standing, standingWords } from './page-standing.ts';

/** What the server gives for a path. */
export interface Answer {
  readonly status: number;
  readonly type: string;
  readonly body: string | Uint8Array;
  /** Where the asked for is found instead. */
  readonly location?: string;
}

const types: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  woff2: 'font/woff2',
  jpg: 'image/jpeg',
};

/** The files that only a served page asks for. */
const ofProject = (path: string) => () => readFile(join(projectFolder, path));
const liveFiles: Readonly<Record<string, () => Promise<Uint8Array | string>>> = {
  'assets/live.css': ofProject('site/styles/live.css'),
  'assets/live.js': ofProject('site/live.js'),
  'assets/live-marks.css': async () => notCurrentRules,
};

/** A drawing of a page: the folder of the page, and the path from there. */
const besidePage = new RegExp(`^(jobs/.+/)(${drawingsFolder}/[^/]+)$`);

/** A page that is not made yet is waited for so long before the one before it is shown (ms). */
const pageWaitMs = 400;

/** What answers are made with. */
export interface AnswerMeans {
  readonly templates: Environment;
  readonly root: string;
  /** The assets of the site as they were saved last. */
  readonly assets: () => Promise<NamedAssets>;
}

/** The answer to a path such as `/jobs/a/`. */
export async function answerTo(path: string, live: LiveSite, means: AnswerMeans): Promise<Answer> {
  const { templates } = means;
  const last = path.slice(path.lastIndexOf('/') + 1);
  if (last !== '' && !last.includes('.')) return { ...html(301, ''), location: `${last}/` };
  if (last === '' || last === 'index.html')
    return pageAnswer(path.slice(0, path.lastIndexOf('/') + 1), live, templates);
  return (await fileAnswer(path.slice(1), live, means)) ?? html(404, noPage(path, templates));
}

function html(status: number, body: string): Answer {
  return { status, type: types.html ?? '', body };
}

async function pageAnswer(address: string, live: LiveSite, templates: Environment): Promise<Answer> {
  const { page, isAbsent, standing } = await live.shown(address, pageWaitMs);
  if (isAbsent) return html(404, noPage(address, templates));
  const written = page?.html ?? waitingPage(address, standing, templates);
  return html(page === null ? 503 : 200, livePage(written, address, standing, templates));
}

/** A page that is shown while there is none of the site's own. */
function waitingPage(address: string, standing: Standing, templates: Environment): string {
  const [, job] = /^\/jobs\/([^/]+)\//.exec(address) ?? [];
  const { text } = standingWords(standing);
  return templates.render('waiting.njk', { doc: bare(address, job ?? 'Build sheets', text) });
}

function noPage(address: string, templates: Environment): string {
  const text = `There is no page at ${address}.`;
  return templates.render('waiting.njk', { doc: bare('/', 'No such page', text) });
}

/** The frame of a page that belongs to no shop. */
function bare(address: string, title: string, text: string): PageModel {
  return {
    address,
    title,
    shopName: 'Build sheets',
    top: wayUp(address),
    navigation: [{ title: 'Jobs', href: linkTo(address, addresses.jobs), current: false }],
    search: null,
    trail: [],
    mark: null,
    printRules: '',
    body: { text },
  };
}

/** An asset, under whatever digest a page asks for it: what is given is what was saved last. */
async function assetAt(name: string, { assets }: AnswerMeans): Promise<SiteAsset | undefined> {
  if (!name.startsWith('assets/')) return undefined;
  const { names, files } = await assets();
  const path = names[name] ?? names[unnamedPath(name)];
  return files.find((one) => one.path === path);
}

async function fileAnswer(name: string, live: LiveSite, means: AnswerMeans): Promise<Answer | null> {
  const type = types[name.split('.').at(-1) ?? ''] ?? 'application/octet-stream';
  // Under whatever digest a page asks for it: what lies there is what was saved last.
  const asset = await assetAt(name, means);
  if (asset !== undefined) return { status: 200, type, body: await asset.read() };
  const own = liveFiles[name];
  if (own !== undefined) return { status: 200, type, body: await own() };
  const photo = keptPhotoAt(means.root, name);
  if (photo !== null) {
    const body = await readFile(photo).catch(() => null);
    return body && { status: 200, type, body };
  }
  const [, folder, path] = besidePage.exec(name) ?? [];
  const found =
    folder !== undefined && path !== undefined
      ? await live.fileBeside(`/${folder}`, path, pageWaitMs)
      : name.startsWith('pagefind/')
        ? await live.searchFile(name)
        : null;
  return found === null ? null : { status: 200, type, body: found };
}
