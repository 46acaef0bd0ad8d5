import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { boardsFolder } from '../boards/boards-folder.ts';
import type { EmptyFolder } from './shop-folder.ts';

const first = 'under-seat-five';
let shop: EmptyFolder;
beforeAll(async () => {
  shop = await boardsFolder(first);
  const own = shop.read(`content/jobs/${first}.yaml`);
  shop.write('content/jobs/later.yaml', own.replace(`id: ${first}`, 'id: later'));
});
afterAll(() => shop.remove());

describe('rackleaf like', () => {
  test('finds for a job the board of another one with the same parts in the same space, without its own', async () => {
    const { status, out } = await shop.run('like', 'later', '--json');
    expect(status).toBe(0);
    const [found] = JSON.parse(out);
    expect([found.vehicle, found.space, found.board]).toEqual(['hatchback', 'under-left-seat', 'board']);
    expect(found.nearest.map(({ job }: { job: string }) => job)).toEqual([first]);
    const [{ parts, supply, place }] = found.nearest;
    expect([parts.replaced, parts.added, parts.leftOut]).toEqual([[], [], []]);
    expect(supply.needsA).toBeCloseTo(supply.hadA, 9);
    expect(place.turnDeg).toBe(0);
  }, 600_000);

  test('asks the same of a space with its parts, and tells in words what is to change', async () => {
    const { status, out } = await shop.run('like', '--vehicle', 'hatchback', '--most', '1');
    expect(status).toBe(0);
    expect(out).toMatch(
      /^under-left-seat of hatchback: any parts\n1\. (later|under-seat-five), board, revision A /,
    );
    expect(out).not.toContain('\n2. ');
  });

  test('refuses what it does not know, each by its name', async () => {
    for (const [line, words] of [
      [['ghost'], 'there is no job "ghost"'],
      [['--vehicle', 'hatchbak'], 'there is no vehicle "hatchbak"'],
      [['--vehicle', 'van', '--space', 'wel'], 'there is no space "wel" in van'],
      [['--vehicle', 'hatchback', '--part', 'amp-zz'], 'there is no part "amp-zz"'],
      [[], 'like: needs JOB'],
      [['later', '--space', 'well'], 'a job brings its space'],
      [['later', '--most', '0'], '--most takes a whole number'],
    ] as const) {
      const { status, told } = await shop.run('like', ...line);
      expect([status, told]).toEqual([2, expect.stringContaining(words)]);
    }
  });
});
