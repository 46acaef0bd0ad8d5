/** A message about what was opened out of a row, with the row: who wrote it finds no such name in the file. */
export function inRow(message: string, row: string | null): string {
  return row === null || message.includes(row) ? message : `${message} (in the row ${row})`;
}
