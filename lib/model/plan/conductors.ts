import { z } from 'zod';
import { builders } from '../audience.ts';
import { actingLevelSchema } from '../finding.ts';
import { markSchema } from '../trace.ts';
import { chosenSchema, conductorMaterialSchema, conductorRoleSchema, lossSideSchema } from '../vocabulary.ts';

const number = builders(z.number());
const name = builders(z.string());

/** A conductor size as the plan prints it. */
export const planSizeSchema = z.object({
  label: name,
  awg: builders(z.string().nullable()),
  areaMm2: number,
});

/** One limit that a conductor was held against. */
export const conductorLimitSchema = z.object({
  what: name,
  zone: builders(z.string().optional()),
  value: number,
  limit: number,
  unit: name,
  level: builders(actingLevelSchema),
  citation: name,
  /** How far the factors on the way to the limit may be relied on. */
  mark: builders(markSchema.optional()),
});

export const planConductorSchema = z.object({
  /** A wire's id. */
  id: name,
  from: name,
  to: name,
  role: builders(conductorRoleSchema),
  size: planSizeSchema,
  material: builders(conductorMaterialSchema),
  insulationC: number,
  lengthM: number,
  ampacityA: number,
  cautionA: number,
  limits: z.array(conductorLimitSchema),
  /** Ids of the fuses that protect it. */
  fuses: z.array(name),
  /** False for a feed that no source reaches. */
  fed: builders(z.boolean()),
  /** What it must be able to carry, from its fuses. */
  neededA: number,
  chosen: builders(chosenSchema),
  reason: name,
  /** A thinner cable that carries the fuse too, and is passed over since no length on the shelf is long enough. */
  shortOf: z.object({ part: name, size: planSizeSchema }).optional(),
  /** For what drop it is larger than its fuse asks, and what it would be for its fuse alone. */
  grown: z
    .object({
      from: planSizeSchema,
      /** The last size that was too thin, what the device would lose with it and what is allowed. */
      with: planSizeSchema,
      item: name,
      side: builders(lossSideSchema),
      lostV: number,
      allowedV: number,
    })
    .optional(),
  /** Cables that would be lawful where the given one does not carry its fuse. */
  alternatives: z
    .array(z.object({ part: name, size: planSizeSchema, ampacityA: number, stockM: number, note: name }))
    .optional(),
});

export type PlanConductor = z.output<typeof planConductorSchema>;
export type ConductorLimit = z.output<typeof conductorLimitSchema>;
export type PlanSize = z.output<typeof planSizeSchema>;
