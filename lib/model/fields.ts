import { z } from 'zod';
import { Private } from './private.ts';
import {
  type DimensionName,
  dimensions,
  exampleText,
  isQuantity,
  oneOf,
  parseQuantity,
  type Quantity,
  writeQuantity,
} from './quantity.ts';
import { parseWireSize, type WireSize } from './wire-size.ts';

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

/** An id: lower case words joined by hyphens, as it stands in addresses and on labels. */
export const id = z
  .string({ error: (issue) => textFault(issue.input, 'amp-front') })
  .regex(
    /^[a-z0-9]+(-[a-z0-9]+)*$/,
    'is not an id: use lower case letters, digits and single hyphens, such as amp-front',
  )
  .meta({ examples: ['amp-front'] });

/** A reference to a terminal of a device: `device.TERMINAL`, or a pair of terminals named by what they share. */
export const terminalRef = z
  .string({ error: (issue) => textFault(issue.input, 'amp-front.B+') })
  .regex(
    /^[a-z0-9]+(-[a-z0-9]+)*\.[^\s.]+$/,
    'is not a terminal: write device.TERMINAL, such as amp-front.B+',
  )
  .meta({ examples: ['amp-front.B+'] });

/** A calendar day, ISO 8601. */
export const day = z.iso
  .date({ error: 'is not a date: write year-month-day, such as 2026-03-14' })
  .meta({ examples: ['2026-03-14'] });

type Coded<D extends DimensionName> = Quantity<(typeof dimensions)[D]['si']>;
type QuantityCodec<D extends DimensionName> = z.ZodCodec<z.ZodString, z.ZodCustom<Coded<D>, Coded<D>>>;

/** A quantity of one dimension, written with its unit, held as its SI number; `unsigned` refuses one below zero. */
export function quantity<D extends DimensionName>(dimension: D, unsigned = false): QuantityCodec<D> {
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
    });
  const held = z.custom<Coded<D>>((value) => typeof value === 'number' && isQuantity(value));
  return z.codec(written, held, {
    decode: (value, ctx) => {
      const signed = parseQuantity(value, dimension);
      const below = unsigned && typeof signed === 'number' && signed < 0;
      const read = below ? { fault: `"${value}" is below zero` } : signed;
      if (typeof read === 'number' && isQuantity<(typeof dimensions)[D]['si']>(read)) return read;
      const fault = typeof read === 'number' ? `"${value}" is not ${name}` : read.fault;
      ctx.issues.push({
        code: 'custom',
        input: value,
        message: `${fault}; write ${name} such as ${example}`,
      });
      return z.NEVER;
    },
    encode: (value) => writeQuantity(value, dimension),
  });
}

/** A quantity of one dimension that is above a bound in SI, zero where none is given: the capacity of a battery. */
export function quantityAbove<D extends DimensionName>(dimension: D, bound = 0): QuantityCodec<D> {
  const least = bound === 0 ? 'zero' : writeQuantity(bound, dimension);
  return quantity(dimension).refine(
    (value) => value > bound,
    `is not above ${least}; write ${oneOf(dimension)} such as ${exampleText(dimension)}`,
  );
}

/** How long, wide or deep something is: a length that is not below zero, unlike a position. */
export const extent = quantity('length', true);

/** A conductor size, `4 AWG` or `16 mm2`. */
export const wireSize: z.ZodCodec<z.ZodString, z.ZodCustom<WireSize, WireSize>> = z.codec(
  z
    .string({ error: () => 'needs a conductor size with its unit, such as 4 AWG, 1/0 AWG or 16 mm2' })
    .meta({ examples: ['4 AWG', '1/0 AWG', '16 mm2'], description: 'A conductor size.' }),
  z.custom<WireSize>(),
  {
    decode: (value, ctx) => {
      const size = parseWireSize(value);
      if (size) return size;
      const message = `"${value}" is not a conductor size made here: write 24 AWG to 4/0 AWG, or an area such as 16 mm2`;
      ctx.issues.push({ code: 'custom', input: value, message });
      return z.NEVER;
    },
    encode: (size) => size.label,
  },
);

/** A private value: held so that it can't be put into a string. */
export function privateText(example: string): z.ZodCodec<z.ZodString, z.ZodCustom<Private, Private>> {
  return z.codec(text(example), z.instanceof(Private), {
    decode: (value) => new Private(value),
    encode: (value) => value.reveal(),
  });
}

/** A whole count of pieces, or a pure number: the only things that need no unit. */
export const count = z
  .int({ error: 'needs a whole number, such as 2' })
  .nonnegative('is below zero; write a whole number such as 2')
  .meta({ examples: [2] });

/** A pure number above zero, such as a damping factor. */
export const positiveNumber = z
  .number({ error: 'needs a number, such as 200' })
  .positive('is not above zero; write a number such as 200')
  .meta({ examples: [200] });

/** A measured value of any dimension: its SI number with the dimension that its unit told. */
export interface Measured {
  readonly dimension: DimensionName;
  readonly value: number;
}

const dimensionNames = Object.keys(dimensions).filter((name): name is DimensionName => name in dimensions);

/** A reading from the vehicle, such as `13.9 V` or `0.12 ohm`. */
export const measured: z.ZodCodec<z.ZodString, z.ZodCustom<Measured, Measured>> = z.codec(
  z.string({ error: () => 'needs a reading with its unit, such as 13.9 V' }).meta({ examples: ['13.9 V'] }),
  z.custom<Measured>(),
  {
    decode: (value, ctx) => {
      for (const dimension of dimensionNames) {
        const read = parseQuantity(value, dimension);
        if (typeof read === 'number') return { dimension, value: read };
      }
      ctx.issues.push({
        code: 'custom',
        input: value,
        message: `"${value}" is not a reading; write 13.9 V or 0.8 ohm`,
      });
      return z.NEVER;
    },
    encode: (reading) => `${reading.value} ${dimensions[reading.dimension].si}`,
  },
);
