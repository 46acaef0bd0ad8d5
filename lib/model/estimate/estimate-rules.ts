import { z } from 'zod';
import { shopOnly } from '../audience.ts';
import { quantityWithin } from '../fields.ts';
import { labourRate } from './labour-rate.ts';

/** `estimate:` of the shop file: what an estimate for the counter reckons with beside prices and times. */
export const estimateRulesSchema = z.strictObject({
  labour: shopOnly(
    labourRate.optional(),
    'What an hour of work is charged at, in the currency of the shop.',
    {
      example: '85 per h',
      leftOut: 'an estimate tells hours, and what parts cost',
    },
  ),
  markup: shopOnly(
    quantityWithin('ratio', { above: 0, most: 10 }).optional(),
    'What is put on the price that the shop pays for its parts.',
    { example: '30 %', leftOut: 'parts cost what the shop pays' },
  ),
  tax: shopOnly(
    quantityWithin('ratio', { above: 0, most: 1 }).optional(),
    'The tax that is put on the whole.',
    { example: '20 %', leftOut: 'none is reckoned' },
  ),
});
export type EstimateRules = z.output<typeof estimateRulesSchema>;
