import type { Cell, Column, Row, Table, Tick } from '../sheets/table.ts';

/**
 * What is true of all cells of a column is said once a table, by a class of the table such as `figure-3`, and not once a
 * cell: a job has thousands. In the style sheets `.figure` stands for such cells too.
 */
const columnWords = ['figure', 'tick', 'blank', 'room', 'words', 'date', 'leads', 'strong'] as const;

/** The most columns that a table may have. */
const mostColumns = 14;

/** A text of so many characters is never broken, whatever the width: `16 AWG GN/BK`, `board only`, `1/2 in 13 mm`. */
const shortCharacters = 14;
/** Nor is a name in one word that is no longer than this: `parallel-block.OUT2`. */
const nameCharacters = 24;

/** Classes of a table: the kinds of its columns, by their number from 1. Throws where it has too many columns. */
export function columnKinds({ columns, rows, dense }: Table): string {
  if (columns.length > mostColumns) throw new Error(`A table has at most ${mostColumns} columns.`);
  const kinds = columns.flatMap((column, at) =>
    wordsOf(column, isStrong(rows, columns, at)).map((word) => `${word}-${at + 1}`),
  );
  return ['kinds', ...(dense ? ['dense'] : []), ...kinds].join(' ');
}

/** True where each of a list of boxes is bold. */
export function allStrong(list: readonly Tick[]): boolean {
  return list.every(({ strong }) => strong);
}

/** True for a row with a cell that takes two columns: what is behind it stands in other places. */
export function hasMoved({ cells }: Row): boolean {
  return cells.some(({ wide }) => wide);
}

/** Classes of a cell; each cell of a row with moved ones tells its own. */
export function cellClasses(cell: Cell, column: Column, isMoved: boolean): string {
  const isShort = isUnbroken(cell);
  if (!isMoved) return isShort || column.kind === 'words' ? '' : 'long';
  return [...wordsOf(column, false), ...(isShort ? ['short'] : [])].join(' ');
}

function isUnbroken({ text, beside = '', ticks }: Cell): boolean {
  if (ticks) return false;
  if (text.length + beside.length <= shortCharacters) return true;
  return beside === '' && !text.includes(' ') && text.length <= nameCharacters;
}

/**
 * True where every cell of a column that says anything says it in bold. A bold figure that may be broken before what
 * stands beside it is marked by itself, so that it is kept whole.
 */
function isStrong(rows: readonly Row[], columns: readonly Column[], at: number): boolean {
  const told = rows.flatMap(({ cells }) => cells[at] ?? []).filter(({ text, ticks }) => text !== '' || ticks);
  const isFigure = columns[at]?.kind === 'figure';
  return (
    told.length > 0 && told.every((cell) => cell.strong && !cell.wide && (!isFigure || isUnbroken(cell)))
  );
}

/** Which columns of a table are bold throughout, for who writes their cells. */
export function strongColumns({ columns, rows }: Table): readonly boolean[] {
  return columns.map((_, at) => isStrong(rows, columns, at));
}

function wordsOf({ kind, leads }: Column, strong: boolean): string[] {
  return [...(kind === 'text' ? [] : [kind]), ...(leads ? ['leads'] : []), ...(strong ? ['strong'] : [])];
}

const cellOf = ':is(thead, tbody) > tr:not(.group, .moved) >';
const word = new RegExp(`\\.(${[...columnWords, 'short'].join('|')})(?![\\w-])`, 'g');

/** A style sheet in which a class of a cell stands for the cells of such a column as well, with the weight of a class. */
export function withColumnKinds(css: string): string {
  return css.replace(word, (own, name: string) => `:is(${own}, :where(${cellsOf(name)}))`);
}

function cellsOf(name: string): string {
  // A column of words may take several lines, and says of no cell that it is long.
  if (name === 'short') return `.kinds > tbody > tr:not(.group, .moved) > :not(.long, ${cellsOf('words')})`;
  const numbers = Array.from({ length: mostColumns }, (_, index) => index + 1);
  return numbers.map((number) => `.${name}-${number} > ${cellOf} :nth-child(${number})`).join(', ');
}
