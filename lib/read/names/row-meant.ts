/** Names that count up, written with a hyphen or a slash as people do: `CH1-5`, `CH1/2/3/4`, `1-4`, with what stands behind. */
const written = /^(\D*)(\d+)(?:\s*[-\u2013/]\s*\D*\d+)*\s*[-\u2013/]\s*\D*(\d+)([+-]?)$/;

/** What is written for names that count up, by the names that there are; null where that is not what was meant. */
export function rowMeant(name: string, known: readonly string[]): string | null {
  const row = rowOf(name);
  if (row && known.some((one) => one.startsWith(row.first)) && known.some((one) => one.startsWith(row.last)))
    return `write ${row.text}`;
  const [, stem, number] = /^(\D*)(\d+)[+-]?$/.exec(name) ?? [];
  const over = known.find((one) => {
    const of = rowOf(one);
    return of !== null && of.stem === stem && Number(number) >= of.from && Number(number) <= of.to;
  });
  const meant = over === undefined ? null : rowOf(over);
  return meant && `there is ${over} as one name: write ${meant.text} for names that count up`;
}

/** The row that a name stands for; null for one that counts no names. */
function rowOf(name: string) {
  const [, stem = '', from, to] = written.exec(name) ?? [];
  if (from === undefined || to === undefined) return null;
  const [first, last] = [`${stem}${from}`, `${stem}${to}`];
  return { stem, from: Number(from), to: Number(to), first, last, text: `${first}..${to}` };
}

/** The row that is meant by a name in which a hyphen stands for the dots, `1-4`; null for another name. */
export function dottedRow(name: string): string | null {
  return rowOf(name)?.text ?? null;
}
