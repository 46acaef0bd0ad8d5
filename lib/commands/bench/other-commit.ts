import { execFile } from 'node:child_process';
import { mkdtemp, rm, symlink } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, sep } from 'node:path';
import { promisify } from 'node:util';

/** The files of another commit in a folder of their own. */
export interface OtherCommit {
  /** Its whole digest. */
  readonly commit: string;
  readonly folder: string;
  remove(): Promise<void>;
}

/**
 * Puts the files of a commit into a temporary folder. The repository is left as it is: its index and its list of
 * working trees are not touched. The packages are those of this tree. Null where the repository has no such commit.
 */
export async function openCommit(repository: string, reference: string): Promise<OtherCommit | null> {
  const commit = await git(repository, [
    'rev-parse',
    '--verify',
    '--quiet',
    '--end-of-options',
    `${reference}^{commit}`,
  ]);
  if (commit === null) return null;
  const folder = await mkdtemp(join(tmpdir(), 'rackleaf-commit-'));
  const remove = () => rm(folder, { recursive: true, force: true });
  const index = { GIT_INDEX_FILE: join(folder, '.index') };
  const written =
    (await git(repository, ['read-tree', commit], index)) !== null &&
    (await git(repository, ['checkout-index', '--all', `--prefix=${folder}${sep}`], index)) !== null;
  if (!written) {
    await remove();
    return null;
  }
  // A junction needs no right of its own on Windows; elsewhere the word is passed over.
  await symlink(join(repository, 'node_modules'), join(folder, 'node_modules'), 'junction');
  return { commit, folder, remove };
}

/** The top folder of the repository that a folder stands in; null outside of one, or without git. */
export function repositoryOf(folder: string): Promise<string | null> {
  return git(folder, ['rev-parse', '--show-toplevel']);
}

async function git(
  folder: string,
  line: readonly string[],
  environment: Readonly<Record<string, string>> = {},
): Promise<string | null> {
  try {
    const { stdout } = await promisify(execFile)('git', [...line], {
      cwd: folder,
      env: { ...process.env, ...environment },
    });
    return stdout.trim();
  } catch {
    return null;
  }
}
