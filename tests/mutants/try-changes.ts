import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { Stryker } from '@stryker-mutator/core';
import { changeOf, fileOf, keyOf, outcomesVariable, toTryVariable } from './change-key.js';
import type { Change } from './chosen-changes.ts';
import { outcomesFile } from './outcomes.ts';

/** Every change of the files that can be made, none of them tried. Texts are no changes, nor are patterns. */
export async function everyChange(root: string, kept: string, files: readonly string[]): Promise<Change[]> {
  // A run begins with the tests as they are: one short file of them is enough to list what could be changed.
  const all = await run(root, kept, files, ['tests/power/network/name-table.test.ts'], []);
  return all.filter(({ status }) => status !== 'Ignored');
}

/** Tries each change of those given, and writes down what became of it. */
export async function tryChanges(
  root: string,
  kept: string,
  changes: readonly Change[],
  heldBy: readonly string[],
): Promise<void> {
  const files = [...new Set(changes.map(fileOf))];
  await run(root, kept, files, heldBy, changes.map(keyOf));
}

async function run(
  root: string,
  kept: string,
  files: readonly string[],
  heldBy: readonly string[],
  toTry: readonly string[],
): Promise<Change[]> {
  const list = join(kept, 'to-try.json');
  writeFileSync(list, JSON.stringify(toTry));
  process.env[toTryVariable] = list;
  process.env[outcomesVariable] = join(kept, outcomesFile);
  process.env.MUTANTS_HELD_BY = JSON.stringify(heldBy);
  const results = await new Stryker({
    mutate: [...files],
    mutator: { plugins: null, excludedMutations: ['StringLiteral', 'Regex'] },
    testRunner: 'vitest',
    vitest: { configFile: 'tests/mutants/vitest.config.ts', related: false },
    plugins: ['@stryker-mutator/vitest-runner', join(root, 'tests/mutants/chosen-only.js')],
    checkers: ['chosen-only'],
    coverageAnalysis: toTry.length > 0 ? 'perTest' : 'off',
    concurrency: 1,
    timeoutMS: 20_000,
    dryRunTimeoutMinutes: 60,
    reporters: toTry.length > 0 ? ['progress-append-only', 'outcomes'] : ['dots'],
    ignorePatterns: ['.rackleaf', '.dist', 'dist', 'site', 'layouts'],
    tempDirName: join(kept, 'copy'),
    disableTypeChecks: false,
    // The compiler of this version has no interface for programs, which would move the paths in its settings.
    tsconfigFile: 'none',
    allowEmpty: true,
  }).runMutationTest();
  return results.map(changeOf);
}
