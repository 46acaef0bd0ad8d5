import { createHash } from 'node:crypto';

/** What a page takes that its policy has to allow beside what every page may. */
export interface PageNeeds {
  /** True for the page that runs the search library, which compiles its WebAssembly as it starts. */
  readonly runsSearch: boolean;
}

/**
 * A page that says by its content security policy what it asks for: files of its own site, and what stands in it by digest.
 * A policy allows no style attribute, so those that templates write move to the style elements, and all of these into one at
 * the end of the head, where each text stands once. What comes from a folder has no origin to be the same as: `file:` names it, and lets nothing in
 * that comes over a network.
 *
 * Throws where a style attribute has an entity in it, which a style element would not read, and where a page has no head:
 * bugs, both.
 */
export function withPolicy(html: string, needs: PageNeeds): string {
  const page = withStylesInHead(html);
  const charset = '<meta charset="utf-8">';
  if (!page.includes(charset)) throw new Error('A page has no head for its policy.');
  const policy = `<meta http-equiv="Content-Security-Policy" content="${policyOf(page, needs)}">`;
  return page.replace(charset, () => `${charset}\n${policy}`);
}

const own = "'self' file:";

function policyOf(html: string, { runsSearch }: PageNeeds): string {
  const scripts = digestsIn(html, /<script>([\s\S]*?)<\/script>/g);
  const styles = digestsIn(html, /<style\b[^>]*>([\s\S]*?)<\/style>/g);
  return [
    "default-src 'none'",
    `script-src ${[own, ...scripts, ...(runsSearch ? ["'wasm-unsafe-eval'"] : [])].join(' ')}`,
    `style-src ${[own, ...styles].join(' ')}`,
    `img-src ${own}`,
    `font-src ${own}`,
    `connect-src ${own}`,
    `frame-src ${own}`,
    `form-action ${own}`,
    "base-uri 'none'",
  ].join('; ');
}

/** The digests of what stands in a page, as a policy names them: each once. */
export function digestsIn(html: string, pattern: RegExp): readonly string[] {
  const texts = [...html.matchAll(pattern)].map(([, text = '']) => text);
  return [...new Set(texts)].map((text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`);
}

/** A page with the texts of its style attributes in its head. Quotes within texts are entities: none looks like an attribute. */
export function withStylesInHead(html: string): string {
  const styles = new Map<string, number>();
  const marked = html.replace(/ style="([^"]*)"/g, (_, style: string) => {
    if (style.includes('&')) throw new Error(`A style attribute has an entity in it: ${style}`);
    if (style === '') return '';
    const mark = styles.get(style) ?? styles.size + 1;
    styles.set(style, mark);
    return ` data-style="${mark}"`;
  });
  const rules = [...styles].map(([style, mark]) => `[data-style="${mark}"]{${style}}`);
  // One element: each has a digest in the policy, which is told with every page.
  const elements = /<style>\n([\s\S]*?)<\/style>\n/g;
  const written = [...marked.matchAll(elements)].map(([, text = '']) => text.trim());
  const style = [...written, ...rules].filter((text) => text !== '').join('\n');
  return style === ''
    ? marked
    : marked.replace(elements, '').replace('</head>', () => `<style>\n${style}\n</style>\n</head>`);
}
