// Plain JavaScript: the plug-in beside it is loaded by processes that read nothing else.

/** The variable that names the file with the keys of the changes to try. */
export const toTryVariable = 'MUTANTS_TO_TRY';

/** The variable that names the file to which what became of each change is added, a line for each. */
export const outcomesVariable = 'MUTANTS_OUTCOMES';

/**
 * What is told of a change that was tried counts lines and columns from 1, a change that is to be tried from 0.
 * @param {import('@stryker-mutator/api/core').MutantResult} result
 */
export function changeOf({ fileName, location: { start, end }, replacement, status }) {
  return { fileName, location: { start: fromZero(start), end: fromZero(end) }, replacement, status };
}

/** @param {import('@stryker-mutator/api/core').Position} position */
const fromZero = ({ line, column }) => ({ line: line - 1, column: column - 1 });

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
