import { z } from 'zod';
import { fileNameFault, refusedFileNames } from './file-name.ts';
import { Private } from './private.ts';
import type { Unreadable } from './problem.ts';
import {
  beyondVehicle,
  type DimensionName,
  dimensionNames,
  dimensions,
  exampleText,
  isQuantity,
  oneOf,
  parseQuantity,
  type Quantity,
  writeQuantity,
} from './quantity/quantity.ts';
import { meantWireSize, parseWireSize, type WireSize } from './quantity/wire-size.ts';
import { readingForm, wireSizeForm, writtenForm } from './quantity/written-form.ts';
import { type Bounds, withFacts } from './writing/quantity-facts.ts';

/** Text that YAML would not turn into something else. */
export function text(example: string): z.ZodString {
  return z
    .string({ error: (issue) => textFault(issue.input, example) })
    .regex(/\S/, `is empty; write a text such as ${example}`)
    .meta({ examples: [example] });
}

// The value itself stays out of the sentence: the text may be a private one.
function textFault(input: unknown, example: string): string {
  if (typeof input === 'number' || typeof input === 'boolean')
    return `is read as a ${typeof input}, but a text is needed: put quotes round it`;
  return `needs a text, such as ${example}`;
}

/** How an id is written. */
export const idPattern = /^[a-z0-9]+(-[a-z0-9]+)*$/;

/** An id: lower case words joined by hyphens, as it stands in addresses and on labels. */
export const id = z
  .string({ error: (issue) => textFault(issue.input, 'amp-front') })
  .regex(idPattern, 'is not an id: use lower case letters, digits and single hyphens, such as amp-front')
  .meta({ examples: ['amp-front'] });

/** An id that a file or a folder is called by. */
export const fileId = id
  .refine(
    (name) => fileNameFault(name) === null,
    'is a name that Windows keeps for itself, and no file can have it: choose another',
  )
  .meta({ not: { pattern: refusedFileNames } });

/** A check by what a function finds wrong with a value; null where nothing is. */
export function faultless<T>(faultOf: (value: T) => string | null): z.core.CheckFn<T> {
  return ({ value, issues }) => {
    const message = faultOf(value);
    if (message !== null) issues.push({ code: 'custom', input: value, message });
  };
}

/** What a schema says first of a value that it does not take; null for one that it takes. */
export function faultBy(schema: z.core.$ZodType, value: unknown): string | null {
  return z.safeParse(schema, value).error?.issues[0]?.message ?? null;
}

/** A revision: the file of its frozen plan is called by it. */
export const revision = text('A')
  .check(faultless(fileNameFault))
  .meta({ not: { pattern: refusedFileNames } });

/** A reference to a terminal of a device: `device.TERMINAL`, or a pair of terminals named by what they share. */
export const terminalRef = z
  .string({ error: (issue) => textFault(issue.input, 'amp-front.B+') })
  .regex(
    /^[a-z0-9]+(-[a-z0-9]+)*\.[^\s.]+$/,
    'is not a terminal: write device.TERMINAL, such as amp-front.B+',
  )
  .meta({ examples: ['amp-front.B+'] });

/** A calendar day, ISO 8601. */
export const day = z.iso.date({ error: ({ input }) => dayFault(input) }).meta({ examples: ['2026-03-14'] });

/** What is wrong with a date; the day that is meant where no other can be: of 11/30/2026 the thirtieth is no month. */
function dayFault(input: unknown): string {
  const says = 'is not a date: write year-month-day,';
  const [, first = '', second = '', year] =
    (typeof input === 'string' && /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})$/.exec(input.trim())) || [];
  const [, early, inner = '', late = ''] =
    (typeof input === 'string' && /^(\d{4})[./-](\d{1,2})[./-](\d{1,2})$/.exec(input.trim())) || [];
  const digits = (part: string) => part.padStart(2, '0');
  const ways = [
    ...(year === undefined ? [] : [[year, first, second] as const, [year, second, first] as const]),
    ...(early === undefined ? [] : [[early, inner, late] as const]),
  ].map((way) => way.map(digits).join('-'));
  const days = [...new Set(ways.filter((way) => z.iso.date().safeParse(way).success))];
  return `${says} ${days.length === 0 ? 'such as 2026-03-14' : days.join(' or ')}`;
}

type Coded<D extends DimensionName> = Quantity<(typeof dimensions)[D]['si']>;
type QuantityCodec<D extends DimensionName> = z.ZodCodec<z.ZodString, z.ZodCustom<Coded<D>, Coded<D>>>;

/** A quantity of one dimension, written with its unit, held as its SI number; `unsigned` refuses one below zero. */
export function quantity<D extends DimensionName>(dimension: D, unsigned = false): QuantityCodec<D> {
  const sign = unsigned ? 'unsigned' : 'signed';
  const known: Codecs[D] = codecs[sign][dimension];
  const facts = { dimension, ...(unsigned && { least: 0 }) };
  const codec = known ?? withFacts(quantityCodec(dimension, unsigned), facts);
  codecs[sign] = { ...codecs[sign], [dimension]: codec };
  return codec;
}

type Codecs = { readonly [D in DimensionName]?: QuantityCodec<D> };

/** What was made before: a schema is never changed, only copied. */
const codecs: { signed: Codecs; unsigned: Codecs } = { signed: {}, unsigned: {} };

function quantityCodec<D extends DimensionName>(dimension: D, unsigned: boolean): QuantityCodec<D> {
  const name = oneOf(dimension);
  const example = exampleText(dimension);
  const written = z
    .string({
      error: (issue) =>
        typeof issue.input === 'number'
          ? `is a bare number, but ${name} needs its unit: write ${example}`
          : `needs ${name}, such as ${example}`,
    })
    .meta({
      examples: [...dimensions[dimension].examples],
      description: `${name.replace(/^a/, 'A')}, written with its unit.`,
      pattern: writtenForm(dimension, unsigned ? 'unsigned' : 'signed'),
    });
  const held = z.custom<Coded<D>>((value) => typeof value === 'number' && isQuantity(value));
  return z.codec(written, held, {
    decode: (value, ctx) => {
      const signed = parseQuantity(value, dimension);
      const read =
        typeof signed === 'number' ? (refusal(value, signed, dimension, unsigned) ?? signed) : signed;
      if (typeof read === 'number' && isQuantity<(typeof dimensions)[D]['si']>(read)) return read;
      const why = typeof read === 'number' ? `"${value}" is not ${name}` : read.unreadable;
      const isMended = typeof read !== 'number' && read.isMended === true;
      ctx.issues.push({
        code: 'custom',
        input: value,
        message: isMended ? why : `${why}; write ${name} such as ${example}`,
        ...(typeof read !== 'number' && read.meant !== undefined && { params: { meant: read.meant } }),
      });
      return z.NEVER;
    },
    encode: (value) => writeQuantity(value, dimension),
  });
}

/** Why a number that could be read is not taken all the same. */
function refusal(
  written: string,
  value: number,
  dimension: DimensionName,
  unsigned: boolean,
): Unreadable | null {
  if (unsigned && value < 0) return { unreadable: `"${written}" is below zero` };
  const beyond = beyondVehicle(value, dimension);
  return beyond === null ? null : { unreadable: `"${written}" ${beyond}` };
}

/** A quantity of one dimension that keeps its bounds, such as an efficiency: above nothing, at most the whole. */
export function quantityWithin<D extends DimensionName>(
  dimension: D,
  { above, least, most }: Bounds,
): QuantityCodec<D> {
  const bound = (value: number) => (value === 0 ? 'zero' : writeQuantity(value, dimension));
  const sign = most !== undefined && most <= 0 ? '-' : '';
  const wayOut = () => `write ${oneOf(dimension)} such as ${sign}${exampleText(dimension)}`;
  const fault = (value: number): string | null => {
    if (above !== undefined && value <= above) return `is not above ${bound(above)}; ${wayOut()}`;
    if (least !== undefined && value < least) return `is below ${bound(least)}; ${wayOut()}`;
    return most !== undefined && value > most ? `is above ${bound(most)}; ${wayOut()}` : null;
  };
  // The words are put together where a value misses its bounds: a shop that starts has some hundred bounds.
  const within = quantity(dimension).refine((value) => fault(value) === null, {
    error: ({ input }) => (typeof input === 'number' ? fault(input) : null),
  });
  return withFacts(within, { dimension, above, least, most });
}

/** A quantity of one dimension that is above zero: the capacity of a battery. */
export function quantityAbove<D extends DimensionName>(dimension: D): QuantityCodec<D> {
  return quantityWithin(dimension, { above: 0 });
}

/** How long, wide or deep something is: a length that is not below zero, unlike a position. */
export const extent = quantity('length', true);

/** How long a conductor or a stretch of its way is: a length above zero. */
export const stretch = quantityAbove('length');

/** A conductor size, `4 AWG` or `16 mm2`. */
export const wireSize: z.ZodCodec<z.ZodString, z.ZodCustom<WireSize, WireSize>> = z.codec(
  z.string({ error: ({ input }) => sizeFault(input) }).meta({
    examples: ['4 AWG', '1/0 AWG', '16 mm2'],
    description: 'A conductor size.',
    pattern: wireSizeForm(),
  }),
  z.custom<WireSize>(),
  {
    decode: (value, ctx) => {
      const size = parseWireSize(value);
      if (size) return size;
      const meant = meantWireSize(value);
      const write = meant ?? '24 AWG to 4/0 AWG, or an area such as 16 mm2';
      const message = `"${value}" is not ${meant === null ? 'a conductor size made here' : 'how a conductor size is written'}: write ${write}`;
      ctx.issues.push({ code: 'custom', input: value, message });
      return z.NEVER;
    },
    encode: (size) => size.label,
  },
);

/** A bare number may be a gauge or an area: only who wrote it knows. */
function sizeFault(input: unknown): string {
  const [gauge, area] = [`${input} AWG`, `${input} mm2`];
  const isSize = typeof input === 'number' && parseWireSize(gauge) !== null;
  return isSize
    ? `is a bare number: write ${gauge}, or ${area} where it is an area`
    : 'needs a conductor size with its unit, such as 4 AWG, 1/0 AWG or 16 mm2';
}

/** A private value: held so that it can't be put into a string. */
export function privateText(example: string): z.ZodCodec<z.ZodString, z.ZodCustom<Private, Private>> {
  return z.codec(text(example), z.instanceof(Private), {
    decode: (value) => new Private(value),
    encode: (value) => value.reveal(),
  });
}

/** What is wrong with what should be a pure number; a decimal comma is told with what to write. */
function numberFault(input: unknown, needs: string): string {
  const [, before, after] = typeof input === 'string' ? (/^(-?\d+),(\d+)$/.exec(input.trim()) ?? []) : [];
  return before === undefined ? needs : `is written with a comma: write ${before}.${after}`;
}

/** A whole count of pieces, or a pure number: the only things that need no unit. */
export const count = z
  .int({ error: 'needs a whole number, such as 2' })
  .nonnegative('is below zero; write a whole number such as 2')
  .meta({ examples: [2] });

/** A whole count of at least one: how many conductors go into a port. */
export const countFromOne = z
  .int({ error: 'needs a whole number, such as 2' })
  .positive('is not above zero; write a whole number such as 2')
  .meta({ examples: [2] });

/** A pure number above zero, such as a damping factor. */
export const positiveNumber = z
  .number({ error: ({ input }) => numberFault(input, 'needs a number, such as 200') })
  .positive('is not above zero; write a number such as 200')
  .meta({ examples: [200] });

/** A measured value of any dimension: its SI number with the dimension that its unit told. */
export interface Measured {
  readonly dimension: DimensionName;
  readonly value: number;
}

/** A reading from the vehicle, such as `13.9 V` or `0.12 ohm`; a meter shows `-0.02 V` where current flows the other way. */
export const measured: z.ZodCodec<z.ZodString, z.ZodCustom<Measured, Measured>> = z.codec(
  z
    .string({ error: () => 'needs a reading with its unit, such as 13.9 V' })
    .meta({ examples: ['13.9 V'], pattern: readingForm() }),
  z.custom<Measured>(),
  {
    decode: (value, ctx) => {
      const [, minus, body = value] = /^\s*(-)?(.*)$/s.exec(value) ?? [];
      for (const dimension of dimensionNames) {
        const read = parseQuantity(body, dimension);
        if (typeof read === 'number') return { dimension, value: minus ? 0 - read : read };
      }
      const faults = dimensionNames.map((dimension) => parseQuantity(body, dimension));
      const told = faults.find((fault) => typeof fault !== 'number' && fault.isMended === true);
      const message =
        typeof told === 'object' ? told.unreadable : `"${value}" is not a reading; write 13.9 V or 0.8 ohm`;
      ctx.issues.push({ code: 'custom', input: value, message });
      return z.NEVER;
    },
    encode: (reading) => `${reading.value} ${dimensions[reading.dimension].si}`,
  },
);
