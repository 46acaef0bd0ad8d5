import type { SourceFile } from '../model/content/source-file.ts';
import type { Problem } from '../model/problem.ts';

/** Folders of `content/`, and how their files end. */
const endings = { parts: 'yaml', vehicles: 'yaml', jobs: 'yaml', guides: 'md' } as const;
const folderNames = Object.keys(endings).join('|');
/** Where a file that was meant to be read lies: right in a folder, or deeper in it. */
const meant = new RegExp(`(?:^|/)content/(${folderNames})/(.*?)([^/]+?)\\.(?:(ya?ml)|md)(?:\\.txt)?$`, 'i');

/**
 * Files that were meant to be read, and are not: a job that stays away from the site without a word is missed when it
 * is needed. Editors put `.txt` behind a name, or write `.yml`; and what lies in a folder of a folder is not looked for.
 */
export function strayFiles(files: readonly SourceFile[]): Problem[] {
  return files.flatMap(({ path }) => {
    const [, written = '', below = '', stem = '', yaml] = meant.exec(path) ?? [];
    const folder = Object.keys(endings).find((name) => name === written.toLowerCase());
    if (!isFolder(folder) || (endings[folder] === 'yaml') !== (yaml !== undefined)) return [];
    // A job has a folder of its own, for whatever belongs to it.
    if (folder === 'jobs' && below !== '') return [];
    const expected = `content/${folder}/${stem}.${endings[folder]}`;
    if (path.endsWith(expected) && below === '') return [];
    const where = { file: path, line: 1, column: 1, path: '' };
    return [{ where, message: 'this file is not read', expected, remedy: 'rename it, or take it away' }];
  });
}

function isFolder(name: string | undefined): name is keyof typeof endings {
  return name !== undefined && name in endings;
}
