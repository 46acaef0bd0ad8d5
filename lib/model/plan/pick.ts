import { z } from 'zod';
import { builders } from '../audience.ts';
import { bringerSchema, shelfUnitSchema } from '../vocabulary.ts';

const number = builders(z.number());
const maybe = builders(z.number().optional());
const name = builders(z.string());

/** What is fetched of one part, with what is there of it and what is short. */
export const pickSchema = z.object({
  part: name,
  title: name,
  kind: name,
  quantity: number,
  /** `piece`, or `m` for what is cut from a reel. */
  unit: builders(shelfUnitSchema),
  stockQuantity: number,
  /** The part in whose box it lies, supplied by the maker: it is none of the shelf's. */
  suppliedWith: builders(z.string().optional()),
  /** Who brings it: it is none of the shelf's. */
  broughtBy: builders(bringerSchema.optional()),
  /** How many are missing; for a reel, the length that no single reel covers. */
  short: number,
  /** What of it is promised to other jobs that are released and not built in: it is none of `stockQuantity`. */
  promised: z.array(z.object({ job: name, revision: name, quantity: number })).optional(),
  /** For what is cut: the lengths that the cuts come from, and what is left of each beside what is promised. */
  reels: z
    .array(
      z.object({
        /** The name that is written on an off-cut; left out for a reel. */
        offCut: builders(z.string().optional()),
        lengthM: number,
        /** What of it is promised to other jobs. */
        promisedM: maybe,
        cuts: builders(z.int()),
        /** The cuts themselves; left out in plans frozen before they were kept. */
        cutsM: z.array(number).optional(),
        leftM: number,
      }),
    )
    .optional(),
});

/** What a pick list of a later revision goes beside: the revision that is built in, and the parts that are all in place. */
export const pickBeyondSchema = z.object({
  revision: name,
  inPlace: z.array(z.object({ part: name, title: name })),
});

export type PlanPick = z.output<typeof pickSchema>;
