import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runTests } from './test-process.ts';
import { readTold, type Told, tryingVariable } from './told.ts';

/** Where changes are tried, and by which tests. */
export interface Trial {
  /** The copy of the code with the changes in it. */
  readonly folder: string;
  /** Where what becomes of them is written meanwhile. */
  readonly kept: string;
  readonly heldBy: readonly string[];
  readonly say: (line: string) => void;
}

/** Tries changes by their numbers, and returns those that a test told: one failed, or did not come to an end. */
export async function tryChanges(trial: Trial, changes: readonly string[]): Promise<ReadonlySet<string>> {
  const { told, between } = await tryInPlace(trial, changes);
  const asLoaded = changes.filter((id) => between.has(id) && !told.has(id));
  return new Set([...told, ...(await tryAsLoaded(trial, asLoaded))]);
}

/** Tries them in one process that has loaded the code unchanged; one that breaks it down is told, and it goes on. */
async function tryInPlace(
  { folder, kept, heldBy, say }: Trial,
  changes: readonly string[],
): Promise<{ readonly told: ReadonlySet<string>; readonly between: ReadonlySet<string> }> {
  const list = join(kept, 'trying.json');
  const toldFile = join(kept, 'told.jsonl');
  const told = new Set<string>();
  const between = new Set<string>();
  const done = new Set<string>();
  for (;;) {
    rmSync(toldFile, { force: true });
    writeFileSync(list, JSON.stringify({ changes: changes.filter((id) => !told.has(id)), told: toldFile }));
    const { status, printed } = await runTests({
      folder,
      heldBy,
      env: { [tryingVariable]: list, MUTANTS_DONE: JSON.stringify([...done]) },
      hangs: hangsIn(toldFile),
    });
    const lines = readTold(toldFile);
    for (const line of lines) {
      if ('told' in line) told.add(line.told);
      if ('between' in line) for (const id of line.between) between.add(id);
      if ('done' in line) done.add(line.done);
    }
    const open = unfinished(lines);
    if (status === null && open !== undefined) told.add(open);
    else if (status === null) throw new Error(`The tests broke down with nothing changed.\n${printed}`);
    else {
      if (status !== 0) say(`NOT SOUND: a test failed with nothing changed\n${printed}`);
      return { told, between };
    }
  }
}

/** The change that was tried last, if nothing was told since. */
function unfinished(lines: readonly Told[]): string | undefined {
  const last = lines.at(-1);
  return last && 'trying' in last ? last.trying : undefined;
}

/** True once one change has been tried for longer than it may. */
function hangsIn(toldFile: string): () => boolean {
  let since = Date.now();
  let seen = -1;
  return () => {
    const lines = readTold(toldFile);
    if (lines.length !== seen) {
      seen = lines.length;
      since = Date.now();
    }
    const last = lines.at(-1);
    // In the process itself what does not give way is broken off first.
    return last !== undefined && 'trying' in last && Date.now() - since > 2 * last.limitMs;
  };
}

/** Tries what takes effect when the code is loaded: each in a process of its own. */
async function tryAsLoaded(
  { folder, heldBy, say }: Trial,
  changes: readonly string[],
): Promise<ReadonlySet<string>> {
  if (changes.length === 0) return new Set();
  say(`  ${changes.length} take effect as the code is loaded`);
  const begun = Date.now();
  const plain = await runTests({ folder, heldBy, env: {}, more: ['--bail=1'], hangs: () => false });
  if (plain.status !== 0) throw new Error(`A test fails with nothing changed.\n${plain.printed}`);
  const limitMs = 20_000 + 5 * (Date.now() - begun);
  const told = new Set<string>();
  for (const id of changes) {
    const from = Date.now();
    const { status } = await runTests({
      folder,
      heldBy,
      env: { __STRYKER_ACTIVE_MUTANT__: id },
      more: ['--bail=1'],
      hangs: () => Date.now() - from > limitMs,
    });
    if (status !== 0) told.add(id);
  }
  return told;
}
