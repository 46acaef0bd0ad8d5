import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { libModules, root } from '../architecture/modules.ts';
import { npm } from './npm.ts';

/** What a package would hold, by npm's own word; what `prepack` compiles is not there yet. */
let files: readonly string[] = [];
beforeAll(async () => {
  const said = await npm(root, 'pack', '--dry-run', '--json', '--ignore-scripts');
  const [{ files: packed } = { files: [] }]: { files: { path: string }[] }[] = JSON.parse(said);
  files = packed.map(({ path }) => path).filter((path) => !path.startsWith('.dist/'));
});

const below = (folder: string) =>
  readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name).slice(root.length).replaceAll('\\', '/'));

describe('the package', () => {
  test('holds the layouts, what every site comes with, and what a shop begins with', () => {
    const wanted = ['layouts', 'site/styles', 'content/parts', 'content/guides'].flatMap(below);
    expect(wanted.length).toBeGreaterThan(80);
    expect(wanted.filter((path) => !files.includes(path))).toEqual([]);
    expect(files).toEqual(expect.arrayContaining(['site/contents.js', 'site/drawings.js', 'site/icon.svg']));
  });

  test('holds no test, no source, no job of the demo shop and nothing of its making', () => {
    const tops = [...new Set(files.map((path) => path.split('/')[0] ?? ''))].sort();
    expect(tops).toEqual(['LICENSE', 'README.md', 'content', 'layouts', 'package.json', 'site']);
    expect(files.filter((path) => /\.ts$|^content\/(?!parts\/|guides\/)|\.png$|tsconfig/.test(path))).toEqual(
      [],
    );
  });

  test('names as its doors what is compiled from the doors in lib', () => {
    const { bin, exports, dependencies }: Manifest = JSON.parse(
      readFileSync(join(root, 'package.json'), 'utf8'),
    );
    expect(bin.rackleaf).toBe('.dist/cli.js');
    expect(exports['.']).toEqual({ types: './.dist/index.d.ts', default: './.dist/index.js' });
    expect(readdirSync(join(root, 'lib'))).toEqual(expect.arrayContaining(['cli.ts', 'index.ts']));
    expect(Object.keys(dependencies)).not.toContain('tsx');
  });

  test('takes every package that it runs from those that come with it', () => {
    const manifest: Manifest = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8'));
    const coming = Object.keys({ ...manifest.dependencies, ...manifest.optionalDependencies });
    const taken = libModules()
      .filter(({ path }) => !path.startsWith('lib/commands/bench'))
      .flatMap(({ path, takes }) =>
        takes.flatMap(({ from, module, typesOnly }) =>
          module === null && !typesOnly && !from.startsWith('node:') ? [{ path, name: nameOf(from) }] : [],
        ),
      );
    expect(taken.length).toBeGreaterThan(20);
    // A browser for the tests: where it is not installed another one is looked for. What the bundler makes is compiled.
    const ours = new Set(['@sparticuz/chromium', 'rolldown']);
    expect(taken.filter(({ name }) => !coming.includes(name) && !ours.has(name))).toEqual([]);
  });

  test('starts modules of its own by the name that they have once compiled', () => {
    const bySource = libModules().filter(({ path }) => {
      if (path.startsWith('lib/commands/bench/') || path === 'lib/commands/own-module.ts') return false;
      return /new URL\([^)]*\.ts['"`]/.test(readFileSync(join(root, path), 'utf8'));
    });
    expect(bySource.map(({ path }) => path)).toEqual([]);
  });
});

interface Manifest {
  readonly bin: Readonly<Record<string, string>>;
  readonly exports: Readonly<Record<string, unknown>>;
  readonly dependencies: Readonly<Record<string, string>>;
  readonly optionalDependencies: Readonly<Record<string, string>>;
}

/** `@scope/name/file` is of `@scope/name`. */
function nameOf(from: string): string {
  return from
    .split('/')
    .slice(0, from.startsWith('@') ? 2 : 1)
    .join('/');
}
