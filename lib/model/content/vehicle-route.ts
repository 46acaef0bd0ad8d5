import { z } from 'zod';
import { builders } from '../audience.ts';
import { id, quantityWithin, stretch, text } from '../fields.ts';
import { shortened } from '../short-forms/short-form.ts';
import { edgeSchema, vehicleSideSchema, zoneKindSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { behindSchema } from './vehicle-space.ts';

/** No conductor or way in a vehicle is longer than a bus and back. */
export const vehicleStretch = stretch.refine(
  (lengthM) => lengthM <= 50,
  'is above 50 m; check the number and its unit',
);

/** One stretch of a route. */
const passSchema = shortened(
  z.strictObject({
    zone: builders(zoneKindSchema, 'The zone that the stretch passes.', { example: 'sill' }),
    length: builders(vehicleStretch, 'Its length, measured with a cord.', {
      example: '36 in',
      picture: 'route',
    }),
    edge: builders(
      z.boolean().default(false),
      'Whether a sharp edge lies where it begins. It asks for a grommet.',
    ),
    'through-hole': builders(
      quantityWithin('length', { above: 0, most: 0.3 }).optional(),
      'Diameter of the hole that it goes through where it begins.',
      { example: '20 mm', picture: 'route' },
    ),
    'own-grommet': builders(
      z.boolean().default(false),
      "Whether the vehicle's own grommet sits in that hole and stays there. The hole is then the bore that wires go through.",
    ),
    there: builders(
      z.boolean().default(true),
      'Whether that hole is there. `false`: a job whose wires go through it drills it, after a look behind it, and a grommet goes into its sharp edge.',
      { example: false },
    ),
    behind: builders(
      behindSchema().default('unknown'),
      'Of a hole that is still to be drilled: what lies behind the panel there. Nothing is drilled into a tank, a line or an airbag.',
      { example: 'nothing' },
    ),
    inboard: builders(
      quantityWithin('length', { least: 0, most: 1.5 }).optional(),
      'How far inboard of its side it lies. Two routes on one side are told apart by it.',
      { example: '4 in', leftOut: 'two routes on one side count as side by side' },
    ),
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
export const routeSchema = shortened(
  z.strictObject({
    title: builders(
      text('Battery to left side well, along the left sill'),
      'From where to where it runs, and along what.',
      { example: 'Battery to under the left seat, along the left sill' },
    ),
    side: builders(vehicleSideSchema, 'The side of the vehicle that it runs along.', {
      example: 'left',
      picture: 'vehicle',
    }),
    passes: section(z.array(passSchema).min(1), 'Its stretches, one after another from its first end.', {
      picture: 'route',
    }),
    reaches: section(
      z
        .strictObject({
          space: builders(id, 'The space that it reaches.', { example: 'under-left-seat' }),
          edge: builders(edgeSchema, 'The edge of the space, seen from its mounting side.', {
            example: 'left',
            picture: 'space',
          }),
          at: builders(
            quantityWithin('length', { least: 0, most: 5 }).optional(),
            'Where along that edge it comes in: from the left on the top and the bottom edge, from below on the left and the right one.',
            {
              example: '6 in',
              picture: 'space',
              leftOut:
                'where it is farthest from where a wire leaves the board: the wire is made to reach any point of the edge',
            },
          ),
        })
        .optional(),
      'The edge of a space that it reaches. Its last stretch is measured to the rim of the space; the way from there to the board is added to each wire.',
    ),
    ends: builders(
      z.array(id).optional(),
      'Places and fitted devices where wires leave it at its ends. In a place at an end of two routes wires go on from one to the other: what several ways share is a route of its own, up to where they part. Of one that reaches no space the first named lies at its first end, the last at its last.',
      {
        example: ['battery-side'],
        picture: 'route',
      },
    ),
    serves: builders(
      z.array(servedRef).optional(),
      'What else lies along it: places and fitted devices by their ids, ground points as `body.` with the point.',
      { example: ['body.crossmember-left'] },
    ),
  }),
  { form: 'titled' },
);

/** What a route serves: a place, a fitted device, or a ground point. */
export function servedBy({ ends = [], serves = [] }: VehicleRoute): readonly string[] {
  return [...new Set([...ends, ...serves])];
}
export type VehicleRoute = z.output<typeof routeSchema>;

type Zoned = { readonly passes: readonly Pick<VehicleRoute['passes'][number], 'zone'>[] };

/** The stretches of a route, by their places in it, that begin at the hinge of a door: from it or into it. */
export function hingesOf({ passes }: Zoned): readonly number[] {
  return passes.flatMap(({ zone }, at) => {
    const before = passes[at - 1];
    return before && (before.zone === 'door') !== (zone === 'door') ? [at] : [];
  });
}

/** Length of a route through the vehicle, all that it passes (m). */
export function routeLengthM({
  passes,
}: {
  readonly passes: readonly { readonly length: number }[];
}): number {
  return passes.reduce((sum, { length }) => sum + length, 0);
}
