import type { Trace } from '../../../lib/model/trace.ts';

/** The numbers that a working prints, in SI: areas are printed in mm2. */
function numbersOf({ inputs }: Trace): ReadonlyMap<string, number> {
  return new Map(
    inputs.flatMap(({ name, value, unit }) =>
      typeof value === 'number' ? [[name, unit.includes('mm2') ? value * 1e-6 : value]] : [],
    ),
  );
}

/** Value of plain arithmetic: numbers, + - * / ^, brackets, sqrt and pi. Throws on anything else. */
function arithmetic(text: string): number {
  const tokens = text.match(/\d+(\.\d+)?(e[+-]?\d+)?|sqrt|pi|[-+*/^()]|\S/g) ?? [];
  let at = 0;
  const taken = (token: string): boolean => {
    if (tokens[at] !== token) return false;
    at += 1;
    return true;
  };
  const atom = (): number => {
    if (taken('-')) return -atom();
    if (taken('pi')) return Math.PI;
    if (taken('sqrt')) return Math.sqrt(atom());
    if (taken('(')) {
      const inner = sum();
      if (!taken(')')) throw new Error(`no closing bracket in ${text}`);
      return inner;
    }
    const number = Number(tokens[at]);
    if (tokens[at] === undefined || Number.isNaN(number)) throw new Error(`"${tokens[at]}" in ${text}`);
    at += 1;
    return number;
  };
  const power = (): number => {
    const base = atom();
    return taken('^') ? base ** power() : base;
  };
  const product = (): number => {
    let value = power();
    for (;;)
      if (taken('*')) value *= power();
      else if (taken('/')) value /= power();
      else return value;
  };
  const sum = (): number => {
    let value = product();
    for (;;)
      if (taken('+')) value += product();
      else if (taken('-')) value -= product();
      else return value;
  };
  const value = sum();
  if (at < tokens.length) throw new Error(`"${tokens[at]}" is left in ${text}`);
  return value;
}

/** A formula with each of its names exchanged for its number, longest names first. */
function filledIn(formula: string, numbers: ReadonlyMap<string, number>): string {
  const names = [...numbers.keys()].toSorted((a, b) => b.length - a.length);
  const pattern = names.map((name) => name.replace(/[^\w\s]/g, '\\$&')).join('|');
  if (pattern === '') return formula;
  return formula.replace(new RegExp(`(?<![A-Za-z0-9])(${pattern})(?![A-Za-z0-9])`, 'g'), (name) => {
    const number = numbers.get(name) ?? Number.NaN;
    return number < 0 ? `(${number})` : String(number);
  });
}

/** What words in place of arithmetic ask for, from the numbers beside them. */
const inWords: readonly (readonly [start: string, redo: (numbers: readonly number[]) => number])[] = [
  ['the sum of', (numbers) => numbers.reduce((a, b) => a + b, 0)],
  ['sum of', (numbers) => numbers.reduce((a, b) => a + b, 0)],
  ['the greatest of', (numbers) => Math.max(...numbers)],
  ['the least of', (numbers) => Math.min(...numbers)],
  ['the lesser of', (numbers) => Math.min(...numbers)],
  ['0: ', () => 0],
  // d1, d2, n and the sum of squares, as the working of a bundle lists them.
  [
    'the larger of',
    ([n = 0, d1 = 0, d2 = 0, squares = 0]) => Math.max(d1 + d2, n < 3 ? 0 : 1.25 * Math.sqrt(squares)),
  ],
];

/** Steps of a table in words, such as `1500 A to 650 A of cranking; 5000 A above`. */
function inSteps(formula: string, numbers: readonly number[]): number | null {
  const steps = formula.split('; ').map((step) => /^(\d+) A (?:to ([\d,]+) A|above)/.exec(step));
  if (steps.some((step) => step === null)) return null;
  const [asked = Number.NaN] = numbers;
  const step = steps.find((one) => asked <= Number((one?.[2] ?? 'Infinity').replace(',', '')));
  return Number(step?.[1]);
}

/** The value of a working, redone by hand from its printed formula and its printed inputs. */
export function redone(trace: Trace): number {
  const numbers = numbersOf(trace);
  const [clause = ''] = (trace.formula ?? '').split(/; (?!\d)/);
  const formula = clause.replace(/^\w+ = /, '');
  const steps = inSteps(formula, [...numbers.values()]);
  if (steps !== null) return steps;
  const words = inWords.find(([start]) => formula.startsWith(start));
  const [plain = '', ...qualified] = formula.split(', ');
  const exact = words ? words[1]([...numbers.values()]) : arithmetic(filledIn(plain, numbers));
  return qualified.reduce((value, words) => qualify(value, words, numbers), exact);
}

function qualify(value: number, words: string, numbers: ReadonlyMap<string, number>): number {
  if (words === 'rounded down') return Math.floor(value + 1e-9);
  if (words === 'rounded up') return Math.ceil(value - 1e-9);
  if (words.endsWith('rounded up to 0.1 A')) return Math.ceil(value * 10 - 1e-9) / 10;
  const least = /^at least (\S+)( mm)?$/.exec(words);
  if (!least?.[1]) return value;
  return Math.max(value, numbers.get(least[1]) ?? Number(least[1]) * (least[2] ? 1e-3 : 1));
}
