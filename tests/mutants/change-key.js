// Plain JavaScript: the plug-in beside it is loaded by processes that read nothing else.

/**
 * What is told of a change counts lines and columns from 1, where the code is read they count from 0.
 * @param {import('@stryker-mutator/api/core').MutantResult} result
 */
export function changeOf({ id, fileName, location: { start, end }, replacement, status }) {
  return { id, fileName, location: { start: fromZero(start), end: fromZero(end) }, replacement, status };
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
