import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from './modules.ts';

const topFolders = /^(\.ci|content|layouts|lib|site|tests)\//;

/** The paths that a text names in code marks; `<id>` and stars stand for any name and are left aside. */
function pathsIn(text: string): string[] {
  return [...text.matchAll(/`([^`\s]+)`/g)].flatMap(([, path = '']) =>
    topFolders.test(path) && !/[<*{]/.test(path) ? [path] : [],
  );
}

describe.each(['DEVELOPERS.md', 'README.md'])('%s', (name) => {
  const text = readFileSync(join(root, name), 'utf8');

  test('names only paths that exist', () => {
    expect(pathsIn(text).filter((path) => !existsSync(join(root, path)))).toEqual([]);
  });

  test('names only scripts that package.json has', () => {
    const { scripts }: { scripts: Record<string, string> } = JSON.parse(
      readFileSync(join(root, 'package.json'), 'utf8'),
    );
    const named = [...text.matchAll(/npm run ([\w:-]+)/g)].map(([, script = '']) => script);
    expect(named.filter((script) => !(script in scripts))).toEqual([]);
  });
});

test('the guide for contributors names a good part of the folders', () => {
  const paths = pathsIn(readFileSync(join(root, 'DEVELOPERS.md'), 'utf8'));
  expect(paths.length).toBeGreaterThan(15);
});
