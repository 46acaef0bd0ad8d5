import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, id, quantity, quantityAbove, quantityWithin, text } from '../fields.ts';
import { rows, shortened } from '../short-forms/short-form.ts';
import { directionSchema, studSchema, vehicleSideSchema, zoneKindSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';

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

/** What a bolt goes into: the weaker one where it is not told. `welded`: a nut that takes as much as its bolt. */
export const insertSchema = () => builders(z.enum(['rivet-nut', 'welded']).default('rivet-nut'));

/** What a ground lead is fastened by: as a board is, or over a stud that stands there, or by a bolt through the panel. */
export const groundInsertSchema = () =>
  builders(z.enum(['rivet-nut', 'welded', 'stud', 'through']).default('rivet-nut'));

/** What lies behind a panel that is drilled. */
export const behindSchema = () => z.enum(['nothing', 'tank', 'line', 'airbag', 'wiring', 'unknown']);

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
  there: builders(
    z.boolean().default(true),
    'Whether what takes the bolt is there. `false`: the job drills a hole and sets a rivet nut of the shop in it.',
    { example: false },
  ),
  stud: builders(studSchema, 'The bolt that it takes.', { example: 'M6' }),
  insert: section(
    insertSchema(),
    'What the bolt goes into. `welded` is a nut that takes as much torque as its bolt.',
  ),
  what: builders(text('M6 rivet nut in the inner panel'), 'What it is, in words.', {
    example: 'M6 rivet nut in the inner panel',
  }),
  behind: builders(
    behindSchema(),
    'What lies behind the panel there. Nothing is drilled or driven into a tank, a line or an airbag.',
    { example: 'nothing' },
  ),
  'free-depth': builders(extent.optional(), 'What is free behind the panel for the end of a fixing.', {
    example: '1 1/2 in',
  }),
});

/** What bounds a space on one side: a wall, or nothing, so that a hand comes in. */
const boundSchema = () => builders(z.enum(['wall', 'open']).optional());

/**
 * What bounds a space before its plane: a lid is shut in use, and closes the air in; in service it is off, and a hand
 * comes in.
 */
const frontSchema = () => builders(z.enum(['wall', 'open', 'lid']).optional());

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

/** A fan as the vehicle's file tells it. Where it does not say that it is there, nothing of its supply is known. */
const fanThereSchema = z.strictObject({
  air: builders(quantityWithin('airflow', { least: 0, most: 1 }), 'Air that it moves through the space.', {
    example: '30 m3/h',
  }),
  there: builders(
    z.boolean().default(false),
    'Whether the vehicle has it already, with its supply and its fuse. Without that the job is stopped until one is among its devices.',
    { example: true },
  ),
});

/** No way out of a space is wider than a tailgate. */
const openingSide = quantityWithin('length', { above: 0, most: 3 });

/** A place where a board may go. Its plane is seen from the mounting side: x right, y up, datum lower left. */
export const spaceSchema = shortened(
  z.strictObject({
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
    fan: section(
      shortened(fanThereSchema, { form: 'measure', field: 'air' }).optional(),
      'A fan that the vehicle has there. One that a job fits is a device of the job, of the kind `fan`.',
      { example: { air: '30 m3/h', there: true }, leftOut: 'none' },
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
          front: section(
            frontSchema(),
            'Before the plane, as it is driven. `lid` is shut in use, and closes the air in; in service it is off, and a hand comes in.',
            {
              example: 'lid',
              picture: 'space',
              leftOut: 'open to a hand, a wall to air',
            },
          ),
        })
        .default({}),
      'What bounds it on each side: a wall, or nothing, so that a hand comes in; before it also a lid.',
      { example: { left: 'wall', front: 'lid' }, picture: 'space' },
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
  }),
  { form: 'titled' },
);
export type VehicleSpace = z.output<typeof spaceSchema>;
