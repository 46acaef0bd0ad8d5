import { z } from 'zod';
import { builders } from '../audience.ts';
import { markSchema } from '../trace.ts';

/** A house rule as a plan was made by it, in SI. */
export const planHouseRuleSchema = z.object({
  name: builders(z.string()),
  says: builders(z.string()),
  value: builders(z.number()),
  /** SI unit, empty for a share or a count. */
  unit: builders(z.string()),
  /** True where the shop set it, false where its default stands. */
  given: builders(z.boolean()),
  /** Its default. */
  standard: builders(z.number()),
  /** The source of the default. */
  citation: builders(z.string()),
  mark: builders(markSchema.optional()),
});
export type PlanHouseRule = z.output<typeof planHouseRuleSchema>;
