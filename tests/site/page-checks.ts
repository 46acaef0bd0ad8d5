import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { z } from 'zod';
import { isLongRun } from '../long-run.ts';

const audit = z.object({
  violations: z.array(z.object({ id: z.string(), nodes: z.array(z.object({ html: z.string() })) })),
});

/** WCAG 2.2 A and AA, and the best practices of axe-core. */
const everyRule = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** The rules that colours and the width of the window decide: all others ask for what the document says. */
const rulesOfLooks = {
  type: 'rule',
  values: ['color-contrast', 'link-in-text-block', 'scrollable-region-focusable', 'target-size'],
};

/** So many rows of a table, and so many drawings of a page, the short run holds to the rules: more are of the same make. */
const mostRows = 8;
const mostDrawings = 1;

/**
 * What axe-core finds on the page that is open, of whatever impact: of all that stands on it in the long run, in the
 * short one of the first rows of each table and the first drawing, and of no more than the name of further drawings.
 */
export function accessibilityFaults(page: Page): Promise<string[]> {
  return faultsBy(page, everyRule);
}

/**
 * The same on a page that was looked at before and has other colours or another width now: the long run asks for
 * everything once more, the short one for what these decide.
 */
export function faultsOfLooks(page: Page): Promise<string[]> {
  return faultsBy(page, isLongRun ? everyRule : rulesOfLooks);
}

async function faultsBy(page: Page, runOnly: object): Promise<string[]> {
  if (await page.evaluate("typeof axe === 'undefined'")) await page.evaluate(axe.source);
  // What would be loaded before, style sheets once more, is for a rule that is not asked for.
  const options = JSON.stringify({ runOnly, resultTypes: ['violations'], preload: false });
  const run = `axe.run(document, ${options}).then(({ violations }) => ({
    violations: violations.map(({ id, nodes }) => ({ id, nodes: nodes.slice(0, 1).map(({ html }) => ({ html })) })),
  }))`;
  const { violations } = audit.parse(await page.evaluate(isLongRun ? run : onSample(run)));
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
}

/** Runs a script of a page while what is more of the same is taken out of it, and puts that back. */
function onSample(run: string): string {
  return `(async () => {
    const rows = [...document.querySelectorAll('tbody')].flatMap((one) => [...one.rows].slice(${mostRows}));
    const drawn = [...document.querySelectorAll('.drawing svg')].slice(${mostDrawings})
      .flatMap((one) => [...one.children].filter(({ localName }) => localName !== 'title' && localName !== 'desc'));
    const out = [...rows, ...drawn].map((one) => [one, document.createComment('')]);
    for (const [one, mark] of out) one.replaceWith(mark);
    try {
      return await ${run};
    } finally {
      for (const [one, mark] of out) mark.replaceWith(one);
    }
  })()`;
}

/**
 * What can be pressed and is smaller than 24 by 24 CSS pixels (WCAG 2.2, 2.5.8), links within a sentence excepted. Of
 * what lies within something larger that does the same, the larger counts.
 */
export async function smallTargets(page: Page): Promise<string[]> {
  const small = `(() => {
    const inSentence = (one) => one.tagName === 'A' && getComputedStyle(one).display === 'inline' &&
      one.parentElement.textContent.trim() !== one.textContent.trim();
    return [...document.querySelectorAll('a[href], button, input, select, summary, [role=button], [tabindex="0"]')]
      .filter((one) => !inSentence(one) && !one.classList.contains('skip'))
      .map((one) => [one, one.getBoundingClientRect()])
      .filter(([, { width, height }]) => width > 0 && (width < 23.9 || height < 23.9))
      .map(([one, { width, height }]) => one.outerHTML.slice(0, 120) + ' ' + width + ' x ' + height);
  })()`;
  return z.array(z.string()).parse(await page.evaluate(small));
}

/** By how many pixels the page is wider than the window. */
export async function overhangPx(page: Page): Promise<number> {
  const root = 'document.documentElement';
  return z.number().parse(await page.evaluate(`${root}.scrollWidth - ${root}.clientWidth`));
}

/** Levels of the headings in their order. */
export async function headingLevels(page: Page): Promise<number[]> {
  const levels = `[...document.querySelectorAll('h1,h2,h3,h4')].map((one) => Number(one.tagName[1]))`;
  return z.array(z.number()).parse(await page.evaluate(levels));
}

/** Collects what a page complains of: errors and warnings of its console, exceptions, failed requests. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('requestfailed', (request) => complaints.push(`failed: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) complaints.push(`${response.status()}: ${response.url()}`);
  });
  return complaints;
}

/** Cells of tables whose words are wider than their room. */
async function clippedCells(page: Page): Promise<string[]> {
  const wide = `[...document.querySelectorAll('th, td')].filter((one) => one.closest('thead') === null || getComputedStyle(one.closest('thead')).position !== 'absolute').filter((one) => one.scrollWidth > one.clientWidth + 1).map((one) => one.textContent)`;
  return z.array(z.string()).parse(await page.evaluate(wide));
}

/** Holds a sheet that is one file to what holds by ear, on a desk, on a phone and in the dark. It stays dark and narrow. */
export async function expectSoundSheet(page: Page): Promise<void> {
  expect(await accessibilityFaults(page)).toEqual([]);
  for (const width of [1280, 768, 390, 320]) {
    await page.setViewportSize({ width, height: 844 });
    expect(await overhangPx(page), `${width} px`).toBe(0);
    expect(await clippedCells(page), `${width} px`).toEqual([]);
  }
  expect(await accessibilityFaults(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.emulateMedia({ colorScheme: 'dark' });
  expect(await accessibilityFaults(page)).toEqual([]);
  const levels = await headingLevels(page);
  expect(levels.slice(1).every((level, index) => level <= (levels[index] ?? 0) + 1)).toBe(true);
}
