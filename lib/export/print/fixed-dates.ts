/**
 * A PDF whose dates are midnight of a day, whatever the clock said: the same input then gives the same bytes.
 * Texts are replaced by texts of the same length, so that every offset in the file stays true. A file identifier
 * in the trailer, where there is one, is set to noughts, for it is made from the clock too.
 */
export function withFixedDates(pdf: Uint8Array, day: string): Uint8Array {
  const text = Buffer.from(pdf).toString('latin1');
  const midnight = `${day.replaceAll('-', '').padEnd(8, '0').slice(0, 8)}000000`;
  const dated = text.replace(
    /(\/(?:CreationDate|ModDate)\s*\(D:)(\d{14})/g,
    (_, before: string) => `${before}${midnight}`,
  );
  const plain = dated.replace(
    /(\/ID\s*\[\s*<)([0-9A-Fa-f]+)(>\s*<)([0-9A-Fa-f]+)(>)/g,
    (_, open: string, first: string, between: string, second: string, close: string) =>
      `${open}${'0'.repeat(first.length)}${between}${'0'.repeat(second.length)}${close}`,
  );
  return new Uint8Array(Buffer.from(plain, 'latin1'));
}
