import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { runTests } from './test-process.ts';
import { readTold, type Told, tryingVariable } from './told.ts';

/** Where changes are tried, and by which tests. */
export interface Trial {
  /** The copy of the code with the changes in it. */
  readonly folder: string;
  /** Where what becomes of them is written meanwhile. */
  readonly notes: string;
  /** The tests, in this order. */
  readonly heldBy: readonly string[];
  /** A change that so many tests ran through without telling it is given up. */
  readonly most: number;
  readonly say: (line: string) => void;
}

/** Tries changes by their numbers, and returns those that a test told: one failed, or did not come to an end. */
export async function tryChanges(trial: Trial, changes: readonly string[]): Promise<ReadonlySet<string>> {
  const known: Known = { told: new Set(), between: new Set(), tried: new Map() };
  for (const tests of trial.heldBy) await tryInPlace(trial, tests, changes, known);
  // What a test ran through as well has been tried.
  const asLoaded = changes.filter(
    (id) => known.between.has(id) && !known.told.has(id) && !known.tried.has(id),
  );
  return new Set([...known.told, ...(await tryAsLoaded(trial, asLoaded))]);
}

/** What is known of changes by now. */
interface Known {
  readonly told: Set<string>;
  /** Run through while no test ran. */
  readonly between: Set<string>;
  /** By how many tests each was tried. */
  readonly tried: Map<string, number>;
}

/** Tries them in one process that has loaded the code unchanged; one that breaks it down is told, and it goes on. */
async function tryInPlace(
  { folder, notes, most, say }: Trial,
  tests: string,
  changes: readonly string[],
  known: Known,
): Promise<void> {
  const list = join(notes, 'trying.json');
  const toldFile = join(notes, 'told.jsonl');
  const done = new Set<string>();
  for (let isOver = false; !isOver; ) {
    rmSync(toldFile, { force: true });
    const triesLeft = (id: string) => most - (known.tried.get(id) ?? 0);
    const open = changes.filter((id) => !known.told.has(id) && triesLeft(id) > 0);
    // Where every change is told or given up nothing is run for it.
    if (open.length === 0) break;
    const left = open.map((id) => [id, triesLeft(id)]);
    writeFileSync(list, JSON.stringify({ changes: Object.fromEntries(left), told: toldFile }));
    const { status, printed } = await runTests({
      folder,
      heldBy: [tests],
      env: { [tryingVariable]: list, MUTANTS_DONE: JSON.stringify([...done]) },
      hangs: hangsIn(toldFile),
    });
    const lines = readTold(toldFile);
    for (const line of lines) {
      if ('trying' in line) known.tried.set(line.trying, (known.tried.get(line.trying) ?? 0) + 1);
      if ('told' in line) known.told.add(line.told);
      if ('between' in line) for (const id of line.between) known.between.add(id);
      if ('done' in line) done.add(line.done);
    }
    const last = unfinished(lines);
    if (status === null && last === undefined)
      throw new Error(`The tests broke down with nothing changed.\n${printed}`);
    if (status === null && last !== undefined) known.told.add(last);
    else isOver = true;
    if (isOver && status !== 0) say(`NOT SOUND: a test failed with nothing changed\n${printed}`);
  }
  say(`  ${known.told.size} told of ${changes.length} after ${tests}`);
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
