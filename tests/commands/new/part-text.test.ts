import { describe, expect, test } from 'vitest';
import { rowsAlike } from '../../../lib/commands/new/ask/rows.ts';
import { bracketHoles } from '../../../lib/commands/new/part/bracket-holes.ts';
import {
  controlsOf,
  positionsFault,
  safeFault,
} from '../../../lib/commands/new/part/controls/control-fields.ts';
import { controlFault } from '../../../lib/commands/new/part/controls/control-row.ts';
import { holesFault } from '../../../lib/commands/new/part/hole-fields.ts';
import { leftOut } from '../../../lib/commands/new/part/left-out.ts';
import { partText } from '../../../lib/commands/new/part/part-text.ts';
import { voltageOfPower } from '../../../lib/model/survey/power-into-load.ts';
import { readContent } from '../../../lib/read/read-content.ts';

/** A processor of these answers beside a usual case, as the reader has it. */
function read(answers: Readonly<Record<string, readonly string[]>>) {
  const text = partText('processor', 'own', {
    title: ['Interface'],
    case: ['4.1 in, 3 in, 1.1 in, 0.3 kg'],
    supply: ['regulated, 3 A, 0.2 A'],
    ...answers,
    terminal: ['B+ GND, supply, top, 1 in, 1 in, screw-clamp, up to 12 AWG', ...(answers.terminal ?? [])],
  });
  const { parts, problems } = readContent([{ path: 'content/parts/own.yaml', text }]);
  const own = parts.own;
  if (own?.kind !== 'processor') throw new Error(problems.map(({ message }) => message).join('\n') || text);
  return { text, own };
}
const inch = 0.0254;

describe('rows that are alike', () => {
  test.each([
    ['a, 1 in', ['a, 1 in']],
    ['a | b, 1 in', ['a, 1 in', 'b, 1 in']],
    ['a | b, 1 in | 2 in, M6, x, y | z', ['a, 1 in, M6, x, y', 'b, 2 in, M6, x, z']],
    ['a|b, 1 in| 2 in', ['a, 1 in', 'b, 2 in']],
    ['a, , | 2 in', ['a, , ', 'a, , 2 in']],
  ])('%s', (line, rows) => {
    expect(rowsAlike(line)).toEqual(rows);
  });

  test('have as many values in each cell', () => {
    expect(rowsAlike('a | b | c, 1 in | 2 in')).toMatch(/has "1 in \| 2 in" where other cells have 3 values/);
  });
});

describe('the text of a part', () => {
  // By hand, of a foot of 4.1 by 3 in: 3/8 in outside its left and right edges, at half its depth; then 1/2 in from its ends.
  test.each([
    [
      'left-right, 3/8 in, 3/16 in',
      [
        [-0.375, 1.5],
        [4.475, 1.5],
      ],
    ],
    [
      'top-bottom, 3/8 in, 3/16 in',
      [
        [2.05, -0.375],
        [2.05, 3.375],
      ],
    ],
    [
      'left-right, 3/8 in, 3/16 in, 1/2 in',
      [
        [-0.375, 0.5],
        [-0.375, 2.5],
        [4.475, 0.5],
        [4.475, 2.5],
      ],
    ],
  ] as const)('has the holes of a bracket: %s', (line, places) => {
    const { own } = read({ case: [`4.1 in, 3 in, 1.1 in, 0.3 kg, ${line}`] });
    expect(own['mounting-holes']).toEqual([]);
    const inches = own['bracket-holes'].map(({ x, y }) => [x / inch, y / inch]);
    expect(inches.length).toBe(places.length);
    for (const [at, [x, y]] of places.entries()) {
      expect(inches[at]?.[0]).toBeCloseTo(x, 9);
      expect(inches[at]?.[1]).toBeCloseTo(y, 9);
    }
  });

  // By hand, of a case of 15.4 by 7.9 in: 0.5 in from the long edges and 0.3 in from the ends are centres 14.8 by 6.9 in.
  const corners = [
    [0.3, 0.5],
    [0.3, 7.4],
    [15.1, 0.5],
    [15.1, 7.4],
  ] as const;
  const besideEnds = [
    [-0.3, 0.5],
    [-0.3, 7.4],
    [15.7, 0.5],
    [15.7, 7.4],
  ] as const;
  test.each([
    ['15.4 in, 7.9 in', 'corners, 0.5 in, 5 mm, 0.3 in', 'mounting-holes', corners],
    ['15.4 in, 7.9 in', 'corners, centres 14.8 x 6.9 in, 5 mm', 'mounting-holes', corners],
    ['15.4 in, 7.9 in', 'corners, centres 14.8 in x 6.9 in, slot 5 mm', 'mounting-holes', corners],
    [
      '7.9 in, 15.4 in',
      'corners, 0.5 in, 5 mm slots, 0.3 in',
      'mounting-holes',
      corners.map(([x, y]) => [y, x]),
    ],
    ['15.4 in, 7.9 in', 'left-right, centres 16 x 6.9 in, slots of 5 mm', 'bracket-holes', besideEnds],
  ] as const)('has holes by two insets or by centres: %s, %s', (foot, holes, field, places) => {
    const { own } = read({ case: [`${foot}, 2 in, 4.3 kg, ${holes}`] });
    const made = own[field].map(({ x, y, diameter }) => [x / inch, y / inch, diameter * 1000]);
    const sorted = (rows: readonly (readonly number[])[]) =>
      rows
        .map((row) => row.map((one) => Number(one.toFixed(6))))
        .toSorted((a, b) => Number(a[0]) - Number(b[0]) || Number(a[1]) - Number(b[1]));
    expect(sorted(made)).toEqual(sorted(places.map(([x, y]) => [x, y, 5])));
  });

  test('tells that slots count as holes', () => {
    const remark = '# holes: slots of 5 mm, counted as holes of 5 mm in their middle.';
    expect(read({ case: ['15.4 in, 7.9 in, 2 in, 4 kg, corners, 1/2 in, slot 5 mm'] }).text).toContain(
      remark,
    );
    expect(read({ case: ['15.4 in, 7.9 in, 2 in, 4 kg, corners, 1/2 in, 5 mm'] }).text).not.toContain(
      'slots',
    );
  });

  test.each([
    ['6 in', '6 in', 'corners', '1/2 in', '0.3 in', /no long edges/],
    ['15.4 in', '7.9 in', 'corners', 'centres 6.9 x 14.8 in', undefined, /outside its depth of 7.9 in/],
    ['15.4 in', '7.9 in', 'corners', '4 in', '0.3 in', /no room between them in its depth/],
    ['15.4 in', '7.9 in', 'left-right', 'centres 14.8 x 6.9 in', undefined, /within its width of 15.4 in/],
    ['15.4 in', undefined, 'corners', 'centres 14.8 x 6.9 in', undefined, /write both/],
    ['15.4 in', '7.9 in', 'corners', 'centres 14.8 x 6.9 in', '0.3 in', /twice/],
    ['15.4 in', '7.9 in', 'corners', 'centres 15.4 x 7.9 in', undefined, null],
    ['15.4 in', '7.9 in', 'corners', 'centres 15.41 x 7.9 in', undefined, /outside its width/],
    ['15.4 in', '7.9 in', 'corners', '3.94 in', '0.3 in', null],
    ['15.4 in', undefined, 'corners', '3/8 in', undefined, null],
  ])('of a case of %s by %s holes %s %s %s: %s', (width, depth, where, off, ends, fault) => {
    const told = { width, depth, where, off, ends };
    const cells = Object.fromEntries(
      Object.entries(told).flatMap(([key, one]) => (one === undefined ? [] : [[key, one]])),
    );
    const found = holesFault({ cells });
    if (fault === null) expect(found).toBeNull();
    else expect(found).toMatch(fault);
  });

  test.each([
    ['OFF ON=subsonic 25 Hz', ['OFF', 'ON'], { passes: { ON: 'subsonic' }, corner: '25 Hz' }],
    ['OFF ON=25 Hz', ['OFF', 'ON'], { passes: { ON: 'subsonic' }, corner: '25 Hz' }],
    ['ON=subsonic OFF', ['ON', 'OFF'], { passes: { ON: 'subsonic' } }],
  ])('has a switch with its corner: %s', (sets, positions, filter) => {
    const cells = { name: 'SUB', what: 'subsonic', panel: 'left', sets };
    expect(positionsFault(sets)).toBeNull();
    expect(safeFault(cells)).toBeNull();
    expect(controlsOf([{ cells, rest: [], open: [] }]).SUB).toMatchObject({
      form: 'switch',
      positions,
      filter,
    });
  });

  const control = (told: Readonly<Record<string, string>>) => {
    const cells = { name: 'K', panel: 'face', ...told };
    const fault = controlFault(cells, '');
    return fault ?? controlsOf([{ cells, rest: [], open: [] }]).K;
  };

  test.each([
    ['crossover', 'low-pass 40 Hz to 160 Hz OFF', { pass: 'low-pass', off: 'highest' }],
    ['crossover', 'low-pass OFF 40 to 160 Hz', { pass: 'low-pass', off: 'lowest' }],
    ['crossover', 'low-pass 40..160 Hz off', { pass: 'low-pass', off: 'highest' }],
    ['subsonic', 'OFF 40 Hz to 160 Hz', { pass: 'subsonic', off: 'lowest' }],
  ])('a %s knob has its OFF at the end where it lies: %s', (what, sets, filter) => {
    const range = { from: '40 Hz', to: '160 Hz' };
    expect(control({ what, sets, safe: '80 Hz' })).toMatchObject({ filter: { ...filter, range } });
  });

  test.each([
    ['-12 dB to 0 dB', { safe: '0 dB', level: { range: { from: '-12 dB', to: '0 dB' } } }],
    ['-12..+6 dB', { safe: '0 dB', level: { range: { from: '-12 dB', to: '+6 dB' } } }],
    ['OFF to 0 dB', { safe: '0 dB', form: 'knob' }],
    ['OFF -40 dB to 0 dB', { safe: '0 dB', level: { range: { from: '-40 dB', to: '0 dB' } } }],
  ])('a level has its range: %s', (sets, told) => {
    expect(control({ what: 'level', sets })).toMatchObject(told);
  });

  test('a level switch has its steps; a boost that is off raises nothing', () => {
    expect(control({ what: 'level', sets: '0 / -3 dB', safe: '0 dB' })).toMatchObject({
      form: 'switch',
      positions: ['0 dB', '-3 dB'],
    });
    expect(control({ what: 'boost', sets: '45 Hz OFF to 12 dB' })).toMatchObject({
      boost: { centre: '45 Hz', range: { from: '0 dB', to: '12 dB' } },
    });
  });

  test.each([
    ['crossover', 'low-pass 40 Hz to OFF', /OFF for one of its corners: .*low-pass 40 Hz to 160 Hz OFF/],
    ['crossover', '40 Hz to 160 Hz OFF', /tells no filter: .*low-pass 50 Hz to 500 Hz/],
    ['crossover', '-12 dB to 6 dB', /"-12 dB to 6 dB", and this control sets a frequency/],
    ['subsonic', 'OFF to 45 Hz', /OFF for one of its corners: .*subsonic OFF 15 Hz to 45 Hz/],
    ['gain', 'OFF to 0.2 V', /ends in OFF beside it: OFF 6 V to 0.2 V/],
    ['level', '40 Hz to 160 Hz', /of a level .* -12 dB to 0 dB, or OFF to 0 dB/],
    ['level', '-12 dB 0 dB', /-12 dB to 0 dB or OFF to 0 dB, .*0 \/ -3 \/ -6 dB/],
    ['level', '0 / -3 dB', /lacks safe: .*0 dB or -3 dB/],
    ['level', '-12 dB to -3 dB', /lacks safe: .* such as -3 dB/],
  ])('a %s of %s is told how it is written', (what, sets, fault) => {
    expect(control({ what, sets, ...(what === 'level' ? {} : { safe: '80 Hz' }) })).toMatch(fault);
  });

  test('has a subsonic knob as a filter of its own, unless a switch brings that in', () => {
    const row = (cells: Readonly<Record<string, string>>) => ({ cells, rest: [], open: [] });
    const knob = row({ name: 'SUB', what: 'subsonic', panel: 'face', sets: '10 Hz to 45 Hz' });
    const range = { from: '10 Hz', to: '45 Hz' };
    expect(controlsOf([knob]).SUB).toMatchObject({ filter: { pass: 'subsonic', range } });
    const mode = row({ name: 'MODE', what: 'subsonic', panel: 'face', sets: 'OFF ON=subsonic' });
    expect(controlsOf([knob, mode]).SUB).toMatchObject({ filter: { range } });
    expect(controlsOf([knob, mode]).SUB).not.toHaveProperty('filter.pass');
  });

  test.each([
    ['OFF 25 Hz', /has "OFF 25 Hz": write positions/],
    ['OFF ON=subsonic 25 Hz 24 dB', /a slope stands in its own column/],
    ['ON=lowpass OFF', /has "ON=lowpass"/],
    ['A=low-pass 80 Hz B=low-pass 120 Hz', /has two corners/],
  ])('has no switch of %s', (sets, fault) => {
    expect(positionsFault(sets)).toMatch(fault);
  });

  test('asks which position of a switch is safe where its kind does not tell', () => {
    expect(safeFault({ what: 'turn-on-mode', sets: 'AUTO REM' })).toBeNull();
    expect(safeFault({ what: 'turn-on-mode', sets: 'SENSE REM' })).toMatch(/safe: write .*SENSE or REM/);
    expect(safeFault({ what: 'turn-on-mode', sets: 'SENSE REM', safe: 'REM' })).toBeNull();
    expect(safeFault({ what: 'subsonic', sets: 'OFF ON' })).toMatch(/OFF or ON/);
    expect(
      controlsOf([{ cells: { name: 'T', what: 'turn-on-mode', sets: 'AUTO REM' }, rest: [], open: [] }]).T,
    ).toMatchObject({
      automatic: ['AUTO'],
    });
  });

  test('says of each row what was left open', () => {
    const answers = {
      title: ['P'],
      terminal: [
        'REM, turn-on-in, top, 2 in, , screw-clamp, ?, ?, ?',
        'CH1..2, speaker-out, left, 1 in, 1 in, ?',
      ],
    };
    expect(leftOut('processor', answers)).toEqual(
      expect.arrayContaining(['terminal REM: takes, torque, strip', 'terminal CH1..2: joint']),
    );
    expect(partText('processor', 'p', answers)).toMatch(/# {3}terminal REM: takes, torque, strip/);
  });

  test('has no holes of a bracket of which a measure is not known', () => {
    const cells = { width: '4 in', depth: '3 in', where: 'left-right', off: '3/8 in' };
    expect(bracketHoles({ cells, rest: [], open: [] })).toEqual([]);
    expect(bracketHoles({ cells: { ...cells, diameter: '5 mm' }, rest: [], open: [] })).toHaveLength(2);
  });

  test('has the air at edges and over it, fins with air, fins alone', () => {
    const { own } = read({ cooling: ['1 in, fan, fins 1 1/4 in, , 1 1/2 in'] });
    expect(own.cooling).toEqual({ right: 'fan', top: 'fins' });
    const air = Object.entries(own.air ?? {}).map(([edge, made]) => [
      edge,
      Number(((made ?? 0) / inch).toFixed(9)),
    ]);
    expect(Object.fromEntries(air)).toEqual({ left: 1, top: 1.25, face: 1.5 });
  });

  test('lays a row that is turned round from its last terminal on', () => {
    const line = 'signal-in, left, 1 in, 1/2 in, phono, up to 4 V';
    const [down, listed] = [
      read({ terminal: [`IN3..1, ${line}`] }),
      read({ terminal: [`IN3 IN2 IN1, ${line}`] }),
    ];
    expect(listed.text).toBe(down.text);
    expect(listed.text).toContain('IN3..1: {');
    const { IN1, IN3 } = listed.own.terminals;
    expect(IN3?.at).toBeCloseTo(inch, 9);
    expect(IN1?.at).toBeCloseTo(2 * inch, 9);
    expect(IN1?.['signal-range']).toEqual({ to: 4 });
  });

  test('takes what a leaflet says of conductors and outputs', () => {
    const { own, text } = read({
      terminal: [
        'REM-OUT, turn-on-out, top, 3 in, , screw-clamp, 0.5 A',
        'SP1, speaker-out, right, 1 in, 1/2 in, screw-clamp, 18 W at 4 ohm',
        'REM, turn-on-in, top, 4 in, , screw-clamp, 18 AWG alone',
      ],
    });
    expect(own.terminals['B+']?.takes).toMatchObject({ from: { label: '24 AWG' }, to: { label: '12 AWG' } });
    expect(own.terminals.REM?.takes).toMatchObject({ from: { label: '18 AWG' }, to: { label: '18 AWG' } });
    expect(own.terminals['REM-OUT']?.current).toBe(0.5);
    expect(own.terminals['SP1+']?.signal).toBe(8.49);
    expect(text).toContain("# signal: of SP1: 18 W at 4 ohm is 8.49 V across it, by Ohm's law.");
  });

  test('says once what the leaflet may still tell', () => {
    const { text } = read({});
    const lines = text.split('\n').filter((line) => line.startsWith('#   '));
    expect(lines.length).toBeGreaterThan(0);
    expect(new Set(lines).size).toBe(lines.length);
  });

  test('asks for the tuning of a box that has a port alone', () => {
    const leftOutOf = (facts: string) => leftOut('enclosure', { title: ['Box'], facts: [facts] }).join();
    expect(leftOutOf('22 L, sealed')).toMatch(/facts: opening, free depth/);
    expect(leftOutOf('22 L, ported')).toMatch(/facts: tuning, opening, free depth/);
  });
});

// P = U squared over R (Ohm's law): 18 W into 4 ohm are the root of 72 V squared; 25 W into 4 ohm are 10 V.
test.each([
  ['18 W at 4 ohm', '8.49 V'],
  ['25 W into 4 ohm', '10 V'],
  ['18 W', null],
  ['18 A at 4 ohm', null],
])('the voltage of %s', (written, volts) => {
  expect(voltageOfPower(written)).toBe(volts);
});

describe('the text of an amplifier', () => {
  const text = partText('amplifier', 'own', {
    title: ['Five channels'],
    case: ['14 in, 8.3 in, 2.2 in, 4.9 kg'],
    terminal: [
      'B+ GND, supply, right, 1 in, 0.6 in, set-screw, up to 4 AWG',
      'REM, turn-on-in, right, 2.2 in, , set-screw, 18 AWG',
      'CH1..5, speaker-out, right, 3.6 in, 0.4 in, set-screw, up to 12 AWG',
      'IN1..5, signal-in, left, 1.5 in, 0.8 in, phono, 0.3 V to 6 V',
    ],
    channel: ['1..4, CH1..4, IN1..4, 2 ohm, 70 W at 4 ohm', '5, CH5, IN5 or IN1..4, 2 ohm, 280 W at 4 ohm'],
    supply: ['regulated, 90 A, 3, class-d, 1.5 A, 80 %, 14.4 V'],
    facts: [', 60 C, 12 V, yes'],
  });
  const { parts, problems } = readContent([{ path: 'content/parts/own.yaml', text }]);
  const { own } = parts;

  test('tells the speaker level that its line inputs take, and the inputs that a channel takes inside', () => {
    expect(problems.filter(({ where }) => where.file !== 'content/shop.yaml')).toEqual([]);
    if (own?.kind !== 'amplifier') throw new Error(text);
    expect(own['most-ambient']).toBe(60);
    for (const name of ['IN1', 'IN5'])
      expect(own.terminals[name]).toMatchObject({
        'signal-range': { from: 0.3, to: 6 },
        'speaker-level': { to: 12, senses: true },
      });
    expect(own.terminals.REM?.['speaker-level']).toBeUndefined();
    expect(own.channels['5']).toMatchObject({ input: 'IN5', 'also-takes': ['IN1', 'IN2', 'IN3', 'IN4'] });
    expect(own.channels['1']?.['also-takes']).toEqual([]);
  });
});

test('the foot of a part stands behind the holes in it', () => {
  const { own } = read({ case: ['4.1 in, 3 in, 1.1 in, 0.3 kg, corners, 6 mm, 5 mm, , 3 mm'] });
  expect(own.foot).toBeCloseTo(0.003, 9);
  expect(own['mounting-holes']).toHaveLength(4);
});
