import { text } from '../../../model/fields.ts';
import { amplifierSchema } from '../../../model/kinds/amplifier.ts';
import { menuFilterFields } from '../../../model/kinds/fields/menu-filters.ts';
import { speakerLevelField } from '../../../model/kinds/fields/speaker-level.ts';
import { supplySchema } from '../../../model/kinds/fields/supply.ts';
import { processorSchema } from '../../../model/kinds/processor.ts';
import { column, optionalColumn } from '../../../model/survey/asked-table.ts';
import { columnsOf, leaflet } from './part-columns.ts';

const supply = supplySchema.shape;
const efficiency = supply.efficiency.unwrap().shape;

/** How an amplifier is fed: what its maker tells of its draw. */
export const amplifierSupplyTable = leaflet(
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
    ...columnsOf(supply, ['fuse-before'], { 'fuse-before': '80 A' }).map((one) => ({
      ...one,
      title: 'largest fuse at the battery',
    })),
    ...columnsOf(supply, ['music-current'], { 'music-current': '11 A' }).map((one) => ({
      ...one,
      title: 'current with music, at an eighth of rated power',
    })),
  ],
  {
    hint: 'The fuse is that of its maker for the whole device; several on the chassis add. Fuses fitted: how many of them sit in the device. With none, no fuse before it is larger; with one or more, the fuse at the source protects the cable, which alone bounds it, where the leaflet tells no largest fuse at the battery.',
  },
);

/** How a device is fed that drives no speakers. */
export const supplyTable = leaflet(
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
  {
    hint: 'The fuse is that of its maker: no fuse before the device is larger, unless it has fuses of its own. The draw is its whole draw.',
  },
);

const menuRange = menuFilterFields['filter-range'].unwrap().shape;

/** Filters that are set in a menu or a program; those of knobs and switches are asked with these. */
const menuColumns = [
  ...columnsOf(menuFilterFields, ['filter-orders', 'filter-types'], { 'filter-types': 'butterworth' }),
  optionalColumn('from', 'lowest corner', menuRange.from, '20 Hz'),
  optionalColumn('to', 'highest corner', menuRange.to, '20 kHz'),
  ...columnsOf(menuFilterFields, ['filter-outputs'], { 'filter-outputs': 'OUT1 OUT2' }),
];
const noMenu = 'it has no menu that makes any';
const menuHint =
  'Orders are parted by blanks: 2 is 12 dB per octave. Left empty, its menu makes none. Shapes, corners and outputs that are ' +
  'left empty: all of them. Where some outputs have others, each has its row: 2, , 50 Hz, 160 Hz and 2 4, , 50 Hz, 160 Hz, SUB-L SUB-R.';
const menuAsks = 'Filters that are set in its menu: orders, shapes, corners, outputs that have them';

export const menuTable = leaflet('menu', menuAsks, menuColumns, {
  rows: 3,
  hint: menuHint,
  seldom: noMenu,
});

/** The same of a processor, with what else it does with sound. */
export const processorMenuTable = leaflet(
  'menu',
  `${menuAsks}; its sample rate, and whether it adds inputs`,
  [...menuColumns, ...columnsOf(processorSchema.shape, ['sample-rate', 'summing'])],
  { rows: 3, hint: menuHint, seldom: `${noMenu}, and it adds none` },
);

const channel = amplifierSchema.shape.channels.valueType.shape;

const powers = column('powers', 'rated powers', text('75 W at 4 ohm'), '75 W at 4 ohm, 100 W at 2 ohm', {
  rest: true,
});

/** What each channel of an amplifier gives. */
export const channelTable = leaflet(
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
    hint:
      'Outputs by the name of the pair: CH1 is CH1+ and CH1-. Names without numbers go by their turn, 1..2, L R, IN-L IN-R. Two inputs that are added to one channel: 5, CH5, IN5 IN6. A channel that also takes ' +
      'others inside, where its own input is left open: IN5 or IN1..4.',
  },
);

/** And two of them bridged. */
export const bridgeTable = leaflet(
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
  { rows: 3, seldom: 'none may be' },
);

const passed = amplifierSchema.shape.passes.unwrap().valueType.shape;

/** What its line outputs pass on to the next amplifier. */
export const passTable = leaflet(
  'pass',
  'Its line outputs: the inputs whose signal each passes on, the share of their voltage that comes out, and behind what it is taken',
  [
    column('outputs', 'line outputs', text('OUT-L OUT-R'), 'OUT-L OUT-R'),
    column('inputs', 'inputs', text('IN1 IN2'), 'IN1 IN2'),
    column('share', 'share', passed.of.valueType, '1'),
    column('tap', 'taken at', passed.tap, 'inputs'),
  ],
  {
    rows: 2,
    seldom: 'it has none, or the leaflet does not tell what they give: measure it then',
    hint: 'One input for each output, in their order. Share: 1 where it comes out as it comes in, 0.25 for a quarter. Where the speaker-level inputs come out in another share than the line inputs, each has its row. Taken at: inputs, ahead of gain and filters; gain, behind the gain; filters, behind both.',
  },
);

const speakerLevel = speakerLevelField.unwrap().shape;

/** What else the leaflet of an amplifier tells: heat, air, and speaker level at its line inputs. */
export const amplifierFactsTable = leaflet(
  'facts',
  'Its heat at rated power, the warmest air that its maker allows round it; up to how much speaker level its line inputs take by leads that its maker supplies, and whether it turns itself on by that',
  [
    ...columnsOf(amplifierSchema.shape, ['heat', 'most-ambient']),
    optionalColumn('speaker-level', 'speaker level up to', speakerLevel.to, '12 V'),
    optionalColumn('senses', 'turns itself on by it', speakerLevel.senses, 'yes'),
  ],
  { seldom: 'not told, and its line inputs take line level alone' },
);
