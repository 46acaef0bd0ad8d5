import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const listening = 'tests/publish/printed-figures.test.ts';

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
      { extends: true, test: { name: 'shared', include: ['tests/**/*.test.ts'], exclude: [listening] } },
      // It listens to every figure that is told, so what it imports must be its own.
      { extends: true, test: { name: 'listening', include: [listening], isolate: true } },
    ],
  },
}));
