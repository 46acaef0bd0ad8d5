import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { findingSchema } from '../finding.ts';
import { traceSchema } from '../trace.ts';
import {
  jobStatusSchema,
  largerPaperSchema,
  paperSchema,
  unitsSchema,
  vehicleSideSchema,
  zoneKindSchema,
} from '../vocabulary.ts';
import { planAudioSchema } from './audio.ts';
import { planBoardSchema, planOffCutSchema } from './board.ts';
import { planBuiltSchema } from './built.ts';
import { planFormat } from './format.ts';
import { planHeatSchema } from './heat.ts';
import { planHouseRuleSchema } from './house-rule.ts';
import { planItemSchema } from './items.ts';
import { planJointSchema } from './joints.ts';
import { pickBeyondSchema, pickSchema } from './pick.ts';
import { planPowerSchema } from './power.ts';
import { planProposalSchema } from './proposal.ts';
import {
  measurementSchema,
  planBranchSchema,
  planCableSchema,
  planControlSchema,
  planRunSchema,
  planTerminalSchema,
  planWireSchema,
  scheduleSchema,
  stepSchema,
} from './wiring.ts';

/**
 * The plan document: everything that sheets, drawings, exports and search are made from. SI throughout,
 * or the unit in the name. Ids come from the names in the job, never from counters. No private value.
 */
export const buildPlanSchema = z.object({
  rackleaf: everyone(z.literal(1)),
  /** Format of this document: see `planFormat`. */
  format: everyone(z.literal(planFormat)),
  job: z.object({
    id: everyone(z.string()),
    title: everyone(z.string()),
    revision: everyone(z.string()),
    status: everyone(jobStatusSchema),
    issuedOn: everyone(z.string()),
    drawnBy: builders(z.string().nullable()),
    approvedBy: builders(z.string().nullable()),
    fabricator: builders(z.string().nullable()),
    notes: z.array(builders(z.string())),
    revisions: z.array(
      z.object({ revision: everyone(z.string()), date: everyone(z.string()), what: builders(z.string()) }),
    ),
  }),
  shop: z.object({
    name: everyone(z.string()),
    address: z.array(everyone(z.string())),
    units: builders(unitsSchema),
    fraction: builders(z.union([z.literal(16), z.literal(32)])),
    paper: builders(paperSchema),
    largerPaper: builders(largerPaperSchema.nullable().default(null)),
    siteUrl: builders(z.string().nullable()),
    /** False where nobody has counted the shelf; left out where it was counted, and in older plans. */
    stockCounted: builders(z.boolean().optional()),
    /** What the shop warranted and asked when this was planned; a plan from before has none. */
    warranty: z.array(everyone(z.string())).optional(),
    terms: z.array(everyone(z.string())).optional(),
  }),
  vehicle: z.object({
    id: everyone(z.string()),
    title: everyone(z.string()),
    cautions: z.array(everyone(z.string())),
    /** The ground points that the job's wires end at. */
    grounds: z
      .array(
        z.object({
          id: builders(z.string()),
          zone: builders(zoneKindSchema),
          side: builders(vehicleSideSchema),
          /** True where nobody told the side: it counts as the middle until it is seen. */
          sideOpen: builders(z.boolean().optional()),
        }),
      )
      .optional(),
  }),
  /** Every house rule that it was made by; none in a plan frozen before they were kept. */
  rules: z.array(planHouseRuleSchema).default([]),
  /** What the job leaves out and rules propose; none in a plan frozen before there were any. */
  proposals: z.array(planProposalSchema).optional(),
  /** What stays of the released revision before this one; left out of a first one. */
  built: planBuiltSchema.optional(),
  findings: z.array(findingSchema),
  traces: z.record(z.string(), traceSchema),
  items: z.array(planItemSchema),
  power: planPowerSchema,
  audio: planAudioSchema,
  boards: z.array(planBoardSchema),
  /** How warm each space with boards gets. */
  heat: z.array(planHeatSchema).default([]),
  /** Off-cuts on the shelf of the sheets that are cut. */
  offCuts: z.array(planOffCutSchema).default([]),
  wires: z.array(planWireSchema),
  runs: z.array(planRunSchema),
  branches: z.array(planBranchSchema),
  /** Wires that are joined to others before a port; left out where there is none, and in older plans. */
  joints: z.array(planJointSchema).optional(),
  cables: z.array(planCableSchema),
  terminals: z.array(planTerminalSchema),
  controls: z.array(planControlSchema),
  measurements: z.array(measurementSchema),
  steps: z.array(stepSchema),
  schedule: scheduleSchema,
  pick: z.array(pickSchema),
  pickBeyond: pickBeyondSchema.optional(),
  /** Rounds of the loop between size and length. */
  passes: builders(z.int().positive()),
});
export type BuildPlan = z.output<typeof buildPlanSchema>;

/** JSON Schema of the plan document (draft 2020-12), from the same definition as the types. */
export function planJsonSchema(): unknown {
  return z.toJSONSchema(buildPlanSchema, { io: 'output' });
}

/** True where a finding stops the job, so that its sheets are a draft. */
export function isStopped(plan: Pick<BuildPlan, 'findings'>): boolean {
  return plan.findings.some((finding) => finding.level === 'stop');
}

export * from './audio.ts';
export * from './board.ts';
export * from './built.ts';
export * from './conductors.ts';
export * from './format.ts';
export * from './heat.ts';
export * from './house-rule.ts';
export * from './items.ts';
export * from './joints.ts';
export * from './network.ts';
export * from './pick.ts';
export * from './power.ts';
export * from './proposal.ts';
export * from './wiring.ts';
