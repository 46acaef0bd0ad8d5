import { createHash } from 'node:crypto';
import { lstat, readFile, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import {
  mostBytes,
  type PhotoFault,
  type PreparedPhoto,
  photoForm,
  photoSize,
  preparePhoto,
} from '../../export/photo/prepare-photo.ts';
import { namedOn } from '../../model/content/job-photo.ts';
import type { ReadJob } from '../../model/content/resolved-job.ts';
import { pointer } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { keptPhoto, type PublishedPhoto, photoPath } from '../../publish/site/published-photo.ts';
import type { SiteAsset } from '../../publish/site/site-assets.ts';
import type { Effects } from '../effects.ts';

/** The photos of a shop: those of each job, their files, and what is wrong with the others. */
export interface ShopPhotos {
  readonly ofJob: ReadonlyMap<string, readonly PublishedPhoto[]>;
  readonly files: readonly SiteAsset[];
  /** One for each photo that is left out; everything else is made. */
  readonly problems: readonly Problem[];
}

/** Makes the photos of jobs ready: each file once, and again only where it changed. */
export async function shopPhotos(effects: Effects, jobs: readonly ReadJob[]): Promise<ShopPhotos> {
  const ofJob = new Map<string, PublishedPhoto[]>();
  const files = new Map<string, SiteAsset>();
  const problems: Problem[] = [];
  for (const job of jobs)
    for (const [id, photo] of Object.entries(job.file.photos)) {
      const made = await photoFile(effects, job.id, photo.file);
      if ('fault' in made) {
        problems.push({
          where: job.place(pointer(['photos', id, 'file'])),
          message: `the photo ${id} is left out: ${made.fault}`,
          remedy: made.remedy,
        });
        continue;
      }
      const path = photoPath(made.digest);
      files.set(path, { path, read: async () => made.jpeg });
      const { widthPx, heightPx } = made;
      const [of = null, ...others] = namedOn(photo);
      const published = {
        id,
        path,
        widthPx,
        heightPx,
        shows: photo.shows ?? null,
        of: others.length === 0 ? of : null,
        on: photo.on,
      };
      ofJob.set(job.id, [...(ofJob.get(job.id) ?? []), published]);
    }
  return { ofJob, files: [...files.values()], problems };
}

/** A name of a file and no way to one: no folder, no `..`, no drive. */
const plainName = /^(?!\.)[^/\\:]+$/;

async function photoFile(
  effects: Effects,
  job: string,
  name: string,
): Promise<(PreparedPhoto & { readonly digest: string }) | PhotoFault> {
  const folder = join(effects.root, 'content', 'jobs', job);
  const besides = `put the photo into content/jobs/${job}/, and write its name alone`;
  if (!plainName.test(name)) return { fault: 'its file is more than a name', remedy: besides };
  const full = join(folder, name);
  const found = await lstat(full).catch(() => null);
  if (!found) return { fault: 'there is no such file', remedy: besides };
  if (!found.isFile() || !(await standsIn(effects.root, folder)))
    return { fault: 'it leads out of the folder of the job', remedy: besides };
  if (found.size > mostBytes)
    return { fault: `it has more than ${mostBytes / 2 ** 20} MB`, remedy: 'make it smaller' };
  const bytes = await readFile(full).catch(() => null);
  if (!bytes) return { fault: 'it can not be read', remedy: 'look whether you may read it' };
  const digest = createHash('sha256').update(photoForm).update(bytes).digest('hex');
  const kept = await readFile(keptPhoto(effects.root, digest)).catch(() => null);
  const size = kept ? await photoSize(kept) : null;
  if (kept && size) return { jpeg: kept, ...size, digest };
  const made = await preparePhoto(bytes);
  if ('fault' in made) return { ...made, fault: `it ${made.fault}` };
  await effects.write(keptPhoto(effects.root, digest), made.jpeg);
  return { ...made, digest };
}

/** True where the folder of a job is one of the shop's own, and no link to another place. */
async function standsIn(root: string, folder: string): Promise<boolean> {
  const [shop, own] = await Promise.all([realpath(root), realpath(folder)]).catch(() => ['', '/']);
  return own === join(shop, folder.slice(root.length));
}
