import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, id, quantity, text } from '../fields.ts';
import { outlineSchema } from '../outline.ts';
import { ribSchema } from '../rib.ts';
import { rows } from '../short-forms/short-form.ts';
import { section } from '../writing/field-text.ts';

export const fixingSchema = z.strictObject({
  point: builders(id, 'The sound point of the space that it goes into.', { example: 'rear-outer' }),
  fixing: builders(id, 'The fixing of the catalogue.', { example: 'bolt-m6-40' }),
  spacer: builders(extent.optional(), 'Height of the spacer between board and panel.', {
    example: '12 mm',
    leftOut: 'that of the board',
  }),
});

export const boardSchema = z.strictObject({
  title: everyone(text('Main board').optional(), 'What it is called on sheets.', {
    example: 'Under-seat board',
  }),
  sheet: builders(id.optional(), 'The sheet of the catalogue that it is cut from.', {
    example: 'birch-12',
    leftOut: 'the lightest in stock that is stiff enough',
  }),
  space: builders(id.optional(), 'The space of the vehicle that it stands in.', {
    example: 'under-left-seat',
    leftOut: 'the space of the job',
  }),
  at: section(
    z
      .strictObject({
        x: builders(quantity('length'), 'From the datum of the space to the right.', {
          example: '1 in',
          picture: 'space',
        }),
        y: builders(quantity('length'), 'From the datum of the space upwards.', {
          example: '1 in',
          picture: 'space',
        }),
      })
      .optional(),
    'Where its datum stands in the space.',
    { picture: 'space', leftOut: 'proposed' },
  ),
  outline: section(outlineSchema.optional(), 'Its shape: a base, then cuts.', {
    leftOut: 'the largest rectangle that is free in its space',
    example: { rectangle: { width: '17 in', height: '12 in' } },
    picture: 'board',
  }),
  'fed-by': builders(id.optional(), 'The battery that feeds what stands on it.', {
    example: 'starter-battery',
  }),
  ground: builders(id.optional(), 'The ground point of the vehicle that what stands on it goes to.', {
    example: 'crossmember-left',
  }),
  spacer: builders(extent.optional(), 'Height of the spacers under all fixings that do not say one.', {
    example: '12 mm',
  }),
  screw: builders(id.optional(), 'The wood screw of the catalogue that holds its parts, chosen by hand.', {
    example: 'wood-screw-8-16',
    leftOut: 'chosen for each hole, from the shelf first',
  }),
  fixings: section(
    rows(z.record(id, fixingSchema), { point: 'names', spacer: 'list' }).optional(),
    'What fixes it to the vehicle, by names.',
    { name: 'f1', leftOut: 'every sound point that lies under it' },
  ),
  ribs: section(z.record(id, ribSchema).default({}), 'Stiffening ribs, by names.', {
    name: 'rib-1',
    example: { 'rib-1': { edge: 'bottom', distance: '4 in', height: '30 mm' } },
    picture: 'rib',
  }),
});
