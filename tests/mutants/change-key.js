// Plain JavaScript: the plug-in beside it is loaded by processes that read nothing else.

/** The variable that names the file with the keys of the changes to try. */
export const toTryVariable = 'MUTANTS_TO_TRY';

/**
 * A change of the code by file, place (from 0) and what is put there, without its number, which a change elsewhere
 * would move.
 * @param {Pick<import('@stryker-mutator/api/core').Mutant, 'fileName' | 'location' | 'replacement'>} change
 */
export function keyOf(change) {
  const { start, end } = change.location;
  return [fileOf(change), start.line, start.column, end.line, end.column, change.replacement].join('|');
}

/**
 * The file of a change below the repository, in a copy of it too.
 * @param {Pick<import('@stryker-mutator/api/core').Mutant, 'fileName'>} change
 */
export function fileOf({ fileName }) {
  const path = fileName.split('\\').join('/');
  return path.slice(path.lastIndexOf('lib/'));
}
