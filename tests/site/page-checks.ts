import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { z } from 'zod';

const audit = z.object({
  violations: z.array(
    z.object({
      id: z.string(),
      impact: z.string().nullish(),
      nodes: z.array(z.object({ html: z.string() })),
    }),
  ),
});

/** What axe-core finds on the page that is open, of serious or critical impact, by WCAG 2.2 A and AA. */
export async function seriousFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe.source);
  const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
  const options = JSON.stringify({ runOnly: tags, resultTypes: ['violations'] });
  const { violations } = audit.parse(await page.evaluate(`axe.run(document, ${options})`));
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
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
