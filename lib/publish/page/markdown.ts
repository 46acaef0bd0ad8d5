import MarkdownIt from 'markdown-it';
import type { Guide } from '../../model/content/guide.ts';

/**
 * The HTML of a guide. Markup inside the Markdown is shown as text, not run. The page's own heading is the
 * guide's title, so a first heading that repeats it is left out and no heading rises above the second level.
 */
export function markdownHtml({ body, title }: Guide): string {
  const reader = new MarkdownIt({ html: false, linkify: false, typographer: false });
  const tokens = reader.parse(body, {});
  const repeats = tokens[0]?.type === 'heading_open' && tokens[1]?.content.trim() === title.trim();
  const shown = repeats ? tokens.slice(3) : tokens;
  const levels = shown.filter((token) => token.type === 'heading_open').map((token) => Number(token.tag[1]));
  const shift = 2 - Math.min(2, ...levels);
  for (const token of shown)
    if (token.type === 'heading_open' || token.type === 'heading_close')
      token.tag = `h${Math.min(6, Number(token.tag[1]) + shift)}`;
  return reader.renderer.render(shown, reader.options, {});
}
