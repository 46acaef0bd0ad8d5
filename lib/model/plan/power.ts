import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { operatingPointNames, regimeNames } from '../operating-points.ts';
import { chosenSchema, fuseFormSchema } from '../vocabulary.ts';
import { planConductorSchema } from './conductors.ts';
import { operatingPointSchema } from './network.ts';

const number = builders(z.number());
const maybe = builders(z.number().optional());
const name = builders(z.string());

/** What the current of a short rests on: the maker's short-circuit current, a resistance that the part states, a house rule. */
const shortBasis = builders(z.enum(['maker', 'stated', 'assumed']));

export const fuseAlternativeSchema = z.object({
  form: builders(fuseFormSchema),
  ratingA: number,
  part: builders(z.string().nullable()),
  stockQuantity: number,
  /** What else must be fitted to use it, such as another holder. */
  parts: z.array(name),
  areaM2: number,
  note: name,
});

export const planFuseSchema = z.object({
  id: name,
  /** The item that holds it. */
  item: name,
  way: name,
  form: everyone(fuseFormSchema),
  /** Null where no lawful rating could be chosen; the finding says why. The packet tells what is put back. */
  ratingA: everyone(z.number().nullable()),
  part: builders(z.string().nullable()),
  interruptA: builders(z.number().nullable()),
  /** Whether its maker states that, or the house rule of its form stands in. */
  interruptBasis: builders(z.enum(['maker', 'assumed']).optional()),
  /** Fault current that it must interrupt as the first behind a battery; null behind another fuse, or where nobody states it. */
  needsInterruptA: builders(z.number().nullable()),
  /** Prospective current through it: replaced by a link without resistance, the worse of its ends shorted to the body. */
  faultA: builders(z.number().nullable().optional()),
  /** The end at which that short lies. */
  faultAt: builders(z.string().optional()),
  /** What each source drives through it then. */
  faultFrom: z.array(z.object({ source: name, currentA: number, basis: shortBasis })).optional(),
  /** By which wires and parts that arrives at it. */
  faultWays: z.array(z.object({ of: name, currentA: number })).optional(),
  /** What the batteries alone drive through it whose makers state their short-circuit current. */
  faultByMakersA: maybe,
  /** Batteries that reach it too, of which nobody states what they give: the figures above leave them out. */
  faultUnknown: z.array(name).optional(),
  /** Greatest fuse that its holder may carry. */
  holderA: builders(z.number().nullable()),
  from: name,
  to: name,
  /** The source whose fault current it must interrupt. */
  source: builders(z.string().nullable()),
  distanceM: builders(z.number().nullable()),
  protects: z.array(name),
  /** Current at rated power through it. */
  ratedA: number,
  /** Greatest current through it at the points that last, at the voltages that the devices get there, and at which. */
  continuousA: maybe,
  continuousAt: builders(z.string().optional()),
  ceilingA: builders(z.number().nullable()),
  leastAmpacityA: builders(z.number().nullable()),
  stockQuantity: number,
  chosen: builders(chosenSchema),
  reason: name,
  alternatives: z.array(fuseAlternativeSchema),
  /** Items whose current it carries. */
  loads: z.array(name),
});

export const chargingSchema = z.object({
  name: everyone(z.enum(regimeNames)),
  alternatorA: number,
  vehicleA: number,
  averageA: number,
  /**
   * Of the average what goes to each charger, as the battery behind it takes it up at that point, and what it draws from
   * there while that battery is run down and takes all that the charger gives.
   */
  chargers: z.array(z.object({ item: name, currentA: number, flatA: number })).optional(),
  marginA: number,
  /** What the batteries take up together; below zero they give. */
  batteryA: maybe,
  /** The packet tells how long the system may play with the engine off. */
  reserveMinutes: everyone(z.number().nullable()),
  /** Until every battery is charged again that was drained with the engine off; null where none was, or one takes nothing up. */
  rechargeMinutes: builders(z.number().nullable().optional()),
  /** How long each of them takes, and the isolating relays and chargers that it is charged through. */
  recharges: z
    .array(z.object({ battery: name, minutes: builders(z.number().nullable()), through: z.array(name) }))
    .optional(),
});

/** A part of what is lost on the way from the battery to a device and back. */
export const dropPartSchema = z.object({
  kind: builders(z.enum(['conductor', 'fuse', 'joint', 'body'])),
  /** The wire, fuse or joint's item that it is lost in. */
  of: name,
  /** Below zero where current of another device lifts it. */
  dropV: number,
});

/** The least and the greatest that a value may be; null where it is not known. */
const bandSchema = z.object({ from: number, to: number }).nullable();

/**
 * Voltage at one device at one operating point; drops from the battery that feeds it with the least loss. A drop to or
 * from a battery that the device is not joined to means nothing: it is null, and `unknown` says why.
 */
export const deviceDropSchema = z.object({
  point: builders(z.enum(operatingPointNames)),
  /** What the device draws there. */
  currentA: maybe,
  /** Between which values each lies by what the house rules leave open; at points that can be held beside a meter. */
  bands: z.object({ voltageV: bandSchema, feedDropV: bandSchema, groundDropV: bandSchema }).optional(),
  item: name,
  source: name,
  voltageV: number,
  feedDropV: builders(z.number().nullable()),
  groundDropV: builders(z.number().nullable()),
  /** Feed and ground together, of the sizing voltage. */
  share: builders(z.number().nullable()),
  unknown: builders(z.string().optional()),
  /** What other currents lift on the way (V): left out of the share. At rated power alone. */
  liftedV: maybe,
  /** The same on the ground side alone. */
  groundLiftedV: maybe,
  /** What feed and ground together are lost in, largest first; at rated power alone. */
  parts: z.array(dropPartSchema).optional(),
});

/** What is read at a part that joins batteries or stores charge, without a sign. */
export const sourceReadingSchema = z.object({
  item: name,
  what: builders(
    z.enum([
      'contact-current',
      'contact-drop',
      'contact-open',
      'contact-open-current',
      'output-voltage',
      'output-current',
      'input-current',
      'bank-charge',
    ]),
  ),
  /** The state that it is read in. */
  point: builders(z.enum(operatingPointNames)),
  /** The terminals that the probes touch, or the one whose leads the clamp goes round. */
  at: z.array(name),
  unit: builders(z.enum(['V', 'A'])),
  /** Null where nobody states what it would follow from. */
  value: builders(z.number().nullable()),
  band: bandSchema,
});

/** What one turn-on output drives. */
export const turnOnSchema = z.object({
  source: name,
  loads: z.array(z.object({ item: name, currentA: builders(z.number().nullable()) })),
  sumA: builders(z.number().nullable()),
  limitA: builders(z.number().nullable()),
  within: builders(z.boolean().nullable()),
});

/** What the added devices draw with everything switched off; null for one whose maker does not tell. */
export const keyOffSchema = z.object({
  items: z.array(z.object({ item: name, drawA: builders(z.number().nullable()) })),
  drawA: number,
  limitA: number,
});

/** How one device is turned on. */
export const turnOnStageSchema = z.object({
  item: name,
  terminal: name,
  /** The turn-on output or relay contact that drives it; null where none does. */
  driver: builders(z.string().nullable()),
  byRelay: builders(z.boolean()),
  /** 1 for what the source turns on itself, 2 for what that turns on, and so on; null where nothing drives it. */
  stage: builders(z.int().nullable()),
});

/** How the first power of a board on the bench is limited. */
export const firstPowerSchema = z.object({
  board: name,
  /** What its devices idle at together, and the limit of the supply. */
  ...{ idleA: number, limitA: number },
  /** True where that may pass the greatest limit: its devices get power one after the other. */
  oneByOne: builders(z.boolean()),
  /** What draws and is set onto the board in the vehicle only: it gets its first power there. */
  late: z.array(name).optional(),
  /** What turns itself on in the vehicle and so has no wire at its turn-on input: on the bench a lead brings it up. */
  byLead: z
    .array(
      z.object({
        item: name,
        terminal: name,
        /** Its switch for the turn-on, where it has one that is told. */
        control: builders(z.string().nullable()),
        /** Where the switch stands for a wired turn-on, and where it stands in the vehicle. */
        wired: builders(z.string().nullable()),
        automatic: builders(z.string().nullable()),
      }),
    )
    .optional(),
});

/** What fuses and relay contacts between batteries carry of the starter's current while it turns. */
export const crankingSchema = z.object({
  currentA: number,
  seconds: number,
  /** False where the house rules stand in for a measurement. */
  measured: builders(z.boolean()),
  /** By fuse, or by contact as `device.A>B`. */
  shares: z.array(z.object({ id: name, currentA: number })),
});

export const planPowerSchema = z.object({
  points: z.array(operatingPointSchema),
  drops: z.array(deviceDropSchema),
  /** None where no part joins batteries or stores charge. */
  sourceReadings: z.array(sourceReadingSchema).optional(),
  turnOn: z.array(turnOnSchema),
  turnOnChain: z.array(turnOnStageSchema),
  conductors: z.array(planConductorSchema),
  fuses: z.array(planFuseSchema),
  charging: z.array(chargingSchema),
  keyOff: keyOffSchema.optional(),
  firstPower: z.array(firstPowerSchema).optional(),
  /** None where the starter's battery stands alone. */
  cranking: crankingSchema.optional(),
  /** Current of each device. */
  loads: z.array(
    z.object({
      item: name,
      fuseA: number,
      ratedA: number,
      musicA: number,
      idleA: number,
      /** Of an amplifier: its average output with music, as a share of its rated output. */
      musicDuty: maybe,
      powerW: number,
      /** What stands for a figure that its maker does not give, in words. */
      assumed: z.array(name).optional(),
    }),
  ),
});

export type ShortBasis = z.output<typeof shortBasis>;
export type PlanFuse = z.output<typeof planFuseSchema>;
export type FuseAlternative = z.output<typeof fuseAlternativeSchema>;
export type PlanPower = z.output<typeof planPowerSchema>;
export type DropPart = z.output<typeof dropPartSchema>;
export type SourceReading = z.output<typeof sourceReadingSchema>;
export type DeviceDrop = z.output<typeof deviceDropSchema>;
export type PlanTurnOnStage = z.output<typeof turnOnStageSchema>;
export type PlanFirstPower = z.output<typeof firstPowerSchema>;
export type PlanTurnOn = z.output<typeof turnOnSchema>;
