import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/**/*.test.ts'],
    reporters: ['default', fileURLToPath(new URL('plain-count.ts', import.meta.url))],
    setupFiles: [fileURLToPath(new URL('property-seed.ts', import.meta.url))],
    testTimeout: 120_000,
    hookTimeout: 300_000,
  },
});
