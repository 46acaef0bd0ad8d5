import { isAbsolute, join } from 'node:path';
import type { ExportedFile } from '../../export/exported-file.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { revisionSegment } from '../../publish/site/addresses.ts';
import type { Effects } from '../effects.ts';

/** Where the files of a revision are written, unless another folder is named. */
export function exportFolder({ job }: Pick<BuildPlan, 'job'>): string {
  return join('.rackleaf', 'export', job.id, revisionSegment(job.revision));
}

/** Writes files, with what their names begin with. Their paths, as they are told. */
export async function writeExported(
  effects: Effects,
  folder: string,
  begin: string,
  files: readonly ExportedFile[],
): Promise<string[]> {
  const paths: string[] = [];
  for (const { name, content } of files) {
    const path = join(folder, `${begin}${name}`);
    await effects.write(path, content);
    paths.push(isAbsolute(path) ? path : path.split('\\').join('/'));
  }
  return paths;
}

/** Tells the paths of files that were written: one a line, or as JSON with what they are of. */
export function tellPaths(effects: Effects, about: object, paths: readonly string[], json: boolean): void {
  if (json) effects.out(JSON.stringify({ ...about, files: paths }, null, 2));
  else for (const path of paths) effects.out(path);
}
