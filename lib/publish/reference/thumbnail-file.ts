import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { boardThumbnail } from '../../draw/thumbnail/board-thumbnail.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { once } from '../../plan/once-each.ts';
import type { PageFile } from '../page/page.ts';
import { addresses, drawingsFolder, folderOf } from '../site/addresses.ts';
import { nameDigest } from '../site/assets/asset-names.ts';
import { shippedMetrics } from '../site/shipped-metrics.ts';
import { projectFolder } from '../site/templates.ts';

/** A thumbnail of a job as pages show it: its file, from the top of the site, and what it shows. */
export interface Thumbnail {
  readonly path: string;
  readonly title: string;
}

/** The file, and what it shows. */
type ThumbnailFile = PageFile & Pick<Thumbnail, 'title'>;

/** Thumbnails of plans that are held by others: each is drawn once, on however many pages it is shown. */
const drawn = new WeakMap<BuildPlan, { readonly file: ThumbnailFile | null }>();

/**
 * The thumbnail of a job as a file beside its page, which other pages show too. It brings the inks itself, since a picture
 * of a page takes none from it. Null where the job has no board that carries anything.
 */
export function thumbnailFile(plan: BuildPlan): ThumbnailFile | null {
  const known = drawn.get(plan) ?? { file: draw(plan) };
  drawn.set(plan, known);
  return known.file;
}

function draw(plan: BuildPlan): ThumbnailFile | null {
  const thumbnail = boardThumbnail(plan, shippedMetrics());
  if (thumbnail === null) return null;
  const text = thumbnail.svg.replace('>', () => `><style>${inks()}</style>`);
  return { path: `${drawingsFolder}/thumbnail.${nameDigest(text)}.svg`, text, title: thumbnail.title };
}

/** Where the pages of a site find the thumbnail of a job. */
export function thumbnailOf(plan: BuildPlan): Thumbnail | null {
  const file = thumbnailFile(plan);
  return file && { path: `${folderOf(addresses.job(plan.job.id))}${file.path}`, title: file.title };
}

const inks = once(() => readFileSync(join(projectFolder, 'site', 'styles', 'inks.css'), 'utf8'));
