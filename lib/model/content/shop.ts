import { z } from 'zod';
import { builders, everyone, shopOnly } from '../audience.ts';
import { estimateRulesSchema } from '../estimate/estimate-rules.ts';
import { count, extent, id, quantityAbove, text } from '../fields.ts';
import { houseRulesSchema } from '../house-rules.ts';
import { price } from '../shelf/price.ts';
import { largerPaperSchema, paperSchema, unitsSchema } from '../vocabulary.ts';
import { workTimesSchema } from '../work-times.ts';
import { section } from '../writing/field-text.ts';

/** The format version that every file begins with. */
export const formatVersion = builders(
  z.literal(1, { error: 'must be 1: this is the only format version; begin the file with `rackleaf: 1`' }),
);

/** What is left of a sheet, by the name that is written on it: what is good of it, along the sides of the whole sheet. */
const offCutSchema = z.strictObject({
  width: builders(quantityAbove('length'), 'What is good of it, along the width of the whole sheet.', {
    example: '20 in',
  }),
  height: builders(quantityAbove('length'), 'The same along its height.', { example: '14 in' }),
  pieces: builders(count.default(1), 'How many pieces of this size.'),
});

/** What lies on the shelf, by part id: pieces and, of a sheet, off-cuts; or the lengths left on each reel. */
const stockSchema = z.union([
  z.strictObject({
    pieces: builders(count, 'How many pieces lie on the shelf; of a sheet, whole ones.', { example: 3 }),
    'off-cuts': section(
      z.record(id, offCutSchema).default({}),
      'Of a sheet: what is left of others, by the name that is written on each.',
      { name: 'a1' },
    ),
  }),
  z.strictObject({
    reels: builders(z.array(extent), 'What is left on each reel, short ends included.', {
      example: ['42 ft', '8 ft'],
    }),
    'off-cuts': section(
      z.record(id, builders(quantityAbove('length'), 'How long it is.', { example: '6 ft' })).default({}),
      'Lengths that were cut off and left, by the name that is written on each. A cut comes from one where it reaches, before a reel is begun.',
      { name: 'c1', example: { c1: '6 ft' } },
    ),
  }),
]);

/** What is wrong with the address of a site; one without its scheme is told with it. */
function addressFault(input: unknown): string {
  const written = typeof input === 'string' ? input.trim() : '';
  const hasScheme = /^[a-z][a-z\d+.-]*:(?:\/\/|(?!\d))/i.test(written);
  const whole = `https://${written.replace(/^\/+/, '')}`;
  const isMeant = written !== '' && !hasScheme && !/\s/.test(written) && URL.canParse(whole);
  return isMeant
    ? `does not say how it is reached: write ${whole}, or http:// before it where the site has no certificate`
    : 'is not an address of a site: write it in full, such as https://sheets.example/';
}

/** A text of the shop for its customers: paragraphs in its own words. */
const paragraphs = (example: string) => z.array(everyone(text(example), 'A paragraph.', { example }));

/** What the shop says to the owner of a vehicle in its own words. Nothing is said for it where it is left out. */
const shopHandOverSchema = z.strictObject({
  telephone: everyone(
    text('555 0100').optional(),
    'The number that an owner calls when something stops. It stands in the packet.',
    { example: '555 0100', leftOut: 'the packet gives the address alone' },
  ),
  warranty: section(
    paragraphs('We mend what we built, parts and labour, for 12 months.').default([]),
    'What the shop warrants, for how long, and what ends it.',
    { leftOut: 'the packet says that the shop has written none' },
  ),
  terms: section(
    paragraphs('Prices are those of the day.').default([]),
    'Other terms that the owner signs under.',
    { leftOut: 'the packet says that the shop has written none' },
  ),
  care: section(
    paragraphs('Wipe the boards with a dry cloth.').default([]),
    'What the shop asks the owner to mind, after what the packet says of any system.',
    { leftOut: 'nothing is added' },
  ),
});

/** `content/shop.yaml`: who the shop is, how it measures, its house rules and its stock. */
export const shopSchema = z.strictObject({
  rackleaf: section(formatVersion, 'The format version. Every file begins with it.'),
  name: everyone(text('Harbour Lane Audio'), 'The name of the shop. It stands on every page.'),
  address: everyone(
    z.array(text('12 Harbour Lane')).default([]),
    'Its address, line by line. It stands under the name on every sheet.',
    { example: ['12 Harbour Lane'] },
  ),
  'site-url': builders(
    z
      .url({ protocol: /^https?$/, error: ({ input }) => addressFault(input) })
      .meta({ examples: ['https://sheets.example/'], pattern: String.raw`^\s*[hH][tT][tT][pP][sS]?:` })
      .optional(),
    'Where the built site will stand, in full. The codes on the sheets lead there.',
    { leftOut: 'sheets bear no code' },
  ),
  units: builders(
    unitsSchema.default('inch'),
    'What comes first on sheets. A file may always be written in either.',
  ),
  fraction: builders(
    z.union([z.literal(16), z.literal(32)]).default(16),
    'The part of an inch that a tape of the shop is read to.',
    { example: 16 },
  ),
  paper: builders(paperSchema.default('letter'), 'The paper that sheets are printed on.'),
  'larger-paper': builders(
    largerPaperSchema.optional(),
    'The largest paper that the shop prints on. The wiring of a board that the usual paper would cut stands on it as a whole.',
    { leftOut: 'the usual paper' },
  ),
  'hand-over': section(
    shopHandOverSchema.default({ warranty: [], terms: [], care: [] }),
    'What the shop says to the owner of a vehicle in its own words: it stands in the packet.',
    { example: { telephone: '555 0100', warranty: ['We mend what we built for 12 months.'] } },
  ),
  rules: section(
    houseRulesSchema.default({}),
    'House rules: what holds for every job. Each is a default that the shop may set for itself.',
    { example: { 'gap-parts': '3/4 in' } },
  ),
  times: section(workTimesSchema.default({}), 'How long the shop takes for a piece of work.', {
    example: { 'cut-board': '30 min' },
  }),
  currency: shopOnly(
    z
      .string({ error: 'needs three letters, such as EUR' })
      .regex(/^[A-Z]{3}$/, 'is no currency: write its three letters after ISO 4217, such as EUR')
      .optional(),
    'What its prices are in: three letters after ISO 4217.',
    { example: 'EUR', leftOut: 'there are no prices' },
  ),
  prices: section(
    z
      .record(
        z.string(),
        shopOnly(price, 'What is paid, and what for: each, a length, or so many.', {
          example: '1.85 per ft',
        }),
      )
      .default({}),
    'What the shop pays for its parts, by part. They stand on its own order list and estimates, and on no sheet of the bench or of a customer.',
    { example: { 'wire-4-rd': '1.85 per ft', 'bolt-m6-40': '14.50 per 100' } },
  ),
  'stock-counted': builders(
    z.boolean().default(true),
    'Whether the shelf was counted. `false`: what stands under `stock:` was written to begin with, and no sheet says that it is there.',
    { example: false },
  ),
  estimate: section(
    estimateRulesSchema.default({}),
    'What an estimate for the counter reckons with beside prices: the rate, what is put on parts, tax. For the shop alone.',
    { example: { labour: '85 per h', markup: '30 %', tax: '20 %' } },
  ),
  stock: section(
    z.record(z.string(), stockSchema).default({}),
    'What lies on the shelf, by part. Sizes, fuses and colours are chosen from it; what is not listed counts as none.',
    { example: { 'wire-4-rd': { reels: ['42 ft'] }, 'bolt-m6-40': { pieces: 20 } } },
  ),
});
export type Shop = z.output<typeof shopSchema>;
export type ShopHandOver = z.output<typeof shopHandOverSchema>;
export type Stock = z.output<typeof stockSchema>;
