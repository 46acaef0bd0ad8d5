import { z } from 'zod';
import { builders } from '../../audience.ts';
import { partBase } from '../../content/part-base.ts';
import { quantity, quantityAbove, quantityWithin } from '../../fields.ts';
import { rows, shortened } from '../../short-forms/short-form.ts';
import { coolingSchema, edgeSchema } from '../../vocabulary.ts';
import { section } from '../../writing/field-text.ts';
import { edgeLengths } from './bounds.ts';
import { controlSpecSchema } from './control-spec.ts';
import { terminalSpecSchema } from './terminal-spec.ts';

/** Fields of a part that is mounted on a board or in the vehicle. */
export const equipmentBase = {
  ...partBase,
  size: section(
    z.strictObject({
      width: builders(quantityAbove('length'), 'From left to right, seen from the mounting side.', {
        example: '10 in',
        picture: 'footprint',
      }),
      depth: builders(quantityAbove('length'), 'From its lower to its upper edge, in the same view.', {
        example: '6 1/2 in',
        picture: 'footprint',
      }),
      height: builders(
        quantityAbove('length'),
        'How far it stands off the board. Of a speaker, its mounting depth.',
        { example: '2 1/8 in', picture: 'footprint' },
      ),
    }),
    'Outside measures of its body, before any turn; plugs and knobs that stand out are not part of it.',
    { picture: 'footprint' },
  ),
  mass: builders(quantity('mass'), 'What it weighs.', { example: '3.2 kg' }),
  'mounting-holes': section(
    shortened(
      z.array(
        z.strictObject({
          x: builders(quantity('length'), 'To the middle of the hole from its left edge.', {
            example: '3/8 in',
            picture: 'footprint',
          }),
          y: builders(quantity('length'), 'To the middle of the hole from its lower edge.', {
            example: '3/8 in',
            picture: 'footprint',
          }),
          diameter: builders(quantityWithin('length', { above: 0, most: 0.03 }), 'Across the hole.', {
            example: '3/16 in',
          }),
        }),
      ),
      { form: 'corners' },
    ).default([]),
    'Its holes for screws, in its own footprint.',
    { picture: 'footprint' },
  ),
  foot: builders(
    quantityWithin('length', { above: 0, most: 0.1 }).optional(),
    'How thick its foot or flange is where a screw goes through it. The bite of the screw, and how far it reaches, are less by as much.',
    { example: '2.5 mm', leftOut: 'so thin that it takes nothing of the screw' },
  ),
  'bracket-holes': section(
    z
      .array(
        z.strictObject({
          x: builders(
            quantityWithin('length', { least: -0.15, most: 1.5 }),
            'To the middle of the hole from the left edge of the part; below zero to the left of it.',
            { example: '-3/8 in', picture: 'footprint' },
          ),
          y: builders(
            quantityWithin('length', { least: -0.15, most: 1.5 }),
            'To the middle of the hole from its lower edge; below zero under it.',
            { example: '1 1/2 in', picture: 'footprint' },
          ),
          diameter: builders(quantityWithin('length', { above: 0, most: 0.03 }), 'Across the hole.', {
            example: '3/16 in',
          }),
        }),
      )
      .default([]),
    'Holes of the bracket, strap or clamp that holds a part without holes of its own. They may lie beside its foot, and are drilled as its own would be.',
    { picture: 'footprint' },
  ),
  air: section(edgeLengths.optional(), 'Air that its maker asks for at each edge, and over it.', {
    example: { top: '2 in', bottom: '2 in' },
    leftOut: '{gap-fins} at fins, {gap-fan} at a fan',
    picture: 'footprint',
  }),
  cooling: builders(
    z.record(edgeSchema, coolingSchema.optional()).optional(),
    'Which of its edges carry cooling fins or a fan.',
    { example: { top: 'fins', bottom: 'fins' }, picture: 'footprint' },
  ),
  terminals: section(
    rows(z.record(z.string(), terminalSpecSchema), { at: 'pitch', role: 'pairs', mark: 'list' }),
    'Its terminals by their names, as links write them behind the dot: `amp.B+`.',
    { name: 'B+' },
  ),
  controls: section(
    rows(z.record(z.string(), controlSpecSchema), { at: 'pitch', channels: 'groups' }).default({}),
    'Its knobs, switches and slides by their names.',
    { name: 'GAIN-FRONT' },
  ),
  heat: builders(
    quantityWithin('power', { most: 5000 }).optional(),
    'Heat that it gives off at rated power, by its maker. The heat of a space is computed from what its devices draw.',
    { example: '110 W' },
  ),
  'most-ambient': builders(
    quantityWithin('temperature', { least: 20, most: 200 }).optional(),
    'The warmest air that its maker allows round it.',
    { example: '70 C', leftOut: '{most-ambient}' },
  ),
};

const unmeasured =
  'nothing is computed from it while the part stays where a vehicle has it; a job that builds it in needs it';

/** The same of a part that a vehicle comes with: its measures are needed where a job builds it in alone. */
export const fittedBase = {
  ...equipmentBase,
  size: section(
    equipmentBase.size.optional(),
    'Outside measures of its body, before any turn; plugs and knobs that stand out are not part of it.',
    { picture: 'footprint', leftOut: unmeasured },
  ),
  mass: builders(equipmentBase.mass.optional(), 'What it weighs.', {
    example: '3.2 kg',
    leftOut: unmeasured,
  }),
};
