import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { count, extent, id, quantityAbove, text } from '../fields.ts';
import { houseRulesSchema } from '../house-rules.ts';
import { largerPaperSchema, paperSchema, unitsSchema } from '../vocabulary.ts';
import { workTimesSchema } from '../work-times.ts';

/** The format version that every file begins with. */
export const formatVersion = builders(
  z.literal(1, { error: 'must be 1: this is the only format version; begin the file with `rackleaf: 1`' }),
);

/** What is left of a sheet, by the name that is written on it: what is good of it, along the sides of the whole sheet. */
const offCutSchema = z.strictObject({
  width: builders(quantityAbove('length')),
  height: builders(quantityAbove('length')),
  pieces: builders(count.default(1)),
});

/** What lies on the shelf, by part id: pieces and, of a sheet, off-cuts; or the lengths left on each reel. */
const stockSchema = z.union([
  z.strictObject({ pieces: builders(count), 'off-cuts': z.record(id, offCutSchema).default({}) }),
  z.strictObject({ reels: builders(z.array(extent)) }),
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

/** `content/shop.yaml`: who the shop is, how it measures, its house rules and its stock. */
export const shopSchema = z.strictObject({
  rackleaf: formatVersion,
  name: everyone(text('Harbour Lane Audio')),
  address: everyone(z.array(text('12 Harbour Lane')).default([])),
  /** Where the built site will stand; feeds the QR codes. */
  'site-url': builders(
    z
      .url({ protocol: /^https?$/, error: ({ input }) => addressFault(input) })
      .meta({ examples: ['https://sheets.example/'] })
      .optional(),
  ),
  units: builders(unitsSchema.default('inch')),
  fraction: builders(z.union([z.literal(16), z.literal(32)]).default(16)),
  paper: builders(paperSchema.default('letter')),
  /** The largest sheet that the shop prints on, for the wiring of a board that the usual paper would cut; left out, the usual paper. */
  'larger-paper': builders(largerPaperSchema.optional()),
  rules: houseRulesSchema.default({}),
  /** How long the shop takes for a piece of work; left out, common practice. */
  times: workTimesSchema.default({}),
  stock: z.record(z.string(), stockSchema).default({}),
});
export type Shop = z.output<typeof shopSchema>;
export type Stock = z.output<typeof stockSchema>;
