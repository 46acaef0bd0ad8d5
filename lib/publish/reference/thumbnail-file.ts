import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { boardThumbnail } from '../../draw/thumbnail/board-thumbnail.ts';
import { onceFor } from '../../model/once-for.ts';
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

/**
 * The thumbnails of a plan, by its boards, each drawn once, on however many pages it is shown; the board that carries most
 * comes first.
 */
const thumbnailsOf = onceFor(draw);

function draw(plan: BuildPlan): ReadonlyMap<string, ThumbnailFile> {
  const byLoad = plan.boards.toSorted((a, b) => b.placements.length - a.placements.length);
  const files = new Map<string, ThumbnailFile>();
  for (const board of byLoad) {
    const thumbnail = boardThumbnail({ job: plan.job, boards: [board] }, shippedMetrics());
    if (thumbnail === null) continue;
    const text = thumbnail.svg.replace('>', () => `><style>${inks()}</style>`);
    const path = `${drawingsFolder}/thumbnail.${nameDigest(text)}.svg`;
    files.set(board.id, { path, text, title: thumbnail.title });
  }
  return files;
}

/**
 * The thumbnails of a job as files beside its page, which other pages show too: one for each board that carries anything.
 * They bring the inks themselves, since a picture of a page takes none from it.
 */
export function thumbnailFiles(plan: BuildPlan): readonly ThumbnailFile[] {
  const byPath = new Map([...thumbnailsOf(plan).values()].map((file) => [file.path, file]));
  return [...byPath.values()];
}

/** Where the pages of a site find the thumbnail of a job: of the board that carries most, or of the one that is named. */
export function thumbnailOf(plan: BuildPlan, board?: string): Thumbnail | null {
  const all = thumbnailsOf(plan);
  const [first] = all.values();
  const file = board === undefined ? first : all.get(board);
  return file ? { path: `${folderOf(addresses.job(plan.job.id))}${file.path}`, title: file.title } : null;
}

const inks = once(() => readFileSync(join(projectFolder, 'site', 'styles', 'inks.css'), 'utf8'));
