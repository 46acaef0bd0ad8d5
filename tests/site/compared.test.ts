import { describe, expect, it } from 'vitest';
import { fileOf } from '../../lib/publish/site/addresses.ts';
import { otherJob, released, revisionA, revisionB } from '../publish/sample/released-jobs.ts';
import { sampleSite } from '../publish/sample/sample-site.ts';
import { openedSite } from './opened-site.ts';
import { accessibilityFaults, headingLevels, overhangPx, smallTargets } from './page-checks.ts';
import { lookAtTables } from './tables-in-sight.ts';

const site = sampleSite([released(revisionB, revisionA, revisionB), otherJob]);

describe.each(['/jobs/well/B/changes/', '/vehicles/sample-estate/jobs/well/'])('%s', (address) => {
  const opened = openedSite(site, { only: (one) => one === address });

  it.each([320, 390, 768, 1280])('has all in sight and in reach at %i px', async (width) => {
    const { url, browser } = opened();
    const page = await browser.newPage({ viewport: { width, height: 800 } });
    await page.goto(url + fileOf(address), { waitUntil: 'load' });
    const { tables, cut, broken, scrolling, notCards, unnamed } = await lookAtTables(page);
    expect(tables).toBeGreaterThan(4);
    expect({ cut, broken, scrolling, unnamed }).toEqual({ cut: [], broken: [], scrolling: [], unnamed: [] });
    expect(width < 600 ? notCards : []).toEqual([]);
    expect([await overhangPx(page), await smallTargets(page)]).toEqual([0, []]);
    if (width === 390) {
      expect(await accessibilityFaults(page)).toEqual([]);
      expect((await headingLevels(page)).slice(0, 3)).toEqual([1, 2, 2]);
    }
    await page.close();
  });

  it('shows the boards within the window of a phone, by night too', async () => {
    const { url, browser } = opened();
    const page = await browser.newPage({ colorScheme: 'dark', viewport: { width: 390, height: 800 } });
    await page.goto(url + fileOf(address), { waitUntil: 'load' });
    const size = await page.locator('figure.drawing svg').first().boundingBox();
    expect(size?.width ?? 0).toBeGreaterThan(300);
    expect((size?.x ?? 0) + (size?.width ?? 999)).toBeLessThanOrEqual(390);
    expect(await accessibilityFaults(page)).toEqual([]);
    await page.close();
  });
});
