import { describe, expect, test } from 'vitest';
import { findingCatalogue, findingFamilies } from '../../../lib/model/findings/index.ts';
import { houseRuleNames } from '../../../lib/model/house-rules.ts';
import { rulesNamed, ruleValues, withRules } from '../../../lib/model/printed/rule-figures.ts';
import { lengthStyle } from '../../../lib/model/quantity/length-text.ts';
import { escaped, pageAt } from '../sample/sample-page.ts';
import { sampleSite } from '../sample/sample-site.ts';

const { shop } = sampleSite();

test('the page of all findings has each one of the catalogue under its family, with what it asks and its levels', () => {
  const html = pageAt('/findings/') ?? '';
  const sections = html.split('<section ').slice(1);
  const families = Object.values(findingFamilies);
  expect(sections).toHaveLength(families.length);
  for (const [at, { title, findings }] of families.entries()) {
    expect(sections[at]).toContain(`>${title}</h2>`);
    for (const [id, { asks, levels }] of Object.entries(findings)) {
      const row = sections[at]?.split('<tr').find((one) => one.includes(`>${id}<`)) ?? '';
      const text = row.replaceAll(/<\/?span[^>]*>/g, '');
      expect(text, id).toContain(escaped(withRules(asks, ruleValues(shop.rules), lengthStyle(shop))));
      for (const level of levels) expect(row, id).toContain(level);
    }
  }
  const rows = html.split('<th scope=row').length - 1;
  expect(rows).toBe(Object.keys(findingCatalogue).length);
});

test('a source from memory says that it wants checking', () => {
  expect(pageAt('/findings/')).toMatch(/ABYC E-11[^<]*\(quoted from memory, confirm before relying on it\)/);
});

test('the index of guides leads to it, and the copy of a customer has none', () => {
  expect(pageAt('/guides/')).toMatch(/href="\.\.\/findings\/index\.html">All findings</);
  expect(pageAt('/findings/', 'customer')).toBeNull();
});

describe('what a finding asks', () => {
  const entries = Object.entries(findingCatalogue).map(([id, { asks }]) => ({ id, asks }));
  const told = entries.flatMap(({ id, asks }) => rulesNamed(asks).map(({ name }) => ({ id, asks, name })));

  test('names house rules that there are', () => {
    expect(told.length).toBeGreaterThan(20);
    expect(told.filter(({ name }) => !houseRuleNames.some((one) => one === name))).toEqual([]);
  });

  test.each(told)('$id changes with $name', ({ asks, name }) => {
    const values = ruleValues({});
    const changed = {
      ...values,
      [name]: ruleValues({})[houseRuleNames.find((one) => one === name) ?? 'kerf'] * 2,
    };
    expect(withRules(asks, changed, lengthStyle(shop))).not.toBe(withRules(asks, values, lengthStyle(shop)));
  });

  test('writes no figure that a house rule sets: those that stand there are of standards, systems and tables', () => {
    const figures = entries.flatMap(({ id, asks }) =>
      [
        ...asks.matchAll(
          /\d[\d.,]*(?: to \d[\d.]*)?(?: x \d+)? ?(?:%|mm2|mm|in|AWG|m?V|m?A|C|k?Hz|dB|ohm)(?![a-z])/g,
        ),
      ].map(([figure]) => `${id}: ${figure}`),
    );
    expect(figures.toSorted()).toEqual([
      'bass-lead-thin: 10 AWG',
      'bass-lead-thin: 12 AWG',
      'bass-lead-thin: 4 to 2 ohm',
      'fuse-over-conductor: 100 %',
      'high-voltage-vehicle: 12 V',
      'part-not-for-system: 12 V',
      'port-shared: 2 x 16 mm2',
      'subsonic-off-tuning: 24 dB',
    ]);
  });
});
