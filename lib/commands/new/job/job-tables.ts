import { jobSchema } from '../../../model/content/job.ts';
import { deviceSchema } from '../../../model/content/job-device.ts';
import { extent, id, quantity, text } from '../../../model/fields.ts';
import { type AskedTable, column, optionalColumn } from '../../../model/survey/asked-table.ts';

const device = deviceSchema.shape;
const board = jobSchema.shape.boards.unwrap().valueType.shape;
const length = quantity('length');

/** What a new job is asked for, in this order: whose vehicle, what stands on its board, what plays where, the board. */
export const jobTables = [
  {
    key: 'title',
    asks: 'What the job is called on its sheets',
    by: 'eye',
    columns: [
      column('title', 'title', jobSchema.shape.title, 'One five-channel amplifier under the left seat'),
    ],
    rows: 1,
  },
  {
    key: 'issued-on',
    asks: 'Date of its first issue',
    by: 'eye',
    columns: [column('issued-on', 'date', jobSchema.shape['issued-on'], '2026-02-09')],
    rows: 1,
  },
  {
    key: 'vehicle',
    asks: 'The vehicle',
    by: 'eye',
    columns: [column('vehicle', 'vehicle', jobSchema.shape.vehicle, 'estate')],
    rows: 1,
  },
  {
    key: 'space',
    asks: 'The space that its board goes into',
    by: 'eye',
    columns: [column('space', 'space', id, 'under-left-seat')],
    rows: 1,
  },
  {
    key: 'device',
    asks: 'Amplifiers, processor and what else stands on the board; and what is built in beside it, with its place: level control, second battery, isolating relay',
    by: 'eye',
    hint: 'Without a place it stands on the board.',
    columns: [
      column('name', 'name', id, 'amp'),
      column('part', 'part', device.part, 'amp-five'),
      optionalColumn('in', 'place', id, ''),
    ],
    rows: 4,
  },
  {
    key: 'speaker',
    asks: 'Speakers: which part plays in which places',
    by: 'eye',
    hint: 'Places are parted by blanks, the left one first. A subwoofer has its box; driven by tells which amplifier, where there are several. A component set is one row with the places of its tweeters; its passive crossover goes where the woofers are. One that lies elsewhere has a row before, and the row of the set names that under driven by. What is to play quieter than the others has its level in the last column: rear, coaxial-525, left-rear right-rear, , amp, , , -3 dB.',
    columns: [
      column('name', 'name', id, 'front'),
      column('part', 'part', device.part, 'coaxial-65'),
      column('in', 'places', text('left-door right-door'), 'left-door right-door'),
      optionalColumn('box', 'box', id, ''),
      optionalColumn('driven-by', 'driven by', id, 'amp'),
      optionalColumn('tweeters', 'tweeters of its set in', text('left-dash-top right-dash-top'), ''),
      optionalColumn('held', 'what holds its box', device.held, ''),
      optionalColumn('level', 'how much quieter than the others', device.level, ''),
    ],
    rows: 6,
  },
  {
    key: 'signal',
    asks: 'Which pair of the source each of these speakers plays: nothing tells by their places',
    by: 'eye',
    hint: 'Left empty, the job asks for it. A row at the place in the vehicle tells it for all jobs.',
    columns: [column('name', 'name', id, 'rear'), column('signal', 'pair', device.signal.unwrap(), 'rear')],
    rows: 4,
  },
  {
    key: 'board',
    asks: 'The board: where its lower left corner lies in the space, its size, what it stands on',
    by: 'tape',
    hint: 'Left empty, sheet and ground point are proposed.',
    columns: [
      column('x', 'from the left', length, '1 in'),
      column('y', 'from below', length, '1 in'),
      column('width', 'width', extent, '17 in'),
      column('height', 'height', extent, '12 in'),
      optionalColumn('spacer', 'spacers', board.spacer, '12 mm'),
      optionalColumn('ground', 'ground point', id, ''),
      optionalColumn('sheet', 'sheet', id, ''),
    ],
    rows: 1,
  },
] as const satisfies readonly AskedTable[];
