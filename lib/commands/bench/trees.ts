import { cp, mkdir, mkdtemp, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { exitStatus } from '../exit-status.ts';
import { type MeasuredRun, runMeasured } from './user-time.ts';

/** The files of one commit, or of the present tree, with the shop that they are measured on. */
export interface Tree {
  /** Where its `lib` stands. */
  readonly folder: string;
  /** The folder of the `content/` that it reads. */
  readonly shop: string;
}

/** A shop of which each tree is measured, and whether all trees read the same. */
export interface SharedShop {
  readonly trees: readonly Tree[];
  readonly same: boolean;
}

/** Runs the command line of a tree in a folder. Throws where it ends in another way than a good shop can. */
export async function runTree(
  tree: Pick<Tree, 'folder'>,
  line: readonly string[],
  folder: string,
  fine: readonly number[] = [exitStatus.done, exitStatus.stopped],
): Promise<MeasuredRun> {
  const run = await runMeasured(join(tree.folder, 'lib/cli.ts'), line, folder);
  if (run.status === null || !fine.includes(run.status))
    throw new Error(`rackleaf ${line.join(' ')} of ${tree.folder} ended with ${run.status}: ${run.told}`);
  return run;
}

/** The shop that every tree can read, of those offered, the first first; where there is none each reads its own. */
export async function sharedShop(trees: readonly Tree[]): Promise<SharedShop> {
  for (const { shop } of trees) {
    const errors = [];
    for (const tree of trees) errors.push(await inputErrors({ ...tree, shop }));
    if (errors.every((count) => count === 0))
      return { trees: trees.map((tree) => ({ ...tree, shop })), same: true };
  }
  return { trees, same: false };
}

/** How many errors a tree finds in its shop, from a check that plans no job. */
async function inputErrors(tree: Tree): Promise<number> {
  const none = 'no-such-job';
  const { out } = await runTree(tree, ['check', none, '--json'], tree.shop, [exitStatus.inputErrors]);
  const { problems }: { problems: readonly unknown[] } = JSON.parse(out);
  return problems.length;
}

/** The jobs of a tree's shop by their ids, in order. */
export async function jobsOf({ shop }: Tree): Promise<string[]> {
  const names = await readdir(join(shop, 'content/jobs'));
  return names.flatMap((name) => (name.endsWith('.yaml') ? [name.slice(0, -'.yaml'.length)] : [])).sort();
}

/** The job of the longest file. */
export async function longestJob(tree: Tree): Promise<string | null> {
  const jobs = await jobsOf(tree);
  const sized = await Promise.all(
    jobs.map(async (id) => ({ id, bytes: (await stat(jobFile(tree.shop, id))).size })),
  );
  return sized.toSorted((a, b) => b.bytes - a.bytes)[0]?.id ?? null;
}

/** The file of a job. */
export function jobFile(shop: string, id: string): string {
  return join(shop, 'content/jobs', `${id}.yaml`);
}

/** Plans every job of a tree's shop by its own code, once: the files of the plan documents. */
export async function writePlans(tree: Tree, folder: string): Promise<string[]> {
  await mkdir(folder, { recursive: true });
  const files = [];
  for (const id of await jobsOf(tree)) {
    const { out } = await runTree(tree, ['plan', id, '--json'], tree.shop);
    const file = join(folder, `${id}.json`);
    await writeFile(file, out);
    files.push(file);
  }
  return files;
}

/** Does something in a folder that nothing was kept in yet: with a copy of the tree's shop, or empty. */
export async function inFreshFolder<T>(
  shop: string | null,
  work: (folder: string) => Promise<T>,
): Promise<T> {
  const folder = await mkdtemp(join(tmpdir(), 'rackleaf-shop-'));
  try {
    if (shop !== null) await cp(join(shop, 'content'), join(folder, 'content'), { recursive: true });
    return await work(folder);
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
}
