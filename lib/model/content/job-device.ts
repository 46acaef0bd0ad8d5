import { z } from 'zod';
import { builders, customerAndShop, everyone } from '../audience.ts';
import { extent, id, positiveNumber, quantity, quantityWithin, text } from '../fields.ts';
import { reserveEnd } from '../reserve-end.ts';
import { names, rows } from '../short-forms/short-form.ts';
import { bringerSchema, holdingSchema, polaritySchema, signalPairSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { filterSchema } from './filter.ts';
import { playedBandField } from './played-band.ts';

/** Turns of a part on its board, counter-clockwise. */
const turnSchema = z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)], {
  error: 'is not a turn: write 0, 90, 180 or 270 (degrees counter-clockwise)',
});

/** One band of an equaliser. */
const equaliserBandSchema = z.strictObject({
  centre: builders(
    quantityWithin('frequency', { least: 5, most: 40_000 }),
    'The frequency that it works about.',
    { example: '2.5 kHz' },
  ),
  gain: builders(quantityWithin('level', { least: -24, most: 24 }), 'What it raises or takes back.', {
    example: '-3 dB',
  }),
  q: builders(
    positiveNumber.max(50, 'is sharper than any equaliser; write a number such as 1.4').optional(),
    'Its sharpness.',
    { example: 1.4, leftOut: 'the device does not tell it' },
  ),
});

/** A channel or a bridge by its name in the part; a number is what YAML makes of a name of figures. */
const channelName = z.union([z.int().positive().transform(String), text('1+2')]);

export const deviceSchema = z.strictObject({
  part: builders(id, 'The part of the catalogue that it is.', { example: 'amp-five' }),
  title: everyone(text('Front amplifier').optional(), 'What it is called on sheets.', {
    example: 'Front amplifier',
    leftOut: 'the title of its part',
  }),
  'brought-by': builders(
    bringerSchema.optional(),
    'Who brings it, where that is the customer: it is not taken from the shelf, not ordered, and costs nothing on an estimate.',
    { example: 'customer', leftOut: 'the shop' },
  ),
  on: builders(id.optional(), 'The board that it is mounted on.', { example: 'board' }),
  in: builders(
    z.union([id, z.array(id).min(1)], { error: 'needs a place, or a list of places' }).optional(),
    'Or the place in the vehicle. A list of places stands for one device in each: `front` becomes `front-left` and `front-right`.',
    { example: ['left-door', 'right-door'] },
  ),
  'driven-by': builders(
    id.optional(),
    'What its signal comes from. Of a filter in the lead of a tweeter: the speaker beside which it hangs.',
    {
      example: 'amp',
      leftOut: 'the only amplifier, else the only processor, else the source unit',
    },
  ),
  channels: builders(
    names(z.array(channelName).min(1)).optional(),
    'Of a speaker: the outputs of its amplifier that drive it, by their names in its part, the left one first.',
    { example: [3, 4], leftOut: 'proposed: speakers take channels in the order of the file' },
  ),
  plays: builders(playedBandField.optional(), 'Of a speaker: the band that it plays.', {
    example: '80 Hz to 3 kHz',
    leftOut: 'by its kind and frame',
  }),
  signal: builders(signalPairSchema.optional(), 'Of a speaker: the pair of the source that it plays.', {
    example: 'rear',
    leftOut: 'by the row of its place',
  }),
  level: builders(
    quantityWithin('level', { least: -40, most: 0 }).optional(),
    'Of a speaker: how far below what its channel may give it is set, so that it plays quieter beside the others. The gain of its channel is set for it, else the level of the output that feeds it.',
    { example: '-3 dB', leftOut: 'as much as its channel may give' },
  ),
  'speaker-level': builders(
    names(z.array(text('IN1'))).default([]),
    'Of an amplifier: the line inputs that take speaker outputs, by the leads that its maker supplies, where its part says that they may.',
    { example: ['IN1', 'IN2'], leftOut: 'proposed where the source has speaker outputs alone' },
  ),
  'summed-inside': builders(
    names(z.array(channelName)).default([]),
    'Of an amplifier: the channels that take their signal inside, from the inputs that its part names in `also-takes:`.',
    { example: [5], leftOut: 'proposed for a subwoofer that no output of the source is left for' },
  ),
  box: builders(id.optional(), 'Of a subwoofer: its enclosure, in the same place.', {
    example: 'enclosure-sealed-20',
  }),
  'fed-by': builders(id.optional(), 'The battery that feeds it.', {
    example: 'starter-battery',
    leftOut: "the job's second battery, else the starter battery",
  }),
  ground: builders(id.optional(), 'The ground point of the vehicle that its ground lead goes to.', {
    example: 'crossmember-left',
    leftOut: 'proposed: a ground point of the vehicle within reach',
  }),
  cools: builders(id.optional(), 'Of a fan: the space of the vehicle whose air it moves.', {
    example: 'under-left-seat',
    leftOut: 'the space of its board, else the only space with boards',
  }),
  at: section(
    z
      .strictObject({
        x: builders(quantity('length'), 'From the datum of the board to the right.', {
          example: '2 in',
          picture: 'board',
        }),
        y: builders(quantity('length'), 'From the datum of the board upwards.', {
          example: '3 in',
          picture: 'board',
        }),
      })
      .optional(),
    'Where the lower left corner of its footprint stands on the board, after its turn.',
    { picture: 'board', leftOut: 'proposed by search, best first' },
  ),
  turn: builders(turnSchema.optional(), 'Its turn on the board, counter-clockwise, in degrees.', {
    example: 90,
    picture: 'turns',
    leftOut: 'proposed with its place',
  }),
  raised: builders(
    extent.optional(),
    'How far it is raised off the board, to stand over others or out of the wet.',
    { example: '3 in', leftOut: 'it lies on the board, unless there is no room beside the others' },
  ),
  held: builders(
    holdingSchema.optional(),
    'What holds it on its board where it has no holes for screws, or not only these; of an enclosure, or of a speaker in one, what holds the enclosure at its place.',
    { example: 'strap' },
  ),
  fuse: builders(quantity('current').optional(), 'Of a holder: the rating of its fuse.', {
    example: '60 A',
    leftOut: 'chosen from stock',
  }),
  fuses: section(
    z.record(z.string(), builders(quantity('current'))).default({}),
    'Of a block: the rating in each fused way, by its outgoing terminal.',
    { example: { OUT1: '40 A' }, leftOut: 'chosen from stock' },
  ),
  'reserve-end': builders(
    reserveEnd.optional(),
    'Of a battery: the charge at which its reserve ends. It goes before what its part says.',
    { example: '50 %', leftOut: 'as its part says, else {reserve-end}' },
  ),
  filters: section(
    rows(z.record(z.string(), z.array(filterSchema))).default({}),
    'Filters of an output, by its terminal or pair.',
    { name: 'CH1', leftOut: 'proposed in a job without links, else none' },
  ),
  equalising: section(
    rows(z.record(z.string(), z.array(equaliserBandSchema))).default({}),
    'Bands of the equaliser of an output, by its terminal or pair.',
    { name: 'OUT1', leftOut: 'flat' },
  ),
  mix: section(
    rows(z.record(z.string(), builders(names(z.array(text('IN1')).min(1))))).default({}),
    'Of a processor: the inputs that an output plays, by its terminal.',
    { name: 'OUT1', example: { OUT1: ['IN1'] } },
  ),
  after: section(
    z.record(z.string(), builders(text('it stands over it'))).default({}),
    'Devices and links that must be in place before this one, each with the reason.',
    { example: { feed: 'it stands over it' } },
  ),
  mounted: builders(
    polaritySchema.default('normal'),
    'Of a speaker: `reversed` where it is mounted back to front, so that its cone moves the other way.',
  ),
  reversed: builders(
    text('the crossover asks for it').optional(),
    'Why a speaker is meant to be wired with its polarity reversed.',
    { example: 'the crossover asks for it' },
  ),
  loads: section(
    rows(z.record(z.string(), builders(quantity('resistance')))).default({}),
    'The load that a channel of an amplifier is to see, by channel. It is held against its wiring.',
    { example: { '1': '4 ohm' } },
  ),
  settings: section(
    z.record(z.string(), builders(text('LPF'))).default({}),
    'State of a control before first power-up, by its name.',
    { example: { 'XOVER-FRONT': 'HPF' }, leftOut: 'the safe one of its part' },
  ),
  'after-commissioning': section(
    z.record(z.string(), builders(text('FULL'))).default({}),
    'State of a control after commissioning, by its name.',
    { example: { 'XOVER-FRONT': 'FULL' }, leftOut: 'it follows from filters, gains and its part' },
  ),
  'serial-number': customerAndShop(
    text('0001').optional(),
    'Printed into the warranty record of the packet.',
    { example: '0001', leftOut: 'a blank stands there' },
  ),
});
