import { z } from 'zod';
import { builders, customerAndShop, everyone, shopOnly } from '../audience.ts';
import { workedHoursSchema } from '../estimate/worked-hours.ts';
import { day, fileId, id, measured, privateText, revision, terminalRef, text } from '../fields.ts';
import type { Outline } from '../outline.ts';
import { rows } from '../short-forms/short-form.ts';
import { jobStatusSchema } from '../vocabulary.ts';
import { section } from '../writing/field-text.ts';
import type { filterSchema } from './filter.ts';
import { boardSchema, type fixingSchema } from './job-board.ts';
import { deviceSchema } from './job-device.ts';
import { linkSchema, runSchema } from './job-links.ts';
import { photoSchema } from './job-photo.ts';
import { formatVersion } from './shop.ts';

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
  installed: builders(
    day.optional(),
    'The day on which it was built in. From then on what it takes is off the shelf; until then, once it is released, it is promised to it.',
    { leftOut: 'not built in, unless status: says so of the newest', example: '2026-02-20' },
  ),
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

/** What the owner is told that no plan can know. */
const jobHandOverSchema = z.strictObject({
  'functions-changed': section(
    z
      .array(
        everyone(text('The clock of the radio is set anew.'), 'One function, and what is different now.', {
          example: 'The parking sensors sound from the left side alone.',
        }),
      )
      .default([]),
    'Functions of the vehicle that work otherwise than before.',
    { leftOut: 'the packet has lines to write them by hand' },
  ),
  'highest-volume': everyone(
    text('28 of 40').optional(),
    'The highest setting of the volume at which nothing distorts, as the radio shows it.',
    { example: '28 of 40', leftOut: 'the packet has a line to write it by hand' },
  ),
  'highest-bass': everyone(
    text('half way').optional(),
    'The highest setting of the bass level at which nothing distorts.',
    { example: 'half way', leftOut: 'the packet has a line to write it by hand' },
  ),
});

/** `content/jobs/<id>.yaml`. */
export const jobSchema = z.strictObject({
  rackleaf: section(formatVersion, 'The format version. Every file begins with it.'),
  id: everyone(
    fileId,
    'Its name in addresses and on labels. The file is called by it, and it is never used twice.',
    { example: 'first-board', ofOneJob: true },
  ),
  title: everyone(
    text('Side-well board with two amplifiers'),
    'What it is called on sheets and in search. No name of a customer stands in it.',
    { example: 'One five-channel amplifier under the left seat' },
  ),
  revision: everyone(revision.default('A'), 'The revision that the sheets are of.', { ofOneJob: true }),
  revisions: section(z.array(revisionSchema).default([]), 'The revisions so far, the newest last.', {
    example: [{ revision: 'A', date: '2026-02-09', what: 'First issue' }],
    ofOneJob: true,
  }),
  status: everyone(jobStatusSchema.default('draft'), 'How far the job is.', {
    example: 'draft',
    ofOneJob: true,
  }),
  'issued-on': everyone(day, 'The day on which the sheets are issued.', { ofOneJob: true }),
  'drawn-by': builders(text('initials').optional(), 'Who drew it.', { example: 'L. S.', ofOneJob: true }),
  'approved-by': builders(text('initials').optional(), 'Who approved it.', {
    example: 'L. S.',
    ofOneJob: true,
  }),
  fabricator: everyone(text('initials').optional(), 'Who builds it.', { example: 'L. S.', ofOneJob: true }),
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
    { example: { name: 'A. Example' }, ofOneJob: true },
  ),
  devices: section(z.record(id, deviceSchema), 'What is built in, by names of its own.', { name: 'amp' }),
  cables: section(
    rows(
      z.record(
        id,
        z.strictObject({ part: builders(id, 'The cable of the catalogue.', { example: 'lead-phono-12ft' }) }),
      ),
    ).default({}),
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
  anew: section(
    z.array(builders(id, 'A device, a link or a board.', { example: 'amp' })).default([]),
    'Of a revision after a released one: what is not taken from there, but proposed anew.',
    { example: ['amp'], leftOut: 'everything that is built and still fits stays as it is', ofOneJob: true },
  ),
  accepted: section(
    z.array(acceptedSchema).default([]),
    'Cautions that may stand, each at the value and the limit that were seen. `check` prints the lines to write; a stop can not be accepted.',
    { ofOneJob: true },
  ),
  'as-built': section(
    z.record(z.string(), builders(measured)).default({}),
    'What was read in the vehicle, by the id of the reading.',
    { example: { 'battery-rest': '12.7 V' }, ofOneJob: true },
  ),
  'hand-over': section(
    jobHandOverSchema.default({ 'functions-changed': [] }),
    'What the owner is told at hand-over that no plan can know. It stands in the packet.',
    {
      example: { 'functions-changed': ['The parking sensors sound from the left side alone.'] },
      ofOneJob: true,
    },
  ),
  photos: section(
    z.record(id, photoSchema).default({}),
    'Photos, by names. Each is made smaller, and where and with what it was taken is taken out of it.',
    {
      name: 'main-fuse',
      example: { 'main-fuse': { file: 'main-fuse.jpg', device: 'main-fuse' } },
      ofOneJob: true,
    },
  ),
  hours: section(
    z.array(workedHoursSchema).default([]),
    'What was worked on it so far, a line for each person, day and layer. For the shop alone: it stands beside the estimate.',
    { example: [{ day: '2026-02-10', layer: 'board', worked: '2.5 h' }], ofOneJob: true },
  ),
  notes: builders(
    z.array(text('Vehicle returns in 30 days.')).default([]),
    'What whoever builds it has to know. Stands on the cover.',
    { example: ['Vehicle returns in 30 days.'], ofOneJob: true },
  ),
});
/** A job file as it was written. */
export type WrittenJob = z.output<typeof jobSchema>;
export type WrittenDevice = z.output<typeof deviceSchema>;
export type WrittenBoard = z.output<typeof boardSchema>;

export type JobHandOver = z.output<typeof jobHandOverSchema>;

/** A device in one place. */
export type JobDevice = Omit<WrittenDevice, 'in'> & { readonly in?: string | undefined };
/** How a device is used where its job says nothing of it. */
export const untoldUse = {
  filters: {},
  equalising: {},
  mix: {},
  after: {},
  mounted: 'normal',
  loads: {},
  settings: {},
  'after-commissioning': {},
} as const satisfies Partial<JobDevice>;
/** A board with its outline and its fixings. */
export type JobBoard = Omit<WrittenBoard, 'fixings' | 'outline'> & {
  readonly outline: Outline;
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
