import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { parseHTML } from 'linkedom';
import { filesBelow } from '../../lib/publish/site/site-digest.ts';

/** Attributes of HTML that lead somewhere or ask for something. */
const leading = ['href', 'src', 'action', 'formaction', 'poster', 'data', 'srcset', 'cite', 'background'];

/** What a page of a site leads to, with the anchors that it has. */
interface Links {
  readonly to: readonly string[];
  readonly anchors: ReadonlySet<string>;
}

/**
 * What is wrong with the links of a site that lies below an address of its host: those that lead out of it or to what is
 * not there, anchors too.
 */
export async function brokenLinks(folder: string, below: string): Promise<string[]> {
  const files = await filesBelow(folder);
  const links = new Map<string, Links>();
  for (const file of files) links.set(file, linksOf(file, await readFile(join(folder, file), 'utf8')));
  const top = `http://host.invalid${below}`;
  return files.flatMap((file) =>
    (links.get(file)?.to ?? []).flatMap((link) => {
      const url = new URL(link, top + file);
      if (url.protocol === 'data:') return [];
      if (!url.href.startsWith(top)) return [`${file} leads out of the site: ${link}`];
      const path = decodeURIComponent(url.pathname.slice(below.length));
      const found = links.get(path);
      if (!found) return [`${file} leads to what is not there: ${link}`];
      const anchor = decodeURIComponent(url.hash.slice(1));
      return anchor === '' || found.anchors.has(anchor) ? [] : [`${file} leads to no such place: ${link}`];
    }),
  );
}

function linksOf(file: string, text: string): Links {
  if (file.endsWith('.css')) return { to: urlsOf(text), anchors: new Set() };
  if (file.endsWith('.svg')) {
    const to = [...text.matchAll(/\s(?:href|src)="([^"]*)"/g)].map(([, link = '']) => link);
    return { to, anchors: new Set([...text.matchAll(/\sid="([^"]+)"/g)].map(([, id = '']) => id)) };
  }
  if (!file.endsWith('.html')) return { to: [], anchors: new Set() };
  const { document } = parseHTML(text);
  const to = [...document.querySelectorAll('*')].flatMap((one) =>
    leading.flatMap((name) => one.getAttribute(name) ?? []),
  );
  const styles = [...document.querySelectorAll('style')].flatMap((one) => urlsOf(one.textContent ?? ''));
  // An empty address leads to the page itself.
  const told = [...to, ...styles].filter((link) => link !== '');
  return { to: told, anchors: new Set([...document.querySelectorAll('[id]')].map(({ id }) => id)) };
}

function urlsOf(css: string): string[] {
  return [...css.matchAll(/url\(["']?([^"')]+)/g)].map(([, link = '']) => link);
}
