import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import {
  extent,
  fileId,
  id,
  quantity,
  quantityAbove,
  quantityWithin,
  stretch,
  terminalRef,
  text,
  wireSize,
} from '../fields.ts';
import { reserveEnd } from '../reserve-end.ts';
import { rows, shortened } from '../short-forms/short-form.ts';
import { systemVoltageField } from '../system-voltage.ts';
import {
  conductorMaterialSchema,
  directionSchema,
  edgeSchema,
  rowSchema,
  studSchema,
  vehicleSideSchema,
  zoneKindSchema,
} from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { outputsSchema } from './integration.ts';
import { formatVersion } from './shop.ts';

const xy = {
  x: builders(
    quantity('length'),
    'To its middle, or to the left edge of a rectangle, from the datum of the space to the right.',
    { example: '2 1/2 in', picture: 'space' },
  ),
  y: builders(quantity('length'), 'The same upwards, to its middle or to its lower edge.', {
    example: '2 1/2 in',
    picture: 'space',
  }),
};

/** A device that the vehicle came with, so that the far end of each wire exists. */
const fittedSchema = z.strictObject({
  part: builders(id, 'The part of the catalogue that it is.', { example: 'source-six-line' }),
  zone: builders(
    zoneKindSchema,
    'The zone of the vehicle that it lies in. How warm it is there follows from it.',
    { example: 'cabin' },
  ),
  side: builders(
    vehicleSideSchema.default('middle'),
    "The side of the vehicle that it lies on, seen from the driver's seat.",
    { example: 'left', picture: 'vehicle' },
  ),
  outputs: section(
    outputsSchema.default({}),
    'What its outputs give in this vehicle, by terminal or pair, as measured. It goes before what the part says.',
    { name: 'OUT1' },
  ),
  fuses: section(
    z.record(z.string(), builders(quantity('current'))).default({}),
    'Ratings of the fuses that it came with, as read off: by outgoing terminal, `fuse` for a holder.',
    { example: { fuse: '80 A' } },
  ),
  'reserve-end': builders(
    reserveEnd.optional(),
    'Of a battery: the charge at which its reserve ends. It goes before what its part says.',
    { example: '50 %', leftOut: 'as its part says, else {reserve-end}' },
  ),
  'left-open': section(
    rows(z.record(z.string(), builders(text('not used')))).default({}),
    'Terminals that no job in this vehicle touches, each with its reason.',
    { example: { 'B+': "fed by the vehicle's own harness" } },
  ),
});

/** What a bolt goes into: the weaker one where it is not told. `welded`: a nut or stud that takes as much as its bolt. */
const insertSchema = () => builders(z.enum(['rivet-nut', 'welded']).default('rivet-nut'));

/** A ground point of the body: where a ground lead may be bolted. */
const groundPointSchema = z.strictObject({
  zone: builders(zoneKindSchema, 'The zone of the vehicle that it lies in.', { example: 'under-carpet' }),
  side: builders(vehicleSideSchema.default('middle'), 'The side of the vehicle that it lies on.', {
    example: 'left',
    picture: 'vehicle',
  }),
  stud: builders(studSchema, 'The bolt or stud that is there, or that fits.', { example: 'M8' }),
  insert: section(
    insertSchema(),
    'What the bolt goes into. `welded` is a nut or a stud that takes as much torque as its bolt.',
  ),
  holds: builders(
    z
      .enum(['nothing-else', 'seat-belt', 'seat-frame', 'airbag', 'fuel-line', 'trim'])
      .default('nothing-else'),
    'What else the fastener holds. A ground is never put on some of them.',
    { example: 'seat-belt' },
  ),
});

/** No conductor or way in a vehicle is longer than a bus and back. */
const vehicleStretch = stretch.refine(
  (lengthM) => lengthM <= 50,
  'is above 50 m; check the number and its unit',
);

/** A conductor that the vehicle came with. */
const vehicleLinkSchema = z.strictObject({
  from: builders(
    terminalRef,
    'The terminal that it leaves: a fitted device, or `body.` with a ground point.',
    { example: 'starter-battery.NEG' },
  ),
  to: builders(terminalRef, 'The terminal that it goes to.', { example: 'body.engine' }),
  size: builders(wireSize, 'Size of its conductor, as printed on it or judged by its diameter.', {
    example: '2 AWG',
  }),
  material: builders(conductorMaterialSchema.default('copper'), 'What its conductor is made of.'),
  length: builders(vehicleStretch, 'Its length, measured along it.', { example: '20 in' }),
});

const obstacleSchema = z.strictObject({
  ...xy,
  width: builders(extent, 'Its width.', { example: '3 in', picture: 'space' }),
  height: builders(extent, 'Its height, upwards in the plane.', { example: '3/4 in', picture: 'space' }),
  'stands-out': builders(extent, 'How far it stands out from the mounting plane.', {
    example: '1 1/4 in',
    picture: 'space',
  }),
  what: builders(text('wheel-arch weld seam'), 'What it is, in words.', {
    example: 'seat wiring plug and its bracket',
  }),
});

const soundPointSchema = z.strictObject({
  ...xy,
  stud: builders(studSchema, 'The bolt that it takes.', { example: 'M6' }),
  insert: section(
    insertSchema(),
    'What the bolt goes into. `welded` is a nut or a stud that takes as much torque as its bolt.',
  ),
  what: builders(text('M6 rivet nut in the inner panel'), 'What it is, in words.', {
    example: 'M6 rivet nut in the inner panel',
  }),
  behind: builders(
    z.enum(['nothing', 'tank', 'line', 'airbag', 'wiring', 'unknown']),
    'What lies behind the panel there. Nothing is drilled or driven into a tank, a line or an airbag.',
    { example: 'nothing' },
  ),
  'free-depth': builders(extent.optional(), 'What is free behind the panel for the end of a fixing.', {
    example: '1 1/2 in',
  }),
});

/** What bounds a space on one side: a wall, or nothing, so that a hand comes in. */
const boundSchema = () => builders(z.enum(['wall', 'open']).optional());

/** What stays reachable with the board in, such as jack, spare wheel, service plug or fuse panel: where it lies. */
const reachableSchema = z.strictObject({
  ...xy,
  width: builders(extent, 'Its width.', { example: '4 in', picture: 'space' }),
  height: builders(extent, 'Its height, upwards in the plane.', { example: '4 in', picture: 'space' }),
  before: builders(
    quantityWithin('length', { least: 0, most: 2 }),
    'Room that reaching it takes before the mounting plane.',
    { example: '6 in' },
  ),
  must: builders(
    z.boolean().default(false),
    'Whether its maker or the law demands it; else it is wished for.',
  ),
  what: builders(text('cover of the jack'), 'What it is, in words.', { example: 'cover of the jack' }),
});

/** No way out of a space is wider than a tailgate. */
const openingSide = quantityWithin('length', { above: 0, most: 3 });

/** A place where a board may go. Its plane is seen from the mounting side: x right, y up, datum lower left. */
const spaceSchema = z.strictObject({
  title: everyone(text('Left side well'), 'What the space is called on sheets.', {
    example: 'Floor under the left front seat',
  }),
  zone: builders(
    zoneKindSchema,
    'The zone of the vehicle that it lies in. How warm it is there follows from it.',
    { example: 'under-carpet' },
  ),
  side: builders(vehicleSideSchema, 'The side of the vehicle that it lies on.', {
    example: 'left',
    picture: 'vehicle',
  }),
  outline: builders(
    shortened(z.array(z.tuple([quantity('length'), quantity('length')])).min(3), { form: 'rectangle' }),
    'Its corners, one after another, each as x and y from the datum.',
    {
      example: [
        ['0 in', '0 in'],
        ['20 in', '0 in'],
        ['20 in', '15 in'],
        ['0 in', '15 in'],
      ],
      picture: 'space',
    },
  ),
  depth: builders(extent, 'What is free in front of the mounting plane, at its least.', {
    example: '4 1/2 in',
    picture: 'space',
  }),
  right: builders(directionSchema, 'Which way x runs in the vehicle.', {
    example: 'right',
    picture: 'space',
  }),
  upward: builders(directionSchema, 'Which way y runs in the vehicle.', {
    example: 'front',
    picture: 'space',
  }),
  wet: builders(
    z.boolean().default(false),
    'Whether water may come in: a spare-wheel well, the floor, below vents and lamps.',
  ),
  'beside-subwoofer': builders(z.boolean().default(false), 'Whether a subwoofer shakes it.'),
  air: builders(quantity('volume').optional(), 'Volume of air that cools the equipment.', {
    example: '22 L',
    leftOut: 'its heat goes by its outline and depth alone',
  }),
  surface: builders(
    quantityAbove('area').optional(),
    'Surface of the walls that give off its heat, where it was measured.',
    { example: '0.8 m2', leftOut: 'from its box, or from its air' },
  ),
  fan: builders(
    quantityWithin('airflow', { least: 0, most: 1 }).optional(),
    'Air that a fan moves through it.',
    { example: '30 m3/h', leftOut: 'no fan' },
  ),
  openings: section(
    z
      .array(
        z.strictObject({
          width: builders(openingSide, 'Its width.', { example: '17 in' }),
          height: builders(openingSide, 'Its height.', { example: '3 in' }),
        }),
      )
      .default([]),
    'Upright openings to the air of its zone, each as wide and as high as it is.',
  ),
  obstacles: section(
    z.record(id, obstacleSchema).default({}),
    'What is in the way of a board there, by names.',
    { name: 'seat-plug', picture: 'space' },
  ),
  bounds: section(
    z
      .strictObject({
        left: section(boundSchema(), 'On its left.', {
          example: 'wall',
          picture: 'space',
          leftOut: 'a wall, in doubt',
        }),
        right: section(boundSchema(), 'On its right.', {
          example: 'open',
          picture: 'space',
          leftOut: 'a wall, in doubt',
        }),
        top: section(boundSchema(), 'Above.', {
          example: 'open',
          picture: 'space',
          leftOut: 'a wall, in doubt',
        }),
        bottom: section(boundSchema(), 'Below.', {
          example: 'wall',
          picture: 'space',
          leftOut: 'a wall, in doubt',
        }),
        front: section(boundSchema(), 'Before the plane, trim or lid off.', {
          example: 'open',
          picture: 'space',
          leftOut: 'open',
        }),
      })
      .default({}),
    'What bounds it on each side: a wall, or nothing, so that a hand comes in.',
    { example: { left: 'wall', front: 'open' }, picture: 'space' },
  ),
  'keep-reachable': section(
    z.record(id, reachableSchema).default({}),
    'What stays reachable with the board in, such as jack, spare wheel, service plug or fuse panel.',
    { name: 'jack', picture: 'space' },
  ),
  'sound-points': section(
    rows(z.record(id, soundPointSchema), {
      x: 'list',
      y: 'list',
      what: 'list',
      'free-depth': 'list',
    }),
    'What is sound enough to hold a board, by names.',
    { name: 'rear-outer', picture: 'space' },
  ),
});

/** One stretch of a route. */
const passSchema = shortened(
  z.strictObject({
    zone: builders(zoneKindSchema, 'The zone that the stretch passes.', { example: 'sill' }),
    length: builders(vehicleStretch, 'Its length, measured with a cord.', {
      example: '36 in',
      picture: 'route',
    }),
    edge: builders(
      z.boolean().default(false),
      'Whether a sharp edge lies where it begins. It asks for a grommet.',
    ),
    'through-hole': builders(
      quantityWithin('length', { above: 0, most: 0.3 }).optional(),
      'Diameter of the hole that it goes through where it begins.',
      { example: '20 mm', picture: 'route' },
    ),
    inboard: builders(
      quantityWithin('length', { least: 0, most: 1.5 }).optional(),
      'How far inboard of its side it lies. Two routes on one side are told apart by it.',
      { example: '4 in', leftOut: 'two routes on one side count as side by side' },
    ),
  }),
  { form: 'stretch' },
);

const servedRef = z
  .string({ error: 'needs a place, a fitted device or a ground point, such as left-door or body.floor-left' })
  .regex(
    /^(body\.)?[a-z0-9]+(-[a-z0-9]+)*$/,
    'is no place, fitted device or ground point: write left-door, source-unit or body.floor-left',
  )
  .meta({ examples: ['left-door', 'source-unit', 'body.floor-left'] });

/** A way for wires through the vehicle, from one end to the other. */
const routeSchema = z.strictObject({
  title: builders(
    text('Battery to left side well, along the left sill'),
    'From where to where it runs, and along what.',
    { example: 'Battery to under the left seat, along the left sill' },
  ),
  side: builders(vehicleSideSchema, 'The side of the vehicle that it runs along.', {
    example: 'left',
    picture: 'vehicle',
  }),
  passes: section(z.array(passSchema).min(1), 'Its stretches, one after another from its first end.', {
    picture: 'route',
  }),
  reaches: section(
    z
      .strictObject({
        space: builders(id, 'The space that it reaches.', { example: 'under-left-seat' }),
        edge: builders(edgeSchema, 'The edge of the space, seen from its mounting side.', {
          example: 'left',
          picture: 'space',
        }),
      })
      .optional(),
    'The edge of a board in a space that it reaches, where wires leave or enter it.',
  ),
  ends: builders(z.array(id).optional(), 'Places and fitted devices where wires leave it at its ends.', {
    example: ['battery-side'],
    picture: 'route',
  }),
  serves: builders(
    z.array(servedRef).optional(),
    'What else lies along it: places and fitted devices by their ids, ground points as `body.` with the point.',
    { example: ['body.crossmember-left'] },
  ),
});

/** What a route serves: a place, a fitted device, or a ground point. */
export function servedBy({ ends = [], serves = [] }: VehicleRoute): readonly string[] {
  return [...new Set([...ends, ...serves])];
}

/** A place in the vehicle for a device that is not on a board. */
const seatSchema = z.strictObject({
  title: everyone(text('Front left door'), 'What the place is called on sheets.', { example: 'Left door' }),
  zone: builders(zoneKindSchema, 'The zone of the vehicle that it lies in.', { example: 'cabin' }),
  side: builders(
    vehicleSideSchema,
    'The side of the vehicle that it lies on. Which of two speakers is the left one follows from it.',
    { example: 'left', picture: 'vehicle' },
  ),
  row: builders(rowSchema.optional(), 'The row of seats that a speaker there plays to.', {
    example: 'front',
  }),
  depth: builders(extent.optional(), 'What is free there: into the panel, or from front to rear.', {
    example: '2 1/2 in',
  }),
  width: builders(extent.optional(), 'What is free across, where it was measured.', { example: '18 in' }),
  height: builders(extent.optional(), 'What is free upwards, where it was measured.', { example: '14 in' }),
  'lies-over': section(
    z
      .record(
        id,
        z.strictObject({
          must: builders(
            z.boolean().default(false),
            'Whether its maker or the law demands it; else it is wished for.',
          ),
          what: builders(text('spare wheel'), 'What it is, in words.', { example: 'spare wheel' }),
        }),
      )
      .default({}),
    'What lies below or behind it and stays reachable, such as the spare wheel.',
    { name: 'spare' },
  ),
  distance: builders(
    quantityWithin('length', { least: 0, most: 8 }).optional(),
    "From the listener's head. Delays follow from it.",
    { example: '38 in', leftOut: 'no delay is computed' },
  ),
});

/** `content/vehicles/<id>.yaml`. */
export const vehicleSchema = z.strictObject({
  rackleaf: section(formatVersion, 'The format version. Every file begins with it.'),
  id: everyone(fileId, 'Its name in jobs and addresses. The file is called by it.', {
    example: 'first-vehicle',
  }),
  title: everyone(text('Estate car, five doors'), 'What it is called on sheets and in search.', {
    example: 'Estate car, five doors',
  }),
  supply: builders(
    z.enum(['combustion', 'hybrid', 'electric']).default('combustion'),
    'What drives it. In a hybrid or an electric vehicle a converter feeds the 12 V side.',
    { example: 'hybrid' },
  ),
  'system-voltage': builders(
    systemVoltageField.optional(),
    'Nominal voltage of its supply: 24 V in trucks and buses.',
    { example: '24 V', leftOut: '12 V' },
  ),
  cranking: section(
    z
      .strictObject({
        current: builders(quantityWithin('current', { least: 20, most: 5000 }), 'What it draws.', {
          example: '180 A',
        }),
        seconds: builders(quantityWithin('time', { least: 0.1, most: 120 }), 'For how long at most.', {
          example: '3 s',
        }),
      })
      .optional(),
    'What the starter draws, as measured.',
    { leftOut: '{cranking-current} for {cranking-time}' },
  ),
  cautions: everyone(
    z.array(text('Curtain airbags run along both roof rails.')).default([]),
    'What must be known before anyone reaches for a tool: airbags, high voltage, tanks and lines. Stands on the sheets of every job in it.',
    { example: ['Curtain airbags run along both roof rails.'] },
  ),
  'negative-sensor': builders(
    z.boolean().default(false),
    'Whether a sensor sits on the negative post of the battery. Grounds then go to the body, or to the far side of the sensor.',
  ),
  'vehicle-load': builders(
    quantityWithin('current', { least: 0.5, most: 500 }).optional(),
    'What the vehicle itself draws, idling, with lights, heater and fan on.',
    { example: '45 A', leftOut: '{vehicle-load}' },
  ),
  'charging-voltage': builders(
    quantityWithin('voltage', { least: 10, most: 36 }).optional(),
    'What its regulator holds, measured at the alternator, warm and with the loads on.',
    { example: '14.2 V', leftOut: "as the alternator's part says, else {voltage-sizing}" },
  ),
  fitted: section(
    z.record(id, fittedSchema),
    'Devices that it came with, by names: battery, alternator, source unit. The far end of each wire is at one of them.',
    { name: 'starter-battery' },
  ),
  grounds: section(
    rows(z.record(id, groundPointSchema), { side: 'list' }),
    'Points of the body that can take a ground, by names. Links call one `body.` with its name.',
    { name: 'crossmember-left' },
  ),
  links: section(
    z.record(id, vehicleLinkSchema).default({}),
    'Conductors that it came with: what charges the battery, and what grounds it.',
    { name: 'battery-strap' },
  ),
  spaces: section(
    z.record(id, spaceSchema),
    'Spaces where a board may go, by names. Each has a plane that is seen from the mounting side.',
    { name: 'under-left-seat', picture: 'space' },
  ),
  routes: section(z.record(id, routeSchema), 'Ways for wires through the vehicle, by names.', {
    name: 'power-left-sill',
    picture: 'route',
  }),
  places: section(
    rows(z.record(id, seatSchema), {
      title: 'list',
      side: 'list',
      depth: 'list',
      distance: 'list',
    }).default({}),
    'Places for what stands on no board, by names: doors, cargo floor, beside the battery.',
    { name: 'left-door', picture: 'vehicle' },
  ),
});
export type Vehicle = z.output<typeof vehicleSchema>;
export type VehicleSpace = z.output<typeof spaceSchema>;
export type VehicleRoute = z.output<typeof routeSchema>;

/** Length of a route through the vehicle, all that it passes (m). */
export function routeLengthM({
  passes,
}: {
  readonly passes: readonly { readonly length: number }[];
}): number {
  return passes.reduce((sum, { length }) => sum + length, 0);
}
