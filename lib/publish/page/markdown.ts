import MarkdownIt, { type Token } from 'markdown-it';
import type { Guide } from '../../model/content/guide.ts';
import { cardStyle } from './card-labels.ts';

/** What a guide refers to, as far as its site has it. */
export interface GuideSurroundings {
  /** Where a picture stands, seen from the page of the guide; null for one that is not in the site. */
  readonly pictureOf: (file: string) => GuidePicture | null;
  /** True for a link that leads somewhere. */
  readonly isThere: (href: string) => boolean;
}

/** A picture of a guide. */
export interface GuidePicture {
  readonly src: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A picture that a guide names: its file as written, and the line of the text in which its paragraph begins, from 0. */
export interface NamedPicture {
  readonly file: string;
  readonly line: number;
}

const openReader = () => new MarkdownIt({ html: false, linkify: false, typographer: false });

/** The pictures that a guide names, in their order. */
export function picturesNamed({ body }: Pick<Guide, 'body'>): NamedPicture[] {
  return openReader()
    .parse(body, {})
    .flatMap(({ children, map }) =>
      (children ?? [])
        .filter(({ type }) => type === 'image')
        .map((token) => ({ file: fileNamed(token), line: map?.[0] ?? 0 })),
    );
}

/** The file that an image names, as it is called on the disk. */
function fileNamed(token: Token): string {
  const src = String(token.attrGet('src') ?? '');
  try {
    return decodeURIComponent(src);
  } catch {
    return src;
  }
}

/**
 * The HTML of a guide. Markup inside the Markdown is shown as text, not run. The page's own heading is the
 * guide's title, so a first heading that repeats it is left out and no heading rises above the second level. Of a picture
 * that is not in the site its words are shown, of a link that leads nowhere its text.
 */
export function markdownHtml({ body, title }: Guide, around: GuideSurroundings): string {
  const reader = openReader();
  reader.renderer.rules.image = (tokens, index) => pictureHtml(reader, tokens[index], around);
  reader.renderer.rules.table_open = (tokens, index, options, _, renderer) =>
    `<div class="table-wrap">\n${renderer.renderToken(tokens, index, options)}`;
  reader.renderer.rules.table_close = () => '</table>\n</div>\n';
  reader.renderer.rules.fence = (tokens, index) => typedBlock(reader, tokens[index]);
  const tokens = reader.parse(body, {});
  const repeats = tokens[0]?.type === 'heading_open' && tokens[1]?.content.trim() === title.trim();
  const shown = repeats ? tokens.slice(3) : tokens;
  const levels = shown.filter((token) => token.type === 'heading_open').map((token) => Number(token.tag[1]));
  const shift = 2 - Math.min(2, ...levels);
  for (const token of shown)
    if (token.type === 'heading_open' || token.type === 'heading_close')
      token.tag = `h${Math.min(6, Number(token.tag[1]) + shift)}`;
  shown.forEach((token, index) => {
    if (token.type === 'table_open') headTable(shown, index);
    if (token.children) token.children = withoutDeadLinks(token.children, around);
  });
  return reader.renderer.render(shown, reader.options, {});
}

function pictureHtml(
  { utils }: Pick<InstanceType<typeof MarkdownIt>, 'utils'>,
  token: Token | undefined,
  { pictureOf }: GuideSurroundings,
): string {
  const alt = utils.escapeHtml(token?.content ?? '');
  const picture = token ? pictureOf(fileNamed(token)) : null;
  if (!picture) return alt;
  const { src, widthPx, heightPx } = picture;
  return `<img src="${utils.escapeHtml(src)}" width="${widthPx}" height="${heightPx}" alt="${alt}" loading="lazy">`;
}

/** What stands in a line without the links that lead nowhere; their text stays. Links do not stand in each other. */
function withoutDeadLinks(tokens: readonly Token[], { isThere }: GuideSurroundings): Token[] {
  let isDead = false;
  return tokens.filter((token) => {
    if (token.type === 'link_open') isDead = !isThere(String(token.attrGet('href') ?? ''));
    return !(isDead && (token.type === 'link_open' || token.type === 'link_close'));
  });
}

/** What is typed into a file, below its name, or into a command line: it scrolls by itself, also by keys. */
function typedBlock(
  { utils }: Pick<InstanceType<typeof MarkdownIt>, 'utils'>,
  token: Token | undefined,
): string {
  const [kind = '', file] = token?.info.trim().split(/\s+/) ?? [];
  const name = file ?? (kind === 'sh' ? 'Type' : 'So it says');
  const told = utils.escapeHtml(name);
  const text = utils.escapeHtml(token?.content ?? '');
  return `<p class="typed-into">${told}</p>\n<pre class="typed" tabindex="0" role="group" aria-label="${told}"><code>${text}</code></pre>\n`;
}

/** Gives a table of a guide what the tables of sheets have: heads of columns and rows, and titles for its cards. */
function headTable(tokens: readonly Token[], from: number): void {
  const length = tokens.slice(from).findIndex(({ type }) => type === 'table_close');
  const own = tokens.slice(from, from + length);
  const titles = own.flatMap((token, index) =>
    token.type === 'th_open' ? [{ title: own[index + 1]?.content ?? '' }] : [],
  );
  own[0]?.attrSet('style', cardStyle(titles));
  own.forEach((token, index) => {
    if (token.type === 'th_open') token.attrSet('scope', 'col');
    if (token.type !== 'td_open' || own[index - 1]?.type !== 'tr_open') return;
    token.attrSet('scope', 'row');
    const [, , closing] = own.slice(index);
    for (const one of [token, closing]) if (one) one.tag = 'th';
  });
}
