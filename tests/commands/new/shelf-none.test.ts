import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { begunShop } from './begun-shop.ts';

const { folder, read } = begunShop();

describe('what is to be had and is not there', () => {
  test('is known to the catalogue, with none on the shelf', async () => {
    const { status } = await folder.run(
      'new',
      'shelf',
      '--thing',
      'bolt M6 35 mm none',
      '--thing',
      'split loom 9 mm none, withstands 105 C',
    );
    expect(status).toBe(0);
    const { parts, shop } = await read();
    expect(parts['bolt-m6-35-mm']).toMatchObject({ kind: 'fixing', form: 'bolt', length: 0.035 });
    expect(shop?.stock['bolt-m6-35-mm']).toMatchObject({ pieces: 0 });
    expect(parts['split-loom-9-mm']).toMatchObject({ kind: 'covering' });
    expect(shop?.stock['split-loom-9-mm']).toBeUndefined();
  });

  test('is offered where a line lacks how many there are', async () => {
    const { told } = await folder.run('new', 'shelf', '--thing', 'bolt M6 45 mm');
    expect(told).toMatch(/write x4 behind it; or none: it is known then, and ordered/);
    rmSync(join(folder.root, '.rackleaf/drafts/shelf.json'));
  });
});

test('a count stands behind what commas tell, and a thing that differs by that alone has a name of its own', async () => {
  const plain = await folder.run('new', 'shelf', '--thing', 'butt splice 24-20 AWG, strip 5 mm x10');
  const other = await folder.run('new', 'shelf', '--thing', 'butt splice 24-20 AWG, strip 9 mm x4');
  expect([plain.status, other.status]).toEqual([0, 0]);
  const { parts, shop } = await read();
  expect(parts['butt-splice-24-20-awg']).toMatchObject({ strip: 0.005 });
  expect(parts['butt-splice-24-20-awg-strip-9-mm']).toMatchObject({ strip: 0.009 });
  expect(shop?.stock['butt-splice-24-20-awg-strip-9-mm']).toMatchObject({ pieces: 4 });
});
