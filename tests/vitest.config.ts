import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** One listens to every figure that is told; elkjs takes ngspice's `window`, left in a worker, for a browser's. */
const alone = ['tests/publish/sheets/printed-figures.test.ts', 'tests/commands/bench/diagrams.test.ts'];

/** Files of the long run alone: the package is packed and installed. */
const longOnly = ['tests/package/installed-shop.test.ts'];

/** `--mode long` tries every case: see `long-run.ts`. */
export default defineConfig(({ mode }) => ({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    reporters: ['default', fileURLToPath(new URL('plain-count.ts', import.meta.url))],
    // Files of one worker share what they import: loading it anew took longer than the tests. Nothing of ours keeps state.
    isolate: false,
    env: mode === 'long' ? { LONG: '1' } : {},
    setupFiles: [fileURLToPath(new URL('property-seed.ts', import.meta.url))],
    testTimeout: 120_000,
    hookTimeout: 300_000,
    projects: [
      {
        extends: true,
        test: {
          name: 'shared',
          include: ['tests/**/*.test.ts'],
          exclude: mode === 'long' ? alone : [...alone, ...longOnly],
        },
      },
      { extends: true, test: { name: 'alone', include: alone, isolate: true } },
    ],
  },
}));
