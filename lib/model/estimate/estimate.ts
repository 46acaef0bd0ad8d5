import { z } from 'zod';
import { shopOnly } from '../audience.ts';
import { traceSchema } from '../trace.ts';
import { shelfUnitSchema } from '../vocabulary.ts';

const name = shopOnly(z.string());
const minutes = shopOnly(z.number());
/** An amount in whole smallest units of the currency (ISO 4217: minor units). */
const minor = shopOnly(z.int());
const minorOrNull = shopOnly(z.int().nullable());

/** A part that the shop brings, as much of it as the job takes. */
const estimatePartSchema = z.object({
  part: name,
  title: name,
  kind: name,
  /** True for what is built in as a device; false for what is counted out of a box, cut from a reel or a sheet. */
  isDevice: shopOnly(z.boolean()),
  quantity: shopOnly(z.number()),
  /** `piece`, or `m` for what is cut from a reel. */
  unit: shopOnly(shelfUnitSchema),
  /** The price as the shop writes it; null where it states none. */
  price: shopOnly(z.string().nullable()),
  /** What that much costs; null without a price. */
  costMinor: minorOrNull,
});

/** What costs nothing, with who has it: the customer, the vehicle, or the box of another part. */
const freeOfCostSchema = z.object({
  title: name,
  part: shopOnly(z.string().nullable()),
  quantity: shopOnly(z.int()),
  from: shopOnly(z.enum(['customer', 'vehicle', 'box'])),
});

/** Hours of one layer of the order of work; null for those that were noted of the whole job. */
const layerHoursSchema = z.object({
  layer: shopOnly(z.string().nullable()),
  minutes,
  /** What was worked on it so far. */
  workedMinutes: minutes,
});

/** What one line of the sum costs. */
const sumLineSchema = z.object({
  of: shopOnly(z.enum(['parts', 'markup', 'labour', 'tax'])),
  minor,
});

/** An estimate for the counter. Each leaf of it is for the shop alone. */
export const estimateSchema = z.object({
  job: name,
  revision: name,
  /** True where a finding stops the job: what it takes may still change. */
  isStopped: shopOnly(z.boolean()),
  /** The revision that is built in beside which parts are counted; null where the job takes all of them. */
  beside: shopOnly(z.string().nullable()),
  /** ISO 4217; null where the shop states none, and nothing is told in money. */
  currency: shopOnly(z.string().nullable()),
  /** Decimals of the smallest unit of the currency. */
  decimals: shopOnly(z.int()),
  parts: z.array(estimatePartSchema),
  freeOfCost: z.array(freeOfCostSchema),
  hours: z.array(layerHoursSchema),
  estimatedMinutes: minutes,
  workedMinutes: minutes,
  /** The days on which somebody worked, as far as it is noted: the first, the last and how many; null for none. */
  days: z.object({ first: name, last: name, count: shopOnly(z.int()) }).nullable(),
  /** The rate as the shop writes it; null where it states none. */
  labour: shopOnly(z.string().nullable()),
  /** What the hours that were worked so far come to at the rate; null without one. */
  workedMinor: minorOrNull,
  /** Shares as the shop states them; null where it states none. */
  markup: shopOnly(z.number().nullable()),
  tax: shopOnly(z.number().nullable()),
  sum: z.array(sumLineSchema),
  /** The sum of these lines; null without a currency. */
  totalMinor: minorOrNull,
  /** True where a part has no price, or work no rate: the total is the least that it comes to. */
  isAtLeast: shopOnly(z.boolean()),
  traces: shopOnly(z.record(z.string(), traceSchema)),
});
export type Estimate = z.output<typeof estimateSchema>;
export type EstimatePart = Estimate['parts'][number];
export type FreeOfCost = Estimate['freeOfCost'][number];
export type LayerHours = Estimate['hours'][number];
export type SumLine = Estimate['sum'][number];
