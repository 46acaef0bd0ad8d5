import type { Environment } from 'nunjucks';
import { wayUp } from '../site/addresses.ts';
import { type Standing, standingWords } from './page-standing.ts';

/** Where the browser listens for changes. */
export const changesPath = '/changes';

/** What is put into a page stands between these, so that it can be told from the page itself. */
export const liveMarks = { from: '<!--live-->', to: '<!--/live-->' } as const;

/** What a browser puts in place of what a page said of its standing before. */
export interface LiveNews {
  /** HTML of what is said above the page; empty where nothing need be said. */
  readonly said: string;
  /** True where each sheet is marked as not current, on screen and on paper. */
  readonly isMarked: boolean;
  readonly made: string;
}

/** What is said of the page at an address, whose standing changed. */
export function liveNews(address: string, standing: Standing, templates: Environment): LiveNews {
  const said = standingWords(standing).head === null ? '' : render('said', address, standing, templates);
  return { said, isMarked: !standing.isCurrent, made: standing.made };
}

/**
 * A page as it is served: byte for byte the page that a build writes, with what its standing adds at three places: the
 * end of its head, the beginning of its body, and the end of it. Throws where a page has no head or body.
 */
export function livePage(html: string, address: string, standing: Standing, templates: Environment): string {
  const part = (name: 'head' | 'state' | 'script'): string =>
    `${liveMarks.from}${render(name, address, standing, templates)}${liveMarks.to}`;
  const found = /^([\s\S]*?)(<\/head>[\s\S]*?<body\b[^>]*>)([\s\S]*)(<\/body>[\s\S]*)$/.exec(html);
  if (!found) throw new Error(`The page at ${address} has no head or no body.`);
  const [, head = '', between = '', body = '', end = ''] = found;
  return [head, part('head'), between, part('state'), body, part('script'), end].join('');
}

function render(name: string, address: string, standing: Standing, templates: Environment): string {
  return templates.render(`live/${name}.njk`, {
    address,
    top: wayUp(address),
    ...standingWords(standing),
    missing: standing.missing,
    troubles: standing.troubles,
    made: standing.made,
    isMarked: !standing.isCurrent,
  });
}
