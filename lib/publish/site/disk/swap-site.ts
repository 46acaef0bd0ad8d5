import { lstat, readdir, rm } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { diskRename, errorCode, patientRename, type RenameMeans } from '../patient-rename.ts';

/** Where the site is found, and where it is made. Both lie on one disk. */
export interface SitePlaces {
  /** Holds what is being built and, while a site takes its place, what stood there before. */
  readonly store: string;
  /** The folder of the last good site. */
  readonly site: string;
}

/** Folders of the store in which a build is made; other builds may be at work beside this one. */
export const buildingPrefix = 'building-';
const replacedPrefix = 'replaced-';
/** Sites of versions that made `dist` a link to one of them. */
const linkedSite = /^site-[0-9a-f]+$/;
/** What a build that was killed left behind is cleared away once it is as old as this: no build lasts as long. */
const abandonedMs = 86_400_000;
/** How often an exchange is begun anew where another build puts its site in between. */
const mostExchanges = 5;

async function exists(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/**
 * Puts back what an interrupted exchange left behind: where the site is missing but its forerunner is not, the
 * forerunner returns. To be called before a build.
 */
export async function repairSite(places: SitePlaces): Promise<void> {
  if (await exists(places.site)) return;
  const [last] = await newestFirst(places.store, (name) => name.startsWith(replacedPrefix));
  if (last) await patientRename(last.path, places.site);
}

/**
 * Makes a built folder the site, by two renames: what stood there goes aside, then the new one takes its place. Where
 * the second fails the forerunner returns, and the error is thrown. Nothing but renames is asked of the disk: links
 * are not everyone's to make on every system.
 */
export async function swapSite(
  built: string,
  { store, site }: SitePlaces,
  means: RenameMeans = diskRename,
): Promise<void> {
  const aside = join(store, `${replacedPrefix}${basename(built)}`);
  for (let left = mostExchanges; ; left -= 1) {
    const stood = await movedAside(site, aside, means);
    try {
      await patientRename(built, site, means);
      await removed(aside);
      return;
    } catch (error) {
      if (stood && !(await exists(site))) await patientRename(aside, site, means);
      else await removed(aside);
      // Another build was quicker: its site stands there now, and is replaced like any other.
      if (left > 1 && ['ENOTEMPTY', 'EEXIST'].includes(errorCode(error))) continue;
      throw error;
    }
  }
}

/** True where something stood there. */
async function movedAside(site: string, aside: string, means: RenameMeans): Promise<boolean> {
  try {
    await patientRename(site, aside, means);
    return true;
  } catch (error) {
    if (errorCode(error) === 'ENOENT') return false;
    throw error;
  }
}

/** Clears away what interrupted builds left, and what earlier versions kept. */
export async function clearStore({ store }: SitePlaces, now = Date.now()): Promise<void> {
  const left = await newestFirst(
    store,
    (name) => name.startsWith(buildingPrefix) || name.startsWith(replacedPrefix) || linkedSite.test(name),
  );
  for (const { path, age } of left)
    if (linkedSite.test(basename(path)) || now - age > abandonedMs) await removed(path);
}

/** Folders of the store by when they were last changed. */
async function newestFirst(
  store: string,
  wanted: (name: string) => boolean,
): Promise<{ readonly path: string; readonly age: number }[]> {
  const names = await readdir(store).catch(() => []);
  const aged = await Promise.all(
    names.filter(wanted).map(async (name) => {
      const path = join(store, name);
      return lstat(path).then(
        ({ mtimeMs }) => [{ path, age: mtimeMs }],
        () => [],
      );
    }),
  );
  return aged.flat().sort((a, b) => b.age - a.age);
}

/** Removes a folder. What another program holds open stays until a later build: the site itself stands. */
export async function removed(path: string): Promise<void> {
  await rm(path, { recursive: true, force: true, maxRetries: 3 }).catch(() => undefined);
}
