import { byPeople, gone, type Row, type Values } from '../row.ts';

const amp = 'parts/parts/amp-four';
const levelled = 'parts/parts/processor-six/controls/LEVEL';
const dual = 'parts/parts/subwoofer-12-dual-4';

/** The line inputs of the amplifier as a row. */
const inputRow: Values = {
  ...Object.fromEntries(['IN1', 'IN2', 'IN3', 'IN4'].map((name) => [`${amp}/terminals/${name}`, gone])),
  [`${amp}/terminals/IN1..4`]: {
    ...{ role: 'signal-in', panel: 'left', at: '1/2 in', pitch: '1/2 in', joint: 'phono', signal: '4 V' },
    'signal-range': '0.25 V to 6 V',
  },
};

/** The same with what its maker printed at each of them. */
const markedRow: Values = {
  ...inputRow,
  [`${amp}/terminals/IN1..4`]: {
    ...{ role: 'signal-in', panel: 'left', at: '1/2 in', pitch: '1/2 in', joint: 'phono', signal: '4 V' },
    ...{ 'signal-range': '0.25 V to 6 V', mark: ['FRONT L', 'FRONT R', 'REAR L', 'REAR R'] },
  },
};

/** Both gains as a row, and no other control. */
const gains: Values = {
  [`${amp}/controls`]: {
    'GAIN-12, GAIN-34': {
      ...{ what: 'gain', panel: 'left', at: '2 7/8 in', pitch: '1 1/8 in' },
      channels: [
        ['1', '2'],
        ['3', '4'],
      ],
    },
  },
};

/** The channels of the amplifier as a row, by the ends that are written. */
const channels = (ends: Values): Values => ({
  [`${amp}/channels`]: {
    '1..4': { input: ['IN1..4'], minimum: '2 ohm', powers: { '4 ohm': '75 W', '2 ohm': '100 W' }, ...ends },
  },
});
const byEnds = channels({ positive: ['CH1..4+'], negative: ['CH1..4-'] });

const bridges: Values = {
  [`${amp}/bridges`]: {
    '1+2, 3+4': {
      ...{ positive: ['CH1+', 'CH3+'], negative: ['CH2-', 'CH4-'], input: ['IN1', 'IN3'] },
      ...{ minimum: '4 ohm', powers: { '4 ohm': '200 W' } },
    },
  },
};

const coils: Values = {
  [`${dual}/coils`]: {
    'C1..2': { positive: ['C1..2+'], negative: ['C1..2-'], nominal: '4 ohm', 'direct-current': '3.4 ohm' },
  },
};

/** What both front outputs of a source unit give, as a row. */
const outputs = {
  'OUT1..2': {
    ...{ form: 'analogue', side: ['left', 'right'], carries: ['front-left', 'front-right'] },
    ...{ bandwidth: '20 Hz to 20 kHz', polarity: 'normal', 'clean-voltage': ['4 V', '4 V'], offset: '0 V' },
    ...{ equalising: 'none', 'load-sensing': false, 'noise-cancelling': false, chimes: [false, false] },
  },
};
const outputRows = (at: string): readonly Row[] => {
  const scene = { [at]: outputs };
  return [
    [`${at}/OUT1..2/side/1`, 'a word of everyday', 'passenger', /left/, { scene }],
    [`${at}/OUT1..2/side`, 'one side too many', ['left', 'right', 'left'], /3 values.*OUT1\.\.2/, { scene }],
    [`${at}/OUT1..2/carries/1`, 'the side alone', 'right', /front-right/, { scene }],
    [`${at}/OUT1..2/bandwidth`, 'one end alone', '20 kHz', /both ends/, { scene }],
    [`${at}/OUT1..2/clean-voltage/1`, 'a bare number', '4', /unit/, { scene }],
    [`${at}/OUT1..2/chimes/1`, 'a word for no', 'no', /true or false/, { scene }],
  ];
};

const points: Values = {
  'vehicle/spaces/well/sound-points/q1..2': {
    ...{ x: ['100 mm', '200 mm'], y: ['100 mm', '150 mm'], what: ['M6 rivet nut', 'M6 weld nut'] },
    ...{ stud: 'M6', behind: 'nothing', 'free-depth': ['40 mm', '30 mm'] },
  },
};
const pointRow = 'vehicle/spaces/well/sound-points/q1..2';

const seats: Values = {
  'vehicle/places/seat-left, seat-right': {
    ...{ title: ['Left seat', 'Right seat'], zone: 'cabin', side: ['left', 'right'] },
    ...{ depth: ['100 mm', '90 mm'], distance: ['700 mm', '1100 mm'] },
  },
};
const seatRow = 'vehicle/places/seat-left, seat-right';
const rearGrounds: Values = {
  'vehicle/grounds/rear-1..2': { zone: 'cargo', side: ['left', 'right'], stud: 'M8' },
};
const rectangle: Values = { 'vehicle/spaces/well/outline': { width: '600 mm', height: '450 mm' } };
const stretches: Values = { 'vehicle/routes/left-door/passes': ['sill 2 m', 'cabin 800 mm'] };

const fixings: Values = {
  'board/boards/main/fixings': {
    'f1..4': { point: ['p1..3', 'p4'], fixing: 'bolt-m6-60', spacer: ['1 in', '1 in', '1 in', '1 in'] },
  },
};
const corners: Values = { [`${amp}/mounting-holes`]: { inset: '3/8 in', diameter: '3/16 in' } };

/** A range that is written as one text: with its ends swapped, and with one of them alone. */
const rangeRows = (at: string, written: string): readonly Row[] => {
  const [from = '', to = ''] = written.split(' to ');
  const scene = { [at]: written };
  return [
    [at, 'the ends swapped', `${to} to ${from}`, /runs downwards/, { scene }],
    [at, 'one end alone', to, /both ends/, { scene }],
  ];
};

/** A splice that steps down, by the range of its thinner barrel as one text. */
const stepDown = {
  scene: {
    'parts/parts/step-down': {
      ...{ kind: 'terminal', title: 'Step-down splice', form: 'butt-splice', takes: '16 AWG to 14 AWG' },
      'other-side': '22 AWG to 18 AWG',
    },
  },
};

/** The rated powers of an output, in full and as a table. */
const powerRows = (at: string): readonly Row[] => {
  const full = { scene: { [at]: [{ load: '4 ohm', power: '18 W' }] } };
  return [
    [`${at}/0/load`, 'mohm for ohm', '4 mohm', /is below/, full],
    [`${at}/0/power`, 'MW for mW', '18 MW', /./, full],
    [`${at}/0/power`, 'a bare number', '18', /unit/, full],
    [`${at}/4 ohm`, 'a bare number', '18', /unit/, { scene: { [at]: { '4 ohm': '18 W' } } }],
  ];
};

/** Short forms: what opens out of them is told at the row, with the row. */
export const shortFormRows: readonly Row[] = [
  [`${amp}/mounting-holes/inset`, 'zero', '0 in', /not above zero/, { scene: corners }],
  [`${amp}/mounting-holes/diameter`, 'inches for sixteenths', '3 in', /is above/, { scene: corners }],
  [
    `${amp}/terminals/IN1..4/pitch`,
    'left out',
    gone,
    /IN1, IN2, IN3, IN4, all at one place/,
    { scene: inputRow },
  ],
  [`${amp}/terminals/IN1..4/mark/1`, 'a wrong word', 'RAER L', byPeople, { scene: markedRow }],
  [
    `${amp}/terminals/IN1..4/mark`,
    'one too few',
    ['A', 'B', 'C'],
    /3 values.*IN1\.\.4/,
    { scene: markedRow },
  ],
  [`${amp}/terminals/IN1..4/pitch`, 'a bare number', '1/2', /unit/, { scene: inputRow }],
  [`${amp}/controls/GAIN-12, GAIN-34/pitch`, 'zero', '0 in', /not above zero/, { scene: gains }],
  [`${amp}/controls/GAIN-12, GAIN-34/channels/1/0`, 'a figure wrong', '9', /GAIN-34/, { scene: gains }],
  [
    `${amp}/controls/GAIN-12/channels`,
    'one that it has not',
    '1..9',
    /no channel/,
    { scene: { [`${amp}/controls/GAIN-12/channels`]: '1..2' } },
  ],
  ...rangeRows(`${amp}/terminals/B+/takes`, '8 AWG to 4 AWG'),
  ...rangeRows(`${amp}/terminals/IN1/signal-range`, '0.25 V to 6 V'),
  ...rangeRows(`${amp}/controls/FREQ-12/filter/range`, '50 Hz to 500 Hz'),
  ...rangeRows('parts/parts/processor-six/filter-range', '20 Hz to 20 kHz'),
  [
    'parts/parts/processor-six/filter-outputs',
    'one that it has not',
    'OUT1..7',
    /OUT7/,
    { scene: { 'parts/parts/processor-six/filter-outputs': 'OUT1..6' } },
  ],
  [
    'parts/parts/processor-six/filters-at/OUT1/range',
    'the ends swapped',
    '20 kHz to 20 Hz',
    /runs downwards/,
    {
      scene: { 'parts/parts/processor-six/filters-at': { OUT1: { orders: [4], range: '20 Hz to 20 kHz' } } },
    },
  ],
  ...rangeRows('parts/parts/amp-mono-400/controls/BOOST/boost/range', '0 dB to 12 dB'),
  [
    `${levelled}/level/range`,
    'the ends swapped',
    '0 dB to -12 dB',
    /runs downwards/,
    { scene: { [levelled]: { what: 'level', panel: 'face', level: { range: '-12 dB to 0 dB' } } } },
  ],
  ...rangeRows(`${amp}/supply/range`, '10 V to 16 V'),
  ...rangeRows(`${dual}/boxes/sealed`, '25 L to 40 L'),
  ...rangeRows('parts/parts/relay-30-diode/coil-range', '9 V to 16 V'),
  ...rangeRows('parts/parts/isolator-coil-200/coil-range', '9 V to 16 V'),
  ...rangeRows('parts/parts/charger-12-30/input/range', '11 V to 16 V'),
  ...rangeRows('parts/parts/lug-8-m8/takes', '8 AWG to 6 AWG'),
  ['parts/parts/step-down/other-side', 'the ends swapped', '18 AWG to 22 AWG', /runs downwards/, stepDown],
  ['parts/parts/step-down/other-side', 'one end alone', '18 AWG', /both ends/, stepDown],
  [`${amp}/channels/1..4/positive/0`, 'one too few', 'CH1..3+', /positive has 3 values/, { scene: byEnds }],
  [`${amp}/channels/1..4/negative/0`, 'one too many', 'CH1..5-', /negative has 5 values/, { scene: byEnds }],
  [`${amp}/channels/1..4/input/0`, 'a name wrong', 'INP1..4', /INP1.*1\.\.4/, { scene: byEnds }],
  [`${amp}/channels/1..4/powers/4 ohm`, 'kW for W', '75 kW', /is above/, { scene: byEnds }],
  [
    `${amp}/channels/1..4/output`,
    'one too few',
    'CH1..3',
    /output has 3 values, and 1\.\.4 stands for 4 names/,
    { scene: channels({ output: 'CH1..4' }) },
  ],
  [
    `${amp}/channels/1..4/output/1`,
    'a figure wrong',
    'CH3..5',
    /output has 5 values/,
    { scene: channels({ output: ['CH1..2', 'CH3..4'] }) },
  ],
  [`${amp}/bridges/1+2, 3+4/positive/1`, 'a figure wrong', 'CH9+', /CH9\+.*1\+2, 3\+4/, { scene: bridges }],
  [`${amp}/bridges/1+2, 3+4/negative/1`, 'its own positive', 'CH3+', /begins and ends/, { scene: bridges }],
  [`${amp}/bridges/1+2, 3+4/input/0`, 'a figure wrong', 'IN9', /IN9/, { scene: bridges }],
  [`${amp}/bridges/1+2, 3+4/powers/4 ohm`, 'kW for W', '30 kW', /is above/, { scene: bridges }],
  [`${dual}/coils/C1..2/positive/0`, 'the other end', 'C1..2-', /has the role/, { scene: coils }],
  [`${dual}/coils/C1..2/negative/0`, 'one too many', 'C1..3-', /negative has 3 values/, { scene: coils }],
  ...outputRows('parts/parts/source-six-line/outputs'),
  ...outputRows('vehicle/fitted/radio/outputs'),
  ...powerRows('parts/parts/source-six-line/outputs/OUT1/powers'),
  ...powerRows('vehicle/fitted/radio/outputs/OUT1/powers'),
  ['vehicle/grounds/rear-1..2/side/1', 'a word of everyday', 'passenger', /left/, { scene: rearGrounds }],
  ['vehicle/spaces/well/outline/width', 'a bare number', '600', /unit/, { scene: rectangle }],
  [
    'vehicle/spaces/well/outline',
    'units forgotten',
    '600 x 450',
    /unit|rectangle/,
    { scene: { 'vehicle/spaces/well/outline': '600 x 450 mm' } },
  ],
  ['vehicle/spaces/well/outline/height', 'zero', '0 mm', /not above zero/, { scene: rectangle }],
  [`${pointRow}/x/1`, 'a bare number', '200', /unit/, { scene: points }],
  [`${pointRow}/y/1`, 'a bare number', '150', /unit/, { scene: points }],
  [`${pointRow}/y`, 'one too many', ['1 mm', '2 mm', '3 mm'], /y has 3 values.*q1\.\.2/, { scene: points }],
  [`${pointRow}/what/1`, 'a number', 6, /put quotes/, { scene: points }],
  [`${pointRow}/free-depth/1`, 'a bare number', '30', /unit/, { scene: points }],
  ['vehicle/routes/left-door/passes/0', 'its length forgotten', 'sill', /sill 36 in/, { scene: stretches }],
  [
    'vehicle/routes/left-door/passes/1',
    'no such zone',
    'cabine 800 mm',
    /did you mean cabin/,
    { scene: stretches },
  ],
  [`${seatRow}/title/1`, 'a number', 2, /put quotes/, { scene: seats }],
  [`${seatRow}/side/1`, 'a word of everyday', 'passenger', /left/, { scene: seats }],
  [`${seatRow}/depth/1`, 'a bare number', '90', /unit/, { scene: seats }],
  [`${seatRow}/distance/1`, 'a bare number', '1100', /unit/, { scene: seats }],
  ['board/boards/main/fixings/f1..4/point/1', 'a figure wrong', 'p9', /p9.*f1\.\.4/, { scene: fixings }],
  ['board/boards/main/fixings/f1..4/spacer/2', 'a bare number', '1', /unit/, { scene: fixings }],
  [
    'short/devices/sub/channels',
    'downwards',
    '2..1',
    /no channel 2/,
    { scene: { 'short/devices/sub/channels': '1' } },
  ],
  [
    'wired/devices/dsp/mix/OUT1',
    'more inputs than there are',
    'IN1..9',
    /IN9/,
    { scene: { 'wired/devices/dsp/mix/OUT1': 'IN1' } },
  ],
  [
    'short/devices/amp/speaker-level',
    'one too many',
    'IN1..2',
    /does not say that IN2 takes speaker level/,
    {
      scene: {
        'short/devices/amp/speaker-level': 'IN1',
        'parts/parts/amp-mono-400/terminals/IN1/speaker-level': { to: '12 V' },
      },
    },
  ],
  [
    'short/devices/amp/summed-inside',
    'one too many',
    '1..2',
    /no channel of amp "2"/,
    {
      scene: {
        'short/devices/amp/summed-inside': '1',
        'parts/parts/amp-mono-400/channels/1/also-takes': ['IN2'],
      },
    },
  ],
  [
    'parts/parts/amp-four/channels/1/also-takes',
    'a figure wrong',
    'IN2..7',
    /IN5/,
    { scene: { 'parts/parts/amp-four/channels/1/also-takes': 'IN2' } },
  ],
  [
    'parts/parts/amp-four/controls/XOVER-12/hears/FULL',
    'one too many',
    'IN1..7',
    /IN7/,
    { scene: { 'parts/parts/amp-four/controls/XOVER-12/hears': { FULL: 'IN1' } } },
  ],
  [
    'parts/parts/amp-four/controls/XOVER-12/hears/LINE',
    'a position that it has not',
    'IN1',
    /LINE/,
    { scene: { 'parts/parts/amp-four/controls/XOVER-12/hears': { FULL: 'IN1' } } },
  ],
  [
    'parts/parts/amp-four/channels/1/also-takes/0',
    'a figure wrong',
    'IN7',
    /IN7/,
    { scene: { 'parts/parts/amp-four/channels/1/also-takes': ['IN2'] } },
  ],
];
