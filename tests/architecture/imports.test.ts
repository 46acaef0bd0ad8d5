import { existsSync, readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { describe, expect, test } from 'vitest';
import { libModules, type Module, readModule, rings, root } from './modules.ts';

/** The layers of `lib/`, the lowest first; those of one line know nothing of each other. */
const layers: readonly (readonly string[])[] = [
  ['model'],
  ['power', 'audio', 'board', 'heat', 'shelf'],
  ['propose'],
  ['read'],
  ['plan', 'calculators'],
  ['rules', 'estimate'],
  ['like', 'compare'],
  ['draw'],
  ['export'],
  ['publish', 'kept'],
  ['commands'],
  ['cli.ts', 'index.ts'],
];

/** Layers that compute: no files, no clock, no chance. */
const pure = [
  'model',
  'power',
  'audio',
  'board',
  'heat',
  'shelf',
  'estimate',
  'propose',
  'read',
  'plan',
  'calculators',
  'rules',
  'like',
  'compare',
  'draw',
];
const impure = [
  'Date',
  'Math.random',
  'performance',
  'process',
  'crypto',
  'globalThis',
  'setTimeout',
  'setInterval',
  'fetch',
];

const modules = libModules();
const folderOf = (path: string): string => path.split('/')[1] ?? '';
const rankOf = (path: string): number => layers.findIndex((layer) => layer.includes(folderOf(path)));

/** Imports of a module that do not point to its own folder or to a lower layer. */
function stepsBack({ path, takes }: Pick<Module, 'path' | 'takes'>): string[] {
  return takes.flatMap(({ module }) => {
    if (module === null || folderOf(module) === folderOf(path)) return [];
    const fine = module.startsWith('lib/') && rankOf(module) >= 0 && rankOf(module) < rankOf(path);
    return fine ? [] : [`${path} -> ${module}`];
  });
}

describe('modules of lib', () => {
  test('are all in a known layer, and import only what exists', () => {
    expect(modules.length).toBeGreaterThan(200);
    expect(modules.filter(({ path }) => rankOf(path) < 0).map(({ path }) => path)).toEqual([]);
    const missing = modules.flatMap(({ path, takes }) =>
      takes.flatMap(({ module }) =>
        module !== null && !existsSync(join(root, module)) ? [`${path} -> ${module}`] : [],
      ),
    );
    expect(missing).toEqual([]);
  });

  test('import one way only, types too', () => {
    expect(modules.flatMap(stepsBack)).toEqual([]);
  });

  test('do not take of each other in rings, types neither', () => {
    expect(rings(modules)).toEqual([]);
  });

  test('only lib/publish takes Eleventy, only lib/read the YAML reader, only lib/draw the drawing library', () => {
    const users = (name: string) => [
      ...new Set(
        modules
          .filter(({ takes }) => takes.some(({ from }) => from === name || from.startsWith(`${name}/`)))
          .map(({ path }) => folderOf(path)),
      ),
    ];
    expect(users('@11ty/eleventy')).toEqual(['publish']);
    expect(users('js-yaml')).toEqual(['read']);
    expect(users('@svgdotjs/svg.js')).toEqual(['draw']);
    expect(users('pagefind')).toEqual(['publish']);
  });

  test('that compute take nothing of the outside world: no files, no clock, no chance', () => {
    const computing = modules.filter(({ path }) => pure.includes(folderOf(path)));
    const outside = computing.flatMap(({ path, takes, names }) => [
      ...takes.filter(({ from }) => from.startsWith('node:')).map(({ from }) => `${path}: ${from}`),
      ...impure.filter((name) => names.has(name)).map((name) => `${path}: ${name}`),
    ]);
    expect(outside).toEqual([]);
  });

  test('are loaded by the door for a command alone, so that --help is quick: till then no package is', () => {
    const loaded = new Set<string>();
    const load = (path: string): string[] => {
      if (loaded.has(path)) return [];
      loaded.add(path);
      const takes = modules.find((one) => one.path === path)?.takes ?? [];
      return takes
        .filter(({ typesOnly, onDemand }) => !typesOnly && !onDemand)
        .flatMap(({ from, module }) => (module === null ? [from] : load(module)));
    };
    expect(load('lib/cli.ts').filter((from) => !from.startsWith('node:'))).toEqual([]);
    expect(loaded.size).toBeLessThan(10);
  });

  test('are at most 300 lines long', () => {
    expect(modules.filter(({ lines }) => lines > 300).map(({ path, lines }) => `${path}: ${lines}`)).toEqual(
      [],
    );
  });

  test('stand in folders of at most 25 files, and so do the tests', () => {
    const folders = new Map<string, number>();
    // What tools keep for themselves lies in folders that begin with a dot.
    for (const entry of ['lib', 'tests', 'site', 'layouts'].flatMap((top) =>
      readdirSync(join(root, top), { recursive: true, withFileTypes: true }),
    ))
      if (
        entry.isFile() &&
        !relative(root, entry.parentPath)
          .split(sep)
          .some((part) => part.startsWith('.'))
      )
        folders.set(entry.parentPath, (folders.get(entry.parentPath) ?? 0) + 1);
    expect(
      [...folders].filter(([, files]) => files > 25).map(([path, files]) => `${path}: ${files}`),
    ).toEqual([]);
  });

  test('have names that say what they are of', () => {
    expect(
      modules
        .filter(({ path }) => /(^|\/)(utils?|helpers?|misc|common)\.ts$/.test(path))
        .map(({ path }) => path),
    ).toEqual([]);
  });
});

describe('the checks themselves', () => {
  const read = (path: string, source: string) => ({ path, ...readModule(path, source) });

  test('see imports of values, of types, exports from elsewhere and imports on demand', () => {
    const { takes } = read(
      'lib/plan/a.ts',
      "import { b } from './b.ts';\nimport type { C } from '../model/c.ts';\nimport { type D } from './d.ts';\nexport * from './e.ts';\nconst f = await import('./f.ts');\nconsole.log('import x from \"./g.ts\"', b, f);\nexport type { C, D };\n",
    );
    expect(
      [...new Set(takes.map(({ module, typesOnly }) => `${module}${typesOnly ? ' types' : ''}`))].sort(),
    ).toEqual([
      'lib/model/c.ts types',
      'lib/plan/b.ts',
      'lib/plan/d.ts types',
      'lib/plan/e.ts',
      'lib/plan/f.ts',
    ]);
  });

  test('refuse a step back, a step aside, and one out of lib', () => {
    const from = (folder: string, to: string) =>
      stepsBack(read(`lib/${folder}/a.ts`, `import type { X } from '${to}';`));
    expect(from('power', '../plan/x.ts')).toEqual(['lib/power/a.ts -> lib/plan/x.ts']);
    expect(from('power', '../board/x.ts')).toHaveLength(1);
    expect(from('model', '../read/x.ts')).toHaveLength(1);
    expect(from('draw', '../export/x.ts')).toHaveLength(1);
    expect(from('rules', '../../tests/x.ts')).toHaveLength(1);
    expect(from('plan', '../power/x.ts')).toEqual([]);
    expect(from('plan', './x.ts')).toEqual([]);
  });

  test('find a ring of values, and one of types', () => {
    const ring = (kind: string) =>
      rings([
        read('lib/plan/a.ts', "import { b } from './b.ts';"),
        read('lib/plan/b.ts', "import { c } from './c.ts';"),
        read('lib/plan/c.ts', `import ${kind} { a } from './a.ts';`),
      ]);
    for (const kind of ['', 'type'])
      expect(ring(kind)).toEqual([['lib/plan/a.ts', 'lib/plan/b.ts', 'lib/plan/c.ts']]);
  });

  test('see a clock and chance in code, and not in words', () => {
    const { names } = read(
      'lib/plan/a.ts',
      "// new Date()\nconst words = 'Math.random()';\nconst r = Math.random();\n",
    );
    expect(names.has('Date')).toBe(false);
    expect(names.has('Math.random')).toBe(true);
  });
});
