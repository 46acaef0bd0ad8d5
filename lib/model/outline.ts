import { z } from 'zod';
import { builders } from './audience.ts';
import { quantity, quantityWithin, text } from './fields.ts';

/** The corners of a rectangle, or of the smallest upright rectangle round a polygon, seen from the mounting side. */
export const cornerNames = ['lower-left', 'lower-right', 'upper-right', 'upper-left'] as const;
export type CornerName = (typeof cornerNames)[number];

/** The edges in the same view. */
export const edgeNames = ['bottom', 'right', 'top', 'left'] as const;
export type EdgeName = (typeof edgeNames)[number];

const length = quantity('length');
const cutId = () =>
  builders(text('spare-wheel').meta({ description: 'A name to call the cut by in findings.' }).optional());
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
    z
      .enum(cornerNames, { error: `is not a corner: write one of ${cornerNames.join(', ')}` })
      .meta({
        description: 'The corner (two edges) that x and y are measured from, inwards. Left out: the datum.',
      })
      .optional(),
  );

/** A point of a board from its datum. */
export const pointSchema = z.tuple([builders(length), builders(length)], {
  error: 'needs two lengths, such as [12 in, 3 1/2 in]',
});

const cornerCut = z
  .strictObject({
    cut: builders(z.literal('corner')),
    id: cutId(),
    corner: builders(cornerRef),
    /** A straight cut: how far along each of the two edges; `dx` on the edge nearer to level. */
    dx: builders(length.optional()),
    dy: builders(length.optional()),
    /** Or a rounded corner. */
    radius: builders(length.optional()),
  })
  .refine(
    ({ dx, dy, radius }) =>
      radius === undefined ? dx !== undefined && dy !== undefined : dx === undefined && dy === undefined,
    { error: 'needs dx and dy for a straight cut, or radius alone for a round one' },
  );

const notchCut = z.strictObject({
  cut: builders(z.literal('notch')),
  id: cutId(),
  edge: builders(edgeRef),
  /** The end of the edge that `offset` is measured from; left out: the left end, or the bottom one. */
  from: builders(endRef.optional()),
  offset: builders(length),
  width: builders(length),
  depth: builders(length),
});

const stepCut = z.strictObject({
  cut: builders(z.literal('step')),
  id: cutId(),
  corner: builders(cornerRef),
  /** Size of the piece taken out of the corner, along each of its edges; `dx` on the edge nearer to level. */
  dx: builders(length),
  dy: builders(length),
});

const slotCut = z.strictObject({
  cut: builders(z.literal('slot')),
  id: cutId(),
  from: fromCorner(),
  /** Middle of the slot. */
  x: builders(length),
  y: builders(length),
  /** Over its round ends. */
  length: builders(length),
  width: builders(length),
  /** Turned counter-clockwise from lying level. Left out: 0 deg. */
  turn: builders(quantity('angle').optional()),
});

/** What a hole in a board is for. */
export const holePurposes = ['wire', 'fixing', 'mounting', 'drain', 'access', 'air'] as const;
export type HolePurpose = (typeof holePurposes)[number];

const holeCut = z.strictObject({
  cut: builders(z.literal('hole')),
  id: cutId(),
  from: fromCorner(),
  x: builders(length),
  y: builders(length),
  diameter: builders(length),
  purpose: builders(
    z.enum(holePurposes, { error: `is not a purpose: write one of ${holePurposes.join(', ')}` }),
  ),
});

const windowCut = z.strictObject({
  cut: builders(z.literal('window')),
  id: cutId(),
  from: fromCorner(),
  /** The corner of the window that is nearest to where it is measured from. */
  x: builders(length),
  y: builders(length),
  width: builders(length),
  height: builders(length),
  /** Corner radius. Left out: square. */
  radius: builders(length.optional()),
});

const arcCornerCut = z.strictObject({
  cut: builders(z.literal('arc-corner')),
  id: cutId(),
  radius: builders(length),
  /** Left out: every outward corner of the base. */
  corners: z.array(builders(cornerRef)).min(1, 'is empty; leave it out to round every corner').optional(),
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
  ),
  /** Chamfer leg, radius, or rebate depth. */
  size: builders(quantityWithin('length', { above: 0, most: 0.05 }).optional()),
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
    rectangle: z.strictObject({ width: builders(length), height: builders(length) }).optional(),
    polygon: z.array(pointSchema).min(3, 'has fewer than three corners').optional(),
    cuts: z.array(cutSchema).optional(),
    'edge-profile': edgeProfile.optional(),
    /** Left out: the grain may run either way. */
    grain: builders(
      z.enum(grainWays, { error: `is not a way of the grain: write ${grainWays.join(' or ')}` }).optional(),
    ),
  })
  .refine(({ rectangle, polygon }) => (rectangle === undefined) !== (polygon === undefined), {
    error: 'needs one base shape: rectangle (width, height) or polygon (its corners), and not both',
  });
export type Outline = z.infer<typeof outlineSchema>;
