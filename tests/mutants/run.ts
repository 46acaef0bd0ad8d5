import { mkdirSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { fileOf } from './change-key.js';
import { type Change, drawn } from './chosen-changes.ts';
import { equivalentTo, originalOf } from './equivalent-to.ts';
import { toldIn } from './outcomes.ts';
import { areaOf, leastShare, sampled, sampleSize, whole } from './scope.ts';
import { everyChange, tryChanges } from './try-changes.ts';

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

/** Every change below the places; with none named, those of the whole areas and the sample. */
async function chosenOf(places: readonly string[]): Promise<Change[]> {
  const files = codeFiles().filter(
    (file) => places.length === 0 || places.some((place) => file.startsWith(place)),
  );
  const all = (await everyChange(root, kept, files)).filter((change) => !equivalentTo(change, root));
  const isWhole = (change: Change) => whole.some((area) => areaOf(fileOf(change)) === area);
  const elsewhere = all.filter((change) => !isWhole(change));
  say(`${all.length} changes in all`);
  return [...all.filter(isWhole), ...(places.length > 0 ? elsewhere : drawn(elsewhere, sampleSize))];
}

/**
 * `--untold` tries again only what no test told the last time, for which the code must not have changed since;
 * `--held-by=GLOB` runs these tests alone, while one is written.
 */
async function main(given: readonly string[]): Promise<boolean> {
  mkdirSync(kept, { recursive: true });
  const again = given.includes('--untold');
  const chosen = await chosenOf(given.filter((word) => !word.startsWith('--')));
  const narrowed = given.flatMap((word) => /^--held-by=(.+)$/.exec(word)?.[1] ?? []);
  const isTold = toldIn(kept);
  const toTry = again ? chosen.filter((change) => !isTold(change)) : chosen;
  for (const area of [...whole, ...sampled]) {
    const own = toTry.filter((change) => areaOf(fileOf(change)) === area);
    if (own.length === 0) continue;
    say(`${area.name}: ${own.length} changes`);
    await tryChanges(root, kept, own, narrowed.length > 0 ? narrowed : area.heldBy);
  }
  return report(chosen);
}

process.exitCode = (await main(process.argv.slice(2))) ? 0 : 1;
