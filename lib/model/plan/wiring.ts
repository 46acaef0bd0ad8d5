import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { valueOriginSchema } from '../trace.ts';
import {
  chosenSchema,
  conductorRoleSchema,
  conductorSignSchema,
  ifTooWideSchema,
  originSchema,
  panelSchema,
  vehicleSideSchema,
  workPlaceSchema,
  zoneKindSchema,
} from '../vocabulary.ts';
import { planSizeSchema } from './conductors.ts';

const number = builders(z.number());
const maybe = builders(z.number().optional());
const orNull = builders(z.number().nullable());
const name = builders(z.string());

/** How an end is made: what is crimped on it, or why nothing is. */
export const endForms = [
  'ferrule',
  'twin-ferrule',
  'lug',
  'crimp',
  'bare',
  'reducer',
  'solder',
  'made-up',
  'supplied-lead',
  'tap',
  'cut-lead',
  'joint',
  'as-fitted',
  'refused',
  'unknown',
] as const;

export const wireEndSchema = z.object({
  /** `amp-front.B+`. */
  terminal: name,
  prep: name,
  /** What `prep` says, in one word; older plans have no more than that. */
  form: builders(z.enum(endForms).optional()),
  part: builders(z.string().nullable()),
  stripM: orNull,
  torqueNm: maybe,
  loopM: number,
  /** Of a lug: the thread of its stud and the hole that goes over it. */
  stud: builders(z.string().optional()),
  holeM: maybe,
  /** What it is crimped with, where the terminal's maker tells. */
  die: builders(z.string().optional()),
  /** At a lead: which of the two, too thin for the splice, is stripped twice as far and folded back on itself. */
  folded: builders(z.enum(['lead', 'wire']).optional()),
  /** Of a ferrule that is named above what its port takes: what the end is given if it does not go in. */
  ifTooWide: builders(ifTooWideSchema.optional()),
  /** Heat-shrink over the barrel of a lug and the end of the insulation; no part where none fits. */
  shrink: z.object({ part: builders(z.string().nullable()), lengthM: number }).optional(),
});

export const planWireSchema = z.object({
  id: name,
  /** The link of the job that it comes from. */
  link: name,
  label: name,
  /** Of a speaker conductor; null for one that joins the minus of a coil to the plus of the next. */
  sign: builders(conductorSignSchema.nullable().optional()),
  origin: builders(originSchema),
  from: name,
  to: name,
  role: builders(conductorRoleSchema),
  size: planSizeSchema,
  /** Over its insulation. */
  diameterM: maybe,
  colour: builders(z.string().nullable()),
  lengthM: number,
  /** How the length came about: `given`, what rule proposed it, or the sum that was measured. */
  measured: name,
  /** Who says a length that is cut as it stands, with no loop added; none for a sum. */
  cutAs: builders(valueOriginSchema.optional()),
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
        /** True where it passes a sharp edge; left out in plans frozen before it was kept. */
        edge: builders(z.boolean().optional()),
        covering: builders(z.string().nullable()),
        chosen: builders(chosenSchema),
        reason: name,
        tie: builders(z.string().nullable()),
        ties: builders(z.int()),
      }),
    )
    .optional(),
  /** One for each sharp edge on the way; no part where the catalogue has none that fits. */
  grommets: z.array(
    z.object({
      zone: builders(zoneKindSchema),
      holeM: orNull,
      part: builders(z.string().nullable()),
      /** The hole that the grommet is made for; left out in plans frozen before it was kept. */
      madeForM: maybe,
      /** True where the vehicle's own grommet takes the bundle: nothing is opened and none is fitted. */
      own: builders(z.literal(true).optional()),
      /** True for the vehicle's own grommet whose bore nobody measured: whether the bundle goes through is not known. */
      unmeasured: builders(z.literal(true).optional()),
      /** Which stretch of the way begins with it, from 0; left out in plans frozen before it was kept. */
      stretch: builders(z.number().int().optional()),
      /** What lies behind a hole that is still to be drilled. */
      drilledBefore: builders(z.string().optional()),
      /** Other runs that go through the same hole. */
      beside: z.array(name).optional(),
    }),
  ),
});

/** Wires that share a terminal and a stretch of their run, and part ways. */
export const planBranchSchema = z.object({
  /** The link that leaves. */
  id: name,
  /** The link that it leaves. */
  from: name,
  terminal: name,
  /** Along the run, from the shared terminal to where they part. */
  partsAtM: number,
  legs: z.array(z.object({ wire: name, label: name, sharedM: number, ownM: number })),
  /** Which way round the labels must face, since the tied pair can't be turned over later. */
  facing: name,
});

export const planCableSchema = z.object({
  id: name,
  part: name,
  lengthM: number,
  /** Over its sheath, as its maker states it. */
  diameterM: maybe,
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
  /** What is set, and how it stands as delivered: the packet tells it. */
  item: everyone(z.string()),
  control: everyone(z.string()),
  preset: name,
  why: name,
  /** The state that is safe before first power-up. */
  safeState: name,
  panel: builders(panelSchema),
  /** Along its panel; null for a control that the part does not place. */
  atM: orNull,
  /** Its place in the order in which the panels of its item present the controls: 1 first. */
  order: builders(z.int()),
  chosen: builders(chosenSchema),
  safe: builders(z.boolean()),
  /** How it stands when the job is handed over. */
  final: z.object({
    /** Null where nothing tells. */
    state: everyone(z.string().nullable()),
    why: name,
    chosen: builders(chosenSchema),
    /** When it is set: with the presets where it stays as it is, otherwise while its step of commissioning is done. */
    during: builders(z.enum(['presets', 'filters', 'gains', 'delays'])),
  }),
});

export const measurementSchema = z.object({
  id: name,
  what: name,
  /** The packet tells some readings beside what was predicted, in words of its own. */
  predicted: everyone(z.number().nullable()),
  unit: everyone(z.string()),
  /** What a reading must lie between; null where nothing limits it on that side. */
  least: orNull,
  greatest: orNull,
  /** When it is read: before the plan stands, on the bench, before first power, before a bank's fuse goes in, with power, as set, and last. */
  when: builders(z.enum(['survey', 'bench', 'before-power', 'banks', 'power', 'gains', 'delays', 'load'])),
  asBuilt: everyone(z.number().optional()),
  state: builders(z.enum(['open', 'agrees', 'differs'])),
  /** Where to look for the cause of a reading that differs. */
  explanation: builders(z.string().nullable()),
});

export const stepSchema = z.object({
  id: name,
  layer: name,
  place: name,
  after: builders(z.array(z.string())),
  /** The same steps with the reason for each. */
  waitsFor: z.array(z.object({ step: name, why: name })),
  /** Whose hands it takes where two people work: the one at the board, the one in the vehicle, or both. */
  by: builders(workPlaceSchema),
  text: name,
  tools: builders(z.array(z.string())),
  minutes: number,
  /** When it begins at the earliest where two people work, in minutes from the start. */
  startMinute: number,
  /** True where the whole job takes longer if this step does. */
  critical: builders(z.boolean()),
  installs: builders(z.array(z.string())),
  acts: builders(z.array(z.string())),
  proof: name,
});

/** How long the order of work takes. */
export const scheduleSchema = z.object({
  /** One person, every step after the other. */
  totalMinutes: number,
  /** Two people, one at the board and one in the vehicle. */
  twoPersonMinutes: number,
  /** The longest chain of steps that wait for each other: no number of hands makes it shorter. */
  criticalMinutes: number,
  criticalPath: z.array(name),
  /** The times that it is reckoned with; `cp` where the shop has not written its own. */
  times: z.array(
    z.object({
      name,
      says: name,
      minutes: number,
      given: builders(z.boolean()),
      mark: builders(z.literal('cp').optional()),
    }),
  ),
});

export type PlanWire = z.output<typeof planWireSchema>;
export type WireEnd = z.output<typeof wireEndSchema>;
export type PlanRun = z.output<typeof planRunSchema>;
export type PlanPass = NonNullable<PlanRun['passes']>[number];
export type PlanBranch = z.output<typeof planBranchSchema>;
export type PlanCable = z.output<typeof planCableSchema>;
export type PlanTerminal = z.output<typeof planTerminalSchema>;
export type PlanControl = z.output<typeof planControlSchema>;
export type PlanMeasurement = z.output<typeof measurementSchema>;
export type PlanStep = z.output<typeof stepSchema>;
export type PlanSchedule = z.output<typeof scheduleSchema>;
