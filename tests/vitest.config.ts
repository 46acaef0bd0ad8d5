import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';
import { startsCompiled } from './compiled/starts-compiled.ts';

/** It listens to every figure that is told. */
const alone = ['tests/publish/sheets/printed-figures.test.ts'];

/** The long run alone packs and installs the package: once all else is done, since it compiles into the checkout. */
const packed = ['tests/package/installed-shop.test.ts'];

/** Short files that take long: begun first, lest one worker be left with them while the others are idle. */
const longest = [
  'tests/site/demo-site.test.ts',
  'tests/site/sample-site.test.ts',
  'tests/plan/demo-jobs.test.ts',
  'tests/site/figures-whole.test.ts',
  'tests/commands/never-wrong.test.ts',
  'tests/commands/serve/serve.test.ts',
];

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const isLong = ({ moduleId }: TestSpecification) => longest.some((file) => moduleId.endsWith(file));
    return [...sorted.filter(isLong), ...sorted.filter((file) => !isLong(file))];
  }
}

/** Every processor tests: vitest by itself leaves one of two idle. A number on the command line stands. */
const maxWorkers = process.argv.some((word) => /^--max-?workers/i.test(word)) ? undefined : '100%';

/** A test is as short as a command: the engine optimizes as late as it does for one, which saves a quarter of the time. */
const setUpWith = ['property-seed.ts', '../lib/commands/engine.ts'].map((file) =>
  fileURLToPath(new URL(file, import.meta.url)),
);

/** `--mode long` tries every case: see `long-run.ts`. */
export default defineConfig(({ mode }) => ({
  root: fileURLToPath(new URL('..', import.meta.url)),
  plugins: mode === 'long' ? [] : [startsCompiled()],
  test: {
    reporters: ['default', fileURLToPath(new URL('plain-count.ts', import.meta.url))],
    // Files of one worker share what they import: loading it anew took longer than the tests. Nothing of ours keeps state.
    isolate: false,
    maxWorkers,
    sequence: { sequencer: LongestFirst },
    env: mode === 'long' ? { LONG: '1' } : {},
    // Most of what a test makes is soon gone: with more room for it, less is copied to and fro. In MB.
    execArgv: ['--max-semi-space-size=64'],
    setupFiles: setUpWith,
    // A test hangs after that, and no sooner on a machine that does ten things at once.
    testTimeout: 600_000,
    hookTimeout: 600_000,
    // What is waited for may take its time on a machine that has much else to do.
    expect: { poll: { timeout: 240_000 } },
    projects: [
      {
        extends: true,
        test: { name: 'shared', include: ['tests/**/*.test.ts'], exclude: [...alone, ...packed] },
      },
      // In a turn of its own: between the others it would end a worker that has everything imported.
      { extends: true, test: { name: 'alone', include: alone, isolate: true, sequence: { groupOrder: 1 } } },
      ...(mode === 'long'
        ? [{ extends: true as const, test: { name: 'packed', include: packed, sequence: { groupOrder: 2 } } }]
        : []),
    ],
  },
}));
