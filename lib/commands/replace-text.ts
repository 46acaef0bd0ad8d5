import { readFile, stat } from 'node:fs/promises';
import { putFile } from './put-file.ts';

/** How it went: the text stands there, or why the file was left alone. */
export type Replaced = 'written' | 'changed' | 'read-only';

/** Leave to write, of the owner, the group or others. */
const anyWrite = 0o222;

/**
 * Puts a text in the place of the one that a file had when it was read, in one step. A file that was changed since, or is
 * gone, is left as it is: what another program saved is not lost. So is one that may only be read, which a rename would
 * not ask.
 */
export async function replaceText(path: string, before: string, after: string): Promise<Replaced> {
  const now = await readFile(path, 'utf8').catch(() => null);
  if (now !== before) return 'changed';
  const { mode } = await stat(path);
  if ((mode & anyWrite) === 0) return 'read-only';
  await putFile(path, after, mode);
  return 'written';
}
