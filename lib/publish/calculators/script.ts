import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { once } from '../../plan/once-each.ts';
import { projectFolder } from '../site/templates.ts';

/** Where a package has the script of the calculators: it was bundled as the package was compiled. */
export const compiledScript = join(projectFolder, '.dist', 'calculators.js');

/** Bundled once in a process: its sources do not change under it. */
const bundled = once(async () => (await import('./bundle.ts')).bundleCalculators());

/**
 * The script of the calculators. In the package it lies there compiled, since a shop has no bundler; in the repository
 * it is bundled when it is first asked for.
 */
export function calculatorScript(): Promise<string> {
  return import.meta.url.endsWith('.ts') ? bundled() : readFile(compiledScript, 'utf8');
}
