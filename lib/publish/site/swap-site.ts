import { cp, lstat, readdir, rename, rm, stat, symlink } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';

/** Where built sites are kept, and where the last good one is found. */
export interface SitePlaces {
  /** Holds `site-<digest>` folders. */
  readonly store: string;
  /** A link to one of them; a copy where links are not allowed. */
  readonly link: string;
}

async function exists(path: string): Promise<boolean> {
  try {
    await lstat(path);
    return true;
  } catch {
    return false;
  }
}

async function isFolder(path: string): Promise<boolean> {
  return (await exists(path)) && (await lstat(path)).isDirectory();
}

/**
 * Puts back what an interrupted exchange left behind: where the site is missing but its forerunner is not,
 * the forerunner returns. To be called before a build.
 */
export async function repairSite({ link }: SitePlaces): Promise<void> {
  const old = `${link}.old`;
  if (!(await exists(link)) && (await exists(old))) await rename(old, link);
}

/**
 * Makes a built folder the current site. With links, one rename does it, so that no reader ever finds
 * nothing. Without, a copy is exchanged by two renames; the forerunner comes back if the second fails.
 */
export async function swapSite(
  folder: string,
  places: SitePlaces,
  allowLinks = true,
): Promise<'link' | 'copy'> {
  const { link } = places;
  const next = `${link}.next`;
  await rm(next, { recursive: true, force: true });
  if (allowLinks && (await linked(folder, next)) && !(await isFolder(link))) {
    await rename(next, link);
    return 'link';
  }
  if (!(await exists(next))) await cp(folder, next, { recursive: true });
  await exchange(next, link);
  return (await isFolder(link)) ? 'copy' : 'link';
}

/** Tries to make a link; false where the system does not allow it. */
async function linked(folder: string, at: string): Promise<boolean> {
  try {
    await symlink(relative(dirname(at), folder), at, 'dir');
    return true;
  } catch (error) {
    if (
      error instanceof Error &&
      'code' in error &&
      ['EPERM', 'EACCES', 'ENOTSUP'].includes(String(error.code))
    )
      return false;
    throw error;
  }
}

async function exchange(next: string, link: string): Promise<void> {
  const old = `${link}.old`;
  await rm(old, { recursive: true, force: true });
  if (await exists(link)) await rename(link, old);
  try {
    await rename(next, link);
  } catch (error) {
    if (await exists(old)) await rename(old, link);
    throw error;
  }
  await rm(old, { recursive: true, force: true });
}

/** Removes built sites but the current one and its forerunner. */
export async function clearOldSites({ store }: SitePlaces, current: string): Promise<void> {
  const names = (await readdir(store)).filter((name) => /^site-[0-9a-f]+$/.test(name));
  const aged = await Promise.all(
    names.map(async (name) => ({ name, age: (await stat(join(store, name))).mtimeMs })),
  );
  const newestFirst = aged.sort((a, b) => b.age - a.age).map(({ name }) => join(store, name));
  const kept = new Set([current, ...newestFirst.filter((path) => path !== current).slice(0, 1)]);
  for (const path of newestFirst) if (!kept.has(path)) await rm(path, { recursive: true, force: true });
}
