import type { SourceFile } from '../../../model/content/source-file.ts';
import { onAnyDisk } from '../../../model/file-name.ts';
import { computeAnew } from '../../../model/keep.ts';
import type { Problem } from '../../../model/problem.ts';
import { formerNameProblems } from '../../../read/names/look-part.ts';
import { UnreadNames } from '../../../read/names/unread-names.ts';
import type { ReadCatalogue } from '../../../read/read-content.ts';
import { type Catalogue, readParts } from '../../../read/read-parts.ts';
import type { NewFile } from '../new-file.ts';

const pathOf = (id: string) => `content/parts/${id}.yaml`;

/** What holds of every new part in a shop of these files, whose catalogue is read already. */
export function anyPartFile(
  files: readonly SourceFile[],
  { parts: catalogue }: ReadCatalogue,
): Pick<NewFile, 'what' | 'taken' | 'path' | 'problems'> {
  const paths = new Set(files.map(({ path }) => onAnyDisk(path)));
  return {
    what: 'part',
    taken: (id) =>
      Object.hasOwn(catalogue.parts, id) || paths.has(onAnyDisk(pathOf(id)))
        ? `the part "${id}" is there already: nothing is written over`
        : null,
    path: pathOf,
    problems: (path, text) => problemsBeside(catalogue, { path, text }),
  };
}

/** What is wrong in one file of parts, beside the parts of a shop, whose names are none of its own. */
function problemsBeside(catalogue: Catalogue, file: SourceFile): readonly Problem[] {
  const problems: Problem[] = [];
  const own = readParts([file], problems, new UnreadNames(), computeAnew);
  const placeOf = (path: string) =>
    (Object.hasOwn(own.parts, path.split('/')[2] ?? '') ? own : catalogue).partPlace(path);
  problems.push(...formerNameProblems({ ...catalogue.parts, ...own.parts }, placeOf));
  return problems.filter(({ where }) => where.file === file.path);
}
