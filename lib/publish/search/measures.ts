/** A measure within a text, put into words that a search library keeps apart. */
export interface MeasureWords {
  /** The word of exactly this measure: `1over0awg`, `150a`, `0p75`. */
  readonly word: string;
  /** What else it is found by. */
  readonly also: readonly string[];
  /** What may be meant instead: `3 amps` may be three amplifiers. */
  readonly or?: readonly string[];
}

/** A kind of measure: how it is written, and its words. None where what looks like one is none. */
interface Measure {
  readonly pattern: RegExp;
  readonly words: (found: readonly string[]) => MeasureWords | null;
}

const only = (word: string): MeasureWords => ({ word, also: [] });

/** A number as a word without a point: `6p5`. A fraction of an inch and its decimal are the same word. */
function numberWord(value: number): string {
  return String(Number(value.toFixed(4))).replace('.', 'p');
}

const decimal = (text: string): number => Number(text.replace(',', '.'));

/** Units behind a number, by how they are written; an inch is no unit of a word: speakers are called by the bare number. */
const units: readonly (readonly [code: string, written: string])[] = [
  ['ah', 'ah|amp ?hours?'],
  ['ka', 'ka'],
  ['a', 'a|amps?|amperes?'],
  ['kw', 'kw'],
  ['w', 'w|watts?|rms'],
  ['ohm', 'ohms?'],
  ['khz', 'khz'],
  ['hz', 'hz|hertz'],
  ['v', 'v|volts?'],
  ['mm', 'mm|millimet(?:er|re)s?'],
  ['cm', 'cm'],
  ['m', 'm|met(?:er|re)s?'],
  ['kg', 'kg'],
  ['f', 'f|farads?'],
  ['ft', "ft|feet|foot|'"],
  ['l', 'l|lit(?:er|re)s?'],
  ['ch', 'ch|chan|channels?'],
  ['way', 'ways?'],
  ['', "in|inch|inches|\"|''"],
];
const unitPattern = units.map(([, written]) => written).join('|');
const unitOf = (written: string): string =>
  units.find(([, own]) => new RegExp(`^(?:${own})$`).test(written))?.[0] ?? '';

const number = String.raw`(?<![\w./])(\d+(?:[.,]\d+)?)`;
const noMore = String.raw`(?![\w/])`;
const gauge = 'awg|gauge|ga';

/** A conductor size: one above 1 AWG by its zeros, any other by its number, which is found bare too. */
function awg(digits: string): MeasureWords {
  const zeros = /^0+$/.test(digits) ? digits.length : null;
  return zeros === null
    ? { word: `${Number(digits)}awg`, also: [String(Number(digits))] }
    : only(`${zeros}over0awg`);
}

function fraction(whole: string, over: string, under: string): MeasureWords | null {
  const [above, below] = [Number(over), Number(under)];
  if (![2, 4, 8, 16, 32, 64].includes(below) || above === 0 || above >= below) return null;
  return only(numberWord(Number(whole || 0) + above / below));
}

/** Kinds of measure, in the order in which they are looked for: what one has taken the next does not see. */
const measures: readonly Measure[] = [
  {
    pattern: new RegExp(
      String.raw`(?<![\w/.])#? ?([1-4]) ?/ ?0(?:[ -]?(?:${gauge}))?${noMore}|(?<![\w/.])(?:${gauge})[ -]?([1-4])/0${noMore}`,
      'g',
    ),
    words: ([behind = '', before = '']) => only(`${behind || before}over0awg`),
  },
  {
    pattern: new RegExp(
      String.raw`(?<![\w/.])([1-4])[ -](?:aught|ought|nought)s?(?:[ -]?(?:${gauge}))?${noMore}`,
      'g',
    ),
    words: ([zeros = '']) => only(`${zeros}over0awg`),
  },
  {
    pattern: new RegExp(String.raw`(?<![\w/.])(?:zero)[ -]?(?:${gauge})${noMore}`, 'g'),
    words: () => awg('0'),
  },
  {
    pattern: new RegExp(String.raw`(?<![\w/.])#?(\d{1,4})[ -]?(?:${gauge})${noMore}`, 'g'),
    words: ([digits = '']) => awg(digits),
  },
  {
    pattern: new RegExp(String.raw`(?<![\w/.])(?:${gauge})[ -]?(\d{1,4})${noMore}`, 'g'),
    words: ([digits = '']) => awg(digits),
  },
  {
    pattern: new RegExp(String.raw`${number} ?(?:mm ?\^?2|sq\.? ?mm|mm ?sq|qmm)${noMore}`, 'g'),
    words: ([digits = '']) => ({
      word: `${numberWord(decimal(digits))}mm2`,
      also: [numberWord(decimal(digits))],
    }),
  },
  {
    pattern: /(?<![\w./])(?:(\d+)[ -])?(\d+)\/(\d+)(?: ?-?(?:in|inch|inches)\b| ?")?(?![\w/])/g,
    words: ([whole = '', over = '', under = '']) => fraction(whole, over, under),
  },
  {
    pattern: new RegExp(String.raw`${number}[ -]?(${unitPattern})(?!\w)`, 'g'),
    words: ([digits = '', written = '']) => {
      const [bare, unit] = [numberWord(decimal(digits)), unitOf(written)];
      if (unit === '') return only(bare);
      const also = unit === 'ch' ? [bare, 'channel'] : [bare];
      const isDevice = /^amps?$/.test(written);
      return { word: `${bare}${unit}`, also, ...(isDevice && { or: [bare, 'amplifier'] }) };
    },
  },
  {
    pattern: new RegExp(String.raw`(?<![\w./])(\d+[.,]\d+)${noMore}`, 'g'),
    words: ([digits = '']) => only(numberWord(decimal(digits))),
  },
  // Initials of a person: `P. T.`
  {
    pattern: /(?<![\w.])([a-z])\. ?([a-z])(?:\. ?([a-z]))?\.?(?!\w)/g,
    words: ([one = '', other = '', third = '']) => only(`${one}${other}${third}`),
  },
  // A label or a terminal: `L1+`, `CH2-`, `B+`.
  {
    pattern: /(?<![\w])([a-z]{1,3}\d{0,3})([+-])(?![\w+-])/g,
    words: ([name = '', sign]) => ({ word: `${name}${sign === '+' ? 'plus' : 'minus'}`, also: [name] }),
  },
];

/** Stands where a measure stood: nothing on one side of it is one word with what is on the other. */
export const gap = ' | ';

/** The measures of a text in small letters, and what is left of it. */
export function takeMeasures(text: string): {
  readonly found: readonly (MeasureWords & { readonly typed: string })[];
  readonly rest: string;
} {
  const found: (MeasureWords & { readonly typed: string })[] = [];
  let rest = text;
  for (const { pattern, words } of measures)
    rest = rest.replace(pattern, (typed: string, ...groups: unknown[]) => {
      const texts = groups.slice(0, -2).map((group) => (typeof group === 'string' ? group : ''));
      const made = words(texts);
      if (made === null) return typed;
      found.push({ ...made, typed: typed.trim() });
      return gap;
    });
  return { found, rest };
}
