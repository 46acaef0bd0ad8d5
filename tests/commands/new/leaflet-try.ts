import type { Typing } from './invented-car.ts';

/**
 * What is typed from the leaflets of invented parts and a survey of an invented hatchback: five channels behind a factory
 * head unit, by way of a signal interface. What no leaflet and no tape told is a `?` or left empty.
 */
const shop: Typing = {
  line: ['new', 'shop', '--title', 'Invented Sound', '--units', 'inch', '--samples', 'yes'],
  answers: [''],
};

const battery: Typing = {
  line: ['new', 'part', 'agm-70', '--kind', 'battery'],
  answers: [
    'AGM battery, 70 Ah, 680 A cold cranking',
    '',
    'POS NEG, stud, M8, 8 AWG to 1/0 AWG, 10 N m, 4',
    'absorbed-glass-mat, 70 Ah, 680 A',
  ],
};

const alternator: Typing = {
  line: ['new', 'part', 'alternator-120', '--like', 'alternator-180'],
  answers: ['Alternator, 120 A', 'rating 120 A, set-point 14.2 V'],
};

const headUnit: Typing = {
  line: ['new', 'part', 'head-unit', '--kind', 'source-unit'],
  answers: [
    'Factory head unit, four speaker outputs, 18 W each',
    '',
    'B+ GND, supply',
    'SP1..4, speaker-out, , , , , 18 W at 4 ohm, end',
    '',
    'regulated, 15 A',
  ],
};

const amplifier: Typing = {
  line: ['new', 'part', 'z5-900', '--kind', 'amplifier'],
  answers: [
    'Five-channel amplifier, 4 x 75 W and 1 x 300 W',
    '12.4 in, 7.1 in, 2.1 in, 4.4 kg, corners, 0.4 in, 5 mm',
    'cooling bridge control facts',
    ', , 1 in, 1 in, 1 1/2 in',
    'B+ GND, supply, right, 0.8 in, 0.6 in, set-screw, 4 AWG, 4 N m',
    'REM, turn-on-in, right, 1.9 in, , set-screw, 18 AWG',
    'CH1..5, speaker-out, right, 3.2 in, 0.4 in, set-screw, up to 12 AWG',
    'IN5..1, signal-in, left, 2.9 in, 0.75 in, phono, 0.2 V to 4 V, end',
    '1..4 | 5, CH1..4 | CH5, IN1..4 | IN5, 2 ohm, 75 W at 4 ohm | 300 W at 4 ohm, 110 W at 2 ohm | 500 W at 2 ohm, end',
    '1+2 | 3+4, CH1+ | CH3+, CH2- | CH4-, IN1 | IN3, 4 ohm, 220 W at 4 ohm, end',
    'GAIN-12 | GAIN-34 | GAIN-5, gain, face, , 1..2 | 3..4 | 5, end',
    // Its leaflet tells no turn-on draw: it is measured on the bench.
    'regulated, 80 A, 2, class-d, 1.4 A, 78 %, 14.4 V, 25 mA',
    ', 60 C',
  ],
};

const signalInterface: Typing = {
  line: ['new', 'part', 'l4-2', '--kind', 'processor'],
  answers: [
    'Signal interface, four speaker-level in, four line out',
    '4.1 in, 3.0 in, 1.1 in, 0.3 kg, left-right, 3/8 in, 3/16 in',
    '',
    'B+ GND, supply, top, 1 in, 0.4 in, screw-clamp, 20 AWG to 14 AWG',
    'REM-OUT, turn-on-out, top, 2 in, , screw-clamp, 0.5 A',
    'HL1..4, speaker-in, left, 0.4 in, 0.3 in, screw-clamp, up to 20 V',
    'OUT1..4, signal-out, right, 0.4 in, 0.6 in, phono, 5 V, end',
    'regulated, 3 A, 0.2 A',
  ],
};

const component: Typing = {
  line: ['new', 'part', 'component-65', '--kind', 'speaker'],
  answers: [
    'Component set, 6 1/2 in, 4 ohm, 80 W, with passive crossover',
    '6 1/2 in, 6 1/2 in, 2 1/2 in, 1.2 kg',
    'coaxial, 80 W, , , C1, 4 ohm, , blade-tab',
  ],
};

const coaxial: Typing = {
  line: ['new', 'part', 'coaxial-60', '--kind', 'speaker'],
  answers: [
    'Coaxial speaker, 6 1/2 in, 4 ohm, 60 W',
    '6 1/2 in, 6 1/2 in, 2 1/4 in, 0.9 kg',
    'coaxial, 60 W, , , C1, 4 ohm, , blade-tab',
  ],
};

const bass: Typing = {
  line: ['new', 'part', 'sub-10', '--kind', 'speaker'],
  answers: [
    'Subwoofer, 10 in, one coil of 4 ohm, 300 W',
    '10 in, 10 in, 5 1/4 in, 4.6 kg',
    'subwoofer, 300 W, , , C1, 4 ohm, , binding-post',
    '',
  ],
};

const box: Typing = {
  line: ['new', 'part', 'sub-box', '--kind', 'enclosure'],
  answers: ['Box of the 10 in subwoofer', '14 in, 12 in, 12 in, 7 kg', '22 L, sealed'],
};

/** The interface has four outputs, and the amplifier five inputs: the lead that feeds two of them from one. */
const yLead: Typing = {
  line: ['new', 'part', 'y-lead-3ft', '--kind', 'cable'],
  answers: [
    'Phono Y-lead, one plug to two, 3 ft',
    'one | two, 24 AWG, WH | RD, end',
    'coaxial, signal, 80 C, 5 mm, 3 ft, phono, yes',
    '',
  ],
};

const hatchback: Typing = {
  line: ['new', 'vehicle', 'hatchback'],
  answers: [
    'Invented hatchback, five doors, left-hand drive',
    '',
    'Airbags, tank and lines not surveyed: look them up before drilling. end',
    'starter-battery | alternator | source-unit, agm-70 | alternator-120 | head-unit, engine-bay | engine-bay | cabin, left | right | middle, end',
    'body-front | luggage-stud, engine-bay | cargo, left, M8, end',
    'starter-battery.NEG, body.body-front, 25 mm2, 35 cm',
    'alternator.B+, starter-battery.POS, 25 mm2, 4 ft',
    'alternator.CASE, body.body-front, 25 mm2, 4 in, end',
    '14.2 V',
    '85 C, 45 C',
    'SP1..4, , , 18 W at 4 ohm, end',
    'left-well, Left side well behind the trim, cargo, left, 18 in, 12 in, 5 in, front, up, end',
    ', , , , open',
    'lower-rear | upper-rear | upper-front | lower-front, 1 1/2 in | 1 1/2 in | 16 1/2 in | 16 1/2 in, 1 1/2 in | 10 1/2 in | 10 1/2 in | 1 1/2 in, M6, nothing, M6 rivet nut in bracket, 1 in, end',
    'Beside the battery | Luggage right, engine-bay | cargo, left | right',
    'Left front door | Right front door | Left rear door | Right rear door, cabin, left | right | left | right, , , front | front | rear | rear, end',
    'starter-battery, beside-the-battery, left, engine-bay 6 in',
    'starter-battery beside-the-battery, bottom edge, left, engine-bay 4 ft, bulkhead 6 in grommet 3/4 in, sill 11 ft',
    'source-unit, bottom edge, left, cabin 5 ft, sill 11 ft',
    'left-front-door | right-front-door | left-rear-door | right-rear-door, bottom edge, left | right | left | right, cabin 2 ft edge, sill 4 ft | sill 10 ft | sill 2 ft | sill 7 ft',
    'luggage-right, bottom edge, right, cargo 5 ft',
    'body.luggage-stud, bottom edge, left, cargo 10 in, end',
  ],
};

const job: Typing = {
  line: ['new', 'job', 'hatchback-five', '--vehicle', 'hatchback'],
  answers: [
    'Five channels in the left side well',
    'amp | interface, z5-900 | l4-2, end',
    'front | rear, component-65 | coaxial-60, left-front-door right-front-door | left-rear-door right-rear-door',
    'sub, sub-10, luggage-right, sub-box, end',
    '1/4 in, 1/4 in, 17 1/2 in, 11 1/2 in, 12 mm, luggage-stud, birch-12',
    // The interface has an output too few: the file is written as it is, with that place marked.
    '',
  ],
};

/** From an empty folder to a job that can be checked and built. */
export const leafletTry: readonly Typing[] = [
  ...[shop, battery, alternator, headUnit, amplifier, signalInterface],
  ...[component, coaxial, bass, box, yLead, hatchback, job],
];

/** What is then written into the job with an editor, behind its boards, line by line. */
export const leafletLines: readonly string[] = [
  'cables: { y-lead: { part: y-lead-3ft } }',
  'links:',
  '  in-rear-left: { from: interface.OUT3, to: amp.IN3, cable: y-lead, conductors: [one] }',
  '  in-bass: { from: interface.OUT3, to: amp.IN5, cable: y-lead, conductors: [two] }',
];
