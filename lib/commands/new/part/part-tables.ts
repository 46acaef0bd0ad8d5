import { z } from 'zod';
import { partBase } from '../../../model/content/part-base.ts';
import { text } from '../../../model/fields.ts';
import { cableSchema } from '../../../model/kinds/cable.ts';
import { chargerSchema } from '../../../model/kinds/charger.ts';
import { crossoverSchema } from '../../../model/kinds/crossover.ts';
import { distributionSchema } from '../../../model/kinds/distribution.ts';
import { enclosureSchema } from '../../../model/kinds/enclosure.ts';
import { terminalSpecSchema } from '../../../model/kinds/fields/terminal-spec.ts';
import type { KindName } from '../../../model/kinds/index.ts';
import { kinds } from '../../../model/kinds/index.ts';
import { speakerSchema } from '../../../model/kinds/speaker.ts';
import { type AskedTable, column, optionalColumn } from '../../../model/survey/asked-table.ts';
import { componentSet, setTable } from './component-set.ts';
import {
  amplifierFactsTable,
  amplifierSupplyTable,
  bridgeTable,
  channelTable,
  menuTable,
  passTable,
  processorMenuTable,
  supplyTable,
} from './device-tables.ts';
import { columnsOf, leaflet, sizesField } from './part-columns.ts';
import { tabsField } from './tab-widths.ts';
import {
  boardCaseTable,
  caseTable,
  controlTable,
  coolingTable,
  fittedCaseTable,
  postsTable,
  terminalTable,
} from './terminal-tables.ts';

/** What every part is called. */
export const titleTable: AskedTable = leaflet(
  'title',
  'What the part is called on sheets: what it is, its rating',
  [column('title', 'title', partBase.title, 'Four-channel amplifier, 4 x 75 W')],
);

/** Fields of a kind in one row, by their names in its file. */
function facts(kind: KindName, asks: string, names: readonly string[], examples = {}): AskedTable {
  const shape: Readonly<Record<string, z.ZodType>> = kinds[kind].schema.shape;
  return leaflet('facts', asks, columnsOf(shape, names, examples));
}

const coil = speakerSchema.shape.coils.valueType.shape;
const boxes = speakerSchema.shape.boxes.unwrap();
const way = distributionSchema.shape['fused-ways'].unwrap().valueType.shape;
const conductor = cableSchema.shape.conductors.valueType.shape;
const charger = chargerSchema.shape;

/** What a speaker plays, and its coils. */
const speakerTable = leaflet('facts', 'What it plays; its coils, and how they are joined', [
  column('band', 'band', z.enum([...speakerSchema.shape.band.options, componentSet]), 'coaxial'),
  ...columnsOf(speakerSchema.shape, ['power', 'lowest-frequency', 'cut-out'], {
    power: '70 W',
    'lowest-frequency': '60 Hz',
    'cut-out': '5 1/2 in',
  }),
  column('names', 'coils', text('C1'), 'C1'),
  column('nominal', 'nominal', coil.nominal, '4 ohm'),
  optionalColumn('direct-current', 'direct current', coil['direct-current'], '3.3 ohm'),
  column('joint', 'joint', terminalSpecSchema.shape.joint, 'blade-tab'),
  optionalColumn('takes', 'takes', sizesField, '18 AWG to 12 AWG'),
  optionalColumn('strip', 'strip', terminalSpecSchema.shape.strip, ''),
  optionalColumn('inductance', 'coil inductance', coil.inductance, ''),
  optionalColumn('tabs', 'width of its tabs', tabsField, '+ 6.3 mm - 2.8 mm'),
]);

const boxTable = leaflet('box', 'Of a subwoofer: the boxes that its maker allows', [
  optionalColumn('loading', 'loading', enclosureSchema.shape.loading, 'sealed'),
  optionalColumn('from', 'from', boxes.valueType.shape.from, '15 L'),
  optionalColumn('to', 'to', boxes.valueType.shape.to, '25 L'),
]);

const boxFactsTable = leaflet(
  'facts',
  'Its air; of a cup or posts, what they take, and whether the lead from there to its speaker lies in it',
  [
    ...columnsOf(enclosureSchema.shape, ['volume', 'loading', 'tuning', 'opening', 'free-depth'], {
      loading: 'sealed',
      tuning: '',
    }),
    optionalColumn('takes', 'cup takes', sizesField, '16 AWG to 10 AWG'),
    optionalColumn('strip', 'cup strip', terminalSpecSchema.shape.strip, '12 mm'),
    optionalColumn('lead-inside', 'lead inside', enclosureSchema.shape['lead-inside'], 'no'),
  ],
);

const wayTable = leaflet(
  'way',
  'Its fused ways',
  [
    column('names', 'ways', text('OUT1..4'), 'OUT1..4'),
    column('from', 'from', way.from, 'IN'),
    column('fuse-form', 'fuse form', way['fuse-form'], 'small-bolt-in'),
  ],
  { rows: 2 },
);

const conductorTable = leaflet(
  'conductor',
  'Its conductors',
  [
    column('name', 'name', text('white'), 'white'),
    column('size', 'size', conductor.size, '18 AWG'),
    column('colour', 'colour', conductor.colour, 'WH'),
    optionalColumn('side', 'side', conductor.side, ''),
  ],
  { rows: 9 },
);

const crossoverWayTable = leaflet(
  'band',
  'What it lets through at each pair of its outputs',
  [
    column('names', 'ways', text('W'), 'T'),
    column('band', 'band', crossoverSchema.shape.ways.valueType, 'from 3 kHz'),
  ],
  { rows: 3 },
);

const filter = cableSchema.shape.filter.unwrap().shape;

const filterTable = leaflet('filter', 'Of a line lead: the passive filter in it', [
  optionalColumn('pass', 'passes', filter.pass, 'high-pass'),
  optionalColumn('type', 'shape', filter.type, 'butterworth'),
  optionalColumn('order', 'order', filter.order, '1'),
  optionalColumn('corner', 'corner', filter.corner, '80 Hz'),
]);

/** A part that stands on a board: its case, what holds and cools it, its terminals. */
const onBoard = [titleTable, boardCaseTable, coolingTable, terminalTable];

/** What the leaflet of each kind of part is asked for, in this order. */
export const partTables: { readonly [K in KindName]: readonly AskedTable[] } = {
  amplifier: [
    ...onBoard,
    channelTable,
    bridgeTable,
    passTable,
    controlTable,
    menuTable,
    amplifierSupplyTable,
    amplifierFactsTable,
  ],
  processor: [...onBoard, controlTable, processorMenuTable, supplyTable],
  'source-unit': [titleTable, fittedCaseTable, terminalTable, controlTable, menuTable, supplyTable],
  speaker: [titleTable, caseTable, speakerTable, setTable, boxTable],
  enclosure: [titleTable, caseTable, boxFactsTable],
  battery: [
    titleTable,
    fittedCaseTable,
    postsTable('POS NEG'),
    facts(
      'battery',
      'What it holds',
      ['chemistry', 'capacity', 'cold-cranking', 'short-circuit', 'resistance'],
      {
        chemistry: 'flooded',
        resistance: '',
      },
    ),
  ],
  alternator: [
    titleTable,
    fittedCaseTable,
    postsTable('B+ CASE'),
    facts('alternator', 'What it gives', ['rating', 'set-point', 'variable-voltage'], {
      'variable-voltage': 'no',
    }),
  ],
  'fuse-holder': [
    titleTable,
    boardCaseTable,
    postsTable('IN OUT'),
    facts('fuse-holder', 'What fuse it holds', ['fuse-form', 'current']),
  ],
  fuse: [titleTable, facts('fuse', 'Its data', ['form', 'rating', 'voltage', 'interrupts'])],
  distribution: [...onBoard, wayTable, facts('distribution', 'What it carries', ['current'])],
  wire: [
    titleTable,
    facts('wire', 'Its data', [
      'size',
      'colour',
      'for',
      'insulation',
      'material',
      'outside-diameter',
      'measured',
    ]),
  ],
  cable: [
    titleTable,
    conductorTable,
    facts('cable', 'Its data', [
      'form',
      'for',
      'insulation',
      'outside-diameter',
      'made-length',
      'plugs',
      'y-lead',
    ]),
    filterTable,
  ],
  relay: [
    ...onBoard,
    facts('relay', 'Its coil and contact', ['coil-current', 'contact-current', 'suppression']),
  ],
  terminal: [
    titleTable,
    leaflet('sizes', 'Conductors that it takes', [column('takes', 'takes', sizesField, '8 AWG to 6 AWG')]),
    facts('terminal', 'Its data', ['form', 'stud', 'pin', 'strip', 'die'], { pin: '' }),
  ],
  covering: [titleTable, facts('covering', 'Its data', ['form', 'bore', 'withstands', 'shrunk-bore'])],
  grommet: [titleTable, facts('grommet', 'Its data', ['hole', 'bore', 'panel'])],
  'board-sheet': [
    titleTable,
    facts('board-sheet', 'Its data', [
      'material',
      'thickness',
      'width',
      'height',
      'density',
      'modulus',
      'modulus-across',
      'shear-modulus',
      'long-term-modulus',
      'withstands',
      'grain',
      'sealed',
    ]),
  ],
  fixing: [
    titleTable,
    facts('fixing', 'Its data', [
      'form',
      'thread',
      'length',
      'thickness',
      'pilot',
      'clearance',
      'torque',
      'bears-on',
      'holds',
      'withstands',
    ]),
  ],
  'level-control': [titleTable, caseTable, terminalTable],
  'isolating-relay': [
    ...onBoard,
    facts('isolating-relay', 'Its coil and contact', [
      'pulls-in',
      'coil-current',
      'suppression',
      'continuous-current',
      'opens-while-cranking',
      'resistance',
    ]),
  ],
  charger: [
    ...onBoard,
    leaflet('input', 'Its input, and what starts it', [
      ...columnsOf(charger.input.shape, ['fuse', 'efficiency', 'key-off', 'turn-on-draw']),
      ...columnsOf(charger, ['starts-by']),
    ]),
    leaflet('output', 'Its output', columnsOf(charger.output.shape, ['voltage', 'current', 'fuse'])),
  ],
  'capacitor-bank': [
    ...onBoard.slice(0, 3),
    postsTable('POS NEG'),
    facts('capacitor-bank', 'Its data', ['capacitance', 'resistance', 'rated-voltage', 'fuse']),
  ],
  crossover: [
    titleTable,
    boardCaseTable,
    {
      ...terminalTable,
      hint: `Left empty: IN for its input, and a pair for each of its ways, by its name. ${terminalTable.hint}`,
    },
    crossoverWayTable,
    controlTable,
    facts('crossover', 'Its load', ['load', 'power', 'order']),
  ],
  fan: [...onBoard, facts('fan', 'Its data', ['airflow', 'draw'])],
};
