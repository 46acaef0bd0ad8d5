import axe from 'axe-core';
import type { Page } from 'playwright-core';
import { z } from 'zod';
import { isLongRun } from '../long-run.ts';

const audit = z.object({
  violations: z.array(z.object({ id: z.string(), nodes: z.array(z.object({ html: z.string() })) })),
});

/** WCAG 2.2 A and AA, and the best practices of axe-core. */
const everyRule = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

const contrast = 'color-contrast';

/** The other rules that colours and the width of the window decide: all else asks for what the document says. */
const rulesOfLooks = {
  type: 'rule',
  values: ['link-in-text-block', 'scrollable-region-focusable', 'target-size'],
};

/** What axe-core finds on the page that is open, of whatever impact. */
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

/**
 * Elements with letters of their own, three of each look: of those with the same colours and letters on the same grounds.
 * What one of them lacks in contrast all lack, and to ask each of thousands of cells took longer than all other rules.
 */
const someOfEachLook = `(() => {
  const looks = new Map();
  const asked = ['color', 'backgroundColor', 'backgroundImage', 'opacity', 'fontSize', 'fontWeight', 'position', 'textShadow', 'filter'];
  const lookOf = (one) => {
    if (!one) return '';
    if (!looks.has(one)) {
      const style = getComputedStyle(one);
      looks.set(one, idOf([lookOf(one.parentElement), ...asked.map((name) => style[name])].join('|')));
    }
    return looks.get(one);
  };
  const ids = new Map();
  const idOf = (look) => ids.get(look) ?? ids.set(look, String(ids.size)).get(look);
  const counts = new Map();
  return [...document.body.querySelectorAll('*')].filter((one) => {
    const says = one.matches('input, select, textarea') || [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim() !== '');
    if (!says || !one.checkVisibility()) return false;
    const look = lookOf(one);
    counts.set(look, (counts.get(look) ?? 0) + 1);
    return counts.get(look) <= 3;
  });
})()`;

async function faultsBy(page: Page, rules: typeof everyRule | typeof rulesOfLooks): Promise<string[]> {
  if (await page.evaluate("typeof axe === 'undefined'")) await page.evaluate(axe.source);
  const ask = async (where: string, options: object): Promise<string[]> => {
    const all = JSON.stringify({ ...options, resultTypes: ['violations'] });
    const { violations } = audit.parse(await page.evaluate(`axe.run(${where}, ${all})`));
    return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ''}`);
  };
  if (isLongRun) return ask('document', { runOnly: rules });
  return [
    ...(await ask('document', { runOnly: rules, rules: { [contrast]: { enabled: false } } })),
    ...(await ask(someOfEachLook, { runOnly: { type: 'rule', values: [contrast] } })),
  ];
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
