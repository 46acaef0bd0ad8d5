import { z } from 'zod';
import { builders, customerAndShop, everyone, shopOnly, shownTo } from '../audience.ts';
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
import { playedBandField } from './played-band.ts';
import { formatVersion } from './shop.ts';

const length = quantity('length');

/** Turns of a part on its board, counter-clockwise. */
const turnSchema = z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)], {
  error: 'is not a turn: write 0, 90, 180 or 270 (degrees counter-clockwise)',
});

export const filterSchema = z.strictObject({
  pass: builders(filterPassSchema),
  type: builders(filterTypeSchema),
  order: builders(filterOrder),
  corner: builders(quantity('frequency')),
});

/** One band of an equaliser. */
const equaliserBandSchema = z.strictObject({
  centre: builders(quantityWithin('frequency', { least: 5, most: 40_000 })),
  gain: builders(quantityWithin('level', { least: -24, most: 24 })),
  /** Its sharpness; left out where the device does not tell it. */
  q: builders(positiveNumber.max(50, 'is sharper than any equaliser; write a number such as 1.4').optional()),
});

/** A channel or a bridge by its name in the part; a number is what YAML makes of a name of figures. */
const channelName = z.union([z.int().positive().transform(String), text('1+2')]);

export const deviceSchema = z.strictObject({
  part: builders(id),
  title: everyone(text('Front amplifier').optional()),
  /** The board that it is mounted on; or the place in the vehicle. A list of places stands for one in each of them. */
  on: builders(id.optional()),
  in: builders(z.union([id, z.array(id).min(1)], { error: 'needs a place, or a list of places' }).optional()),
  /** What its signal comes from; left out, the only amplifier, else the only processor, else the source unit. */
  'driven-by': builders(id.optional()),
  /** Of a speaker: the outputs of its amplifier that drive it, by their names in its part, the left one first. */
  channels: builders(names(z.array(channelName).min(1)).optional()),
  /** Of a speaker: its band; left out, by its kind and frame. */
  plays: builders(playedBandField.optional()),
  /** Of a speaker: the pair of the source that it plays; left out, by the row of its place. */
  signal: builders(signalPairSchema.optional()),
  /** Of a subwoofer: its enclosure, in the same place. */
  box: builders(id.optional()),
  /** The battery that feeds it; left out, the job's second battery, else the starter battery. */
  'fed-by': builders(id.optional()),
  /** The ground point of the vehicle that its ground lead goes to. */
  ground: builders(id.optional()),
  /** Left out, the place on the board is found by search. */
  at: z.strictObject({ x: builders(length), y: builders(length) }).optional(),
  turn: builders(turnSchema.optional()),
  raised: builders(extent.optional()),
  /** What holds it on its board where it has no holes for screws, or not only these. */
  held: builders(holdingSchema.optional()),
  /** Ratings of its fuses: of the holder itself by `fuse`, of a fused way by its outgoing terminal. */
  fuse: builders(quantity('current').optional()),
  fuses: z.record(z.string(), builders(quantity('current'))).default({}),
  /** Of a battery: the charge at which its reserve ends; goes before what its part says. */
  'reserve-end': builders(reserveEnd.optional()),
  /** Filters of an output, by its terminal or pair. */
  filters: rows(z.record(z.string(), z.array(filterSchema))).default({}),
  /** Bands of the equaliser of an output, by its terminal or pair. */
  equalising: rows(z.record(z.string(), z.array(equaliserBandSchema))).default({}),
  /** Of a processor: the inputs that an output plays, by its terminal: `OUT1: [IN1]`. */
  mix: rows(z.record(z.string(), builders(names(z.array(text('IN1')).min(1))))).default({}),
  /** Devices and links that must be in place before this one, each with the reason: `feed: it stands over it`. */
  after: z.record(z.string(), builders(text('it stands over it'))).default({}),
  /** A speaker that is mounted back to front: its cone moves the other way. */
  mounted: builders(polaritySchema.default('normal')),
  /** Why a speaker is meant to be wired with its polarity reversed. */
  reversed: builders(text('the crossover asks for it').optional()),
  /** The load that a channel of an amplifier is to see, by channel: held against its wiring. */
  loads: rows(z.record(z.string(), builders(quantity('resistance')))).default({}),
  /** State of a control before first power-up; left out, the safe one of its part. */
  settings: z.record(z.string(), builders(text('LPF'))).default({}),
  /** State of a control after commissioning; left out, it follows from filters, gains and its part. */
  'after-commissioning': z.record(z.string(), builders(text('FULL'))).default({}),
  /** Printed into the warranty record of the packet; left out, a blank stands there. */
  'serial-number': customerAndShop(text('0001').optional()),
});

export const linkSchema = z.strictObject({
  from: builders(terminalRef),
  to: builders(terminalRef),
  /** The reel that it is cut from; left out, chosen from stock. */
  wire: builders(id.optional()),
  size: builders(wireSize.optional()),
  colour: builders(colourSchema.optional()),
  /** Or the conductors of a cable of the job that it takes: one, or two for a pair. */
  cable: builders(id.optional()),
  conductors: builders(z.array(text('white')).min(1).max(2).optional()),
  /** Left out, measured from placement and runs. */
  length: builders(stretch.optional()),
  label: builders(text('P1').optional()),
  /**
   * Where it shares a terminal and the first stretch of its run with another link, and parts from it: `after` from the
   * shared terminal along the run, then a leg of its own.
   */
  branch: z.strictObject({ from: builders(id), after: builders(stretch), leg: builders(stretch) }).optional(),
});

export const fixingSchema = z.strictObject({
  /** The sound point of the space that it goes into. */
  point: builders(id),
  fixing: builders(id),
  /** Height of the spacer between board and panel. */
  spacer: builders(extent.optional()),
});

const boardSchema = z.strictObject({
  title: everyone(text('Main board').optional()),
  /** Left out, the lightest sheet in stock that holds. */
  sheet: builders(id.optional()),
  /** Left out, the space of the job. */
  space: builders(id.optional()),
  /** Where the datum corner of the board stands in the space. */
  at: z.strictObject({ x: builders(length), y: builders(length) }).optional(),
  outline: outlineSchema,
  /** The battery that feeds what stands on it, and the ground point of the vehicle that it goes to. */
  'fed-by': builders(id.optional()),
  ground: builders(id.optional()),
  /** Height of the spacers under all fixings that do not say one. */
  spacer: builders(extent.optional()),
  /** Left out, every sound point that lies under it. */
  fixings: rows(z.record(id, fixingSchema), { point: 'names', spacer: 'list' }).optional(),
  /** Stiffening ribs. */
  ribs: z.record(id, ribSchema).default({}),
});

export const runSchema = z.strictObject({
  route: builders(id),
  links: builders(z.array(id).min(1)),
  covering: builders(id.optional()),
});

/** A caution that the fabricator looked at and lets stand. It stays printed, and opens again once one of its figures changes. */
const acceptedSchema = z.strictObject({
  /** Its name on the list of findings, such as `drop-over-limit`. */
  finding: builders(text('drop-over-limit')),
  /** What it is about: the subject that the list names. */
  of: builders(text('amp')),
  /** The value that was seen, as the list prints it; left out where the finding tells none. */
  value: builders(text('0.42 V').optional()),
  /** The limit that was seen beside it, as the list prints it; left out where the finding tells none. */
  limit: builders(text('0.3 V').optional()),
  reason: builders(text('the amplifier never sees its rated power on this system')),
  by: builders(text('initials')),
});

const revisionSchema = z.strictObject({
  revision: everyone(revision),
  date: everyone(day),
  what: builders(text('First issue')),
});

/** Who the job is for. Private: it reaches only the pages that need it. */
const customerSchema = z.strictObject({
  name: customerAndShop(privateText('name').optional()),
  contact: customerAndShop(privateText('telephone').optional()),
  plate: customerAndShop(privateText('plate').optional()),
  vin: shopOnly(privateText('VIN').optional()),
  'key-location': shopOnly(privateText('hook 4').optional()),
  price: customerAndShop(privateText('price').optional()),
});

/** `content/jobs/<id>.yaml`. */
export const jobSchema = z.strictObject({
  rackleaf: formatVersion,
  id: everyone(fileId),
  title: everyone(text('Side-well board with two amplifiers')),
  revision: everyone(revision.default('A')),
  revisions: z.array(revisionSchema).default([]),
  status: everyone(jobStatusSchema.default('draft')),
  'issued-on': everyone(day),
  'drawn-by': builders(text('initials').optional()),
  'approved-by': builders(text('initials').optional()),
  fabricator: everyone(text('initials').optional()),
  vehicle: everyone(id.meta({ examples: ['estate'] })),
  space: builders(id.optional()),
  customer: customerSchema.default({}),
  devices: z.record(id, deviceSchema),
  cables: z.record(id, z.strictObject({ part: builders(id) })).default({}),
  /** Left out, every link that the equipment needs is proposed. */
  links: z.record(id, linkSchema).optional(),
  boards: z.record(id, boardSchema).default({}),
  runs: z.record(id, runSchema).default({}),
  'left-open': z.record(terminalRef, builders(text('not used on this job'))).default({}),
  /** Cautions that are accepted, each with its reason; a stop can't be. */
  accepted: z.array(acceptedSchema).default([]),
  'as-built': z.record(z.string(), builders(measured)).default({}),
  notes: shownTo('bench', 'shop')(z.array(text('Vehicle returns in 30 days.')).default([])),
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
