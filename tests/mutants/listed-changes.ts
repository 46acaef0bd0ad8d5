import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { changedCopy } from './changed-copy.ts';
import type { Change } from './chosen-changes.ts';

interface Kept {
  /** Digest of the files, with their names and texts. */
  readonly of: string;
  readonly changes: readonly Change[];
}

/** Every change of some files, by their paths. The last list is kept, and stands as long as none of the files changes. */
export async function listedChanges(
  root: string,
  kept: string,
  files: readonly string[],
): Promise<readonly Change[]> {
  const file = join(kept, 'listed.json');
  const of = digestOf(root, files);
  const before: Kept | null = existsSync(file) ? JSON.parse(readFileSync(file, 'utf8')) : null;
  if (before?.of === of) return before.changes;
  const copy = await changedCopy(root, kept, files);
  copy.remove();
  const listed: Kept = { of, changes: copy.changes };
  writeFileSync(file, JSON.stringify(listed));
  return listed.changes;
}

function digestOf(root: string, files: readonly string[]): string {
  const hash = createHash('sha256');
  for (const file of files) hash.update(`${file}\n${readFileSync(join(root, file), 'utf8')}\n`);
  return hash.digest('hex');
}
