import { z } from 'zod';
import type { DimensionName } from '../quantity/dimensions.ts';
import { writeQuantity } from '../quantity/quantity.ts';

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

/** The bounds of a quantity in words, `at least 5 Hz`; `nought` is how one at zero is called. */
export function boundWords(
  { dimension, above, least, most }: QuantityFacts,
  nought: string,
): readonly string[] {
  const bound = (word: string, value: number | undefined): readonly string[] =>
    value === undefined ? [] : [`${word} ${value === 0 ? nought : writeQuantity(value, dimension)}`];
  return [...bound('above', above), ...bound('at least', least), ...bound('at most', most)];
}
