import type { BrowserContext } from 'playwright-core';
import { z } from 'zod';

/** Elements that have no end (HTML, 13.1.2). */
const voids = new Set([
  'area',
  'base',
  'br',
  'col',
  'embed',
  'hr',
  'img',
  'input',
  'link',
  'meta',
  'source',
  'track',
  'wbr',
]);
/** Elements whose end may be left out (HTML, 13.1.2.4). */
const endsByItself = new Set([
  'td',
  'th',
  'tr',
  'li',
  'p',
  'dt',
  'dd',
  'tbody',
  'thead',
  'option',
  'caption',
]);

/**
 * What is wrong with a page as HTML, by what a browser makes of it. One that has to repair a page, since something stands
 * where it may not or is not ended, makes other elements of it than were written, or puts them elsewhere: so the elements
 * of its tree have to be the written ones, in their order. Beside that: ends of what was not begun, attributes and ids
 * that stand twice, and references to ids that there are none of.
 */
export async function htmlFaults(context: BrowserContext, html: string): Promise<string[]> {
  const page = await context.newPage();
  await page.setContent(html, { waitUntil: 'domcontentloaded' });
  const tree = z
    .object({ names: z.array(z.string()), ids: z.array(z.string()), refers: z.array(z.string()) })
    .parse(await page.evaluate(readTree));
  await page.close();
  const written = writtenTags(html);
  const begun = written.filter(({ isEnd }) => !isEnd).map(({ name }) => name);
  const at = begun.findIndex((name, index) => name !== tree.names[index]);
  const isWhole = at < 0 && begun.length === tree.names.length;
  const known = new Set(tree.ids);
  return [
    ...(isWhole
      ? []
      : [`repaired at element ${at}: ${begun.slice(at, at + 4)} became ${tree.names.slice(at, at + 4)}`]),
    ...unended(written),
    ...written.flatMap(({ name, attributes }) => twice(attributes).map((one) => `${name} has ${one} twice`)),
    ...twice(tree.ids).map((id) => `the id ${id} stands twice`),
    ...tree.refers.filter((id) => !known.has(id)).map((id) => `there is no ${id} that is referred to`),
  ];
}

const readTree = `(() => {
  const all = [...document.querySelectorAll('*')];
  const refers = ['for', 'headers', 'popovertarget', 'aria-labelledby', 'aria-describedby', 'aria-controls', 'aria-owns'];
  return {
    names: all.map((one) => one.localName.toLowerCase()),
    ids: all.flatMap((one) => one.id === '' ? [] : [one.id]),
    refers: all.flatMap((one) => refers.flatMap((name) => (one.getAttribute(name) ?? '').split(/\\s+/))).filter((id) => id !== ''),
  };
})()`;

interface Tag {
  readonly name: string;
  readonly isEnd: boolean;
  readonly attributes: readonly string[];
}

/** The tags of a page as they are written, in their order; what scripts, styles and comments hold is no tag. */
function writtenTags(html: string): Tag[] {
  const plain = html
    .replace(/<!--[\s\S]*?-->/g, '')
    .replace(/(<(script|style)\b[^>]*>)[\s\S]*?(<\/\2>)/g, '$1$3');
  return [...plain.matchAll(/<(\/?)([a-zA-Z][^\s>/]*)((?:\s[^>"]*(?:"[^"]*"[^>"]*)*)?)>/g)].flatMap(
    ([, end = '', name = '', rest = '']): Tag[] => {
      const attributes = [...rest.matchAll(/([^\s=/]+)(?:="[^"]*")?/g)].map(([, key = '']) =>
        key.toLowerCase(),
      );
      const tag = { name: name.toLowerCase(), isEnd: end === '/', attributes };
      // In SVG an element may end itself.
      return rest.endsWith('/') && !voids.has(tag.name)
        ? [tag, { ...tag, isEnd: true, attributes: [] }]
        : [tag];
    },
  );
}

/** Names of elements that have not as many ends as beginnings. */
function unended(tags: readonly Tag[]): string[] {
  const open = new Map<string, number>();
  for (const { name, isEnd } of tags)
    if (!voids.has(name) && !endsByItself.has(name)) open.set(name, (open.get(name) ?? 0) + (isEnd ? -1 : 1));
  return [...open]
    .filter(([, count]) => count !== 0)
    .map(([name, count]) => `${name}: ${count} more begin than end`);
}

function twice(names: readonly string[]): string[] {
  return [...new Set(names.filter((name, index) => names.indexOf(name) !== index))];
}
