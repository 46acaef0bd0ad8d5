import { z } from 'zod';
import { builders, customerAndShop, everyone, shopOnly } from '../audience.ts';
import {
  day,
  extent,
  fileId,
  id,
  measured,
  positiveNumber,
  privateText,
  quantity,
  quantityWithin,
  revision,
  stretch,
  terminalRef,
  text,
  wireSize,
} from '../fields.ts';
import { outlineSchema } from '../outline.ts';
import { reserveEnd } from '../reserve-end.ts';
import { ribSchema } from '../rib.ts';
import { names, rows } from '../short-forms/short-form.ts';
import {
  colourSchema,
  filterOrder,
  filterPassSchema,
  filterTypeSchema,
  holdingSchema,
  jobStatusSchema,
  polaritySchema,
  signalPairSchema,
} from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import { playedBandField } from './played-band.ts';
import { formatVersion } from './shop.ts';

/** Turns of a part on its board, counter-clockwise. */
const turnSchema = z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)], {
  error: 'is not a turn: write 0, 90, 180 or 270 (degrees counter-clockwise)',
});

export const filterSchema = z.strictObject({
  pass: builders(
    filterPassSchema,
    'What the filter lets through. A subsonic filter is a high-pass below the band of a subwoofer.',
    { example: 'high-pass' },
  ),
  type: builders(filterTypeSchema, 'Its shape.', { example: 'butterworth' }),
  order: builders(filterOrder, 'Its order: 1 is 6 dB per octave, 4 is 24 dB per octave.', { example: 2 }),
  corner: builders(quantity('frequency'), 'Its corner frequency.', { example: '80 Hz' }),
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
  on: builders(id.optional(), 'The board that it is mounted on.', { example: 'board' }),
  in: builders(
    z.union([id, z.array(id).min(1)], { error: 'needs a place, or a list of places' }).optional(),
    'Or the place in the vehicle. A list of places stands for one device in each: `front` becomes `front-left` and `front-right`.',
    { example: ['left-door', 'right-door'] },
  ),
  'driven-by': builders(id.optional(), 'What its signal comes from.', {
    example: 'amp',
    leftOut: 'the only amplifier, else the only processor, else the source unit',
  }),
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
    'What holds it on its board where it has no holes for screws, or not only these.',
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
});

export const fixingSchema = z.strictObject({
  point: builders(id, 'The sound point of the space that it goes into.', { example: 'rear-outer' }),
  fixing: builders(id, 'The fixing of the catalogue.', { example: 'bolt-m6-40' }),
  spacer: builders(extent.optional(), 'Height of the spacer between board and panel.', {
    example: '12 mm',
    leftOut: 'that of the board',
  }),
});

const boardSchema = z.strictObject({
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

/** A caution that the fabricator looked at and lets stand. It stays printed, and opens again once one of its figures changes. */
const acceptedSchema = z.strictObject({
  finding: builders(text('drop-over-limit'), 'Its name on the list of findings.'),
  of: builders(text('amp'), 'What it is about: the subject that the list names.', { example: 'amp' }),
  value: builders(text('0.42 V').optional(), 'The value that was seen, as the list prints it.', {
    leftOut: 'the finding tells none',
  }),
  limit: builders(text('0.3 V').optional(), 'The limit that was seen beside it, as the list prints it.', {
    leftOut: 'the finding tells none',
  }),
  reason: builders(text('the amplifier never sees its rated power on this system'), 'Why it may stand.', {
    example: 'the amplifier never sees its rated power on this system',
  }),
  by: builders(text('initials'), 'Who accepts it.', { example: 'L. S.' }),
});

const revisionSchema = z.strictObject({
  revision: everyone(revision, 'The letter or number of the revision.'),
  date: everyone(day, 'The day of the revision.'),
  what: builders(text('First issue'), 'What was changed.'),
});

/** Who the job is for. Private: it reaches only the pages that need it. */
const customerSchema = z.strictObject({
  name: customerAndShop(privateText('name').optional(), 'The name of the customer.', {
    example: 'A. Example',
  }),
  contact: customerAndShop(privateText('telephone').optional(), 'How the customer is reached.', {
    example: '555 0100',
  }),
  plate: customerAndShop(privateText('plate').optional(), 'The number plate of the vehicle.', {
    example: 'EXM 001',
  }),
  vin: shopOnly(privateText('VIN').optional(), 'The identification number of the vehicle.', {
    example: 'EXAMPLE0000000001',
  }),
  'key-location': shopOnly(privateText('hook 4').optional(), 'Where the key hangs.', { example: 'hook 4' }),
  price: customerAndShop(privateText('price').optional(), 'What was agreed.', { example: '400' }),
});

/** `content/jobs/<id>.yaml`. */
export const jobSchema = z.strictObject({
  rackleaf: section(formatVersion, 'The format version. Every file begins with it.'),
  id: everyone(
    fileId,
    'Its name in addresses and on labels. The file is called by it, and it is never used twice.',
    { example: 'first-board' },
  ),
  title: everyone(
    text('Side-well board with two amplifiers'),
    'What it is called on sheets and in search. No name of a customer stands in it.',
    { example: 'One five-channel amplifier under the left seat' },
  ),
  revision: everyone(revision.default('A'), 'The revision that the sheets are of.'),
  revisions: section(z.array(revisionSchema).default([]), 'The revisions so far, the newest last.', {
    example: [{ revision: 'A', date: '2026-02-09', what: 'First issue' }],
  }),
  status: everyone(jobStatusSchema.default('draft'), 'How far the job is.', { example: 'draft' }),
  'issued-on': everyone(day, 'The day on which the sheets are issued.'),
  'drawn-by': builders(text('initials').optional(), 'Who drew it.', { example: 'L. S.' }),
  'approved-by': builders(text('initials').optional(), 'Who approved it.', { example: 'L. S.' }),
  fabricator: everyone(text('initials').optional(), 'Who builds it.', { example: 'L. S.' }),
  vehicle: everyone(
    id.meta({ examples: ['estate'] }),
    'The vehicle that it is built into, by the id of its file.',
    { example: 'first-vehicle' },
  ),
  space: builders(id.optional(), 'The space that its boards stand in, unless a board says another.', {
    example: 'under-left-seat',
  }),
  customer: section(
    customerSchema.default({}),
    'Who it is for. Private: it reaches only the pages that need it.',
    { example: { name: 'A. Example' } },
  ),
  devices: section(z.record(id, deviceSchema), 'What is built in, by names of its own.', { name: 'amp' }),
  cables: section(
    z
      .record(
        id,
        z.strictObject({ part: builders(id, 'The cable of the catalogue.', { example: 'lead-phono-12ft' }) }),
      )
      .default({}),
    'Cables with several conductors that links share, by names.',
    { name: 'lead-front' },
  ),
  links: section(
    z.record(id, linkSchema).optional(),
    'What is joined to what, one conductor or pair each, by names.',
    { name: 'feed', leftOut: 'every link that the equipment needs is proposed' },
  ),
  boards: section(z.record(id, boardSchema).default({}), 'The boards, by names.', { name: 'board' }),
  runs: section(
    z.record(id, runSchema).default({}),
    'Which links take which route through the vehicle, by names.',
    { name: 'power', leftOut: 'proposed where the links are; else every length is to be written' },
  ),
  'left-open': section(
    z.record(terminalRef, builders(text('not used on this job'))).default({}),
    'Terminals that stay open, each with its reason.',
    { example: { 'amp.LEVEL': 'no level control on this job' } },
  ),
  accepted: section(
    z.array(acceptedSchema).default([]),
    'Cautions that may stand, each at the value and the limit that were seen. `check` prints the lines to write; a stop can not be accepted.',
  ),
  'as-built': section(
    z.record(z.string(), builders(measured)).default({}),
    'What was read in the vehicle, by the id of the reading.',
    { example: { 'battery-rest': '12.7 V' } },
  ),
  notes: builders(
    z.array(text('Vehicle returns in 30 days.')).default([]),
    'What whoever builds it has to know. Stands on the cover.',
    { example: ['Vehicle returns in 30 days.'] },
  ),
});
/** A job file as it was written. */
export type WrittenJob = z.output<typeof jobSchema>;
export type WrittenDevice = z.output<typeof deviceSchema>;
export type WrittenBoard = z.output<typeof boardSchema>;

/** A device in one place. */
export type JobDevice = Omit<WrittenDevice, 'in'> & { readonly in?: string | undefined };
/** A board with its fixings. */
export type JobBoard = Omit<WrittenBoard, 'fixings'> & {
  readonly fixings: Readonly<Record<string, JobFixing>>;
};
export type JobFixing = z.output<typeof fixingSchema>;

/** A job file with everything that it left out proposed, before names are looked up and shorthand is opened out. */
export type JobFile = Omit<WrittenJob, 'devices' | 'links' | 'boards'> & {
  readonly devices: Readonly<Record<string, JobDevice>>;
  readonly links: Readonly<Record<string, JobLink>>;
  readonly boards: Readonly<Record<string, JobBoard>>;
};
export type JobAccepted = z.output<typeof acceptedSchema>;
export type JobLink = z.output<typeof linkSchema>;
export type JobFilter = z.output<typeof filterSchema>;
