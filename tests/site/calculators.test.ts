import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { openBench } from '../../lib/calculators/bench.ts';
import { type Answered, initialEntries, isAnswer } from '../../lib/calculators/calculator.ts';
import { calculators } from '../../lib/calculators/index.ts';
import { isFault } from '../../lib/model/fault.ts';
import { computeLater } from '../../lib/model/keep.ts';
import { benchOfShop } from '../../lib/publish/calculators/bench-of-shop.ts';
import { addresses } from '../../lib/publish/site/addresses.ts';
import { plainNames } from '../../lib/publish/site/assets/asset-names.ts';
import { bundleScript } from '../../lib/publish/site/bundles/bundle.ts';
import { keptPages } from '../../lib/publish/site/kept-pages.ts';
import { siteAssets } from '../../lib/publish/site/site-assets.ts';
import { sitePages } from '../../lib/publish/site/site-pages.ts';
import { openTemplates } from '../../lib/publish/site/templates.ts';
import { plainNumber } from '../../lib/publish/words/written.ts';
import { openBrowser } from '../browser.ts';
import { writtenEntries } from '../calculators/entries.ts';
import { sampleSite } from '../publish/sample/sample-site.ts';
import { accessibilityFaults, complaintsOf, headingLevels, overhangPx, smallTargets } from './page-checks.ts';

/* The one file with all calculators, opened from a folder as from a memory stick, in a browser that has no network. */

const site = sampleSite();
const shop = benchOfShop(site.shop, site.parts);
const bench = openBench(shop);

/** What stands on the page for one calculator. */
const seenSchema = z.object({
  says: z.string(),
  isAnswered: z.boolean(),
  faults: z.record(z.string(), z.string()),
  minds: z.array(z.string()),
  figures: z.array(z.object({ label: z.string(), text: z.string(), beside: z.string() })),
  cells: z.array(z.array(z.string())),
  workings: z.array(z.array(z.string())),
});
type Seen = z.infer<typeof seenSchema>;

/** Writes entries into a form, as one that types does, and reads what comes of them; all in the page, one after another. */
const tryAll = (id: string, inputs: readonly Readonly<Record<string, string>>[]): string => `(() => {
  const section = document.querySelector('[data-calculator="${id}"]');
  const form = section.querySelector('form');
  const texts = (root, selector) => [...root.querySelectorAll(selector)].map((one) => one.textContent);
  return ${JSON.stringify(inputs)}.map((entries) => {
    for (const [name, value] of Object.entries(entries)) form.querySelector('[name="' + name + '"]').value = value;
    form.querySelector('input').dispatchEvent(new Event('input', { bubbles: true }));
    return {
      says: section.querySelector('.says').textContent,
      isAnswered: !section.querySelector('.answer').hidden,
      faults: Object.fromEntries([...section.querySelectorAll('[aria-invalid]')].map((one) =>
        [one.name, document.getElementById(one.id + '-fault').textContent])),
      minds: texts(section, '.minds li'),
      figures: [...section.querySelectorAll('.facts > div')].map((one) => ({
        label: one.querySelector('dt').textContent,
        text: one.querySelector('strong').textContent,
        beside: one.querySelector('small')?.textContent ?? '',
      })),
      cells: [...section.querySelectorAll('tbody tr')].map((row) => texts(row, 'th, td')),
      workings: [...section.querySelectorAll('.working')].map((one) =>
        [one.querySelector('strong').textContent, one.querySelector('.formula')?.textContent ?? '', ...texts(one, 'li')]),
    };
  });
})()`;

/** What must stand there, by the modules themselves. */
function expected(answered: Answered): Partial<Seen> {
  if (isFault(answered))
    return { says: `${answered.message}. To do: ${answered.remedy}.`, isAnswered: false, faults: {} };
  if (!isAnswer(answered)) {
    const faults = Object.fromEntries(answered.unread.map(({ field, message }) => [field, message]));
    return { isAnswered: false, faults };
  }
  const { says, minds, figures, steps, table } = answered;
  const shown = (value: number | string, unit: string) =>
    `${typeof value === 'number' ? plainNumber(value) : value} ${unit}`.trimEnd();
  const worked = [...figures, ...steps].flatMap(({ label, trace }) => (trace ? [{ label, trace }] : []));
  return {
    says,
    isAnswered: true,
    faults: {},
    minds: [...minds],
    figures: figures.map(({ label, text, beside = '' }) => ({ label, text, beside })),
    cells: (table?.rows ?? []).map((row) => [...row]),
    workings: worked.map(({ label, trace: { value, unit, formula = '', inputs } }) => [
      `${label}: ${shown(value, unit)}`,
      formula,
      ...inputs.map((input) => `${input.name} = ${shown(input.value, input.unit)}`),
    ]),
  };
}

describe('the calculators in one file', () => {
  let folder = '';
  let url = '';
  let html = '';
  let browser: Browser;
  let page: Page;
  let complaints: readonly string[] = [];
  const asked: string[] = [];

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'memory stick '));
    const make = keptPages({
      templates: openTemplates({ strict: true }),
      assets: { names: plainNames, files: siteAssets() },
      layouts: '',
      drawingsOf: () => [],
      keep: computeLater,
    });
    const one = sitePages({ site, audience: 'bench' }).find(
      ({ address }) => address === addresses.calculatorsFile,
    );
    if (!one) throw new Error('There is no such page.');
    ({ html } = await make(one));
    const file = join(folder, 'calculators.html');
    await writeFile(file, html);
    url = pathToFileURL(file).href;
    browser = await openBrowser();
    const context = await browser.newContext({ offline: true });
    page = await context.newPage();
    complaints = complaintsOf(page);
    page.on('request', (request) => asked.push(request.url()));
    await page.goto(url);
  });
  afterAll(async () => {
    await browser?.close();
    await rm(folder, { recursive: true, force: true });
  });

  it.each(calculators.map((one) => [one.id, one] as const))(
    '%s answers fifty inputs as its module does',
    async (id, calculator) => {
      const inputs = writtenEntries(calculator, initialEntries(calculator, bench), 50, 50);
      const seen = z.array(seenSchema).parse(await page.evaluate(tryAll(id, inputs)));
      expect(seen).toHaveLength(50);
      let answers = 0;
      for (const [k, entries] of inputs.entries()) {
        const answered = calculator.answer(entries, bench);
        if (isAnswer(answered)) answers += 1;
        expect(seen[k], JSON.stringify(entries)).toMatchObject(expected(answered));
      }
      expect(answers).toBeGreaterThan(15);
    },
  );

  it('asks for nothing beside itself, and breaks no rule of its content security policy', () => {
    expect(html).toContain("default-src 'none'");
    expect(html).not.toMatch(/unsafe-|\son[a-z]+="|javascript:/);
    expect(asked.filter((one) => !one.startsWith('data:'))).toEqual([url]);
    expect(complaints).toEqual([]);
  });

  it('begins again with what it began with', async () => {
    const form = page.locator('[data-calculator="fraction"]');
    await form.locator('input').fill('not a length');
    expect(await form.locator('.fault').isVisible()).toBe(true);
    expect(await form.locator('input').getAttribute('aria-invalid')).toBe('true');
    await form.getByRole('button', { name: 'Begin again' }).click();
    await expect.poll(() => form.locator('.says').textContent()).toMatch(/13 5\/8 in|346/);
    expect(await form.locator('.fault').isVisible()).toBe(false);
  });

  it('is reached and answered by keys alone, and says aloud what comes of it', async () => {
    const gain = page.locator('[data-calculator="gain"]');
    await gain.getByRole('button', { name: 'Begin again' }).press('Enter');
    const first = gain.getByLabel('Load of the channel');
    await first.focus();
    await page.keyboard.press('Control+A');
    await page.keyboard.type('2 ohm');
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.name')).toBe('power');
    await page.keyboard.press('Control+A');
    await page.keyboard.type('50 W');
    await page.keyboard.press('Enter');
    const says = gain.getByRole('status');
    await expect.poll(() => says.textContent()).toMatch(/^\d+\.\d\d V at 1 kHz$/);
    expect(page.url()).toBe(url);
  });

  it('is sound on a desk, on a phone and in the dark', async () => {
    expect(await accessibilityFaults(page)).toEqual([]);
    for (const width of [390, 320]) {
      await page.setViewportSize({ width, height: 740 });
      expect(await overhangPx(page), `${width} px`).toBe(0);
    }
    expect(await smallTargets(page)).toEqual([]);
    await page.emulateMedia({ colorScheme: 'dark' });
    expect(await accessibilityFaults(page)).toEqual([]);
    const levels = await headingLevels(page);
    expect(levels.slice(1).every((level, index) => level <= (levels[index] ?? 0) + 1)).toBe(true);
  });
});

describe('the script of the calculators', () => {
  it('is the same bytes from the same sources, compiles nothing from texts, and bears its licences', async () => {
    const script = await bundleScript('calculators');
    expect(await bundleScript('calculators')).toBe(script);
    expect(script.startsWith('/*!\n')).toBe(true);
    expect(script).toMatch(/MIT License/i);
    expect(script.match(/\beval\(|new Function\(|\brequire\(|\bimport\b[ ("']|<\/script/g)).toBeNull();
  });

  it('stands in no page of a customer', () => {
    const addressesOf = sitePages({ site, audience: 'customer' }).map(({ address }) => address);
    expect(addressesOf.filter((address) => address.startsWith('/calculators'))).toEqual([]);
  });
});

describe('what a page holds of a shop', () => {
  it('is its shelf and its house rules, and no price', async () => {
    const text = JSON.stringify(shop);
    expect(Object.keys(shop).sort()).toEqual(
      expect.arrayContaining(['fraction', 'fuses', 'holders', 'reels', 'rules', 'units']),
    );
    expect(text).not.toMatch(/price/);
    const shipped = await readFile(new URL('../../package.json', import.meta.url), 'utf8');
    expect(shipped).toContain('write-bundles.ts');
  });
});
