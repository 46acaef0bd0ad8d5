import { z } from 'zod';
import { builders } from './audience.ts';
import { extent, id, quantityAbove } from './fields.ts';
import { edgeNames, pointSchema } from './outline.ts';

/** The face of a board that a rib stands on: the mounting side, with the parts, or the rear. */
export const ribFaces = ['rear', 'mounting'] as const;

/** How a rib is fixed: screwed, or screwed and glued. */
export const ribJoints = ['screwed', 'glued'] as const;

/** A stiffening rib of a board, cut from sheet. Where it runs is measured to its centre line. */
export const ribSchema = z
  .strictObject({
    /** Parallel to a side of the smallest upright rectangle round the board, so far from it. */
    edge: builders(
      z
        .enum(edgeNames, { error: `is not a side of the board: write one of ${edgeNames.join(', ')}` })
        .optional(),
    ),
    distance: builders(extent.optional()),
    /** Where it starts, from the left or lower end of that side, and how long it is. Left out: as far as it is free. */
    start: builders(extent.optional()),
    length: builders(quantityAbove('length').optional()),
    /** Or from end to end, from the datum. */
    from: pointSchema.optional(),
    to: pointSchema.optional(),
    /** How far it stands out from the face. */
    height: builders(quantityAbove('length')),
    /** Across it. Left out: one layer of its sheet, a strip on its edge. */
    width: builders(quantityAbove('length').optional()),
    /** Left out: the sheet of the board. */
    sheet: builders(id.optional()),
    face: builders(
      z.enum(ribFaces, { error: `is not a face of a board: write ${ribFaces.join(' or ')}` }).default('rear'),
    ),
    joint: builders(
      z
        .enum(ribJoints, { error: `is not a way to fix a rib: write ${ribJoints.join(' or ')}` })
        .default('screwed'),
    ),
  })
  .refine(({ edge, distance, from, to }) => {
    const byEdge = [edge, distance].filter((value) => value !== undefined).length;
    const byEnds = [from, to].filter((value) => value !== undefined).length;
    return (byEdge === 2 && byEnds === 0) || (byEdge === 0 && byEnds === 2);
  }, 'needs edge and distance, or from and to, and not both')
  .refine(
    ({ start, length, from }) => (start === undefined) === (length === undefined) && !(from && start),
    'needs start and length together, beside edge and distance; left out, it runs as far as it is free',
  )
  .refine(
    ({ from, to }) => !from || !to || Math.hypot(from[0] - to[0], from[1] - to[1]) > 0.001,
    'starts where it ends; give it a length',
  );
export type JobRib = z.output<typeof ribSchema>;
