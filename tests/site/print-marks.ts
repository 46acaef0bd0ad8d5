import type { Page } from 'playwright-core';
import { z } from 'zod';
import { openPdf } from '../export/pdf-strokes.ts';

/** What must stand on a page as a whole: rows, steps, findings, cards, labels. */
const wholes =
  'tbody tr, .steps li, .findings li, .caution, .working, .wire-labels li, .signatures, .facts > div';

/**
 * Puts letters too small to see into a page that is to be printed, at the beginning and the end of every thing that must
 * stay whole: what lies between them is on one page where they are. They take no room, so nothing moves.
 *
 * `«w5.0.a»` begins the first part of the fifth whole, `«w5.0.b»` ends it; `«h2»` stands in the head of the second
 * table, `«r2»` in each of its rows.
 */
export async function markWholes(page: Page): Promise<number> {
  return z.number().parse(
    await page.evaluate(`(() => {
      const textsOf = (place) => {
        const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
        const texts = [];
        while (walker.nextNode()) if (walker.currentNode.data.trim() !== '') texts.push(walker.currentNode);
        return texts;
      };
      const put = (place, text, first) => {
        const mark = document.createElement('span');
        mark.textContent = '«' + text + '»';
        mark.style.cssText = 'font-size:0.2px;line-height:0;white-space:nowrap';
        const texts = textsOf(place);
        if (first) texts[0].before(mark);
        else texts.at(-1).after(mark);
      };
      const all = [...document.querySelectorAll('main :is(${wholes})')];
      all.forEach((whole, nth) => {
        const parts = whole.matches('tr') ? [...whole.children].filter((one) => one.textContent.trim() !== '') : [whole];
        parts.forEach((part, index) => {
          put(part, 'w' + nth + '.' + index + '.a', true);
          put(part, 'w' + nth + '.' + index + '.b', false);
        });
      });
      [...document.querySelectorAll('main table')].forEach((table, nth) => {
        put(table.querySelector('thead th'), 'h' + nth, true);
        for (const row of table.querySelectorAll('tbody tr')) put(row.querySelector('th, td'), 'r' + nth, true);
      });
      return all.length;
    })()`),
  );
}

/** A printed set as a reader of PDF sees it: each page with its words and the marks that it bears. */
export interface PrintedPage {
  readonly text: string;
  readonly marks: readonly string[];
  /** Size of the smallest letter of the type, points. */
  readonly smallestPt: number;
  readonly widthPt: number;
  readonly heightPt: number;
}

/** Reads a printed set by pdf.js. */
export async function readPrinted(pdf: Uint8Array): Promise<PrintedPage[]> {
  const document = await openPdf(pdf);
  const pages: PrintedPage[] = [];
  for (let number = 1; number <= document.numPages; number += 1) {
    const page = await document.getPage(number);
    const { items } = await page.getTextContent();
    const said = items.flatMap((item) => ('str' in item && item.str.trim() !== '' ? [item] : []));
    const all = said.map(({ str }) => str).join('');
    const { width, height } = page.getViewport({ scale: 1 });
    // A row that is set lower, or turned, is as large as its matrix says.
    const sizes = said.map(({ transform }) => {
      const [a, b] = z.array(z.number()).parse(transform);
      return Math.hypot(a ?? 0, b ?? 0);
    });
    pages.push({
      text: all.replaceAll(/«[^«»]*»/g, ''),
      marks: [...all.matchAll(/«([^«»]*)»/g)].map(([, mark = '']) => mark),
      smallestPt: Math.min(...sizes.filter((size) => size > 2)),
      widthPt: width,
      heightPt: height,
    });
  }
  return pages;
}

/** Wholes that lie on more than one page, tables that go on without their head, heads without a row below them: each as a line that says so. */
export function brokenWholes(pages: readonly PrintedPage[]): string[] {
  const places = new Map<string, Set<number>>();
  pages.forEach(({ marks }, index) => {
    for (const mark of marks) {
      const key = mark.startsWith('w') ? (mark.split('.')[0] ?? mark) : mark;
      places.set(key, (places.get(key) ?? new Set()).add(index + 1));
    }
  });
  const pagesOf = (key: string): number[] => [...(places.get(key) ?? [])];
  return [...places.keys()].flatMap((key) => {
    const on = pagesOf(key);
    if (key.startsWith('w') && on.length > 1) return [`${key} lies on pages ${on.join(' and ')}`];
    if (key.startsWith('h')) {
      const empty = on.filter((page) => !pagesOf(`r${key.slice(1)}`).includes(page));
      return empty.map((page) => `table ${key.slice(1)} has no row below its head on page ${page}`);
    }
    if (!key.startsWith('r')) return [];
    const headless = on.filter((page) => !pagesOf(`h${key.slice(1)}`).includes(page));
    return headless.map((page) => `table ${key.slice(1)} has no head on page ${page}`);
  });
}
