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
import { outputsSchema } from './integration.ts';
import { formatVersion } from './shop.ts';

const xy = { x: builders(quantity('length')), y: builders(quantity('length')) };

/** A device that the vehicle came with, so that the far end of each wire exists. */
const fittedSchema = z.strictObject({
  part: builders(id),
  zone: builders(zoneKindSchema),
  side: builders(vehicleSideSchema.default('middle')),
  /** What its outputs give in this vehicle, by terminal or pair, as measured: goes before what the part says. */
  outputs: outputsSchema.default({}),
  /** Ratings of the fuses that it came with, as read off: by outgoing terminal, `fuse` for a holder. */
  fuses: z.record(z.string(), builders(quantity('current'))).default({}),
  /** Of a battery: the charge at which its reserve ends; goes before what its part says. */
  'reserve-end': builders(reserveEnd.optional()),
  /** Terminals that this job family never touches, with the reason. */
  'left-open': rows(z.record(z.string(), builders(text('not used')))).default({}),
});

/** What a bolt goes into: the weaker one where it is not told. `welded`: a nut or stud that takes as much as its bolt. */
const insertSchema = () => builders(z.enum(['rivet-nut', 'welded']).default('rivet-nut'));

/** A ground point of the body: where a ground lead may be bolted. */
const groundPointSchema = z.strictObject({
  zone: builders(zoneKindSchema),
  side: builders(vehicleSideSchema.default('middle')),
  stud: builders(studSchema),
  insert: insertSchema(),
  /** What else the fastener holds: some may never be used. */
  holds: builders(
    z
      .enum(['nothing-else', 'seat-belt', 'seat-frame', 'airbag', 'fuel-line', 'trim'])
      .default('nothing-else'),
  ),
});

/** No conductor or way in a vehicle is longer than a bus and back. */
const vehicleStretch = stretch.refine(
  (lengthM) => lengthM <= 50,
  'is above 50 m; check the number and its unit',
);

/** A conductor that the vehicle came with. */
const vehicleLinkSchema = z.strictObject({
  from: builders(terminalRef),
  to: builders(terminalRef),
  size: builders(wireSize),
  material: builders(conductorMaterialSchema.default('copper')),
  length: builders(vehicleStretch),
});

const obstacleSchema = z.strictObject({
  ...xy,
  width: builders(extent),
  height: builders(extent),
  /** How far it stands out from the mounting plane. */
  'stands-out': builders(extent),
  what: builders(text('wheel-arch weld seam')),
});

const soundPointSchema = z.strictObject({
  ...xy,
  stud: builders(studSchema),
  insert: insertSchema(),
  what: builders(text('M6 rivet nut in the inner panel')),
  /** What lies behind the panel there. */
  behind: builders(z.enum(['nothing', 'tank', 'line', 'airbag', 'wiring', 'unknown'])),
  'free-depth': builders(extent.optional()),
});

/** What bounds a space on one side: a wall, or nothing, so that a hand comes in. */
const boundSchema = () => builders(z.enum(['wall', 'open']).optional());

/** What stays reachable with the board in, such as jack, spare wheel, service plug or fuse panel: where it lies. */
const reachableSchema = z.strictObject({
  ...xy,
  width: builders(extent),
  height: builders(extent),
  /** Room that reaching it takes before the mounting plane. */
  before: builders(quantityWithin('length', { least: 0, most: 2 })),
  /** True where its maker or the law demands it; else it is wished for. */
  must: builders(z.boolean().default(false)),
  what: builders(text('cover of the jack')),
});

/** No way out of a space is wider than a tailgate. */
const openingSide = quantityWithin('length', { above: 0, most: 3 });

/** A place where a board may go. Its plane is seen from the mounting side: x right, y up, datum lower left. */
const spaceSchema = z.strictObject({
  title: everyone(text('Left side well')),
  zone: builders(zoneKindSchema),
  side: builders(vehicleSideSchema),
  outline: builders(
    shortened(z.array(z.tuple([quantity('length'), quantity('length')])).min(3), { form: 'rectangle' }),
  ),
  /** Free depth in front of the mounting plane. */
  depth: builders(extent),
  /** Which way the axes of the plane point in the vehicle. */
  right: builders(directionSchema),
  upward: builders(directionSchema),
  wet: builders(z.boolean().default(false)),
  'beside-subwoofer': builders(z.boolean().default(false)),
  /** Volume of air that cools the equipment. */
  air: builders(quantity('volume').optional()),
  /** Surface of the walls that gives off its heat, where it was measured. Left out: from its box, or from its air. */
  surface: builders(quantityAbove('area').optional()),
  /** Air that a fan moves through it. */
  fan: builders(quantityWithin('airflow', { least: 0, most: 1 }).optional()),
  /** Upright openings to the air of its zone, each as wide and as high as it is. */
  openings: z
    .array(z.strictObject({ width: builders(openingSide), height: builders(openingSide) }))
    .default([]),
  obstacles: z.record(id, obstacleSchema).default({}),
  /** What bounds it. An edge that is not told counts as a wall in doubt; its front as open, once trim or lid is off. */
  bounds: z
    .strictObject({
      left: boundSchema(),
      right: boundSchema(),
      top: boundSchema(),
      bottom: boundSchema(),
      front: boundSchema(),
    })
    .default({}),
  'keep-reachable': z.record(id, reachableSchema).default({}),
  'sound-points': rows(z.record(id, soundPointSchema), {
    x: 'list',
    y: 'list',
    what: 'list',
    'free-depth': 'list',
  }),
});

/** One stretch of a route. */
const passSchema = shortened(
  z.strictObject({
    zone: builders(zoneKindSchema),
    length: builders(vehicleStretch),
    /** A sharp edge where the stretch begins: it asks for a grommet. */
    edge: builders(z.boolean().default(false)),
    'through-hole': builders(quantityWithin('length', { above: 0, most: 0.3 }).optional()),
    /** How far inboard of its side it lies, where that was measured: two routes of one side are told apart by it. */
    inboard: builders(quantityWithin('length', { least: 0, most: 1.5 }).optional()),
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
  title: builders(text('Battery to left side well, along the left sill')),
  side: builders(vehicleSideSchema),
  passes: z.array(passSchema).min(1),
  /** The edge of a board in the space that the route reaches, where wires leave or enter it. */
  reaches: z.strictObject({ space: builders(id), edge: builders(edgeSchema) }).optional(),
  /** Places and fitted devices where wires leave it at its ends. */
  ends: builders(z.array(id).optional()),
  /** What else it serves: places and fitted devices by their ids, ground points as `body.` with the point. */
  serves: builders(z.array(servedRef).optional()),
});

/** What a route serves: a place, a fitted device, or a ground point. */
export function servedBy({ ends = [], serves = [] }: VehicleRoute): readonly string[] {
  return [...new Set([...ends, ...serves])];
}

/** A place in the vehicle for a device that is not on a board. */
const seatSchema = z.strictObject({
  title: everyone(text('Front left door')),
  zone: builders(zoneKindSchema),
  side: builders(vehicleSideSchema),
  /** The row of seats that a speaker there plays to. */
  row: builders(rowSchema.optional()),
  /** What is free there: into the panel, or from front to rear; and, where they were measured, across and up. */
  depth: builders(extent.optional()),
  width: builders(extent.optional()),
  height: builders(extent.optional()),
  /** What lies below or behind it and stays reachable, such as the spare wheel. */
  'lies-over': z
    .record(
      id,
      z.strictObject({ must: builders(z.boolean().default(false)), what: builders(text('spare wheel')) }),
    )
    .default({}),
  /** From the listener's head, for delays. */
  distance: builders(quantityWithin('length', { least: 0, most: 8 }).optional()),
});

/** `content/vehicles/<id>.yaml`. */
export const vehicleSchema = z.strictObject({
  rackleaf: formatVersion,
  id: everyone(fileId),
  title: everyone(text('Estate car, five doors')),
  supply: builders(z.enum(['combustion', 'hybrid', 'electric']).default('combustion')),
  /** Nominal voltage of its supply: 24 V in trucks and buses. Batteries, devices and fuses are held against it. */
  'system-voltage': builders(systemVoltageField.optional()),
  /** What the starter draws, and for how long at most, as measured; a house rule holds where it was not. */
  cranking: z
    .strictObject({
      current: builders(quantityWithin('current', { least: 20, most: 5000 })),
      seconds: builders(quantityWithin('time', { least: 0.1, most: 120 })),
    })
    .optional(),
  /** What must be known before anyone reaches for a tool: restraint systems, high voltage, tanks and lines. */
  cautions: everyone(z.array(text('Curtain airbags run along both roof rails.')).default([])),
  'negative-sensor': builders(z.boolean().default(false)),
  'vehicle-load': builders(quantityWithin('current', { least: 0.5, most: 500 }).optional()),
  /**
   * What its regulator holds, as measured at the alternator, warm and with the loads on; where it was not measured the
   * alternator's part tells it, else a house rule.
   */
  'charging-voltage': builders(quantityWithin('voltage', { least: 10, most: 36 }).optional()),
  fitted: z.record(id, fittedSchema),
  grounds: rows(z.record(id, groundPointSchema), { side: 'list' }),
  links: z.record(id, vehicleLinkSchema).default({}),
  spaces: z.record(id, spaceSchema),
  routes: z.record(id, routeSchema),
  places: rows(z.record(id, seatSchema), {
    title: 'list',
    side: 'list',
    depth: 'list',
    distance: 'list',
  }).default({}),
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
