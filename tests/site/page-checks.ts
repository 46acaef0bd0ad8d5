import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { z } from 'zod';

const audit = z.object({
  violations: z.array(z.object({ id: z.string(), nodes: z.array(z.object({ html: z.string() })) })),
});

/** What axe-core finds on the page that is open, of whatever impact, by WCAG 2.2 A and AA and by its best practices. */
export async function accessibilityFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const options = JSON.stringify({ runOnly: tags, resultTypes: ['violations'] });
  const { violations } = audit.parse(await page.evaluate(`axe.run(document, ${options})`));
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
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
