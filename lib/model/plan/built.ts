import { z } from 'zod';
import { builders } from '../audience.ts';

/** What a revision has of the released one that it is built on. */
export const planBuiltSchema = z.object({
  revision: builders(z.string()),
  /** Ids of devices, `place of` them, boards and wires that stay as they are built. */
  unchanged: builders(z.array(z.string())),
  /** What is otherwise: as it was, and as it is to be. */
  changed: z.array(
    z.object({ id: builders(z.string()), was: builders(z.string()), is: builders(z.string()) }),
  ),
});
export type PlanBuilt = z.output<typeof planBuiltSchema>;
