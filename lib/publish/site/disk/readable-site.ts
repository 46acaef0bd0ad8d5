import { chmod, readdir, stat } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';

/** What everyone may do with a file of a site, and with a folder: read it, and go through it. */
const fileMode = 0o644;
const folderMode = 0o755;
/** What everyone needs of a folder that only leads to a site. */
const passMode = 0o011;

/**
 * Lets everyone read a site, whatever the umask of who built it: a web server is a user of its own. Where the system knows
 * no such modes (Windows), nothing changes.
 */
export async function letEveryoneRead(folder: string): Promise<void> {
  await chmod(folder, folderMode);
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  for (const entry of entries) {
    if (!entry.isFile() && !entry.isDirectory()) continue;
    await chmod(join(entry.parentPath, entry.name), entry.isFile() ? fileMode : folderMode);
  }
}

/** Lets everyone through the folders that lead from the folder of a shop down to a site, but not see what else lies in them. */
export async function letEveryoneThrough(root: string, site: string): Promise<void> {
  const names = relative(root, dirname(site)).split(sep);
  const folders = names.map((_, index) => join(root, ...names.slice(0, index + 1)));
  for (const folder of names[0] === '' ? [] : folders) {
    const { mode } = await stat(folder);
    if ((mode & passMode) !== passMode) await chmod(folder, (mode & 0o7777) | passMode);
  }
}
