import { z } from 'zod';
import { type FieldMore, withText } from './writing/field-text.ts';

/** Who a value is for: the fabricator at the bench, the customer with the packet, the shop's own records. */
export const audiences = ['bench', 'customer', 'shop'] as const;
export type Audience = (typeof audiences)[number];

const seenBy = z.registry<{ audiences: readonly Audience[] }>();

/** A leaf of a schema with its audience; of a file that people write, also with what it means. */
type Declare = <S extends z.ZodType>(schema: S, says?: string, more?: FieldMore) => S;

/**
 * Declares who may see a leaf of a schema. Apply it last: `optional()` and the like make a new schema,
 * which would belong to nobody. A leaf that was never declared is shown to nobody.
 */
export function shownTo(...list: Audience[]): Declare {
  return (schema, says, more = {}) => {
    const own = schema.clone();
    seenBy.add(own, { audiences: list });
    return says === undefined ? own : withText(own, says, more);
  };
}

/** Everyone: bench, customer and shop. */
export const everyone = shownTo('bench', 'customer', 'shop');
/** The people who build: bench and shop. */
export const builders = shownTo('bench', 'shop');
/** The shop's own records. */
export const shopOnly = shownTo('shop');
/** The shop and the customer whom the value is about. */
export const customerAndShop = shownTo('customer', 'shop');

/** The declared audiences of one schema; empty when none was declared. */
export function audiencesOf(schema: z.ZodType): readonly Audience[] {
  return seenBy.get(schema)?.audiences ?? [];
}
