import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { onceEach } from '../../../plan/once-each.ts';
import { projectFolder } from '../templates.ts';
import type { BundleName } from './names.ts';

/** Where a package has such a script: it was bundled as the package was compiled. */
export function compiledScript(name: BundleName): string {
  return join(projectFolder, '.dist', `${name}.js`);
}

/** Bundled once in a process: its sources do not change under it. */
const bundled = onceEach(
  async (name: BundleName) => (await import('./bundle.ts')).bundleScript(name),
  (name) => name,
);

/**
 * A script of modules. In the package it lies there compiled, since a shop has no bundler; in the repository it is bundled
 * when it is first asked for.
 */
export function bundledScript(name: BundleName): Promise<string> {
  return import.meta.url.endsWith('.ts') ? bundled(name) : readFile(compiledScript(name), 'utf8');
}
