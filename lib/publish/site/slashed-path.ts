import * as here from 'node:path';

/** How a system writes paths: this one's, unless a test asks how another would. */
type PathRules = Pick<typeof here, 'relative' | 'sep'>;

/** A path on disk as sites, plans and messages have it on every system: from a folder, with forward slashes. */
export function slashedPath(folder: string, path: string, { relative, sep }: PathRules = here): string {
  return relative(folder, path).split(sep).join('/');
}
