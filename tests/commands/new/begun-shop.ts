import { afterAll, beforeAll, expect } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { EmptyFolder } from '../shop-folder.ts';

/** A shop that is begun before the tests of a file, in a folder of its own that goes after them, and what is read in it. */
export function begunShop() {
  const folder = new EmptyFolder();
  beforeAll(async () => {
    const { status } = await folder.run('new', 'shop', '--title', 'Quay Sound', '--units', 'inch');
    expect(status).toBe(0);
  });
  afterAll(() => folder.remove());
  return { folder, read: async () => readContent(await realEffects(folder.root).readContent()) };
}
