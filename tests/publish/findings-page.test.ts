import { expect, test } from 'vitest';
import { findingCatalogue, findingFamilies } from '../../lib/model/findings/index.ts';
import { escaped, pageAt } from './sample-page.ts';

test('the page of all findings has each one of the catalogue under its family, with what it asks and its levels', () => {
  const html = pageAt('/findings/') ?? '';
  const sections = html.split('<section ').slice(1);
  const families = Object.values(findingFamilies);
  expect(sections).toHaveLength(families.length);
  for (const [at, { title, findings }] of families.entries()) {
    expect(sections[at]).toContain(`>${title}</h2>`);
    for (const [id, { asks, levels }] of Object.entries(findings)) {
      const row = sections[at]?.split('<tr').find((one) => one.includes(`>${id}</`)) ?? '';
      expect(row, id).toContain(escaped(asks));
      for (const level of levels) expect(row, id).toContain(level);
    }
  }
  const rows = html.split('<th scope="row"').length - 1;
  expect(rows).toBe(Object.keys(findingCatalogue).length);
});

test('a source from memory says that it wants checking', () => {
  expect(pageAt('/findings/')).toMatch(/ABYC E-11[^<]*\(quoted from memory, confirm before relying on it\)/);
});

test('the index of guides leads to it, and the copy of a customer has none', () => {
  expect(pageAt('/guides/')).toMatch(/href="\.\.\/findings\/index\.html">All findings</);
  expect(pageAt('/findings/', 'customer')).toBeNull();
});
