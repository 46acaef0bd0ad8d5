import { z } from 'zod';
import { faultBy } from '../fields.ts';

/** What a price is for: so many pieces, or a length. */
export interface PricedAmount {
  readonly count: number;
  readonly unit: 'piece' | 'm' | 'ft';
}

/** What a shop pays, in its currency. */
export interface Price {
  readonly amount: number;
  readonly per: PricedAmount;
}

/** A sum of money with a space behind it: a point before decimals, at most four of them. */
export const sumForm = String.raw`(?!0+(?:\.0+)? )(\d{1,7}(?:\.\d{1,4})?)`;
const perForm = String.raw`(each|per (?:([1-9]\d{0,5}) ?)?(ft|m)|per ([1-9]\d{0,5}))`;
const priceForm = `^${sumForm} ${perForm}$`;
const example = '1.85 per ft';

/** A price as it is written: `480 each`, `1.85 per ft`, `89 per 50 ft`, `14.50 per 100`. */
export const price: z.ZodCodec<z.ZodString, z.ZodCustom<Price, Price>> = z.codec(
  z
    .string({ error: () => `needs what is paid and what for, such as ${example}, 480 each or 14.50 per 100` })
    .meta({
      examples: [example, '480 each', '89 per 50 ft', '14.50 per 100'],
      description: 'What is paid, and what for.',
      pattern: priceForm,
    }),
  z.custom<Price>(),
  {
    decode: (value, ctx) => {
      const read = parsePrice(value);
      if (read) return read;
      ctx.issues.push({ code: 'custom', input: value, message: priceFault(value) });
      return z.NEVER;
    },
    encode: priceText,
  },
);

function parsePrice(text: string): Price | null {
  const found = new RegExp(priceForm).exec(text);
  if (!found) return null;
  const [, amount = '', , lengths = '1', unit, pieces = '1'] = found;
  const isLength = unit === 'ft' || unit === 'm';
  const per: PricedAmount = isLength
    ? { count: Number(lengths), unit }
    : { count: Number(pieces), unit: 'piece' };
  return { amount: Number(amount), per };
}

/** A price as a shop file has it. */
export function priceText({ amount, per }: Price): string {
  const text = perText(per);
  return `${amount} ${text === 'each' ? text : `per ${text}`}`;
}

/** What a price is for, as a table has it: `each`, `100`, `ft`, `50 ft`. */
export function perText({ count, unit }: PricedAmount): string {
  if (unit === 'piece') return count === 1 ? 'each' : String(count);
  return count === 1 ? unit : `${count} ${unit}`;
}

const separated = /^\d{1,3}(?:[ \u00a0\u202f'’.,]\d{3})+(?:[.,]\d+)?$/;
const currency = /^(?:\p{Sc}|[A-Z]{3}\b)\s*|\s*(?:\p{Sc}|\b[A-Z]{3})$/gu;

/** What is wrong with a sum of money, and what to write in its place; null for one that is taken. Nothing is guessed. */
export function sumFault(written: string): string | null {
  const text = written.trim();
  if (new RegExp(`^${sumForm} $`).test(`${text} `)) return null;
  const bare = text.replace(currency, '');
  if (bare !== text)
    return `"${text}" has a sign of currency: write the number alone; the currency stands under currency: of the shop file`;
  if (/^\d+,\d{1,2}$/.test(text)) return `"${text}" has a decimal comma: write ${text.replace(',', '.')}`;
  if (separated.test(text))
    return `"${text}" can be read in two ways: write it without a separator of thousands, and with a point before decimals`;
  if (/^-/.test(text)) return `"${text}" is below zero`;
  return /^0+(?:[.,]0+)?$/.test(text)
    ? `"${text}" is nothing: leave out a price that is not known`
    : `"${text}" is not a sum of money: write a number such as 1.85, with at most four decimals`;
}

/** What is wrong with a text that is no price. */
function priceFault(text: string): string {
  const [, amount = text, rest] = /^(.*?)\s+((?:each|per\b).*)$/.exec(text.trim()) ?? [];
  const fault = sumFault(amount);
  if (fault !== null) return fault;
  const what =
    rest === undefined ? 'does not say what it is for' : `is for "${rest}", which is not understood`;
  return `"${text}" ${what}: write ${amount} each, ${amount} per ft, ${amount} per 50 ft or ${amount} per 100`;
}

/** What is wrong with a price of so much for that much; null where nothing is. */
export function faultOfPrice(text: string): string | null {
  return faultBy(price, text);
}
