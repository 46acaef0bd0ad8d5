import { afterAll, describe, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { kinds } from '../../../lib/model/kinds/index.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { ShopFolder } from '../shop-folder.ts';
import { leafletFlags, leaflets } from './leaflets.ts';

const folder = new ShopFolder();
afterAll(() => folder.remove());

describe('new part', () => {
  test.each(Object.entries(leaflets))(
    'a leaflet of the kind %s makes a part that reads',
    async (kind, leaflet) => {
      const name = `own-${kind}`;
      const line = [
        'new',
        'part',
        name,
        '--kind',
        kind,
        '--title',
        `Invented ${kind}`,
        ...leafletFlags(leaflet),
      ];
      const { status, out, told } = await folder.run(...line);
      expect([told.replace(/^the leaflet may still tell:\n(?: {2}.*\n?)*/, ''), status]).toEqual(['', 0]);
      expect(out).toBe(`content/parts/${name}.yaml`);
      const { parts, problems } = readContent(await realEffects(folder.root).readContent());
      expect(problems).toEqual([]);
      expect(parts[name]).toMatchObject({ kind, title: `Invented ${kind}` });
    },
  );

  test('asks for every kind of part', () => {
    expect(Object.keys(leaflets).sort()).toEqual(Object.keys(kinds).sort());
  });
});
