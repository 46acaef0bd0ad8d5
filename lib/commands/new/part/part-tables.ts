import type { z } from 'zod';
import { partBase } from '../../../model/content/part-base.ts';
import { text } from '../../../model/fields.ts';
import { amplifierSchema } from '../../../model/kinds/amplifier.ts';
import { cableSchema } from '../../../model/kinds/cable.ts';
import { chargerSchema } from '../../../model/kinds/charger.ts';
import { distributionSchema } from '../../../model/kinds/distribution.ts';
import { enclosureSchema } from '../../../model/kinds/enclosure.ts';
import { supplySchema } from '../../../model/kinds/fields/supply.ts';
import { terminalSpecSchema } from '../../../model/kinds/fields/terminal-spec.ts';
import type { KindName } from '../../../model/kinds/index.ts';
import { kinds } from '../../../model/kinds/index.ts';
import { speakerSchema } from '../../../model/kinds/speaker.ts';
import { type AskedTable, column, optionalColumn } from '../../../model/survey/asked-table.ts';
import { columnsOf, leaflet, sizesField } from './part-columns.ts';
import { caseTable, controlTable, mountingTables, postsTable, terminalTable } from './terminal-tables.ts';

const titleTable: AskedTable = leaflet('title', 'What the part is called on sheets: what it is, its rating', [
  column('title', 'title', partBase.title, 'Four-channel amplifier, 4 x 75 W'),
]);

/** Fields of a kind in one row, by their names in its file. */
function facts(kind: KindName, asks: string, names: readonly string[], examples = {}): AskedTable {
  const shape: Readonly<Record<string, z.ZodType>> = kinds[kind].schema.shape;
  return leaflet('facts', asks, columnsOf(shape, names, examples));
}

const supply = supplySchema.shape;
const efficiency = supply.efficiency.unwrap().shape;

/** How an amplifier is fed: what its maker tells of its draw. */
const amplifierSupplyTable = leaflet(
  'supply',
  'How it is fed, and at which voltage its powers were measured',
  [
    ...columnsOf(supply, ['type', 'fuse', 'fuses-fitted', 'amplifier-class', 'idle'], {
      type: 'regulated',
      fuse: '60 A',
      'amplifier-class': 'class-d',
      idle: '1.1 A',
    }),
    optionalColumn('full', 'efficiency at rated power', efficiency.full, '75 %'),
    ...columnsOf(supply, ['rated-at', 'turn-on-draw', 'key-off', 'cut-out'], {
      'rated-at': '14.4 V',
      'turn-on-draw': '60 mA',
      'key-off': '1.5 mA',
      'cut-out': '10.5 V',
    }),
    optionalColumn('eighth', 'efficiency at an eighth of it', efficiency.eighth, '55 %'),
  ],
  { hint: 'The fuse is that of its maker for the whole device, a ceiling; several on the chassis add.' },
);

/** How a device is fed that drives no speakers. */
const supplyTable = leaflet(
  'supply',
  'How it is fed',
  columnsOf(supply, ['type', 'fuse', 'draw', 'turn-on-draw', 'key-off', 'cut-out'], {
    type: 'regulated',
    fuse: '3 A',
    draw: '0.7 A',
    'turn-on-draw': '20 mA',
    'key-off': '2 mA',
    'cut-out': '9 V',
  }),
  { hint: 'The fuse is that of its maker, a ceiling. The draw is its whole draw.' },
);

const channel = amplifierSchema.shape.channels.valueType.shape;
const coil = speakerSchema.shape.coils.valueType.shape;
const boxes = speakerSchema.shape.boxes.unwrap();
const way = distributionSchema.shape['fused-ways'].unwrap().valueType.shape;
const conductor = cableSchema.shape.conductors.valueType.shape;
const charger = chargerSchema.shape;

const powers = column('powers', 'rated powers', text('75 W at 4 ohm'), '75 W at 4 ohm, 100 W at 2 ohm', {
  rest: true,
});

const channelTable = leaflet(
  'channel',
  'Its channels: outputs, inputs, least load, rated power into each load',
  [
    column('names', 'channels', text('1..4'), '1..4'),
    column('outputs', 'outputs', text('CH1..4'), 'CH1..4'),
    column('inputs', 'inputs', text('IN1..4'), 'IN1..4'),
    column('minimum', 'least load', channel.minimum, '2 ohm'),
    powers,
  ],
  {
    rows: 3,
    hint: 'Outputs by the name of the pair: CH1 is CH1+ and CH1-. Two inputs that are added: IN5 IN6.',
  },
);

const bridgeTable = leaflet(
  'bridge',
  'Pairs of channels that may be bridged',
  [
    column('name', 'pair', text('1+2'), '1+2'),
    column('positive', 'positive', channel.positive, 'CH1+'),
    column('negative', 'negative', channel.negative, 'CH2-'),
    column('input', 'input', channel.input, 'IN1'),
    column('minimum', 'least load', channel.minimum, '4 ohm'),
    powers,
  ],
  { rows: 3 },
);

const coilTable = leaflet('coil', 'Its coils, and how they are joined', [
  column('names', 'coils', text('C1'), 'C1'),
  column('nominal', 'nominal', coil.nominal, '4 ohm'),
  optionalColumn('direct-current', 'direct current', coil['direct-current'], '3.3 ohm'),
  column('joint', 'joint', terminalSpecSchema.shape.joint, 'blade-tab'),
  optionalColumn('takes', 'takes', sizesField, '18 AWG to 12 AWG'),
]);

const boxTable = leaflet('box', 'Of a subwoofer: the boxes that its maker allows', [
  optionalColumn('loading', 'loading', enclosureSchema.shape.loading, 'sealed'),
  optionalColumn('from', 'from', boxes.valueType.shape.from, '15 L'),
  optionalColumn('to', 'to', boxes.valueType.shape.to, '25 L'),
]);

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

/** A part that stands on a board: its case, what holds and cools it, its terminals. */
const onBoard = [titleTable, caseTable, ...mountingTables, terminalTable];

/** What the leaflet of each kind of part is asked for, in this order. */
export const partTables: { readonly [K in KindName]: readonly AskedTable[] } = {
  amplifier: [
    ...onBoard,
    channelTable,
    bridgeTable,
    controlTable,
    amplifierSupplyTable,
    facts('amplifier', 'Its heat at rated power, and the warmest air that its maker allows round it', [
      'heat',
      'most-ambient',
    ]),
  ],
  processor: [
    ...onBoard,
    controlTable,
    supplyTable,
    facts('processor', 'What it does with sound', ['sample-rate', 'summing']),
  ],
  'source-unit': [titleTable, caseTable, terminalTable, supplyTable],
  speaker: [
    titleTable,
    caseTable,
    facts('speaker', 'What it plays', ['band', 'power', 'lowest-frequency', 'cut-out'], {
      band: 'coaxial',
      power: '70 W',
      'lowest-frequency': '60 Hz',
      'cut-out': '5 1/2 in',
    }),
    coilTable,
    boxTable,
  ],
  enclosure: [
    titleTable,
    caseTable,
    facts('enclosure', 'Its air', ['volume', 'loading', 'tuning', 'opening', 'free-depth'], {
      loading: 'sealed',
      tuning: '',
    }),
  ],
  battery: [
    titleTable,
    caseTable,
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
    caseTable,
    postsTable('B+ CASE'),
    facts('alternator', 'What it gives', ['rating', 'set-point', 'variable-voltage'], {
      'variable-voltage': 'no',
    }),
  ],
  'fuse-holder': [
    titleTable,
    caseTable,
    ...mountingTables.slice(0, 1),
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
    facts('cable', 'Its data', ['form', 'for', 'insulation', 'outside-diameter', 'made-length', 'plugs']),
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
    leaflet(
      'input',
      'Its input',
      columnsOf(charger.input.shape, ['fuse', 'efficiency', 'key-off', 'turn-on-draw']),
    ),
    leaflet('output', 'Its output', columnsOf(charger.output.shape, ['voltage', 'current', 'fuse'])),
  ],
  'capacitor-bank': [
    ...onBoard.slice(0, 3),
    postsTable('POS NEG'),
    facts('capacitor-bank', 'Its data', ['capacitance', 'resistance', 'rated-voltage', 'fuse']),
  ],
};
