import MarkdownIt, { type Token } from 'markdown-it';
import type { Guide } from '../../model/content/guide.ts';
import { cardStyle } from './card-labels.ts';

/**
 * The HTML of a guide. Markup inside the Markdown is shown as text, not run. The page's own heading is the
 * guide's title, so a first heading that repeats it is left out and no heading rises above the second level.
 */
export function markdownHtml({ body, title }: Guide): string {
  const reader = new MarkdownIt({ html: false, linkify: false, typographer: false });
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
  });
  return reader.renderer.render(shown, reader.options, {});
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
