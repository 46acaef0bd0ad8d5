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
import type { Guide } from '../../model/content/guide.ts';
import { namedOn } from '../../model/content/job-photo.ts';
import type { ReadJob } from '../../model/content/resolved-job.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import { pointer } from '../../model/place.ts';
import type { Problem } from '../../model/problem.ts';
import { picturesNamed } from '../../publish/page/markdown.ts';
import {
  keptPhoto,
  type PublishedPhoto,
  type PublishedPicture,
  photoPath,
} from '../../publish/site/published-photo.ts';
import type { ShopSite } from '../../publish/site/shop-site.ts';
import type { SiteAsset } from '../../publish/site/site-assets.ts';
import type { Effects } from '../effects.ts';

/** The pictures of a shop: the photos of each job, those of its guides, their files, and what is wrong with the others. */
export interface ShopPhotos {
  readonly ofJob: ReadonlyMap<string, readonly PublishedPhoto[]>;
  readonly ofGuides: NonNullable<ShopSite['guidePictures']>;
  readonly files: readonly SiteAsset[];
  /** One for each photo that is left out; everything else is made. */
  readonly problems: readonly Problem[];
}

/** What of a shop may have pictures. */
interface Pictured {
  readonly jobs: readonly ReadJob[];
  readonly guides: readonly Guide[];
  /** The files that the shop was read from: a picture that is left out is told at its place. */
  readonly files: readonly SourceFile[];
}

/** Makes the pictures of a shop ready: each file once, and again only where it changed. */
export async function shopPhotos(
  effects: Effects,
  { jobs, guides, files: sources }: Pictured,
): Promise<ShopPhotos> {
  const ofJob = new Map<string, PublishedPhoto[]>();
  const files = new Map<string, SiteAsset>();
  const problems: Problem[] = [];
  for (const job of jobs)
    for (const [id, photo] of Object.entries(job.file.photos)) {
      const made = await photoFile(effects, { path: `content/jobs/${job.id}`, of: 'the job' }, photo.file);
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
  const ofGuides: Record<string, Record<string, PublishedPicture>> = {};
  for (const guide of guides) {
    const own = await guidePictures(effects, guide, sources);
    problems.push(...own.problems);
    for (const { file, digest, jpeg, widthPx, heightPx } of own.made) {
      const path = photoPath(digest);
      files.set(path, { path, read: async () => jpeg });
      ofGuides[guide.slug] = { ...ofGuides[guide.slug], [file]: { path, widthPx, heightPx } };
    }
  }
  return { ofJob, ofGuides, files: [...files.values()], problems };
}

/** A picture that is made ready, under what its text calls it. */
interface MadePicture extends PreparedPhoto {
  readonly file: string;
  readonly digest: string;
}

async function guidePictures(
  effects: Effects,
  guide: Guide,
  sources: readonly SourceFile[],
): Promise<{ readonly made: readonly MadePicture[]; readonly problems: readonly Problem[] }> {
  const made: MadePicture[] = [];
  const problems: Problem[] = [];
  for (const { file, line } of picturesNamed(guide)) {
    const found = isElsewhere.test(file)
      ? { fault: 'it lies elsewhere, and no page asks others for anything', remedy: besidesIn(ofGuides.path) }
      : await photoFile(effects, ofGuides, file);
    if (!('fault' in found)) made.push({ ...found, file });
    else
      problems.push({
        where: placeInGuide(guide, file, line, sources),
        message: `the picture is left out: ${found.fault}`,
        remedy: found.remedy,
      });
  }
  return { made, problems };
}

/** An address of its own: of another host, or a picture written into the text. */
const isElsewhere = /^(?:[a-z][a-z0-9+.-]*:|\/\/)/i;

const ofGuides: PhotoFolder = { path: 'content/guides', of: 'the guides' };

/** Where a guide names a picture: the text of a guide is the end of its file. */
function placeInGuide(
  { slug, body }: Guide,
  file: string,
  line: number,
  sources: readonly SourceFile[],
): Problem['where'] {
  const path = `content/guides/${slug}.md`;
  const lines = sources.find((one) => one.path === path)?.text.split('\n') ?? [];
  const first = lines.length - body.split('\n').length + line;
  const below = lines.slice(first).findIndex((text) => text.includes(file));
  const at = first + Math.max(0, below);
  return { file: path, line: at + 1, column: Math.max(0, lines[at]?.indexOf(file) ?? 0) + 1, path: '' };
}

/** A name of a file and no way to one: no folder, no `..`, no drive. */
const plainName = /^(?!\.)[^/\\:]+$/;

/** A folder of photos, and whose it is. */
interface PhotoFolder {
  /** Its path from the folder of the shop, with forward slashes. */
  readonly path: string;
  readonly of: string;
}

const besidesIn = (path: string): string => `put the photo into ${path}/, and write its name alone`;

async function photoFile(
  effects: Effects,
  { path, of }: PhotoFolder,
  name: string,
): Promise<(PreparedPhoto & { readonly digest: string }) | PhotoFault> {
  const folder = join(effects.root, ...path.split('/'));
  const besides = besidesIn(path);
  if (!plainName.test(name)) return { fault: 'its file is more than a name', remedy: besides };
  const full = join(folder, name);
  const found = await lstat(full).catch(() => null);
  if (!found) return { fault: 'there is no such file', remedy: besides };
  if (!found.isFile() || !(await standsIn(effects.root, folder)))
    return { fault: `it leads out of the folder of ${of}`, remedy: besides };
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
