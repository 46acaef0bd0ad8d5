import { z } from 'zod';
import { builders, everyone } from '../audience.ts';
import { extent, fileId, id, quantity, quantityWithin, terminalRef, text, wireSize } from '../fields.ts';
import { houseRuleValue } from '../house-rules.ts';
import { reserveEnd } from '../reserve-end.ts';
import { rows, shortened, span } from '../short-forms/short-form.ts';
import { systemVoltageField } from '../system-voltage.ts';
import {
  conductorMaterialSchema,
  rowSchema,
  studSchema,
  vehicleSideSchema,
  zoneKindSchema,
} from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import type { AmbientGroup } from '../zone-ambient.ts';
import { outputsSchema } from './output-facts.ts';
import { formatVersion } from './shop.ts';
import { routeSchema, vehicleStretch } from './vehicle-route.ts';
import { behindSchema, groundInsertSchema, spaceSchema } from './vehicle-space.ts';

/** A device that the vehicle came with, so that the far end of each wire exists. */
const fittedSchema = z.strictObject({
  part: builders(id, 'The part of the catalogue that it is.', { example: 'source-six-line' }),
  zone: builders(
    zoneKindSchema,
    'The zone of the vehicle that it lies in. How warm it is there follows from it.',
    { example: 'cabin' },
  ),
  side: builders(
    vehicleSideSchema.optional(),
    "The side of the vehicle that it lies on, seen from the driver's seat.",
    { example: 'left', picture: 'vehicle', leftOut: 'middle, and the survey sheet asks for it' },
  ),
  outputs: section(
    outputsSchema.default({}),
    'What its outputs give in this vehicle, by terminal or pair, as measured. It goes before what the part says.',
    { name: 'OUT1' },
  ),
  fuses: section(
    z.record(z.string(), builders(quantity('current'))).default({}),
    'Ratings of the fuses that it came with, as read off: by outgoing terminal, `fuse` for a holder.',
    { example: { fuse: '80 A' } },
  ),
  'reserve-end': builders(
    reserveEnd.optional(),
    'Of a battery: the charge at which its reserve ends. It goes before what its part says.',
    { example: '50 %', leftOut: 'as its part says, else {reserve-end}' },
  ),
  'left-open': section(
    rows(z.record(z.string(), builders(text('not used')))).default({}),
    'Terminals that no job in this vehicle touches, each with its reason.',
    { example: { 'B+': "fed by the vehicle's own harness" } },
  ),
});

/** A ground point of the body: where a ground lead may be bolted. */
const groundPointSchema = z.strictObject({
  zone: builders(zoneKindSchema, 'The zone of the vehicle that it lies in.', { example: 'under-carpet' }),
  side: builders(vehicleSideSchema.optional(), 'The side of the vehicle that it lies on.', {
    example: 'left',
    picture: 'vehicle',
    leftOut: 'middle, and the survey sheet asks for it',
  }),
  stud: builders(studSchema, 'The bolt or stud that is there, or that fits.', { example: 'M8' }),
  there: builders(
    z.boolean().default(true),
    'Whether what takes the bolt is there. `false`: a job that grounds there drills a hole and sets a rivet nut of the shop in it.',
    { example: false },
  ),
  behind: builders(
    behindSchema().default('unknown'),
    'Of a point that is still to be made: what lies behind the panel there. Nothing is drilled into a tank, a line or an airbag.',
    { example: 'nothing' },
  ),
  'free-depth': builders(
    extent.optional(),
    'Of a point that is still to be made: what is free behind the panel for the rivet nut.',
    { example: '1 1/2 in' },
  ),
  insert: section(
    groundInsertSchema(),
    'What the lead is fastened by. A bolt goes into a `rivet-nut` or a `welded` nut, which takes as much torque as its bolt; over a welded `stud` goes a nut; a bolt `through` the panel has its nut behind.',
  ),
  bolt: builders(
    z.enum(['new', 'own']).default('new'),
    'Whether a lead is bolted down with the bolt or stud that is there, `own`, or with a new bolt from the shelf. Where a cable of the vehicle is bolted already, its own holds both.',
    { example: 'own' },
  ),
  holds: builders(
    z
      .enum(['nothing-else', 'seat-belt', 'seat-frame', 'airbag', 'fuel-line', 'trim'])
      .default('nothing-else'),
    'What else the fastener holds. A ground is never put on some of them.',
    { example: 'seat-belt' },
  ),
});

/** A conductor that the vehicle came with. */
const vehicleLinkSchema = z.strictObject({
  from: builders(
    terminalRef,
    'The terminal that it leaves: a fitted device, or `body.` with a ground point.',
    { example: 'starter-battery.NEG' },
  ),
  to: builders(terminalRef, 'The terminal that it goes to.', { example: 'body.engine' }),
  size: builders(wireSize, 'Size of its conductor, as printed on it or judged by its diameter.', {
    example: '2 AWG',
  }),
  material: builders(conductorMaterialSchema.default('copper'), 'What its conductor is made of.'),
  length: builders(vehicleStretch, 'Its length, measured along it.', { example: '20 in' }),
});

/** A place in the vehicle for a device that is not on a board. */
const seatSchema = shortened(
  z.strictObject({
    title: everyone(text('Front left door'), 'What the place is called on sheets.', { example: 'Left door' }),
    zone: builders(zoneKindSchema, 'The zone of the vehicle that it lies in.', { example: 'cabin' }),
    side: builders(
      vehicleSideSchema,
      'The side of the vehicle that it lies on. Which of two speakers is the left one follows from it.',
      { example: 'left', picture: 'vehicle' },
    ),
    row: builders(rowSchema.optional(), 'The row of seats that a speaker there plays to.', {
      example: 'front',
    }),
    depth: builders(extent.optional(), 'What is free there: into the panel, or from front to rear.', {
      example: '2 1/2 in',
    }),
    width: builders(extent.optional(), 'What is free across, where it was measured.', { example: '18 in' }),
    height: builders(extent.optional(), 'What is free upwards, where it was measured.', { example: '14 in' }),
    opening: builders(
      z.enum(['there', 'to-cut']).default('there'),
      'Whether the opening that a speaker goes into is there, or is still to be cut into the panel: the order of work has a step for it.',
      { example: 'to-cut' },
    ),
    'lies-over': section(
      z
        .record(
          id,
          z.strictObject({
            must: builders(
              z.boolean().default(false),
              'Whether its maker or the law demands it; else it is wished for.',
            ),
            what: builders(text('spare wheel'), 'What it is, in words.', { example: 'spare wheel' }),
          }),
        )
        .default({}),
      'What lies below or behind it and stays reachable, such as the spare wheel.',
      { name: 'spare' },
    ),
    distance: builders(
      quantityWithin('length', { least: 0, most: 8 }).optional(),
      "From the listener's head. Delays follow from it.",
      { example: '38 in', leftOut: 'no delay is computed' },
    ),
  }),
  { form: 'titled' },
);

const ambient = (group: AmbientGroup, says: string, example: string) =>
  builders(houseRuleValue(`ambient-${group}`).optional(), says, { example, leftOut: `{ambient-${group}}` });

/** `content/vehicles/<id>.yaml`. */
export const vehicleSchema = z.strictObject({
  rackleaf: section(formatVersion, 'The format version. Every file begins with it.'),
  id: everyone(fileId, 'Its name in jobs and addresses. The file is called by it.', {
    example: 'first-vehicle',
  }),
  title: everyone(text('Estate car, five doors'), 'What it is called on sheets and in search.', {
    example: 'Estate car, five doors',
  }),
  supply: builders(
    z.enum(['combustion', 'hybrid', 'electric']).default('combustion'),
    'What drives it. In a hybrid or an electric vehicle a converter feeds the 12 V side.',
    { example: 'hybrid' },
  ),
  'system-voltage': builders(
    systemVoltageField.optional(),
    'Nominal voltage of its supply: 24 V in trucks and buses.',
    { example: '24 V', leftOut: '12 V' },
  ),
  cranking: section(
    z
      .strictObject({
        current: builders(quantityWithin('current', { least: 20, most: 5000 }), 'What it draws.', {
          example: '180 A',
        }),
        seconds: builders(quantityWithin('time', { least: 0.1, most: 120 }), 'For how long at most.', {
          example: '3 s',
        }),
      })
      .optional(),
    'What the starter draws, as measured.',
    { leftOut: '{cranking-current} for {cranking-time}' },
  ),
  cautions: everyone(
    z.array(text('Curtain airbags run along both roof rails.')).default([]),
    'What must be known before anyone reaches for a tool: airbags, high voltage, tanks and lines. Stands on the sheets of every job in it.',
    { example: ['Curtain airbags run along both roof rails.'] },
  ),
  'negative-sensor': builders(
    z.boolean().default(false),
    'Whether a sensor sits on the negative post of the battery. Grounds then go to the body, or to the far side of the sensor.',
  ),
  'vehicle-load': builders(
    quantityWithin('current', { least: 0.5, most: 500 }).optional(),
    'What the vehicle itself draws, idling, with lights, heater and fan on.',
    { example: '45 A', leftOut: '{vehicle-load}' },
  ),
  'charging-voltage': builders(
    quantityWithin('voltage', { least: 10, most: 36 }).optional(),
    'What its regulator holds, measured at the alternator, warm and with the loads on.',
    { example: '14.2 V', leftOut: "as the alternator's part says, else {voltage-sizing}" },
  ),
  'charging-range': section(
    span(
      z.strictObject({
        from: builders(quantityWithin('voltage', { least: 10, most: 36 }), 'The lowest that was read.', {
          example: '12.6 V',
        }),
        to: builders(quantityWithin('voltage', { least: 10, most: 36 }), 'The highest that was read.', {
          example: '14.8 V',
        }),
      }),
    ).optional(),
    'Both ends of the charging voltage, where the regulator varies it, as read over a drive with the loads on. Sizes are chosen at its lower end.',
    {
      leftOut:
        '{voltage-variable-low} to {voltage-variable-high} of an alternator whose part says that it varies',
    },
  ),
  ambient: section(
    z
      .strictObject({
        'engine-bay': ambient('engine-bay', 'Engine bay, bulkhead and underbody.', '85 C'),
        'near-exhaust': ambient('near-exhaust', 'Near the exhaust.', '120 C'),
        cabin: ambient('cabin', 'Cabin, sills, cargo area and under the carpet.', '45 C'),
        roof: ambient('roof', 'Roof, doors, and trim that the sun reaches.', '70 C'),
        'dash-top': ambient('dash-top', 'Top of the dash.', '85 C'),
      })
      .optional(),
    'The warmest air in parts of this vehicle, as it was read there. Conductors, coverings and the heat of a space follow.',
    { leftOut: 'the house rule of each' },
  ),
  fitted: section(
    z.record(id, fittedSchema),
    'Devices that it came with, by names: battery, alternator, source unit. The far end of each wire is at one of them.',
    { name: 'starter-battery' },
  ),
  grounds: section(
    rows(z.record(id, groundPointSchema), { side: 'list' }),
    'Points of the body that can take a ground, by names. Links call one `body.` with its name.',
    { name: 'crossmember-left' },
  ),
  links: section(
    z.record(id, vehicleLinkSchema).default({}),
    'Conductors that it came with: what charges the battery, and what grounds it.',
    { name: 'battery-strap' },
  ),
  spaces: section(
    z.record(id, spaceSchema),
    'Spaces where a board may go, by names. Each has a plane that is seen from the mounting side.',
    { name: 'under-left-seat', picture: 'space' },
  ),
  routes: section(z.record(id, routeSchema), 'Ways for wires through the vehicle, by names.', {
    name: 'power-left-sill',
    picture: 'route',
  }),
  places: section(
    rows(z.record(id, seatSchema), {
      title: 'list',
      side: 'list',
      depth: 'list',
      distance: 'list',
    }).default({}),
    'Places for what stands on no board, by names: doors, cargo floor, beside the battery.',
    { name: 'left-door', picture: 'vehicle' },
  ),
});
export type Vehicle = z.output<typeof vehicleSchema>;
