/** What is typed for an invented car and a five-channel job, with nothing at hand but survey sheet and leaflets. An empty line is Enter. */
export interface Typing {
  readonly line: readonly string[];
  readonly answers: readonly string[];
}

const shop: Typing = { line: ['new', 'shop'], answers: ['Invented Sound', '', '', ''] };

const amplifier: Typing = {
  line: ['new', 'part', 'five-by-sixty', '--kind', 'amplifier'],
  answers: [
    'Five-channel amplifier, 4 x 60 W and 1 x 240 W',
    '9 in, 6 in, 2 in, 2.6 kg, corners, 3/8 in, 3/16 in',
    'cooling control facts',
    ', , fins, fins',
    'B+ GND, supply, right, 5/8 in, 3/4 in, set-screw, 8 AWG to 4 AWG, 4 N m, 5/8 in',
    'REM, turn-on-in, right, 2 in, , set-screw, 20 AWG to 14 AWG, 0.6 N m, 5/16 in',
    'CH1..5, speaker-out, right, 2 3/8 in, 3/8 in, set-screw, 18 AWG to 10 AWG, 1.2 N m, 3/8 in',
    'IN1..6, signal-in, left, 1/2 in, 1/2 in, phono, 0.25 V to 6 V, end',
    '1..4, CH1..4, IN1..4, 2 ohm, 60 W at 4 ohm, 90 W at 2 ohm',
    '5, CH5, IN5 IN6, 2 ohm, 150 W at 4 ohm, 240 W at 2 ohm, end',
    'GAIN-FRONT, gain, left, 4 in, 1..2',
    'XOVER-FRONT, crossover-mode, left, 4 1/2 in, 1..2, FULL HPF=high-pass, butterworth 12 dB',
    'FREQ-FRONT, crossover, face, , 1..2, 50 Hz to 250 Hz, , 80 Hz',
    'GAIN-SUB, gain, left, 5 in, 5',
    'FREQ-SUB, crossover, face, , 5, low-pass 40 Hz to 250 Hz, butterworth 24 dB, 80 Hz, end',
    'regulated, 60 A, 2, class-d, 1.1 A, , 14.4 V, 60 mA, 1.5 mA, 10.5 V',
    '150 W, 70 C',
  ],
};

const door: Typing = {
  line: ['new', 'part', 'door-six', '--kind', 'speaker'],
  answers: [
    'Coaxial speaker, 6 1/2 in, 4 ohm',
    '6 1/2 in, 6 1/2 in, 2 1/4 in, 0.9 kg',
    'coaxial, 70 W, 60 Hz, , C1, 4 ohm, 3.3 ohm, blade-tab, 18 AWG to 12 AWG',
  ],
};

const bass: Typing = {
  line: ['new', 'part', 'bass-ten', '--kind', 'speaker'],
  answers: [
    'Subwoofer, 10 in, one coil of 4 ohm',
    '10 in, 10 in, 5 1/4 in, 4.6 kg',
    'subwoofer, 250 W, 28 Hz, 9 in, C1, 4 ohm, 3.4 ohm, binding-post, 16 AWG to 10 AWG',
    'sealed, 15 L, 25 L',
  ],
};

const box: Typing = {
  line: ['new', 'part', 'box-twenty', '--kind', 'enclosure'],
  answers: ['Sealed enclosure, 20 L', '14 in, 9 in, 13 in, 7.5 kg', '20 L, sealed, , 9 1/8 in, 7 1/2 in'],
};

/** The walk round the car. */
export const car: Typing = {
  line: ['new', 'vehicle', 'coupe'],
  answers: [
    'Invented coupe, two doors',
    'source-does opening obstacle',
    'Side airbags in the outer seat backs; their yellow plugs lie under both front seats.',
    'The tank lies under the rear seat.',
    '',
    'starter-battery, battery-flooded-60, engine-bay, left',
    'alternator, alternator-180, engine-bay, right',
    'source-unit, source-six-line, cabin, middle',
    '',
    'engine, engine-bay, left, M8',
    'crossmember-left, under-carpet, left, M8',
    '',
    'starter-battery.NEG, body.engine, 2 AWG, 20 in',
    'alternator.B+, starter-battery.POS, 2 AWG, 4 ft',
    'alternator.CASE, body.engine, 1/0 AWG, 4 in, end',
    '14.2 V, 38 A',
    '',
    'OUT1..6, 20 Hz, 20 kHz, 3.8 V, 0 V, normal',
    '',
    'none, no, no, no',
    'under-left-seat, Floor under the left front seat, under-carpet, left, 20 in, 15 in, 4 1/2 in, right, front, 22 L',
    '',
    'wall, open, open, open, open',
    '17 in, 3 in',
    '17 in, 3 in, end',
    'seat wiring plug, 1/2 in, 0 in, 3 in, 3/4 in, 1 1/4 in, End',
    'rear-outer, 2 1/2 in, 2 1/2 in, M6, nothing, M6 rivet nut in the crossmember, 1 1/2 in',
    'rear-inner, 17 1/2 in, 2 1/2 in, M6, nothing, M6 rivet nut in the crossmember, 1 1/2 in',
    'front-inner, 17 1/2 in, 12 1/2 in, M6, nothing, M6 rivet nut in the heel-board brace, 1 1/2 in',
    'front-outer, 2 1/2 in, 12 1/2 in, M6, nothing, M6 rivet nut in the heel-board brace, 1 1/2 in',
    '',
    'Battery side, engine-bay, left, 3 in',
    'Left door, cabin, left, 2 1/2 in, 38 in, front',
    'Right door, cabin, right, 2 1/2 in, 54 in, front',
    'Cargo floor, cargo, left, 15 in, 64 in',
    '',
    'starter-battery, battery-side, left, engine-bay 6 in',
    'body.crossmember-left, left edge, left, under-carpet 8 in',
    'starter-battery battery-side, left edge, left, engine-bay 30 in, bulkhead 6 in edge hole 20 mm, sill 36 in, under-carpet 14 in',
    'source-unit, right edge, middle, cabin 24 in, under-carpet 36 in',
    'left-door, left edge, left, under-carpet 14 in, sill 30 in, cabin 20 in edge hole 13 mm',
    'right-door, top edge, right, under-carpet 48 in, sill 30 in, cabin 20 in edge hole 13 mm',
    'cargo-floor, bottom edge, left, under-carpet 30 in, sill 30 in, cargo 24 in',
    '',
  ],
};

const job: Typing = {
  line: ['new', 'job', 'coupe-five', '--vehicle', 'coupe'],
  answers: [
    'Five channels under the left seat',
    'amp, five-by-sixty',
    '',
    'front, door-six, left-door right-door',
    'sub, bass-ten, cargo-floor, box-twenty',
    '',
    '1 in, 1 in, 18 in, 13 in, 12 mm',
  ],
};

/** From an empty folder to a job that can be checked and built. */
export const inventedTry: readonly Typing[] = [shop, amplifier, door, bass, box, car, job];
