import type { Unreadable } from '../problem.ts';

/** More names than any device has in a row. */
const most = 64;

/** The names of a row by one range, `CH1..4`, also with what stands behind each number, `CH1..4+`. */
const range = /^(.*?)(\d+)\.\.(.*?)(\d+)([^\d\s]*)$/;

const number = String.raw`(?:0|[1-9]\d*)`;
const stem = '(?:[a-z0-9]+(?:-[a-z0-9]+)*-?)?';
/** One name, and a range of names: such as may be anything, and ids. */
const forms = {
  any: {
    one: String.raw`(?:[^,.]|\.[^,.])*\.?`,
    range: String.raw`[^,]*${number}\.\.[^,]*${number}[^\d\s,]*`,
    part: String.raw`[^,]*[^\s,][^,]*`,
  },
  id: {
    one: '[a-z0-9]+(?:-[a-z0-9]+)*',
    range: String.raw`${stem}${number}\.\.${stem}${number}(?:-?[a-z]+(?:-[a-z]+)*)?`,
    part: null,
  },
} as const;

/** How a name is written that may stand for several, as a regular expression (ECMA-262) for programs that read no rows. */
export function rowForm(of: keyof typeof forms): string {
  const { one, range: several, part: any } = forms[of];
  const part = any ?? String.raw`\s*(?:${several}|${one})\s*`;
  return String.raw`^(?:${one}|\s*${several}\s*|${part}(?:,${part})+)$`;
}

/** True for a name that stands for several: `CH1..4`, `B+, GND`. */
export function isRow(written: string): boolean {
  return written.includes('..') || written.includes(',');
}

/**
 * The names that a written name stands for: `CH1..4` is CH1, CH2, CH3 and CH4, `B+, GND` is B+ and GND. A row
 * may run downwards, as `IN5..1` does where the last lies first. A name without two dots or a comma stands for itself.
 */
export function rowNames(written: string): readonly string[] | Unreadable {
  if (!isRow(written)) return [written];
  const names: string[] = [];
  for (const part of written.split(',')) {
    const some = namesOfPart(part.trim());
    if ('unreadable' in some) return some;
    names.push(...some);
  }
  const twice = names.find((name, index) => names.indexOf(name) < index);
  if (twice !== undefined) return { unreadable: `has ${twice} twice` };
  return names.length > most ? tooMany(names.length) : names;
}

function namesOfPart(part: string): readonly string[] | Unreadable {
  if (part === '') return { unreadable: 'has a comma with no name beside it' };
  if (!part.includes('..')) return [part];
  const [, stem = '', from = '', again = '', to = '', end = ''] = range.exec(part) ?? [];
  if (to === '' || (again !== '' && again !== stem))
    return { unreadable: `is no row: ${part} has not a number on either side of its dots; write CH1..4` };
  if (from !== String(Number(from)) || to !== String(Number(to)))
    return { unreadable: `is no row: a number in ${part} begins with 0; write 1..4` };
  const [first, last] = [Number(from), Number(to)];
  const count = Math.abs(last - first) + 1;
  if (count > most) return tooMany(count);
  const step = last < first ? -1 : 1;
  return Array.from({ length: count }, (_, index) => `${stem}${first + step * index}${end}`);
}

function tooMany(count: number): Unreadable {
  return { unreadable: `stands for ${count} names, and no more than ${most} are read in one row` };
}
