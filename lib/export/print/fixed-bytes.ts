/**
 * A PDF that does not tell when or by which run it was made: the same page then gives the same bytes. Dates become
 * midnight of a day; the numbers that the browser gives to table cells, which count on from run to run, become
 * their rank, which keeps them in order; a file identifier in the trailer, where there is one, becomes noughts.
 * Every text is replaced by one of the same length, so that all offsets in the file stay true.
 */
export function withFixedBytes(pdf: Uint8Array, day: string): Uint8Array {
  const text = Buffer.from(pdf).toString('latin1');
  const fixed = withoutIdentifier(withRankedNodes(withDay(text, day)));
  return new Uint8Array(Buffer.from(fixed, 'latin1'));
}

function withDay(text: string, day: string): string {
  const midnight = `${day.replaceAll('-', '').padEnd(8, '0').slice(0, 8)}000000`;
  return text.replace(
    /(\/(?:CreationDate|ModDate)\s*\(D:)\d{14}/g,
    (_, before: string) => `${before}${midnight}`,
  );
}

const node = /\(node(\d{8,})\)/g;

function withRankedNodes(text: string): string {
  const numbers = [...new Set([...text.matchAll(node)].map(([, digits = '']) => digits))].sort();
  const ranks = new Map(
    numbers.map((digits, rank) => [digits, String(rank + 1).padStart(digits.length, '0')]),
  );
  return text.replace(node, (whole, digits: string) => `(node${ranks.get(digits) ?? whole})`);
}

function withoutIdentifier(text: string): string {
  return text.replace(
    /(\/ID\s*\[\s*<)([0-9A-Fa-f]+)(>\s*<)([0-9A-Fa-f]+)(>)/g,
    (_, open: string, first: string, between: string, second: string, close: string) =>
      `${open}${'0'.repeat(first.length)}${between}${'0'.repeat(second.length)}${close}`,
  );
}
