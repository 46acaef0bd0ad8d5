import { z } from 'zod';
import { builders } from '../audience.ts';
import { partBase } from '../content/part-base.ts';
import {
  count,
  countFromOne,
  isRising,
  isRisingSize,
  positiveNumber,
  quantity,
  quantityAbove,
  quantityWithin,
  runsDownwards,
  text,
  wireSize,
} from '../fields.ts';
import { names, rows, shortened, span } from '../short-forms/short-form.ts';
import type { Edge, SupplyType } from '../vocabulary.ts';
import {
  coolingSchema,
  edgeSchema,
  filterOrder,
  filterPassSchema,
  filterTypeSchema,
  jointSchema,
  panelSchema,
  studSchema,
  supplyTypeSchema,
  terminalRoleSchema,
} from '../vocabulary.ts';
import { audible, boostLevel, edgeLengths, efficiency, signalVoltage, stripLength } from './bounds.ts';

/** One terminal of a part. */
export const terminalSpecSchema = z.strictObject({
  /** What its maker printed beside it, where that is not its name here; `none`: nothing, and drawings number it. */
  mark: builders(text('+12V').optional()),
  role: builders(terminalRoleSchema),
  panel: builders(panelSchema.optional()),
  /** Along its panel, from the left end of a top or bottom edge, from the lower end of a left or right one. */
  at: builders(quantity('length').optional()),
  joint: builders(jointSchema.default('plug')),
  /** Smallest and largest conductor that it takes. */
  takes: span(
    z.strictObject({ from: builders(wireSize), to: builders(wireSize) }).refine(isRisingSize, runsDownwards),
  ).optional(),
  stud: builders(studSchema.optional()),
  torque: builders(quantityWithin('torque', { above: 0, most: 100 }).optional()),
  strip: builders(stripLength.optional()),
  /** Conductors that the maker allows in it; 1 unless told. */
  conductors: builders(countFromOne.default(1)),
  /** Whether its maker asks for a ferrule. */
  ferrule: builders(z.enum(['required', 'allowed', 'no']).default('allowed')),
  /** Greatest current that it gives or carries. */
  current: builders(quantity('current').optional()),
  /** Greatest clean signal voltage (outputs) or the voltage for full output (inputs). */
  signal: builders(signalVoltage.optional()),
  /** Of an input: the least voltage for full output, gain fully up, and the most that it takes without clipping. */
  'signal-range': span(
    z
      .strictObject({ from: builders(signalVoltage), to: builders(signalVoltage) })
      .refine(isRising, runsDownwards),
  ).optional(),
});
export type TerminalSpec = z.output<typeof terminalSpecSchema>;
export type TerminalSpecs = Readonly<Record<string, TerminalSpec>>;

/** The filter that a control sets. Its shape by type and order; a knob that only moves the corner of a switch has none. */
const controlFilterSchema = z.strictObject({
  type: builders(filterTypeSchema.optional()),
  order: builders(filterOrder.optional()),
  /** Of a switch: what each of its positions passes; a position that is not named lets everything through. */
  passes: z.record(z.string(), builders(filterPassSchema)).optional(),
  /** Of a switch without a knob for it: where it always cuts. */
  corner: builders(audible.optional()),
  /** Of a knob with a filter of its own, which is always in the path. */
  pass: builders(filterPassSchema.optional()),
  /** Of a knob: the corners from one stop to the other. */
  range: span(
    z.strictObject({ from: builders(audible), to: builders(audible) }).refine(isRising, runsDownwards),
  ).optional(),
});

/** What a boost control raises: the level about one frequency. */
const controlBoostSchema = z.strictObject({
  centre: builders(audible),
  /** From one stop to the other. */
  range: span(
    z.strictObject({ from: builders(boostLevel), to: builders(boostLevel) }).refine(isRising, runsDownwards),
  ),
  /** Its sharpness, where its maker gives it. */
  q: builders(positiveNumber.optional()),
});

/** One knob, switch or slide of a part. */
export const controlSpecSchema = shortened(
  z.strictObject({
    what: builders(
      z.enum([
        'gain',
        'crossover-mode',
        'crossover',
        'boost',
        'input-mode',
        'phase',
        'subsonic',
        'turn-on-mode',
        'ground-mode',
        'other',
      ]),
    ),
    form: builders(z.enum(['knob', 'switch', 'slide', 'menu'])),
    panel: builders(panelSchema),
    at: builders(quantity('length').optional()),
    /** The positions of a switch, in the order in which the panel presents them. */
    positions: builders(z.array(text('LPF')).optional()),
    /** Of a switch for the turn-on: its positions in which the device turns itself on, by signal or by offset. */
    automatic: builders(z.array(text('AUTO')).optional()),
    /** The safe state before first power-up. */
    safe: builders(text('fully counter-clockwise')),
    why: builders(text('no signal passes until the gain is set with a meter')),
    /** Names of the channels of its amplifier that it acts on; left out, all of them. */
    channels: builders(names(z.array(text('1'))).optional()),
    filter: controlFilterSchema.optional(),
    boost: controlBoostSchema.optional(),
    /** Its state after commissioning, where neither a reading nor a filter of the job decides. */
    final: builders(text('OPEN').optional()),
  }),
  { form: 'control' },
);
export type ControlSpec = z.output<typeof controlSpecSchema>;
export type ControlSpecs = Readonly<Record<string, ControlSpec>>;

/** Fields of a part that is mounted on a board or in the vehicle. */
export const equipmentBase = {
  ...partBase,
  size: z.strictObject({
    width: builders(quantityAbove('length')),
    depth: builders(quantityAbove('length')),
    height: builders(quantityAbove('length')),
  }),
  mass: builders(quantity('mass')),
  'mounting-holes': shortened(
    z.array(
      z.strictObject({
        x: builders(quantity('length')),
        y: builders(quantity('length')),
        diameter: builders(quantityWithin('length', { above: 0, most: 0.03 })),
      }),
    ),
    { form: 'corners' },
  ).default([]),
  /** Air that the maker asks for at each edge; the house rule applies where it is silent. */
  air: edgeLengths.optional(),
  /** Edges that carry cooling fins or a fan. */
  cooling: builders(z.record(edgeSchema, coolingSchema.optional()).optional()),
  terminals: rows(z.record(z.string(), terminalSpecSchema), { at: 'pitch', role: 'pairs' }),
  controls: rows(z.record(z.string(), controlSpecSchema), { at: 'pitch', channels: 'groups' }).default({}),
  /** What the part tells its surroundings: watts of heat at rated power. */
  heat: builders(quantityWithin('power', { most: 5000 }).optional()),
  /** The warmest air that its maker allows round it; the house rule applies where it is silent. */
  'most-ambient': builders(quantityWithin('temperature', { least: 20, most: 200 }).optional()),
};

/** The supply voltages that a part is made for, lowest to highest, by its maker. */
export const supplyRangeSchema = span(
  z
    .strictObject({ from: builders(quantityAbove('voltage')), to: builders(quantityAbove('voltage')) })
    .refine(isRising, runsDownwards),
);

/** How an electronic device is fed. */
export const supplySchema = z.strictObject({
  /** Where its maker is silent it counts as made for a 12 V system. */
  range: supplyRangeSchema.optional(),
  type: builders(supplyTypeSchema),
  /** The maker's fuse for the device: a ceiling. Several fuses on the chassis add. */
  fuse: builders(quantityAbove('current')),
  'fuses-fitted': builders(
    count.max(8, 'is more than any device has; write how many fuses there are').default(0),
  ),
  'cut-out': builders(quantity('voltage').optional()),
  idle: builders(quantity('current').optional()),
  /** Whole draw of a device that does not drive speakers. */
  draw: builders(quantity('current').optional()),
  'amplifier-class': builders(z.enum(['class-ab', 'class-d', 'bass-class-d']).optional()),
  efficiency: z
    .strictObject({ full: builders(efficiency), eighth: builders(efficiency) })
    .refine(
      ({ full, eighth }) => full >= eighth,
      'has less at full power than at an eighth: no amplifier does; they are swapped',
    )
    .optional(),
  'turn-on-draw': builders(quantity('current').optional()),
  /** Draw with everything switched off. */
  'key-off': builders(quantity('current').optional()),
});
export type Supply = z.output<typeof supplySchema>;

/** What drives current into the network: only a battery gives it for long with the engine off. */
export type SourceType = 'battery' | 'alternator' | 'charger' | 'capacitor-bank';

/** A part of the network that stands between two terminals of a part. */
export type PartElement =
  | {
      readonly kind: 'source';
      readonly from: string;
      readonly to: string;
      readonly source: SourceType;
    }
  | { readonly kind: 'fuse'; readonly from: string; readonly to: string; readonly way: string }
  | {
      readonly kind: 'joint';
      readonly from: string;
      readonly to: string;
      readonly ohm?: number;
      /** When it joins its ends; always where left out. */
      readonly closed?: 'engine-on';
    }
  | { readonly kind: 'load'; readonly from: string; readonly to: string; readonly type: SupplyType };

/** The space that a part takes on a board. Edges and positions before any turn. */
export interface Footprint {
  readonly widthM: number;
  readonly depthM: number;
  readonly heightM: number;
  readonly massKg: number;
  readonly holes: readonly { readonly xM: number; readonly yM: number; readonly diameterM: number }[];
  readonly airM: Readonly<Partial<Record<Edge, number>>>;
  readonly cooling: Readonly<Partial<Record<Edge, 'fins' | 'fan' | undefined>>>;
}

/** What the project needs to know of one kind of part. One file a kind; the table in `index.ts` is complete. */
export interface Kind<S extends z.ZodObject = z.ZodObject> {
  /** Plural name, as the parts index prints it. */
  readonly plural: string;
  readonly schema: S;
  terminals(part: z.output<S>): TerminalSpecs;
  controls(part: z.output<S>): ControlSpecs;
  footprint(part: z.output<S>): Footprint | null;
  elements(part: z.output<S>): readonly PartElement[];
}

/** A kind of part that is stock: cut, crimped or screwed, with no terminals of its own. */
export function stockKind<S extends z.ZodObject>(plural: string, schema: S): Kind<S> {
  return {
    plural,
    schema,
    terminals: () => ({}),
    controls: () => ({}),
    footprint: () => null,
    elements: () => [],
  };
}

type Equipment = z.output<z.ZodObject<typeof equipmentBase>>;

/** A kind of part that is mounted: its terminals, controls and footprint come from its own data. */
export function equipmentKind<S extends z.ZodObject<typeof equipmentBase>>(
  plural: string,
  schema: S,
  elements: (part: z.output<S>) => readonly PartElement[],
): Kind<S> {
  return {
    plural,
    schema,
    terminals: (part) => part.terminals,
    controls: (part) => part.controls,
    footprint: (part) => footprintOf(part),
    elements,
  };
}

/** The footprint of a mounted part, from its own data. */
export function footprintOf(part: Equipment): Footprint {
  return {
    widthM: part.size.width,
    depthM: part.size.depth,
    heightM: part.size.height,
    massKg: part.mass,
    holes: part['mounting-holes'].map((hole) => ({ xM: hole.x, yM: hole.y, diameterM: hole.diameter })),
    airM: part.air ?? {},
    cooling: part.cooling ?? {},
  };
}

/** The terminals of a role, in the order of the file. */
export function terminalsOf(terminals: TerminalSpecs, ...roles: readonly TerminalSpec['role'][]): string[] {
  return Object.keys(terminals).filter((name) => {
    const role = terminals[name]?.role;
    return role !== undefined && roles.includes(role);
  });
}

/** The load of a device between its supply terminals; none where it has not both. */
export function supplyElement(terminals: TerminalSpecs, type: SupplyType): readonly PartElement[] {
  const [from] = terminalsOf(terminals, 'supply-positive');
  const [to] = terminalsOf(terminals, 'supply-negative');
  return from && to ? [{ kind: 'load', from, to, type }] : [];
}
