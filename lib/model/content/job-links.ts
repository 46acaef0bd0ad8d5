import { z } from 'zod';
import { builders } from '../audience.ts';
import { id, stretch, terminalRef, text, wireSize } from '../fields.ts';
import { linkColourSchema } from '../vocabulary.ts';
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
  colour: builders(linkColourSchema.optional(), 'Colour of its insulation, by the letters of IEC 60757.', {
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
        at: builders(
          id.optional(),
          'The place on the way of that link where they are joined: one in which routes of its run meet. From there this one has a way of its own.',
          { example: 'left-kick-panel', leftOut: 'they are joined before the port' },
        ),
        after: builders(
          stretch.optional(),
          'Or how far along that run from the terminal that they share. This one is as long as its way from there.',
          { example: '110 in' },
        ),
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

export const runSchema = z.strictObject({
  route: builders(
    z.union([id, z.array(id).min(1)], {
      error: 'needs a route of the vehicle, or a list of routes that meet',
    }),
    'The route of the vehicle that it takes, or several that meet, one after another: `[left-kick-panel-to-left-door, left-kick-panel-to-well]`.',
    { example: 'power-left-sill' },
  ),
  links: builders(z.array(id).min(1), 'The links that lie in it.', { example: ['feed'] }),
  covering: builders(id.optional(), 'What covers them.', {
    example: 'loom-13',
    leftOut: 'chosen from stock where the way asks for it',
  }),
});

/** The routes of a run, one after another. */
export function routesOf({ route }: Pick<z.output<typeof runSchema>, 'route'>): readonly string[] {
  return typeof route === 'string' ? [route] : route;
}
