import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { tryingVariable } from './told.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));
const list = (variable: string): string[] => JSON.parse(process.env[variable] ?? '[]');

export default defineConfig({
  root: here('../..'),
  test: {
    // The tests that a run over changed code may count on, a list of globs: see `scope.ts`.
    include: list('MUTANTS_HELD_BY'),
    exclude: list('MUTANTS_DONE'),
    ...(process.env[tryingVariable] && { runner: here('in-place-runner.ts') }),
    pool: 'threads',
    maxWorkers: 1,
    isolate: false,
    // A kept plan would hide a change of code that stands in no file.
    env: { FRESH_PLANS: '1' },
    setupFiles: [here('../property-seed.ts'), here('first-failure.ts')],
    testTimeout: 600_000,
    hookTimeout: 600_000,
  },
});
