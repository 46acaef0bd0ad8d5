import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { projectFolder } from '../site/templates.ts';

/** Where a package has the script of the calculators: it was bundled as the package was compiled. */
export const compiledScript = join(projectFolder, '.dist', 'calculators.js');

/** What was bundled in this process: its sources do not change under it. */
let bundled: Promise<string> | null = null;

/**
 * The script of the calculators. In the package it lies there compiled, since a shop has no bundler; in the repository
 * it is bundled when it is first asked for.
 */
export function calculatorScript(): Promise<string> {
  if (!import.meta.url.endsWith('.ts')) return readFile(compiledScript, 'utf8');
  bundled ??= import('./bundle.ts').then(({ bundleCalculators }) => bundleCalculators());
  return bundled;
}
