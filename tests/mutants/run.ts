import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fileOf, keyOf } from './change-key.js';
import { changedCopy } from './changed-copy.ts';
import { type Change, drawn } from './chosen-changes.ts';
import { equivalentTo, originalOf } from './equivalent-to.ts';
import { listedChanges } from './listed-changes.ts';
import { keepShares, percentTold, type Share } from './measured.ts';
import { keepOutcomes, toldIn, triedIn } from './outcomes.ts';
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

/** What came of the changes, by area and folder. */
function sharesOf(changes: readonly Change[], isDrawn: boolean): readonly Share[] {
  const isTold = toldIn(kept);
  return [...whole, ...sampled].flatMap((area): Share[] => {
    const own = changes.filter((change) => areaOf(fileOf(change)) === area);
    const folders = [...new Set(own.map((change) => dirname(fileOf(change))))].sort();
    return folders.map((folder): Share => {
      const here = own.filter((change) => dirname(fileOf(change)) === folder);
      return {
        area: area.name,
        folder,
        tried: isDrawn && sampled.includes(area) ? 'drawn' : 'every change',
        changes: here.length,
        told: here.filter(isTold).length,
      };
    });
  });
}

/** Prints each change that no test told, and the share told; true where every folder has enough. */
function report(changes: readonly Change[], shares: readonly Share[]): boolean {
  const isTold = toldIn(kept);
  for (const change of changes) if (!isTold(change)) say(`not told  ${placed(change)}`);
  const isEnough = ({ told, changes: tried }: Share) => told >= leastShare * tried;
  for (const share of shares)
    say(
      `${percentTold(share).padStart(5)} %  of ${String(share.changes).padStart(4)}  ${share.folder} (${share.area})${isEnough(share) ? '' : '  TOO FEW'}`,
    );
  return shares.every(isEnough);
}

/**
 * Every change below the places; with none named, those of the whole areas and the sample. `--sample` draws below the
 * places what a run of all would draw there.
 */
async function chosenOf(places: readonly string[], isDrawn: boolean): Promise<Change[]> {
  const files = codeFiles().filter(isDrawn ? () => true : below(places));
  const listed = await listedChanges(root, kept, files);
  const all = listed.filter((change) => !equivalentTo(change, root));
  const isWhole = (change: Change) => whole.some((area) => areaOf(fileOf(change)) === area);
  const elsewhere = all.filter((change) => !isWhole(change));
  say(`${all.length} changes in all`);
  const chosen = [...all.filter(isWhole), ...(isDrawn ? drawn(elsewhere, sampleSize) : elsewhere)];
  return chosen.filter((change) => below(places)(fileOf(change)));
}

const below =
  (places: readonly string[]) =>
  (file: string): boolean =>
    places.length === 0 || places.some((place) => file === place || file.startsWith(`${place}/`));

/** True where every file of an area in a folder lies below the places. */
function isCovered({ area, folder }: Share, places: readonly string[]): boolean {
  return codeFiles()
    .filter((file) => areaOf(file)?.name === area && dirname(file) === folder)
    .every(below(places));
}

/** Tries changes of one area by these tests, and keeps what becomes of them. */
async function tryInCopy(changes: readonly Change[], heldBy: readonly string[], most: number): Promise<void> {
  const copy = await changedCopy(root, kept, [...new Set(changes.map(fileOf))]);
  const keys = new Set(changes.map(keyOf));
  const own = copy.changes.filter((change) => keys.has(keyOf(change)));
  const trial = { folder: copy.folder, notes: copy.notes, heldBy, most, say };
  const told = await tryChanges(
    trial,
    own.map(({ id }) => id),
  );
  keepOutcomes(kept, own, told);
  copy.remove();
}

/**
 * `--untold` tries again only what no test told the last time, for which the code must not have changed since;
 * `--held-by=GLOB` runs these tests alone, while one is written; `--kept` tries nothing, and writes down what narrower
 * runs found, for which the code must not have changed since either.
 */
async function main(given: readonly string[]): Promise<boolean> {
  mkdirSync(kept, { recursive: true });
  const places = given.filter((word) => !word.startsWith('--'));
  const isDrawn = places.length === 0 || given.includes('--sample');
  const chosen = await chosenOf(places, isDrawn);
  const valuesOf = (option: string) =>
    given.flatMap((word) => (word.startsWith(`${option}=`) ? [word.slice(option.length + 1)] : []));
  const narrowed = valuesOf('--held-by');
  const most = Number(valuesOf('--most')[0] ?? mostTests);
  const isTold = toldIn(kept);
  const isUntold = (change: Change) => !isTold(change);
  const isAsked = given.includes('--kept') ? () => false : given.includes('--untold') ? isUntold : () => true;
  const toTry = chosen.filter(isAsked);
  for (const area of [...whole, ...sampled]) {
    const own = toTry.filter((change) => areaOf(fileOf(change)) === area);
    if (own.length === 0) continue;
    say(`${area.name}: ${own.length} changes`);
    await tryInCopy(own, narrowed.length > 0 ? narrowed : area.heldBy, most);
  }
  // A folder of which something was never tried has no share.
  const isTried = triedIn(kept);
  const open = new Set(chosen.filter((change) => !isTried(change)).map((change) => dirname(fileOf(change))));
  const shares = sharesOf(chosen, isDrawn).filter(({ folder }) => !open.has(folder));
  if (narrowed.length === 0)
    keepShares(
      join(root, 'tests/mutants/measured.md'),
      shares.filter((share) => isCovered(share, places)),
    );
  return report(chosen, shares);
}

process.exitCode = (await main(process.argv.slice(2))) ? 0 : 1;
