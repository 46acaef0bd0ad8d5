import type { SourceFile } from '../../../model/content/source-file.ts';
import { onAnyDisk } from '../../../model/file-name.ts';
import { contentFiles, readCatalogue } from '../../../read/read-content.ts';
import type { NewFile } from '../new-file.ts';

const pathOf = (id: string) => `content/parts/${id}.yaml`;

/** What holds of every new part in a shop of these files. */
export function anyPartFile(
  files: readonly SourceFile[],
): Pick<NewFile, 'what' | 'taken' | 'path' | 'problems'> {
  const { shop, parts: partFiles } = contentFiles(files);
  const { parts } = readCatalogue({ shop, parts: partFiles }).parts;
  const paths = new Set(files.map(({ path }) => onAnyDisk(path)));
  return {
    what: 'part',
    taken: (id) =>
      Object.hasOwn(parts, id) || paths.has(onAnyDisk(pathOf(id)))
        ? `the part "${id}" is there already: nothing is written over`
        : null,
    path: pathOf,
    problems: (path, text) =>
      readCatalogue({ shop, parts: [...partFiles, { path, text }] }).problems.filter(
        ({ where }) => where.file === path,
      ),
  };
}
