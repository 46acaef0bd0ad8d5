import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import {
  bringerSchema,
  coolingSchema,
  edgeSchema,
  holdingSchema,
  offStopSchema,
  originSchema,
  panelSchema,
  terminalRoleSchema,
  vehicleSideSchema,
  zoneKindSchema,
} from '../vocabulary.ts';

const name = builders(z.string());
const orNull = builders(z.number().nullable());

/** A device as the sheets show it: enough of its part to draw and list it years later. */
export const planItemSchema = z.object({
  id: everyone(z.string()),
  part: builders(z.string().nullable()),
  kind: everyone(z.string()),
  title: everyone(z.string()),
  partTitle: everyone(z.string()),
  origin: everyone(originSchema),
  board: builders(z.string().nullable()),
  seat: builders(z.string().nullable()),
  /** Where it is in the vehicle: the customer must find the main fuse. */
  seatTitle: everyone(z.string().nullable()),
  /** The part and the side of the vehicle that it is in: whoever looks for a fuse or a battery must know. */
  zone: everyone(zoneKindSchema),
  side: everyone(vehicleSideSchema),
  /** True where nobody told the side: it counts as the middle until it is seen. */
  sideOpen: builders(z.boolean().optional()),
  /** Fuses in its own chassis: how many, and their sum. Of a unit of the vehicle none may be told: the one fuse is in it or before it. */
  ownFuses: z.object({ count: everyone(z.int()), ratingA: everyone(z.number()) }).optional(),
  /** True for a tap in a slot of a fuse panel of the vehicle: the fuse of the slot goes back into it, beside its own. */
  tap: everyone(z.literal(true).optional()),
  massKg: orNull,
  widthM: orNull,
  depthM: orNull,
  heightM: orNull,
  /** Who brings it, where that is not the shop. */
  broughtBy: builders(bringerSchema.optional()),
  /** What holds it on its board, where the job says so. */
  held: builders(holdingSchema.optional()),
  cooling: builders(z.partialRecord(edgeSchema, coolingSchema)),
  terminals: z.array(
    z.object({
      name,
      role: builders(terminalRoleSchema),
      /** What it is called on sheets, where that is not its name: the maker's mark, or `port 2` where there is none. */
      shown: builders(z.string().optional()),
      panel: builders(panelSchema.nullable()),
      atM: orNull,
    }),
  ),
  controls: z.array(
    z.object({
      name,
      what: name,
      form: name,
      panel: builders(panelSchema),
      atM: orNull,
      positions: builders(z.array(z.string())),
      /** The stop at which its OFF lies, of a knob that has one. */
      off: builders(offStopSchema.optional()),
    }),
  ),
});

export type PlanItem = z.output<typeof planItemSchema>;
