import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { unnamedPath } from '../../../../lib/publish/site/assets/asset-names.ts';
import { namedAssets } from '../../../../lib/publish/site/assets/named-assets.ts';
import type { SiteAsset } from '../../../../lib/publish/site/site-assets.ts';

const asset = (path: string, text: string): SiteAsset => ({
  path,
  read: async () => new TextEncoder().encode(text),
});
const digest = (text: string): string => createHash('sha256').update(text).digest('hex').slice(0, 8);
const textOf = async (file?: SiteAsset): Promise<string> => new TextDecoder().decode(await file?.read());

describe('assets by their digests', () => {
  const style = '@font-face { src: url("fonts/plain.woff2"); }';
  const shop = (font: string) => [asset('assets/styles.css', style), asset('assets/fonts/plain.woff2', font)];

  it('bear the digest of their content in their name', async () => {
    const { names, files } = await namedAssets(shop('one'));
    expect(names['assets/fonts/plain.woff2']).toBe(`assets/fonts/plain.${digest('one')}.woff2`);
    for (const file of files) expect(file.path).toContain(`.${digest(await textOf(file))}.`);
    expect(files.map(({ path }) => path).toSorted()).toEqual(Object.values(names).toSorted());
  });

  it('ask for each other by these names, so that a style sheet with another font has another name', async () => {
    const [one, other] = [await namedAssets(shop('one')), await namedAssets(shop('other'))];
    const css = one.files.find(({ path }) => path.endsWith('.css'));
    expect(await textOf(css)).toContain(`url("fonts/plain.${digest('one')}.woff2")`);
    expect(one.names['assets/styles.css']).not.toBe(other.names['assets/styles.css']);
  });

  it('are found by their names without a digest', () => {
    expect(unnamedPath('assets/fonts/plain-latin-400.0a1b2c3d.woff2')).toBe(
      'assets/fonts/plain-latin-400.woff2',
    );
    expect(unnamedPath('assets/styles.css')).toBe('assets/styles.css');
    expect(unnamedPath('assets/quick-view.js')).toBe('assets/quick-view.js');
  });
});
