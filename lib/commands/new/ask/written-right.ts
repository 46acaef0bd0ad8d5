import { between, unknown } from './rows.ts';

/** What a corrected line is held against. */
interface Tried {
  /** True where nothing is wrong with a line. */
  readonly isRight: (line: string) => boolean;
  /** True where the first cell is the name of one row: blanks in it part nothing. */
  readonly isNamed: boolean;
}

/**
 * A line as it was meant, where only bars, blanks or units are written otherwise than they are read: the first of several
 * ways of writing it in which nothing is wrong; null where none is.
 */
export function writtenRight(line: string, { isRight, isNamed }: Tried): string | null {
  const cells = line.split(between).map((cell) => cell.trim());
  const whole = cells.map(wholeValues).map(withLeadingWords);
  const named = (parter: string) => (isNamed ? [firstParted(cells, parter), firstParted(whole, parter)] : []);
  const tries = [whole, ...named('-'), ...named('|')];
  return (
    tries
      .map((one) => one.join(', '))
      .filter((one) => one !== cells.join(', '))
      .find(isRight) ?? null
  );
}

/** Values with bars between them, each whole: `3|18 1/2|34 in` is in inches throughout, `cabin 0|48 in` is none, and `cabin 48 in`. */
function wholeValues(cell: string): string {
  const values = cell.split('|').map((value) => measure.exec(value.trim())?.groups ?? {});
  const unit = values.findLast((value) => value.unit)?.unit;
  if (values.length < 2 || unit === undefined || values.some(({ number }) => number === undefined))
    return cell;
  const words = values[0]?.words ?? '';
  return values
    .map((value) => {
      // A stretch without length is none, and its row goes without it.
      if (words !== '' && Number(value.number) === 0) return '';
      return `${value.words || words}${value.number} ${value.unit ?? unit}`;
    })
    .join('|');
}

/**
 * Values that begin in the midst of the first one, each whole: `cabin 5 in grommet 18 mm|grommet ?` has `cabin 5 in` twice,
 * and so has `cabin 5 in grommet 18 mm|?`, whose last measure alone is not known.
 */
function withLeadingWords(cell: string): string {
  const [first = '', ...others] = cell.split('|').map((value) => value.trim());
  const words = first.split(/\s+/);
  const open = first.replace(/^(.*\d.*\s[a-z]+\s)\d\S*(?:\s+\d+\/\d+)?(?:\s*[a-z]+)?$/i, '$1?');
  const whole = others.map((value) => {
    if (value === unknown && open !== first) return open;
    const at = words.indexOf(value.split(/\s+/)[0] ?? '');
    return at > 0 ? `${words.slice(0, at).join(' ')} ${value}` : value;
  });
  return [first, ...whole].join('|');
}

/** Words before a number, the number with its fraction, and the unit behind it: `cabin 18 1/2 in`. */
const measure =
  /^(?<words>(?:[a-z][a-z-]*\s+)*)(?<number>\d[\d./]*(?:\s+\d+\/\d+)?)(?:\s*(?<unit>[a-z]+))?$/i;

/** The name with something else than blanks in it: one name, or those of several rows. */
function firstParted([first = '', ...others]: readonly string[], parter: string): string[] {
  return [first.replaceAll(/\s+/g, parter), ...others];
}
