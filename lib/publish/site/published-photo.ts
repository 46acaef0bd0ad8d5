import { join } from 'node:path';
import type { PhotoOf } from '../../model/content/job-photo.ts';

/** A picture as pages show it: made smaller, and with nothing in it but the picture. */
export interface PublishedPicture {
  /** Its path from the top of the site. */
  readonly path: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A photo of a job as pages show it. */
export interface PublishedPhoto extends PublishedPicture {
  readonly id: string;
  /** What is seen on it; null where the job does not say. */
  readonly shows: string | null;
  /** Null where the job names nothing, or several things: which of them is meant is not guessed. */
  readonly of: PhotoOf | null;
  /** Who sees it. */
  readonly on: readonly ('packet' | 'sheets')[];
}

/** Where a photo of this digest stands in a site. */
export function photoPath(digest: string): string {
  return `assets/photos/${digest}.jpg`;
}

const ofSite = /^assets\/photos\/([0-9a-f]{64})\.jpg$/;

/** Where a shop keeps photos that were made ready, by digest. It may be deleted at any time. */
export function keptPhoto(root: string, digest: string): string {
  return join(root, '.rackleaf', 'photos', `${digest}.jpg`);
}

/** Where the photo at a path of a site is kept; null for a path of no photo. */
export function keptPhotoAt(root: string, path: string): string | null {
  const [, digest] = ofSite.exec(path) ?? [];
  return digest === undefined ? null : keptPhoto(root, digest);
}

/** A photo as a template shows it. */
export interface PhotoFigure {
  readonly path: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Read out in place of the photo; empty where the job does not say what it shows. */
  readonly alt: string;
}

export function photoFigure({ path, widthPx, heightPx, shows }: PublishedPhoto): PhotoFigure {
  return { path, widthPx, heightPx, alt: shows ?? '' };
}
