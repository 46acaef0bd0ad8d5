import type { Found } from '../../lib/publish/search/look-for.ts';
import { markedLines } from '../../lib/publish/search/marked-lines.ts';
import type { LookedFor } from '../../lib/publish/search/mended-words.ts';
import type { FoundPage } from './library.ts';

/** What was found, in a sentence: how much, what was put right, what was left out. */
export function statusText({ hits, looked, leftOut }: Found<unknown>): string {
  const count =
    hits.length === 0
      ? 'Nothing found. Try fewer words or another filter.'
      : `${counted(hits.length)} found.`;
  const mended = looked.filter(({ isMended }) => isMended);
  const meant = mended.map(
    ({ typed, words }) => `No page has “${typed}”: “${words.join(' ')}” is looked for.`,
  );
  const without =
    hits.length > 0 && leftOut.length > 0
      ? [`No page has ${leftOut.map((word) => `“${word}”`).join(' and ')} beside the other words.`]
      : [];
  return [count, ...meant, ...without].join(' ');
}

function counted(pages: number): string {
  return pages === 1 ? '1 page' : `${pages} pages`;
}

/** A page that was found: its thumbnail, its title, and the lines in which the words stand. */
export function hitElement(page: FoundPage, looked: readonly LookedFor[], top: string): HTMLLIElement {
  const { title = '', kind = '', summary = '', file = '', lines = '', names = '', picture } = page.meta;
  const item = document.createElement('li');
  item.className = picture ? 'hit' : 'hit is-plain';
  const link = document.createElement('a');
  link.href = `${top}${file}`;
  link.textContent = title;
  const said = document.createElement('small');
  said.textContent = ` ${kind}. ${summary}`;
  const head = document.createElement('p');
  head.append(link, said);
  const words = looked.flatMap(({ words: own, or = [] }) => [...own, ...or]);
  const told = markedLines(words, { title, lines: lines.split('\n'), names: names.split('\n') });
  const body = document.createElement('div');
  body.append(head, ...told.map(lineElement));
  if (picture) item.append(pictureOf(`${top}${picture}`));
  item.append(body);
  return item;
}

/** The board of a job: the link beside it says which. */
function pictureOf(src: string): HTMLImageElement {
  const image = new Image(144, 108);
  image.className = 'hit-picture';
  image.loading = 'lazy';
  image.alt = '';
  image.src = src;
  return image;
}

function lineElement(pieces: readonly { readonly text: string; readonly isHit: boolean }[]): HTMLElement {
  const line = document.createElement('p');
  for (const { text, isHit } of pieces) {
    if (!isHit) line.append(text);
    else {
      const mark = document.createElement('mark');
      mark.textContent = text;
      line.append(mark);
    }
  }
  return line;
}
