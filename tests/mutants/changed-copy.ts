import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { changeOf } from './change-key.js';
import type { Change } from './chosen-changes.ts';

/** A copy of the repository with every change of some files in it, each asleep until it is called by its number. */
export interface ChangedCopy {
  readonly folder: string;
  /** A folder beside it, for what is noted meanwhile. */
  readonly notes: string;
  readonly changes: readonly Change[];
  remove(): void;
}

/** Makes a copy below `kept`. Texts are no changes, nor are patterns. */
export async function changedCopy(
  root: string,
  kept: string,
  files: readonly string[],
): Promise<ChangedCopy> {
  const around = mkdtempSync(join(kept, 'copy-'));
  // Before anything is listed the tests are run as they are: one short file of them is enough.
  process.env.MUTANTS_HELD_BY = JSON.stringify(['tests/power/network/name-table.test.ts']);
  const listed = await new Stryker({
    mutate: [...files],
    mutator: { plugins: null, excludedMutations: ['StringLiteral', 'Regex'] },
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
    plugins: ['@stryker-mutator/vitest-runner', join(root, 'tests/mutants/list-only.js')],
    checkers: ['list-only'],
    coverageAnalysis: 'off',
    concurrency: 1,
    reporters: ['dots'],
    ignorePatterns: ['.mutants', '.rackleaf', '.dist', 'dist', 'site', 'layouts'],
    tempDirName: around,
    cleanTempDir: false,
    disableTypeChecks: false,
    // The compiler of this version has no interface for programs, which would move the paths in its settings.
    tsconfigFile: 'none',
    allowEmpty: true,
  }).runMutationTest();
  const [name] = readdirSync(around);
  if (name === undefined) throw new Error('Stryker left no copy of the code.');
  return {
    folder: join(around, name),
    notes: around,
    changes: listed.map(changeOf).filter(({ status }) => status !== 'Ignored'),
    remove: () => rmSync(around, { recursive: true, force: true }),
  };
}
