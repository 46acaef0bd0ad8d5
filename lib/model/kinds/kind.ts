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
import { section } from '../writing/field-text.ts';
import { audible, boostLevel, edgeLengths, efficiency, signalVoltage, stripLength } from './bounds.ts';

/** One terminal of a part. */
export const terminalSpecSchema = z.strictObject({
  mark: builders(
    text('+12V').optional(),
    'What its maker printed beside it, where that is not its name here; `none` where nothing is printed, and drawings number it.',
    { example: '+12V', leftOut: 'its name is what is printed' },
  ),
  role: builders(
    terminalRoleSchema,
    'What the terminal is for. Which links fit it, which rules hold and where it is drawn follow from it.',
    { example: 'supply-positive' },
  ),
  panel: builders(
    panelSchema.optional(),
    'The panel that it lies on: an edge of the part before any turn, or the face away from the board.',
    { example: 'right', picture: 'panels', leftOut: 'the lower edge' },
  ),
  at: builders(
    quantity('length').optional(),
    'Where it lies along its panel: from the left end of an upper or lower edge, from the lower end of a left or right one.',
    { example: '5/8 in', picture: 'panels', leftOut: 'the middle of its panel' },
  ),
  joint: builders(
    jointSchema.default('plug'),
    'How a conductor is held at it. What goes on the end of the wire follows from it.',
    { example: 'set-screw' },
  ),
  takes: section(
    span(
      z
        .strictObject({
          from: builders(wireSize, 'The thinnest conductor.', { example: '8 AWG' }),
          to: builders(wireSize, 'The thickest conductor.', { example: '4 AWG' }),
        })
        .refine(isRisingSize, runsDownwards),
    ).optional(),
    'The smallest and the largest conductor that its maker allows in it.',
  ),
  stud: builders(studSchema.optional(), 'Size of its stud or bolt. The hole of a lug follows from it.', {
    example: 'M8',
  }),
  torque: builders(
    quantityWithin('torque', { above: 0, most: 100 }).optional(),
    'What its maker asks its screw or nut to be tightened to.',
    { example: '4 N m' },
  ),
  strip: builders(stripLength.optional(), 'How much insulation is stripped for it.', { example: '5/8 in' }),
  conductors: builders(countFromOne.default(1), 'How many conductors its maker allows in it.'),
  ferrule: builders(
    z.enum(['required', 'allowed', 'no']).default('allowed'),
    'Whether its maker asks for a ferrule on a stranded conductor, allows one, or forbids it.',
    { example: 'allowed' },
  ),
  current: builders(
    quantity('current').optional(),
    'The greatest current that it gives or carries: of a turn-on output, of a way of a block.',
    { example: '300 mA' },
  ),
  signal: builders(
    signalVoltage.optional(),
    'Of an output, its greatest clean voltage; of an input, the voltage for full output. RMS.',
    { example: '4 V' },
  ),
  'signal-range': section(
    span(
      z
        .strictObject({
          from: builders(signalVoltage, 'The least voltage that still gives full output.', {
            example: '0.25 V',
          }),
          to: builders(signalVoltage, 'The most that it takes without clipping.', { example: '6 V' }),
        })
        .refine(isRising, runsDownwards),
    ).optional(),
    'Of an input: from the least voltage for full output, gain fully up, to the most that it takes without clipping. RMS.',
  ),
});
export type TerminalSpec = z.output<typeof terminalSpecSchema>;
export type TerminalSpecs = Readonly<Record<string, TerminalSpec>>;

/** The filter that a control sets. Its shape by type and order; a knob that only moves the corner of a switch has none. */
const controlFilterSchema = z.strictObject({
  type: builders(filterTypeSchema.optional(), 'The shape of the filter.', { example: 'butterworth' }),
  order: builders(filterOrder.optional(), 'Its order: 1 is 6 dB per octave, 4 is 24 dB per octave.', {
    example: 2,
  }),
  passes: section(
    z.record(z.string(), builders(filterPassSchema)).optional(),
    'Of a switch: what each of its positions passes. A position that is not named lets everything through.',
    { name: 'HPF' },
  ),
  corner: builders(
    audible.optional(),
    'Of a switch without a knob for it: the frequency at which it always cuts.',
    { example: '80 Hz' },
  ),
  pass: builders(
    filterPassSchema.optional(),
    'Of a knob with a filter of its own, which is always in the path: what it passes.',
    { example: 'low-pass' },
  ),
  range: section(
    span(
      z
        .strictObject({
          from: builders(audible, 'The lowest corner.', { example: '50 Hz' }),
          to: builders(audible, 'The highest corner.', { example: '250 Hz' }),
        })
        .refine(isRising, runsDownwards),
    ).optional(),
    'Of a knob: its corner at one stop, and at the other.',
  ),
});

/** What a boost control raises: the level about one frequency. */
const controlBoostSchema = z.strictObject({
  centre: builders(audible, 'The frequency about which it raises the level.', { example: '45 Hz' }),
  range: section(
    span(
      z
        .strictObject({
          from: builders(boostLevel, 'At its lower stop.', { example: '0 dB' }),
          to: builders(boostLevel, 'At its upper stop.', { example: '12 dB' }),
        })
        .refine(isRising, runsDownwards),
    ),
    'What it raises, from one stop to the other.',
  ),
  q: builders(positiveNumber.optional(), 'Its sharpness, as its maker gives it.', { example: 1.4 }),
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
      'What the control does.',
      { example: 'gain' },
    ),
    form: builders(z.enum(['knob', 'switch', 'slide', 'menu']), 'What a hand finds there.', {
      example: 'knob',
    }),
    panel: builders(
      panelSchema,
      'The panel that it lies on: an edge of the part before any turn, or the face away from the board.',
      { example: 'left', picture: 'panels' },
    ),
    at: builders(quantity('length').optional(), 'Where it lies along its panel, measured as terminals are.', {
      example: '4 5/8 in',
      picture: 'panels',
    }),
    positions: builders(
      z.array(text('LPF')).optional(),
      'The positions of a switch, in the order in which the panel presents them.',
      { example: ['FULL', 'HPF', 'LPF'] },
    ),
    automatic: builders(
      z.array(text('AUTO')).optional(),
      'Of a switch for the turn-on: its positions in which the device turns itself on, by signal or by offset.',
      { example: ['AUTO'] },
    ),
    safe: builders(
      text('fully counter-clockwise'),
      'The state in which nothing can come to harm at first power-up.',
      { example: 'fully counter-clockwise' },
    ),
    why: builders(
      text('no signal passes until the gain is set with a meter'),
      'Why that state is the safe one. It is printed beside the preset.',
      { example: 'no signal passes until the gain is set with a meter' },
    ),
    channels: builders(
      names(z.array(text('1'))).optional(),
      'Names of the channels of its amplifier that it acts on.',
      { example: ['1', '2'], leftOut: 'all of them' },
    ),
    filter: section(
      controlFilterSchema.optional(),
      'The filter that it sets. A knob that only moves the corner of a switch gives its range alone.',
      { example: { range: { from: '50 Hz', to: '250 Hz' } } },
    ),
    boost: section(controlBoostSchema.optional(), 'What a boost control raises.'),
    final: builders(
      text('OPEN').optional(),
      'Its state after commissioning, where neither a reading nor a filter of the job decides.',
      { example: 'OPEN' },
    ),
  }),
  { form: 'control' },
);
export type ControlSpec = z.output<typeof controlSpecSchema>;
export type ControlSpecs = Readonly<Record<string, ControlSpec>>;

/** Fields of a part that is mounted on a board or in the vehicle. */
export const equipmentBase = {
  ...partBase,
  size: section(
    z.strictObject({
      width: builders(quantityAbove('length'), 'From left to right, seen from the mounting side.', {
        example: '10 in',
        picture: 'footprint',
      }),
      depth: builders(quantityAbove('length'), 'From its lower to its upper edge, in the same view.', {
        example: '6 1/2 in',
        picture: 'footprint',
      }),
      height: builders(
        quantityAbove('length'),
        'How far it stands off the board. Of a speaker, its mounting depth.',
        { example: '2 1/8 in', picture: 'footprint' },
      ),
    }),
    'Outside measures of its body, before any turn; plugs and knobs that stand out are not part of it.',
    { picture: 'footprint' },
  ),
  mass: builders(quantity('mass'), 'What it weighs.', { example: '3.2 kg' }),
  'mounting-holes': section(
    shortened(
      z.array(
        z.strictObject({
          x: builders(quantity('length'), 'To the middle of the hole from its left edge.', {
            example: '3/8 in',
            picture: 'footprint',
          }),
          y: builders(quantity('length'), 'To the middle of the hole from its lower edge.', {
            example: '3/8 in',
            picture: 'footprint',
          }),
          diameter: builders(quantityWithin('length', { above: 0, most: 0.03 }), 'Across the hole.', {
            example: '3/16 in',
          }),
        }),
      ),
      { form: 'corners' },
    ).default([]),
    'Its holes for screws, in its own footprint.',
    { picture: 'footprint' },
  ),
  air: section(edgeLengths.optional(), 'Air that its maker asks for at each edge.', {
    example: { top: '2 in', bottom: '2 in' },
    leftOut: '{gap-fins} at fins, {gap-fan} at a fan',
    picture: 'footprint',
  }),
  cooling: builders(
    z.record(edgeSchema, coolingSchema.optional()).optional(),
    'Which of its edges carry cooling fins or a fan.',
    { example: { top: 'fins', bottom: 'fins' }, picture: 'footprint' },
  ),
  terminals: section(
    rows(z.record(z.string(), terminalSpecSchema), { at: 'pitch', role: 'pairs' }),
    'Its terminals by their names, as links write them behind the dot: `amp.B+`.',
    { name: 'B+' },
  ),
  controls: section(
    rows(z.record(z.string(), controlSpecSchema), { at: 'pitch', channels: 'groups' }).default({}),
    'Its knobs, switches and slides by their names.',
    { name: 'GAIN-FRONT' },
  ),
  heat: builders(
    quantityWithin('power', { most: 5000 }).optional(),
    'Heat that it gives off at rated power, by its maker. The heat of a space is computed from what its devices draw.',
    { example: '110 W' },
  ),
  'most-ambient': builders(
    quantityWithin('temperature', { least: 20, most: 200 }).optional(),
    'The warmest air that its maker allows round it.',
    { example: '70 C', leftOut: '{most-ambient}' },
  ),
};

/** The supply voltages that a part is made for, lowest to highest, by its maker. */
export const supplyRangeSchema = span(
  z
    .strictObject({
      from: builders(quantityAbove('voltage'), 'The lowest voltage that it is made for.', {
        example: '10.5 V',
      }),
      to: builders(quantityAbove('voltage'), 'The highest voltage that it is made for.', { example: '16 V' }),
    })
    .refine(isRising, runsDownwards),
);

/** How an electronic device is fed. */
export const supplySchema = section(
  z.strictObject({
    range: section(supplyRangeSchema.optional(), 'The supply voltages that its maker made it for.', {
      leftOut: 'it counts as made for a 12 V system',
    }),
    type: builders(
      supplyTypeSchema,
      'How its current follows its voltage: `regulated` draws more as the voltage falls, `unregulated` less, about with its square.',
      { example: 'regulated' },
    ),
    fuse: builders(
      quantityAbove('current'),
      "The maker's fuse for the whole device: a ceiling. Several fuses on its chassis add.",
      { example: '50 A' },
    ),
    'fuses-fitted': builders(
      count.max(8, 'is more than any device has; write how many fuses there are').default(0),
      'How many fuses sit in its own chassis. With one or more, the fuse before it protects the conductor alone.',
      { example: 2 },
    ),
    'cut-out': builders(
      quantity('voltage').optional(),
      'The voltage at its terminals below which it switches itself off.',
      { example: '10.5 V', leftOut: '{cut-out}' },
    ),
    idle: builders(quantity('current').optional(), 'What it draws switched on, with no signal.', {
      example: '1.1 A',
      leftOut: 'by its class, {idle-class-ab} or {idle-class-d}',
    }),
    draw: builders(quantity('current').optional(), 'The whole draw of a device that drives no speakers.', {
      example: '0.9 A',
    }),
    'amplifier-class': builders(
      z.enum(['class-ab', 'class-d', 'bass-class-d']).optional(),
      'What its output stage is. Efficiency and idle draw follow from it where its maker is silent.',
      { example: 'class-d' },
    ),
    efficiency: section(
      z
        .strictObject({
          full: builders(efficiency, 'At rated power.', { example: '75 %' }),
          eighth: builders(efficiency, 'At an eighth of rated power, as music draws it.', {
            example: '55 %',
          }),
        })
        .refine(
          ({ full, eighth }) => full >= eighth,
          'has less at full power than at an eighth: no amplifier does; they are swapped',
        )
        .optional(),
      'Output over input, as its maker measured it.',
      { leftOut: 'by its class: house rules' },
    ),
    'turn-on-draw': builders(
      quantity('current').optional(),
      'What its turn-on terminal draws. The draws on one output are summed against what that output gives.',
      { example: '60 mA' },
    ),
    'key-off': builders(quantity('current').optional(), 'What it draws with everything switched off.', {
      example: '1.5 mA',
    }),
  }),
  'How it is fed from the 12 V network.',
);
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
