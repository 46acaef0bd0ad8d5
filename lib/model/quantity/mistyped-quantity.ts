import type { Dimension } from './dimensions.ts';
import { inexactQuantity } from './inexact-quantity.ts';

/** A way of writing that people understand, but that a file could be misread by: how it is told, and what is meant. */
interface OtherWay {
  readonly found: RegExp;
  /** What the text has, as the predicate of a sentence. */
  readonly has: string;
  /** The text without it. */
  readonly mend: (text: string) => string;
  /** What to write, where the mended text is no quantity either. */
  readonly hint: string;
}

const oneCharacterFraction = /[\u00bc-\u00be\u2150-\u215f\u2189]/g;

const otherWays: readonly OtherWay[] = [
  {
    found: oneCharacterFraction,
    has: 'has a fraction in one character',
    // Compatibility normalization of Unicode takes one to digits about a fraction slash.
    mend: (text) =>
      text.replace(/(\d)?([\u00bc-\u00be\u2150-\u215f\u2189])/g, opened).replace(/\u2044/g, '/'),
    hint: 'write it with a slash, such as 1/2',
  },
  {
    found: /[\u2044\u2215\uff0f]/,
    has: 'has a typeset slash',
    mend: (text) => text.replace(/[\u2044\u2215\uff0f]/g, '/'),
    hint: 'write the slash of the keyboard, such as 1/2',
  },
  {
    found: /[\u2018-\u201f\u2032\u2033]/,
    has: 'has a typeset quote mark',
    mend: (text) => text.replace(/[\u201c-\u201f\u2033]/g, '"').replace(/[\u2018-\u201b\u2032]/g, "'"),
    hint: 'write in or ft, or a straight " or \'',
  },
  {
    found: /[\u2012-\u2014\u2212]/,
    has: 'has a typeset dash',
    mend: (text) => text.replace(/[\u2012-\u2014\u2212]/g, '-'),
    hint: 'write the minus of the keyboard',
  },
  {
    found: /''/,
    has: 'has two marks of feet for inches',
    mend: (text) => text.replace(/''/g, '"'),
    hint: 'write in, or "',
  },
  {
    found: /\d (?:\/ ?|\/)\d|\d\/ \d/,
    has: 'has a space beside the slash of its fraction',
    mend: (text) => text.replace(/(\d) ?\/ ?(?=\d)/g, '$1/'),
    hint: 'write it without, such as 5/8',
  },
  {
    found: /\d,\d/,
    has: 'has a comma in its number',
    mend: withPoint,
    hint: 'write decimals with a point, such as 1.5',
  },
  {
    found: /^(?:\d+\.?\d*|\.\d+)[eE][-+]?\d/,
    has: 'has a power of ten in its number',
    mend: (text) => text,
    hint: 'write it in full',
  },
];

function opened(_: string, digit: string | undefined, fraction: string): string {
  return `${digit === undefined ? '' : `${digit} `}${fraction.normalize('NFKC')}`;
}

/** `3,5` is 3.5 and `1.200,5` is 1200.5; `1,200` may be either, and stays. */
function withPoint(text: string): string {
  return text
    .replace(/\d{1,3}(?:\.\d{3})+(?=,\d)/g, (thousands) => thousands.replace(/\./g, ''))
    .replace(/\d{1,3}(?:,\d{3})+(?=\.\d)/g, (thousands) => thousands.replace(/,/g, ''))
    .replace(/(\d+),(\d+)/g, (all, before: string, after: string) =>
      after.length === 3 && before !== '0' ? all : `${before}.${after}`,
    );
}

/** Units as people spell them, in lower case, by how they are written here; one that two units share is left out. */
const spelled: Readonly<Record<string, readonly string[]>> = {
  in: ['inch', 'inches', 'ins', 'in.'],
  ft: ['foot', 'feet', 'ft.'],
  mm: ['millimetre', 'millimetres', 'millimeter', 'millimeters', 'mm.'],
  cm: ['centimetre', 'centimetres', 'centimeter', 'centimeters', 'cm.'],
  m: ['metre', 'metres', 'meter', 'meters', 'm.'],
  kg: ['kgs', 'kilo', 'kilos', 'kilogram', 'kilograms'],
  g: ['gram', 'grams'],
  lb: ['lbs', 'pound', 'pounds', 'lb.'],
  oz: ['ounce', 'ounces'],
  A: ['amp', 'amps', 'ampere', 'amperes'],
  mA: ['milliamp', 'milliamps', 'milliampere', 'milliamperes'],
  V: ['volt', 'volts', 'vdc'],
  mV: ['millivolt', 'millivolts'],
  W: ['watt', 'watts'],
  kW: ['kilowatt', 'kilowatts'],
  Hz: ['hertz', 'cps'],
  kHz: ['kilohertz'],
  ohm: ['\u03c9'],
  s: ['sec', 'secs', 'second', 'seconds'],
  ms: ['msec', 'millisecond', 'milliseconds'],
  min: ['mins', 'minute', 'minutes'],
  h: ['hr', 'hrs', 'hour', 'hours'],
  'N m': ['n\u00b7m', 'n-m', 'newton metre', 'newton metres', 'newton meters'],
  'lbf in': ['in-lb', 'in-lbs', 'in lb', 'in lbs', 'lb-in', 'inch pounds'],
  'lbf ft': ['ft-lb', 'ft-lbs', 'ft lb', 'ft lbs', 'lb-ft', 'foot pounds'],
  Ah: ['a h', 'amp hours', 'ampere hours'],
  F: ['farad', 'farads'],
  deg: ['\u00b0', 'degree', 'degrees'],
  '%': ['percent', 'per cent', 'pct'],
  L: ['litre', 'litres', 'liter', 'liters'],
  ft3: ['ft\u00b3', 'cu ft', 'cubic feet', 'cubic foot'],
  in3: ['in\u00b3', 'cu in', 'cubic inches', 'cubic inch'],
  m2: ['m\u00b2', 'sq m'],
  ft2: ['ft\u00b2', 'sq ft', 'square feet'],
  C: ['\u00b0c', 'degc', 'deg c', 'celsius', 'degrees celsius'],
  dB: ['decibel', 'decibels'],
};
/** Beside a small letter of its own, one as it must stand: a thousandth and a million times are letters apart. */
const spelledExactly: Readonly<Record<string, string>> = {
  'm\u03a9': 'mohm',
  'm\u2126': 'mohm',
  'k\u03a9': 'kohm',
  'k\u2126': 'kohm',
};
const unitsBySpelling = new Map(
  Object.entries(spelled).flatMap(([unit, ways]) => ways.map((way): [string, string] => [way, unit])),
);

/** The unit of a dimension that a spelling stands for; null where it is none of them. */
function unitSpelled(written: string, { units }: Dimension): string | null {
  const unit = spelledExactly[written] ?? unitsBySpelling.get(written.toLowerCase());
  return unit !== undefined && Object.hasOwn(units, unit) ? unit : null;
}

function withUnits(text: string, dimension: Dimension): string {
  return text
    .replace(
      /([\d"'])\s*([^\d\s/,.+"'-][^\d/,"']*?)(?=\s*(?:\d|$))/g,
      (all, before: string, unit: string) => {
        const meant = unitSpelled(unit.trim(), dimension);
        return meant === null ? all : `${before} ${meant}`;
      },
    )
    .trim();
}

/** What is wrong with a text that people would understand as a quantity; null where it is none such. */
export interface OtherlyWritten {
  readonly says: string;
  /** True where it tells the very text to write. */
  readonly isWhole: boolean;
  /** This text, where nothing else can be meant. */
  readonly meant?: string;
}

/**
 * Tells a quantity that is written otherwise than a file can hold it: with a decimal comma, a fraction in one
 * character, its unit spelled out. What to write is told in full where that, and nothing else, is meant by it: `reads`
 * says whether a text is a quantity of the dimension.
 */
export function otherlyWritten(
  text: string,
  dimension: Dimension,
  reads: (text: string) => boolean,
): OtherlyWritten | null {
  const shown = `"${text.length > 40 ? `${text.slice(0, 40)}...` : text}"`;
  const several = severalFault(text, dimension, reads);
  if (several !== null) return { says: `${shown} ${several}`, isWhole: true };
  const inexact = inexactQuantity(text, dimension, reads);
  if (inexact) return { says: `${shown} ${inexact.says}`, isWhole: inexact.isWhole };
  const way = otherWays.find(({ found }) => text.search(found) >= 0);
  const meant = meantText(text, dimension);
  const isWhole = meant !== text && reads(meant);
  if (way) {
    const thousands = thousandsHint(text);
    return {
      says: `${shown} ${way.has}: ${isWhole ? `write ${meant}` : (thousands ?? way.hint)}`,
      isWhole,
      ...(isWhole && { meant }),
    };
  }
  return isWhole ? { says: `${shown} has its unit spelled out: write ${meant}`, isWhole, meant } : null;
}

function meantText(text: string, dimension: Dimension): string {
  const mended = otherWays.reduce((so, { mend }) => mend(so), text);
  return withUnits(mended, dimension);
}

/** `1,200 W` may be a thousand and more, or one and a bit: it is not guessed. */
function thousandsHint(text: string): string | null {
  const [, before = '', after = ''] = /(\d+),(\d{3})(?!\d)/.exec(text) ?? [];
  return after === '' ? null : `write ${before}${after}, or ${before}.${after} if the comma is a decimal one`;
}

/** `2 x 30 A` is one fuse, or both together: only who wrote it knows. */
function severalFault(text: string, dimension: Dimension, reads: (text: string) => boolean): string | null {
  const [, times = '', each = ''] = /^(\d+)\s*[x\u00d7*]\s*(\d.*)$/i.exec(text) ?? [];
  const one = meantText(each, dimension);
  const [, number = '', unit = ''] = /^(\d+(?:\.\d+)?)\s*(\D+)$/.exec(one) ?? [];
  if (times === '' || !reads(one)) return null;
  const all =
    number === ''
      ? ''
      : `, ${Number((Number(times) * Number(number)).toPrecision(12))} ${unit} for all together`;
  return `is ${times} values in one: write ${one} for each of them${all}, whichever this name asks for`;
}
