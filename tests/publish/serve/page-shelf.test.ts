import { expect, it } from 'vitest';
import { PageShelf } from '../../../lib/publish/serve/page-shelf.ts';

const alone = (html: string) => ({ html, files: [] });

it('keeps the pages that were asked for last, as many as there is room for, and the newest in any case', () => {
  const shelf = new PageShelf(10);
  shelf.put('/a/', alone('aaaa'), 'key');
  shelf.put('/b/', alone('bbbb'), 'key');
  shelf.get('/a/');
  shelf.put('/c/', alone('cccc'), 'key');
  expect(['/a/', '/b/', '/c/'].map((address) => shelf.get(address)?.html ?? null)).toEqual([
    'aaaa',
    null,
    'cccc',
  ]);
  shelf.put('/d/', alone('d'.repeat(40)), 'key');
  expect(['/a/', '/c/', '/d/'].map((address) => shelf.get(address)?.html.length ?? null)).toEqual([
    null,
    null,
    40,
  ]);
});

it('tells pages apart by what they hold, and counts one that is put again once', () => {
  const shelf = new PageShelf(10);
  shelf.put('/a/', alone('first'), 'one');
  const first = shelf.get('/a/')?.made;
  shelf.put('/a/', alone('first'), 'two');
  expect(shelf.get('/a/')).toMatchObject({ made: first, key: 'two' });
  shelf.put('/b/', alone('other'), 'one');
  expect(shelf.get('/a/')?.made).toBe(first);
  expect(shelf.get('/b/')?.made).not.toBe(first);
});

it('counts what stands beside a page with it', () => {
  const shelf = new PageShelf(10);
  shelf.put('/a/', { html: 'aa', files: [{ path: 'drawings/one.svg', text: 'a'.repeat(8) }] }, 'key');
  shelf.put('/b/', alone('b'), 'key');
  expect(shelf.get('/a/')).toBeNull();
  expect(shelf.get('/b/')?.files).toEqual([]);
});
