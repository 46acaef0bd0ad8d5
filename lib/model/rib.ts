import { z } from 'zod';
import { builders } from './audience.ts';
import { extent, id, quantityAbove } from './fields.ts';
import { edgeNames, pointSchema } from './outline.ts';
import { section } from './writing/field-text.ts';

/** The face of a board that a rib stands on: the mounting side, with the parts, or the rear. */
export const ribFaces = ['rear', 'mounting'] as const;

/** How a rib is fixed: screwed, or screwed and glued. */
export const ribJoints = ['screwed', 'glued'] as const;

/** A stiffening rib of a board, cut from sheet. Where it runs is measured to its centre line. */
export const ribSchema = z
  .strictObject({
    edge: builders(
      z
        .enum(edgeNames, { error: `is not a side of the board: write one of ${edgeNames.join(', ')}` })
        .optional(),
      'The side of the board that the rib runs parallel to.',
      { example: 'bottom', picture: 'rib' },
    ),
    distance: builders(extent.optional(), 'From that side to its centre line.', {
      example: '4 in',
      picture: 'rib',
    }),
    start: builders(extent.optional(), 'Where it starts, from the left or lower end of that side.', {
      example: '1 in',
      picture: 'rib',
      leftOut: 'as far as it is free',
    }),
    length: builders(quantityAbove('length').optional(), 'How long it is.', {
      example: '12 in',
      picture: 'rib',
      leftOut: 'as far as it is free',
    }),
    from: section(pointSchema.optional(), 'Or one end of its centre line, from the datum.', {
      example: ['2 in', '4 in'],
      picture: 'rib',
    }),
    to: section(pointSchema.optional(), 'And its other end.', { example: ['15 in', '4 in'], picture: 'rib' }),
    height: builders(quantityAbove('length'), 'How far it stands out from the face.', {
      example: '30 mm',
      picture: 'rib',
    }),
    width: builders(quantityAbove('length').optional(), 'Across it.', {
      example: '18 mm',
      picture: 'rib',
      leftOut: 'one layer of its sheet, a strip on its edge',
    }),
    sheet: builders(id.optional(), 'The sheet that it is cut from.', {
      example: 'birch-18',
      leftOut: 'the sheet of the board',
    }),
    face: builders(
      z.enum(ribFaces, { error: `is not a face of a board: write ${ribFaces.join(' or ')}` }).default('rear'),
      'The face that it stands on: the mounting side, with the parts, or the rear.',
    ),
    joint: builders(
      z
        .enum(ribJoints, { error: `is not a way to fix a rib: write ${ribJoints.join(' or ')}` })
        .default('screwed'),
      'How it is fixed.',
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
  )
  .meta({
    oneOf: [
      { required: ['edge', 'distance'], not: { anyOf: [{ required: ['from'] }, { required: ['to'] }] } },
      {
        required: ['from', 'to'],
        not: { anyOf: [{ required: ['edge'] }, { required: ['distance'] }, { required: ['start'] }] },
      },
    ],
    dependentRequired: { start: ['length'], length: ['start'] },
  });
export type JobRib = z.output<typeof ribSchema>;
