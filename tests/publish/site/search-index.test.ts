import { describe, expect, it } from 'vitest';
import type { Page } from '../../../lib/publish/page/page.ts';
import { sitePages } from '../../../lib/publish/site/site-pages.ts';
import { searchIndex } from '../../../lib/publish/site/write-search-index.ts';
import { sampleSite } from '../sample/sample-site.ts';

/** Every page of the sample site, and one of them alone. */
function manyAndOne(): { readonly many: Page[]; readonly one: Page[] } {
  const many = sitePages({ site: sampleSite(), audience: 'bench' });
  return { many, one: many.filter(({ search }) => search).slice(0, 1) };
}

describe('searchIndex', () => {
  it('goes on while another index of the same process is done before it', async () => {
    const { many, one } = manyAndOne();
    const [long] = await Promise.all([searchIndex(many), searchIndex(one), searchIndex(one)]);
    expect(long.map(({ path }) => path)).toEqual((await searchIndex(many)).map(({ path }) => path));
  });

  it('is made again after the library was ended', async () => {
    const { one } = manyAndOne();
    const first = await searchIndex(one);
    expect((await searchIndex(one)).map(({ path }) => path)).toEqual(first.map(({ path }) => path));
    expect(first.map(({ path }) => path)).toContain('pagefind/pagefind.js');
  });
});
