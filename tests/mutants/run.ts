import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fileOf, keyOf } from './change-key.js';
import { changedCopy } from './changed-copy.ts';
import { type Change, drawn } from './chosen-changes.ts';
import { equivalentTo, originalOf } from './equivalent-to.ts';
import { keepOutcomes, toldIn } from './outcomes.ts';
import { areaOf, leastShare, mostTests, sampled, sampleSize, whole } from './scope.ts';
import { tryChanges } from './try-changes.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const kept = join(root, '.mutants');
const say = (line: string) => process.stdout.write(`${line}\n`);

/** Every file of the areas, by its path below the repository. */
function codeFiles(): string[] {
  return readdirSync(join(root, 'lib'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map(({ parentPath, name }) => join(parentPath, name).slice(root.length).split('\\').join('/'))
    .filter((file) => areaOf(file))
    .sort();
}

/** The place of a change that no test told, with what stood there and what was put in its place. */
function placed(change: Change): string {
  const { line, column } = change.location.start;
  const short = (text: string) => text.replace(/\s+/g, ' ').slice(0, 100);
  const original = short(originalOf(change, root));
  return `${fileOf(change)}:${line + 1}:${column + 1}  ${original}  =>  ${short(change.replacement ?? '')}`;
}

/** Prints each change that no test told, and the share told by folder; true where every folder has enough. */
function report(changes: readonly Change[]): boolean {
  const isTold = toldIn(kept);
  for (const change of changes) if (!isTold(change)) say(`not told  ${placed(change)}`);
  const folders = [...new Set(changes.map((change) => dirname(fileOf(change))))].sort();
  const shares = folders.map((folder) => {
    const own = changes.filter((change) => dirname(fileOf(change)) === folder);
    const share = own.filter(isTold).length / own.length;
    const tooFew = share < leastShare ? '  TOO FEW' : '';
    say(
      `${(100 * share).toFixed(1).padStart(5)} %  of ${String(own.length).padStart(4)}  ${folder}${tooFew}`,
    );
    return share;
  });
  return shares.every((share) => share >= leastShare);
}

/**
 * Every change below the places; with none named, those of the whole areas and the sample. `--sample` draws below the
 * places what a run of all would draw there.
 */
async function chosenOf(places: readonly string[], asDrawn: boolean): Promise<Change[]> {
  const below = (file: string) => places.length === 0 || places.some((place) => file.startsWith(place));
  const drawing = places.length === 0 || asDrawn;
  const copy = await changedCopy(root, kept, codeFiles().filter(drawing ? () => true : below));
  copy.remove();
  const all = copy.changes.filter((change) => !equivalentTo(change, root));
  const isWhole = (change: Change) => whole.some((area) => areaOf(fileOf(change)) === area);
  const elsewhere = all.filter((change) => !isWhole(change));
  say(`${all.length} changes in all`);
  const chosen = [...all.filter(isWhole), ...(drawing ? drawn(elsewhere, sampleSize) : elsewhere)];
  return chosen.filter((change) => below(fileOf(change)));
}

/** Tries changes of one area by these tests, and keeps what becomes of them. */
async function tryInCopy(changes: readonly Change[], heldBy: readonly string[], most: number): Promise<void> {
  const copy = await changedCopy(root, kept, [...new Set(changes.map(fileOf))]);
  const keys = new Set(changes.map(keyOf));
  const own = copy.changes.filter((change) => keys.has(keyOf(change)));
  const trial = { folder: copy.folder, kept, heldBy, most, say };
  const told = await tryChanges(
    trial,
    own.map(({ id }) => id),
  );
  keepOutcomes(kept, own, told);
  copy.remove();
}

/**
 * `--untold` tries again only what no test told the last time, for which the code must not have changed since;
 * `--held-by=GLOB` runs these tests alone, while one is written.
 */
async function main(given: readonly string[]): Promise<boolean> {
  mkdirSync(kept, { recursive: true });
  const places = given.filter((word) => !word.startsWith('--'));
  const chosen = await chosenOf(places, given.includes('--sample'));
  const valuesOf = (option: string) =>
    given.flatMap((word) => (word.startsWith(`${option}=`) ? [word.slice(option.length + 1)] : []));
  const narrowed = valuesOf('--held-by');
  const most = Number(valuesOf('--most')[0] ?? mostTests);
  const isTold = toldIn(kept);
  const toTry = given.includes('--untold') ? chosen.filter((change) => !isTold(change)) : chosen;
  for (const area of [...whole, ...sampled]) {
    const own = toTry.filter((change) => areaOf(fileOf(change)) === area);
    if (own.length === 0) continue;
    say(`${area.name}: ${own.length} changes`);
    await tryInCopy(own, narrowed.length > 0 ? narrowed : area.heldBy, most);
  }
  return report(chosen);
}

process.exitCode = (await main(process.argv.slice(2))) ? 0 : 1;
