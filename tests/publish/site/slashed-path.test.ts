import { posix, win32 } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { slashedPath } from '../../../lib/publish/site/slashed-path.ts';

test.each([
  ['D:\\Shop 1', 'D:\\Shop 1\\content\\jobs\\a.yaml', 'content/jobs/a.yaml'],
  ['D:\\Shop 1\\', 'd:\\shop 1\\content\\shop.yaml', 'content/shop.yaml'],
  ['\\\\server\\share\\shop', '\\\\server\\share\\shop\\content\\shop.yaml', 'content/shop.yaml'],
])('of a disk of Windows, %s, has forward slashes', (folder, path, slashed) => {
  expect(slashedPath(folder, path, win32)).toBe(slashed);
});

test('is the same on every system, whatever the folders are called', () => {
  const name = fc.stringMatching(/^[\w öé-]{0,8}\w$/);
  fc.assert(
    fc.property(fc.array(name, { minLength: 1, maxLength: 5 }), (names) => {
      const [folder, ...below] = names;
      for (const [rules, top] of [
        [win32, 'C:\\'],
        [posix, '/'],
      ] as const) {
        const root = rules.join(top, folder ?? '');
        expect(slashedPath(root, rules.join(root, ...below), rules)).toBe(below.join('/'));
      }
    }),
  );
});
