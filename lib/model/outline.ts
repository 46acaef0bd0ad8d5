import { z } from 'zod';
import { builders } from './audience.ts';
import { quantity, quantityWithin, text } from './fields.ts';
import { section } from './writing/field-text.ts';

/** The corners of a rectangle, or of the smallest upright rectangle round a polygon, seen from the mounting side. */
export const cornerNames = ['lower-left', 'lower-right', 'upper-right', 'upper-left'] as const;
export type CornerName = (typeof cornerNames)[number];

/** The edges in the same view. */
export const edgeNames = ['bottom', 'right', 'top', 'left'] as const;
export type EdgeName = (typeof edgeNames)[number];

const length = quantity('length');
const cutId = () => builders(text('spare-wheel').optional(), 'A name to call the cut by in findings.');
const number = z
  .int({ error: 'needs a whole number that counts from 1, such as 2' })
  .positive('counts from 1; write a whole number such as 2');

/** A corner by name, or a corner of a polygon by its number, counted from 1 in the order written. */
const cornerRef = z
  .union([z.enum(cornerNames), number], {
    error: `is not a corner: write one of ${cornerNames.join(', ')}, or the number of a polygon's corner`,
  })
  .meta({ examples: ['lower-left'] });

/** An edge by name, or an edge of a polygon by number: edge 1 runs from corner 1 to corner 2. */
const edgeRef = z
  .union([z.enum(edgeNames), number], {
    error: `is not an edge: write one of ${edgeNames.join(', ')}, or the number of a polygon's edge`,
  })
  .meta({ examples: ['top'] });

/** From which end of the edge, or from which corner of the board, a measure was taken. */
const endRef = z.enum(edgeNames, {
  error: `is not an end of an edge: write one of ${edgeNames.join(', ')}`,
});
const fromCorner = () =>
  builders(
    z.enum(cornerNames, { error: `is not a corner: write one of ${cornerNames.join(', ')}` }).optional(),
    'The corner (two edges) that x and y are measured from, inwards.',
    { example: 'lower-right', picture: 'cuts', leftOut: 'the datum' },
  );

/** A point of a board from its datum. */
export const pointSchema = z.tuple([builders(length), builders(length)], {
  error: 'needs two lengths, such as [12 in, 3 1/2 in]',
});

const cornerCut = z
  .strictObject({
    cut: builders(z.literal('corner'), 'What is cut.', { example: 'corner' }),
    id: cutId(),
    corner: builders(cornerRef, 'The corner that is cut: by its name, or of a polygon by its number.', {
      example: 'upper-right',
      picture: 'cuts',
    }),
    dx: builders(length.optional(), 'Of a straight cut: how far along the edge that is nearer to level.', {
      example: '2 in',
      picture: 'cuts',
    }),
    dy: builders(length.optional(), 'Of a straight cut: how far along the other edge.', {
      example: '3 in',
      picture: 'cuts',
    }),
    radius: builders(length.optional(), 'Or the radius of a rounded corner.', {
      example: '3/4 in',
      picture: 'cuts',
    }),
  })
  .refine(
    ({ dx, dy, radius }) =>
      radius === undefined ? dx !== undefined && dy !== undefined : dx === undefined && dy === undefined,
    { error: 'needs dx and dy for a straight cut, or radius alone for a round one' },
  )
  .meta({
    oneOf: [
      { required: ['dx', 'dy'], not: { required: ['radius'] } },
      { required: ['radius'], not: { anyOf: [{ required: ['dx'] }, { required: ['dy'] }] } },
    ],
  });

const notchCut = z.strictObject({
  cut: builders(z.literal('notch'), 'What is cut.', { example: 'notch' }),
  id: cutId(),
  edge: builders(
    edgeRef,
    'The edge that it is cut into: by its name, or of a polygon by its number. Edge 1 runs from corner 1 to corner 2.',
    { example: 'top', picture: 'cuts' },
  ),
  from: builders(endRef.optional(), 'The end of the edge that the offset is measured from.', {
    example: 'left',
    picture: 'cuts',
    leftOut: 'the left end, or the lower one',
  }),
  offset: builders(length, 'From that end to the near side of the notch.', {
    example: '5 in',
    picture: 'cuts',
  }),
  width: builders(length, 'Along the edge.', { example: '3 in', picture: 'cuts' }),
  depth: builders(length, 'Into the board.', { example: '1 1/2 in', picture: 'cuts' }),
});

const stepCut = z.strictObject({
  cut: builders(z.literal('step'), 'What is cut.', { example: 'step' }),
  id: cutId(),
  corner: builders(cornerRef, 'The corner that a piece is taken out of.', {
    example: 'lower-left',
    picture: 'cuts',
  }),
  dx: builders(length, 'Size of the piece along the edge that is nearer to level.', {
    example: '4 in',
    picture: 'cuts',
  }),
  dy: builders(length, 'Size of the piece along the other edge.', { example: '2 in', picture: 'cuts' }),
});

const slotCut = z.strictObject({
  cut: builders(z.literal('slot'), 'What is cut.', { example: 'slot' }),
  id: cutId(),
  from: fromCorner(),
  x: builders(length, 'To the middle of the slot.', { example: '6 in', picture: 'cuts' }),
  y: builders(length, 'To the middle of the slot.', { example: '4 in', picture: 'cuts' }),
  length: builders(length, 'Over its round ends.', { example: '3 in', picture: 'cuts' }),
  width: builders(length, 'Across it.', { example: '1/2 in', picture: 'cuts' }),
  turn: builders(quantity('angle').optional(), 'Turned counter-clockwise from lying level.', {
    example: '30 deg',
    picture: 'cuts',
    leftOut: '0 deg',
  }),
});

/** What a hole in a board is for. */
export const holePurposes = ['wire', 'fixing', 'mounting', 'drain', 'access', 'air'] as const;
export type HolePurpose = (typeof holePurposes)[number];

const holeCut = z.strictObject({
  cut: builders(z.literal('hole'), 'What is cut.', { example: 'hole' }),
  id: cutId(),
  from: fromCorner(),
  x: builders(length, 'To the middle of the hole.', { example: '5 in', picture: 'cuts' }),
  y: builders(length, 'To the middle of the hole.', { example: '3 in', picture: 'cuts' }),
  diameter: builders(length, 'Across the hole.', { example: '1 in', picture: 'cuts' }),
  purpose: builders(
    z.enum(holePurposes, { error: `is not a purpose: write one of ${holePurposes.join(', ')}` }),
    'What it is for.',
    { example: 'wire' },
  ),
});

const windowCut = z.strictObject({
  cut: builders(z.literal('window'), 'What is cut.', { example: 'window' }),
  id: cutId(),
  from: fromCorner(),
  x: builders(length, 'To the side of the window that is nearest to where it is measured from.', {
    example: '4 in',
    picture: 'cuts',
  }),
  y: builders(length, 'To its side that is nearest upwards or downwards.', {
    example: '3 in',
    picture: 'cuts',
  }),
  width: builders(length, 'Its width.', { example: '5 in', picture: 'cuts' }),
  height: builders(length, 'Its height.', { example: '2 in', picture: 'cuts' }),
  radius: builders(length.optional(), 'Radius of its corners.', {
    example: '1/4 in',
    picture: 'cuts',
    leftOut: 'square',
  }),
});

const arcCornerCut = z.strictObject({
  cut: builders(z.literal('arc-corner'), 'What is cut.', { example: 'arc-corner' }),
  id: cutId(),
  radius: builders(length, 'Radius of the corners.', { example: '3/4 in', picture: 'cuts' }),
  corners: section(
    z.array(builders(cornerRef)).min(1, 'is empty; leave it out to round every corner').optional(),
    'The corners that are rounded.',
    { example: ['upper-left', 'upper-right'], picture: 'cuts', leftOut: 'every outward corner of the base' },
  ),
});

/** One cut in a board, as it is measured in a vehicle. */
export const cutSchema = z.discriminatedUnion(
  'cut',
  [cornerCut, notchCut, stepCut, slotCut, holeCut, windowCut, arcCornerCut],
  { error: 'is not a cut: write one of corner, notch, step, slot, hole, window, arc-corner' },
);
export type Cut = z.infer<typeof cutSchema>;

/** How the edge of a board is worked all round, outline and cut-outs. */
export const edgeProfiles = ['square', 'chamfer', 'round-over', 'rebate'] as const;

const edgeProfile = z.strictObject({
  kind: builders(
    z.enum(edgeProfiles, { error: `is not an edge profile: write one of ${edgeProfiles.join(', ')}` }),
    'How the edge is worked, all round and in cut-outs.',
    { example: 'round-over' },
  ),
  size: builders(
    quantityWithin('length', { above: 0, most: 0.05 }).optional(),
    'Leg of a chamfer, radius of a round-over, depth of a rebate.',
    { example: '1/8 in' },
  ),
});

/** Which way the grain of the face runs on a board, seen from the mounting side. */
export const grainWays = ['level', 'upright'] as const;
export type GrainWay = (typeof grainWays)[number];

/**
 * The outline of a board: a base shape, then cuts in the order in which they are made. The datum is the
 * lower left corner of a rectangle, or the point [0, 0] of a polygon; x right, y up, seen from the
 * mounting side.
 */
export const outlineSchema = z
  .strictObject({
    rectangle: section(
      z
        .strictObject({
          width: builders(length, 'To the right.', { example: '17 in', picture: 'board' }),
          height: builders(length, 'Upwards.', { example: '12 in', picture: 'board' }),
        })
        .optional(),
      'A rectangle as base; its datum is the lower left corner.',
      { picture: 'board' },
    ),
    polygon: section(
      z.array(pointSchema).min(3, 'has fewer than three corners').optional(),
      'Or the corners of a polygon, one after another, each as x and y; its datum is the point 0, 0.',
      {
        example: [
          ['0 in', '0 in'],
          ['18 in', '0 in'],
          ['18 in', '9 in'],
          ['0 in', '12 in'],
        ],
        picture: 'board',
      },
    ),
    cuts: section(
      z.array(cutSchema).optional(),
      'What is cut out of the base, in the order in which it is made.',
      { example: [{ cut: 'arc-corner', radius: '3/4 in' }], picture: 'cuts' },
    ),
    'edge-profile': section(edgeProfile.optional(), 'How the edge is worked.'),
    grain: builders(
      z.enum(grainWays, { error: `is not a way of the grain: write ${grainWays.join(' or ')}` }).optional(),
      'Which way the grain of the face runs on the board, seen from the mounting side.',
      { example: 'level', leftOut: 'it may run either way' },
    ),
  })
  .refine(({ rectangle, polygon }) => (rectangle === undefined) !== (polygon === undefined), {
    error: 'needs one base shape: rectangle (width, height) or polygon (its corners), and not both',
  })
  .meta({ oneOf: [{ required: ['rectangle'] }, { required: ['polygon'] }] });
export type Outline = z.infer<typeof outlineSchema>;
