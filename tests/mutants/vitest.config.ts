import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The tests that a run over changed code may count on, a list of globs in JSON: see `scope.ts`. */
const include = JSON.parse(process.env.MUTANTS_HELD_BY ?? '["tests/power/**/*.test.ts"]');

export default defineConfig({
  root: fileURLToPath(new URL('../..', import.meta.url)),
  test: {
    include,
    // What one file of tests has planned in memory must not answer for another: each file is judged by what it ran.
    isolate: true,
    // A kept plan would hide a change of code that stands in no file.
    env: { FRESH_PLANS: '1' },
    setupFiles: [fileURLToPath(new URL('../property-seed.ts', import.meta.url))],
    testTimeout: 120_000,
    hookTimeout: 300_000,
  },
});
