import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fileOf } from '../../../lib/publish/site/addresses.ts';
import { type DrawnJob, madeUpShop } from './made-up-shop.ts';
import { openedSearch } from './opened-search.ts';
import { type Query, queries } from './queries.ts';

/* The search as its reader has it: a browser, the page with its script, the index of two hundred jobs. */

/** The first seed with which each question has an answer. */
const shop = madeUpShop(4);
const opened = openedSearch(shop.site);

/** Of the first answers to fifty questions, so many have to be right. */
const leastRate = 0.95;

/** Files of the pages that may stand first. */
function expectedOf({ job, pages = [] }: Query, jobs: readonly DrawnJob[]): ReadonlySet<string> {
  const ofJobs = jobs.filter((one) => job?.(one)).map(({ id }) => `/jobs/${id}/`);
  return new Set([...ofJobs, ...pages].map((address) => `../${fileOf(address)}`));
}

/** Asks as a reader does; answers with the addresses of what is shown, the first one first. */
async function ask(page: Page, typed: string): Promise<readonly (string | null)[]> {
  await page.locator('#find-words').fill(typed);
  await page.locator('#find-words').press('Enter');
  const list = page.locator('#search-results');
  // The answer is awaited by what the list says of itself: it is busy from the key on.
  await expect.poll(() => list.getAttribute('aria-busy')).toBeNull();
  return list.locator('li a').evaluateAll((all) => all.map((one) => one.getAttribute('href')));
}

describe('the first answer', () => {
  it('is one that was looked for, to 95 of 100 questions', async () => {
    expect(shop.jobs).toHaveLength(200);
    expect(queries).toHaveLength(50);
    const page = await opened().newPage();
    const wrong: string[] = [];
    for (const query of queries) {
      const expected = expectedOf(query, shop.jobs);
      expect(expected.size, `${query.typed} has an answer`).toBeGreaterThan(0);
      const hits = await ask(page, query.typed);
      if (!expected.has(hits[0] ?? ''))
        wrong.push(
          `${query.typed}: ${hits.slice(0, 3).join(' ')}; looked for ${[...expected].slice(0, 3).join(' ')}`,
        );
    }
    const rate = (queries.length - wrong.length) / queries.length;
    process.stdout.write(
      `First answer right: ${queries.length - wrong.length} of ${queries.length} (${Math.round(rate * 100)} %)\n${wrong.join('\n')}\n`,
    );
    expect(rate, wrong.join('\n')).toBeGreaterThanOrEqual(leastRate);
    await page.close();
  }, 600_000);
});
