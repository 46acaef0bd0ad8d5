import type { Page } from 'playwright-core';
import { z } from 'zod';

const looked = z.object({
  tables: z.number(),
  figures: z.number(),
  cut: z.array(z.string()),
  broken: z.array(z.string()),
  scrolling: z.array(z.string()),
  notCards: z.array(z.string()),
  late: z.array(z.string()),
  unnamed: z.array(z.string()),
});

/** What a look at the tables of a page found, each thing with the caption of its table. */
export type Look = z.output<typeof looked>;

/**
 * Looks at every table of a page as it is laid out now, by the boxes of its letters:
 *
 * - `cut`: letters that lie outside their cell, the window, or what is in sight of a frame that scrolls and does not say so;
 * - `broken`: a number that is continued on the next line, where its first line reads as another number;
 * - `scrolling`: tables that are in sight in full only after scrolling sideways, and say so;
 * - `notCards`: tables whose rows are not cards;
 * - `late`: cards in which something stands before what the table says is looked for first;
 * - `unnamed`: values of cards that stand without the title of their column.
 */
const look = `(() => {
  const found = { tables: 0, figures: 0, cut: [], broken: [], scrolling: [], notCards: [], late: [], unnamed: [] };
  const number = /(?<![A-Za-z0-9])(?:[0-9][0-9.,/-]*[0-9]|[0-9])/g;
  const range = document.createRange();
  const frameOf = (table) => {
    let [left, right, hinted] = [0, document.documentElement.clientWidth, false];
    for (let up = table.parentElement; up && up !== document.body; up = up.parentElement) {
      if (getComputedStyle(up).overflowX === 'visible') continue;
      const box = up.getBoundingClientRect();
      if (box.left > left) left = box.left;
      if (box.right < right) right = box.right;
      const hint = getComputedStyle(up, '::before');
      if (up.scrollWidth > up.clientWidth && hint.content.includes('scroll') && hint.display !== 'none') hinted = true;
    }
    return { left, right, hinted };
  };
  const sameLine = (a, b) => Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2;
  for (const table of document.querySelectorAll('table')) {
    found.tables += 1;
    const caption = table.caption ? table.caption.textContent.trim() : '(no caption)';
    const { left, right, hinted } = frameOf(table);
    if (hinted) found.scrolling.push(caption);
    const inCards = getComputedStyle(table).display === 'block';
    if (!inCards) found.notCards.push(caption);
    for (const row of table.tBodies.length === 0 ? [] : [...table.tBodies].flatMap((body) => [...body.rows])) {
      const cells = [...row.cells].map((cell) => ({ cell, box: cell.getBoundingClientRect() }));
      for (const { cell, box } of cells) {
        const walker = document.createTreeWalker(cell, NodeFilter.SHOW_TEXT);
        for (let node = walker.nextNode(); node; node = walker.nextNode()) {
          const text = node.data;
          if (text.trim() === '' || node.parentElement.closest('.unseen')) continue;
          range.selectNodeContents(node);
          const rects = [...range.getClientRects()];
          const outside = !hinted && rects.some((rect) =>
            rect.left < Math.max(left, box.left) - 1 || rect.right > Math.min(right, box.right) + 1);
          if (outside || (rects.length === 0 && box.width > 0)) found.cut.push(caption + ': ' + text.trim());
          for (const { 0: digits, index } of text.matchAll(number)) {
            found.figures += 1;
            if (rects.length < 2) continue;
            range.setStart(node, index);
            range.setEnd(node, index + digits.length);
            const [first, ...more] = [...range.getClientRects()].filter(({ width }) => width > 0);
            if (more.some((rect) => !sameLine(first, rect))) found.broken.push(caption + ': ' + digits + ' of ' + text.trim());
          }
        }
        if (inCards && cell.tagName === 'TD' && box.width > 0 &&
            !/^"[^"]*[A-Za-z]/.test(getComputedStyle(cell, '::before').content)) found.unnamed.push(caption + ': ' + cell.textContent.trim());
      }
      const lead = cells.find(({ cell }) => cell.matches('.leads') || table.classList.contains('leads-' + (cell.cellIndex + 1)));
      if (!inCards || !lead) continue;
      for (const { cell, box } of cells)
        if (cell !== lead.cell && box.width > 0 &&
            (box.bottom <= lead.box.top + 1 || (sameLine(box, lead.box) && box.left < lead.box.left)))
          found.late.push(caption + ': ' + lead.cell.textContent.trim());
    }
  }
  return found;
})()`;

/** Looks at the tables of the page that is open. */
export async function lookAtTables(page: Page): Promise<Look> {
  return looked.parse(await page.evaluate(look));
}
