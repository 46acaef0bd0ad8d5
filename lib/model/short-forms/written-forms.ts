import { z } from 'zod';
import { builders } from '../audience.ts';
import { faultBy, faultless, quantityAbove, quantityWithin, text } from '../fields.ts';
import { quantityForm } from '../quantity/written-form.ts';
import { zoneKindSchema } from '../vocabulary.ts';
import { mayBeLeftOut, writtenSide } from '../writing/field-example.ts';
import { ifThen } from '../writing/if-then.ts';
import { insideOf } from '../writing/schema-shape.ts';
import { controlDefaults } from './control-defaults.ts';
import { namesSchema, rowsSchema } from './row-schema.ts';
import { examplesOf, fieldsOf, mayLack, withField, wordsOf } from './schema-edits.ts';
import type { ShortForm } from './short-form.ts';

/** What may stand in a file for a value with a short form, whose inside is as a file may hold it already. */
export function writtenBeside(form: ShortForm, schema: z.ZodType): z.ZodType {
  switch (form.form) {
    case 'rows':
      return rowsSchema(schema, form.along);
    case 'range':
      return z.union([schema, rangeText(schema)]);
    case 'table':
      return z.union([schema, tableOf(schema, form.key, form.value)]);
    case 'names':
      return namesSchema(schema);
    case 'corners':
      return z.union([schema, corners]);
    case 'control':
      return mayLack(schema, { form: byWhat, safe: byWhat, why: byWhat }).meta({ allOf: neededByWhat });
    case 'channel':
      return withField(mayLack(schema, { positive: byOutput, negative: byOutput }), 'output', output).meta({
        oneOf: [
          { required: ['output'], not: { anyOf: [{ required: ['positive'] }, { required: ['negative'] }] } },
          { required: ['positive', 'negative'], not: { required: ['output'] } },
        ],
      });
    case 'coil':
      return mayLack(schema, {
        positive: 'the name of the coil with +',
        negative: 'the name of the coil with -',
      });
    case 'titled':
      return mayLack(schema, { title: 'its id in words' });
    case 'rectangle':
      return z.union([schema, rectangle, sides]);
    case 'stretch':
      return z.union([schema, stretch]);
    case 'measure':
      return z.union([schema, measureOf(schema, form.field)]);
    case 'words':
      return z.enum([...wordsOf(schema), ...Object.keys(form.words)]);
  }
}

/** The one field of a thing that may stand for all of it. */
function measureOf(schema: z.ZodType, field: string): z.ZodType {
  const measure = fieldsOf(schema).get(field);
  if (!measure) throw new Error(`There is no field ${field}.`);
  return measure;
}

const byWhat = 'by what it does';
const byOutput = 'by output:';

/** What nothing goes without saying of, by what a control does: in words of JSON Schema. */
const neededByWhat = Object.entries(controlDefaults).map(([what, { form, safe, why }]) => {
  const needed = [
    ...(form === undefined ? ['form'] : []),
    ...(safe === undefined ? ['safe'] : []),
    ...(why === undefined && what !== 'crossover' ? ['why'] : []),
  ];
  return ifThen({ properties: { what: { const: what } } }, { required: needed });
});

const output = builders(
  z.union([text('CH1'), z.array(text('CH1')).min(1)]).optional(),
  'Its two outputs by the name of their pair, in place of positive: and negative:.',
  { example: 'CH1' },
);

const corners = z.strictObject({
  inset: builders(
    quantityWithin('length', { above: 0, most: 0.3 }),
    'Of holes in the four corners of the part: how far they lie from its edges.',
  ),
  diameter: builders(
    quantityWithin('length', { above: 0, most: 0.03 }),
    'Of holes in the four corners of the part: their diameter.',
  ),
});

const rectangle = z.strictObject({
  width: builders(quantityAbove('length'), 'Of a rectangle: from its left to its right edge.'),
  height: builders(quantityAbove('length'), 'Of a rectangle: from its lower to its upper edge.'),
});

const sides = builders(
  z
    .string({ error: 'needs its width and its height, such as 20 x 15 in' })
    .regex(/^\S.*[x×]\s*\d/, 'is no rectangle: write its width and its height, such as 20 x 15 in')
    .meta({
      examples: ['20 x 15 in'],
      pattern: String.raw`^(?:${quantityForm('length', 'bare')}|\d[\d ./]*?)\s*[x×]\s*${quantityForm('length', 'bare')}\s*$`,
    }),
  'Of a rectangle: its width and its height.',
);

const stretch = builders(
  z
    .string({ error: 'needs its zone and its length, such as sill 36 in' })
    .regex(/^[a-z-]+ +[\d.]/, 'is no stretch: write its zone and its length, such as sill 36 in')
    .meta({
      examples: ['sill 36 in'],
      pattern: String.raw`^(?:${zoneKindSchema.options.join('|')}) +${quantityForm('length', 'bare')}\s*$`,
    }),
  'A stretch that begins at no edge: its zone and its length.',
);

/** `8 AWG to 4 AWG`: its ends are read as those of the long form. */
function rangeText(schema: z.ZodType): z.ZodType {
  const from = fieldsOf(schema).get('from');
  const [low = '1', high = low] = from ? examplesOf(from) : [];
  const example = `${low} to ${high}`;
  const written = z
    .string({ error: `needs both ends of a range, such as ${example}` })
    .regex(/^(?!up to )\S.* to \S/, {
      error: ({ input }) => {
        const meant = from === undefined ? null : rangeMeant(input, from);
        return `is no range: write ${meant ?? `both ends, such as ${example}`}`;
      },
    });
  const form = from ? formOf(from) : null;
  const pattern = form === null ? {} : { pattern: String.raw`^${form}\s* to \s*${form}\s*$` };
  return builders(
    written.meta({ examples: [example], ...pattern }),
    'Both ends in one text, the smaller one first.',
  );
}

/** Where a range must have both ends, they are sizes: this is the thinnest conductor that is made here. */
const thinnest = '24 AWG';

/** A range that is written with a dash, `8-4 AWG`, or one value that is both its ends; null where it is neither. */
function rangeMeant(input: unknown, end: z.ZodType): string | null {
  if (typeof input !== 'string') return null;
  const reads = (text: string) => faultBy(end, text) === null;
  const [, most] = /^up to (.+)$/.exec(input.trim()) ?? [];
  if (most !== undefined && reads(most))
    return mayBeLeftOut(end)
      ? `{ to: ${most} }`
      : `the other end before it too, such as ${thinnest} to ${most}`;
  if (reads(input)) return `both ends, ${input} to ${input} where it is that alone`;
  const [, low = '', high = ''] =
    /^(.*?\d.*?)\s*(?:[-\u2013\u2014]|\.\.+)\s*(\d.*)$/.exec(input.trim()) ?? [];
  const unit = /\s*\D*$/.exec(high)?.[0] ?? '';
  const first = reads(low) ? low : `${low}${unit}`;
  return reads(first) && reads(high) ? `${first} to ${high}` : null;
}

/** How a value is written, for a text that holds several; null where it may be any text. */
function formOf(field: z.ZodType): string | null {
  const { pattern } = z.globalRegistry.get(writtenSide(field)) ?? {};
  return typeof pattern === 'string' ? pattern.replace(/^\^\\s\*|\\s\*\$$/g, '') : null;
}

/** A list of two fields as a table from one to the other. */
function tableOf(list: z.ZodType, key: string, value: string): z.ZodType {
  const inside = insideOf(list);
  const fields = inside.shape === 'list' ? fieldsOf(inside.element) : new Map<string, z.ZodType>();
  const [from, to] = [fields.get(key), fields.get(value)];
  if (!from || !to) throw new Error(`A list without ${key} and ${value} is no table.`);
  const examples = examplesOf(from);
  const name = z.string().check(faultless((written) => faultBy(from, written)));
  const form = formOf(from);
  const pattern = form === null ? {} : { pattern: String.raw`^\s*${form}\s*$` };
  const empty = `has nothing in it; write ${examples[0] ?? key}: ${examplesOf(to)[0] ?? value}`;
  return z
    .record(name.meta({ examples: [...examples], ...pattern }), to)
    .refine((table) => Object.keys(table).length > 0, empty)
    .meta({ minProperties: 1 });
}
