import { z } from 'zod';
import type { DimensionName } from '../quantity/dimensions.ts';

/** Bounds of a quantity in SI: one that it lies above, and those that it may reach. */
export interface Bounds {
  readonly above?: number | undefined;
  readonly least?: number | undefined;
  readonly most?: number | undefined;
}

/** What a written quantity may be: its dimension, and its bounds in SI. */
export interface QuantityFacts extends Bounds {
  readonly dimension: DimensionName;
}

const facts = z.registry<QuantityFacts>();

/** Writes down what the quantities of a schema may be; its copies and refinements have it from there. */
export function withFacts<S extends z.ZodType>(schema: S, known: QuantityFacts): S {
  facts.add(schema, known);
  return schema;
}

/** What a quantity may be by its schema; null for what is no quantity. */
export function quantityFacts(schema: z.ZodType): QuantityFacts | null {
  return facts.get(schema) ?? null;
}
