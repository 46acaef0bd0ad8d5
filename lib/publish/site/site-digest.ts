import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { slashedPath } from './slashed-path.ts';

export interface FolderDigest {
  /** SHA-256 over names and bytes, hexadecimal. */
  readonly digest: string;
  readonly files: number;
  readonly bytes: number;
}

/** Paths of all files below a folder, with forward slashes, in the order of their names. */
export async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => entry.isFile())
    .map((entry) => slashedPath(folder, join(entry.parentPath, entry.name)))
    .sort();
}

/** A digest of everything in a folder: equal where names and bytes are equal. */
export async function digestOf(folder: string): Promise<FolderDigest> {
  const hash = createHash('sha256');
  const files = await filesBelow(folder);
  let bytes = 0;
  for (const file of files) {
    const content = await readFile(join(folder, file));
    bytes += content.length;
    hash.update(`${file}\0${content.length}\0`).update(content);
  }
  return { digest: hash.digest('hex'), files: files.length, bytes };
}
