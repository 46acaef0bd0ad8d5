import { expect, test } from 'vitest';
import { greatestDifferences } from '../../../lib/model/computations/greatest-differences.ts';
import {
  type Computation,
  computationCatalogue,
  computationFamilies,
} from '../../../lib/model/computations/index.ts';
import { outsideChecks } from '../../../lib/model/computations/outside-checks.ts';
import { escaped, pageAt } from '../sample/sample-page.ts';

test('the page of all computations has each quantity under its family, with formula, source, check and difference', () => {
  const html = pageAt('/computations/') ?? '';
  const sections = html.split('<section ').slice(1);
  for (const [at, { title, computations }] of Object.values(computationFamilies).entries()) {
    expect(sections[at]).toContain(`>${title}</h2>`);
    const entries: readonly (readonly [string, Computation])[] = Object.entries(computations);
    for (const [id, { computes, sources, held }] of entries) {
      const row = (sections[at]?.split('<tr').find((one) => one.includes(`>${id}<`)) ?? '').replace(
        /<\/?span[^>]*>/g,
        '',
      );
      expect(row, id).toContain(escaped(computes));
      for (const { source } of sources) expect(row, id).toContain(escaped(source));
      for (const check of held)
        expect(row, id).toContain(`${check}: ${greatestDifferences[check]} ${outsideChecks[check].unit}`);
    }
  }
  const rows = html.split('<th scope=row').length - 1;
  expect(rows).toBe(Object.keys(computationCatalogue).length + Object.keys(outsideChecks).length);
});

test('the index of guides leads to it, and the copy of a customer has none', () => {
  expect(pageAt('/guides/')).toMatch(/href="\.\.\/computations\/index\.html">How numbers are computed</);
  expect(pageAt('/computations/', 'customer')).toBeNull();
});
