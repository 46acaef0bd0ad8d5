/** Names in a row: `OUT1..4` are OUT1, OUT2, OUT3 and OUT4. Any other name is itself. */
export function expandName(name: string): readonly string[] {
  const [, stem, first, last, rest] = /^(.*?)(\d+)\.\.(\d+)(.*)$/.exec(name) ?? [];
  if (first === undefined || last === undefined) return [name];
  const from = Number(first);
  const count = Number(last) - from + 1;
  if (count < 1 || count > mostInARow) return [name];
  return Array.from({ length: count }, (_, at) => `${stem}${from + at}${rest}`);
}

/** No part has more terminals of one name. */
const mostInARow = 64;
