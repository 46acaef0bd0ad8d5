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

  test.each(['battery', 'alternator', 'source-unit'] as const)(
    'a %s that stays where a vehicle has it needs no measures',
    async (kind) => {
      const { case: _, ...leaflet } = leaflets[kind];
      const line = ['new', 'part', `fitted-${kind}`, '--kind', kind, '--title', 'Fitted'];
      const { status, told } = await folder.run(...line, ...leafletFlags(leaflet));
      expect(status).toBe(0);
      expect(told).not.toContain('error');
      const { parts } = readContent(await realEffects(folder.root).readContent());
      expect(parts[`fitted-${kind}`]).toMatchObject({ kind });
    },
  );

  test('a speaker needs its measures', async () => {
    const { case: _, ...leaflet } = leaflets.speaker;
    const line = ['new', 'part', 'no-case', '--kind', 'speaker', '--title', 'Speaker'];
    const { status, told } = await folder.run(...line, ...leafletFlags(leaflet));
    expect(status).toBe(2);
    expect(told).toContain('--case is needed');
  });

  test('asks for every kind of part', () => {
    expect(Object.keys(leaflets).sort()).toEqual(Object.keys(kinds).sort());
  });
});
