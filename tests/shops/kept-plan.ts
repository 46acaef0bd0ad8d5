import { createHash, type Hash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { deserialize, serialize } from 'node:v8';
import type { SourceFile } from '../../lib/model/content/source-file.ts';
import type { BuildPlan } from '../../lib/model/plan/index.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const store = join(root, 'node_modules/.cache/rackleaf-plans');
/** Plans of another state of the code are cleared away when they are this old: a run beside this one may still use them. */
const oldMs = 3_600_000;

/**
 * The judged plan of a job, made once for all files of tests: it is kept under the digest of everything that it can
 * depend on, which is all of the code, the files of the shop, the packages and Node itself. With `FRESH_PLANS=1`
 * nothing is kept; a run that changes code in memory, such as one with mutants, needs that.
 */
export function keptPlan(shop: readonly SourceFile[], job: string, make: () => BuildPlan): BuildPlan {
  if (process.env.FRESH_PLANS === '1') return make();
  const path = keptPath(shop, job);
  const known = read(path);
  if (known) return known;
  const plan = make();
  const folder = dirname(path);
  mkdirSync(folder, { recursive: true });
  const own = `${path}.${process.pid}`;
  writeFileSync(own, serialize(plan));
  renameSync(own, path);
  clearOld(folder);
  return plan;
}

/** The file in which the plan of a job is kept. */
export function keptPath(shop: readonly SourceFile[], job: string): string {
  return join(store, digestOf(shop), `${job}.v8`);
}

function read(path: string): BuildPlan | null {
  try {
    return deserialize(readFileSync(path));
  } catch {
    return null;
  }
}

/** Digest of the code, this file's folder with it, of the packages, of Node and of a shop. */
function digestOf(shop: readonly SourceFile[]): string {
  const hash = createHash('sha256').update(
    JSON.stringify([process.versions, process.platform, process.arch]),
  );
  for (const folder of ['lib', 'tests/shops']) addFolder(hash, join(root, folder));
  addText(hash, 'package-lock.json', readFileSync(join(root, 'package-lock.json'), 'utf8'));
  for (const { path, text } of shop) addText(hash, path, text);
  return hash.digest('hex').slice(0, 32);
}

function addFolder(hash: Hash, folder: string): void {
  const files = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => join(parentPath, name));
  for (const path of files.sort()) addText(hash, path.slice(folder.length), readFileSync(path, 'utf8'));
}

/** Name and length first, so that no two lists of files run into the same bytes. */
function addText(hash: Hash, name: string, text: string): void {
  hash.update(JSON.stringify([name, text.length])).update(text);
}

function clearOld(own: string): void {
  for (const name of readdirSync(store)) {
    const folder = join(store, name);
    if (folder !== own && Date.now() - statSync(folder).mtimeMs > oldMs)
      rmSync(folder, { recursive: true, force: true });
  }
}
