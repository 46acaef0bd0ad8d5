import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, id, quantity, stretch, terminalRef, text, wireSize } from '../fields.ts';
import { outlineSchema } from '../outline.ts';
import { ribSchema } from '../rib.ts';
import { rows } from '../short-forms/short-form.ts';
import { colourSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';

export const linkSchema = z.strictObject({
  from: builders(
    terminalRef,
    'The terminal that it leaves, or a pair by what its two names share. `OUT1|OUT2` leaves the choice open.',
    { example: 'main-fuse.OUT' },
  ),
  to: builders(terminalRef, 'The terminal that it goes to; a ground point is `body.` with its name.', {
    example: 'amp.B+',
  }),
  wire: builders(id.optional(), 'The reel that it is cut from.', {
    example: 'wire-4-rd',
    leftOut: 'chosen from stock',
  }),
  size: builders(wireSize.optional(), 'Size of its conductor.', {
    example: '4 AWG',
    leftOut: 'the smallest in stock that carries its fuse and keeps the drop',
  }),
  colour: builders(colourSchema.optional(), 'Colour of its insulation, by the letters of IEC 60757.', {
    example: 'RD',
    leftOut: 'by what it carries, from stock',
  }),
  cable: builders(id.optional(), 'Or the cable of the job that it takes its conductors from.', {
    example: 'lead-front',
  }),
  conductors: builders(
    z.array(text('white')).min(1).max(2).optional(),
    'The conductors that it takes of the cable: one, or two for a pair.',
    { example: ['left'] },
  ),
  length: builders(stretch.optional(), 'Its length.', {
    example: '14 in',
    leftOut: 'measured from places and runs',
  }),
  label: builders(text('P1').optional(), 'What is printed on its ends.', {
    example: 'P1',
    leftOut: 'numbered by what it carries',
  }),
  branch: section(
    z
      .strictObject({
        from: builders(id, 'The link that it parts from.', { example: 'feed' }),
        after: builders(stretch, 'From the shared terminal along the run to where they part.', {
          example: '6 ft',
        }),
        leg: builders(stretch, 'From there to its own end.', { example: '18 in' }),
      })
      .optional(),
    'Where it shares a terminal and the first stretch of its run with another link, and parts from it.',
  ),
  joint: section(
    z
      .strictObject({
        with: builders(id, 'The link that enters the port; this one is joined to its wire.', {
          example: 'in-front-right',
        }),
        part: builders(id.optional(), 'The splice of the catalogue that joins them.', {
          example: 'solder-sleeve-16',
          leftOut: 'one of the shelf that takes both conductors',
        }),
      })
      .optional(),
    'Where a port holds one conductor and two begin there: this one is joined to the other {joint-from-port} before it. For signal, speaker, turn-on and control; a feed or a ground is parted at a distribution part.',
    { example: { with: 'in-front-right' } },
  ),
});

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
  outline: section(outlineSchema, 'Its shape: a base, then cuts.', {
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

export const runSchema = z.strictObject({
  route: builders(id, 'The route of the vehicle that it takes.', { example: 'power-left-sill' }),
  links: builders(z.array(id).min(1), 'The links that lie in it.', { example: ['feed'] }),
  covering: builders(id.optional(), 'What covers them.', {
    example: 'loom-13',
    leftOut: 'chosen from stock where the way asks for it',
  }),
});
