import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import {
  conductorRoleSchema,
  edgeSchema,
  panelSchema,
  terminalRoleSchema,
  vehicleSideSchema,
  zoneKindSchema,
} from '../vocabulary.ts';
import { planSizeSchema } from './power.ts';

const number = builders(z.number());
const maybe = builders(z.number().optional());
const orNull = builders(z.number().nullable());
const name = builders(z.string());

/** A device as the sheets show it: enough of its part to draw and list it years later. */
export const planItemSchema = z.object({
  id: name,
  part: builders(z.string().nullable()),
  kind: name,
  title: everyone(z.string()),
  partTitle: everyone(z.string()),
  origin: everyone(z.enum(['job', 'vehicle'])),
  board: builders(z.string().nullable()),
  seat: builders(z.string().nullable()),
  seatTitle: builders(z.string().nullable()),
  zone: builders(zoneKindSchema),
  side: builders(vehicleSideSchema),
  massKg: orNull,
  widthM: orNull,
  depthM: orNull,
  heightM: orNull,
  cooling: builders(z.partialRecord(edgeSchema, z.enum(['fins', 'fan']))),
  terminals: z.array(
    z.object({
      name,
      role: builders(terminalRoleSchema),
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
    }),
  ),
});

export const wireEndSchema = z.object({
  /** `amp-front.B+`. */
  terminal: name,
  prep: name,
  part: builders(z.string().nullable()),
  stripM: orNull,
  torqueNm: maybe,
  loopM: number,
  /** Heat-shrink over the barrel of a lug and the end of the insulation; no part where none fits. */
  shrink: z.object({ part: builders(z.string().nullable()), lengthM: number }).optional(),
});

export const planWireSchema = z.object({
  id: name,
  /** The link of the job that it comes from. */
  link: name,
  label: name,
  origin: builders(z.enum(['job', 'vehicle'])),
  from: name,
  to: name,
  role: builders(conductorRoleSchema),
  size: planSizeSchema,
  colour: builders(z.string().nullable()),
  lengthM: number,
  /** How the length came about: `given`, or the sum that was measured. */
  measured: name,
  /** The reel, or null for what the vehicle came with or a cable holds. */
  part: builders(z.string().nullable()),
  cable: builders(z.string().optional()),
  conductor: builders(z.string().optional()),
  board: builders(z.string().nullable()),
  run: builders(z.string().nullable()),
  zones: z.array(z.object({ zone: builders(zoneKindSchema), lengthM: number, edge: builders(z.boolean()) })),
  covering: builders(z.array(z.string())),
  ends: z.tuple([wireEndSchema, wireEndSchema]),
});

/** Wires that go through the vehicle together. */
export const planRunSchema = z.object({
  id: name,
  route: name,
  title: name,
  side: builders(vehicleSideSchema),
  wires: z.array(name),
  lengthM: number,
  /** Diameter of all that lies in it. */
  bundleM: number,
  covering: builders(z.string().nullable()),
  /** Zone by zone: what covers the bundle there, and why; ties or clips on it. */
  passes: z
    .array(
      z.object({
        zone: builders(zoneKindSchema),
        lengthM: number,
        covering: builders(z.string().nullable()),
        chosen: builders(z.enum(['given', 'computed'])),
        reason: name,
        tie: builders(z.string().nullable()),
        ties: builders(z.int()),
      }),
    )
    .optional(),
  /** One for each sharp edge on the way; no part where the catalogue has none that fits. */
  grommets: z.array(
    z.object({ zone: builders(zoneKindSchema), holeM: orNull, part: builders(z.string().nullable()) }),
  ),
});

export const planCableSchema = z.object({
  id: name,
  part: name,
  lengthM: number,
  /** Conductors with the wire each carries; null for a spare. */
  conductors: z.array(
    z.object({ name, colour: name, size: planSizeSchema, wire: builders(z.string().nullable()) }),
  ),
});

export const planTerminalSchema = z.object({
  item: name,
  terminal: name,
  wires: builders(z.array(z.string())),
  state: builders(z.enum(['connected', 'open', 'unaccounted'])),
  reason: builders(z.string().optional()),
});

export const planControlSchema = z.object({
  item: name,
  control: name,
  preset: name,
  why: name,
  chosen: builders(z.enum(['given', 'computed'])),
  safe: builders(z.boolean()),
});

export const pickSchema = z.object({
  part: name,
  title: name,
  kind: name,
  quantity: number,
  /** `piece`, or `m` for what is cut from a reel. */
  unit: builders(z.enum(['piece', 'm'])),
  stockQuantity: number,
  /** How many are missing; for a reel, the length that no single reel covers. */
  short: number,
});

export const measurementSchema = z.object({
  id: name,
  what: name,
  predicted: orNull,
  unit: name,
  asBuilt: builders(z.number().optional()),
  state: builders(z.enum(['open', 'agrees', 'differs'])),
});

export const stepSchema = z.object({
  id: name,
  layer: name,
  place: name,
  after: builders(z.array(z.string())),
  text: name,
  tools: builders(z.array(z.string())),
  minutes: number,
  installs: builders(z.array(z.string())),
  acts: builders(z.array(z.string())),
  proof: name,
});

export type PlanItem = z.output<typeof planItemSchema>;
export type PlanWire = z.output<typeof planWireSchema>;
export type WireEnd = z.output<typeof wireEndSchema>;
export type PlanRun = z.output<typeof planRunSchema>;
export type PlanPass = NonNullable<PlanRun['passes']>[number];
export type PlanCable = z.output<typeof planCableSchema>;
export type PlanTerminal = z.output<typeof planTerminalSchema>;
export type PlanControl = z.output<typeof planControlSchema>;
export type PlanPick = z.output<typeof pickSchema>;
export type PlanMeasurement = z.output<typeof measurementSchema>;
export type PlanStep = z.output<typeof stepSchema>;
