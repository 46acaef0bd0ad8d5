import { rename, writeFile } from 'node:fs/promises';
import { dirname, join } from 'node:path';

/**
 * Saves a file at one stroke, as editors do that write beside it: a look through the folder sees the old text or the
 * new one, and never what lies between, however slow the machine is. `beside` is a folder that nobody watches.
 */
export async function saveWhole(
  path: string,
  text: string,
  beside = dirname(dirname(dirname(path))),
): Promise<void> {
  const own = join(beside, 'being-saved');
  await writeFile(own, text);
  await rename(own, path);
}
