import { afterAll, describe, expect, test } from 'vitest';
import { channelRows } from '../../../lib/commands/new/part/channel-rows.ts';
import { controlsOf, slopeFault, whyFault } from '../../../lib/commands/new/part/controls/control-fields.ts';
import { controlFault } from '../../../lib/commands/new/part/controls/control-row.ts';
import { knobRange, rangeFault } from '../../../lib/commands/new/part/controls/knob-range.ts';
import { partText } from '../../../lib/commands/new/part/part-text.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { ShopFolder } from '../shop-folder.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

describe('the range of a knob', () => {
  test.each([
    ['50 Hz to 500 Hz', null, null, '50 Hz', '500 Hz'],
    ['low-pass 40 to 200 Hz', 'low-pass', null, '40 Hz', '200 Hz'],
    ['subsonic 15 - 45 Hz', 'subsonic', null, '15 Hz', '45 Hz'],
    ['45 Hz 0 dB to 12 dB', null, '45 Hz', '0 dB', '12 dB'],
    ['0 - 12 dB at 45 Hz', null, '45 Hz', '0 dB', '12 dB'],
    ['14 to 0.8 V', null, null, '14 V', '0.8 V'],
  ])('%s', (sets, pass, centre, from, to) => {
    expect(knobRange(sets)).toEqual({ pass, centre, off: null, from, to });
  });

  test.each(['FLAT HPF=high-pass', '0 180', 'OFF ON=subsonic 25 Hz', '45 Hz'])('%s is none', (sets) => {
    expect(knobRange(sets)).toBeNull();
  });

  test('of a boost has its frequency, of a gain it is in volts', () => {
    expect(rangeFault({ what: 'boost', sets: '0 dB to 12 dB' })).toMatch(
      /lacks the frequency .*45 Hz 0 dB to/,
    );
    expect(rangeFault({ what: 'boost', sets: '45 Hz 0 V to 12 V' })).toMatch(/is no boost/);
    expect(rangeFault({ what: 'boost', sets: '0 to 12 dB at 45 Hz' })).toBeNull();
    expect(rangeFault({ what: 'gain', sets: '20 Hz to 80 Hz' })).toMatch(/such as 6 V to 0\.2 V/);
    expect(rangeFault({ what: 'gain', sets: '14 to 0.8 V' })).toBeNull();
    const cells = { name: 'BOOST', what: 'boost', panel: 'face', sets: '0 - 12 dB at 45 Hz' };
    expect(controlsOf([{ cells, rest: [], open: [] }]).BOOST).toMatchObject({
      form: 'knob',
      boost: { centre: '45 Hz', range: { from: '0 dB', to: '12 dB' } },
    });
  });
});

describe('a switch', () => {
  test('that cuts is asked for its slope', () => {
    expect(slopeFault({ what: 'crossover-mode', sets: 'FLAT HPF=high-pass' })).toMatch(
      /lacks slope: .*in HPF /,
    );
    expect(
      slopeFault({ what: 'crossover-mode', sets: 'FLAT HPF=high-pass', slope: 'bessel 12 dB' }),
    ).toBeNull();
    expect(slopeFault({ what: 'phase', sets: '0 180' })).toBeNull();
    expect(slopeFault({ what: 'crossover', sets: 'low-pass 40 Hz to 200 Hz' })).toBeNull();
  });

  test('for inputs may tell which of them each of its positions hears', () => {
    const cells = { name: 'INPUT', what: 'input-mode', safe: 'B' };
    const made = (sets: string) => controlsOf([{ cells: { ...cells, sets }, rest: [], open: [] }]).INPUT;
    expect(controlFault({ ...cells, sets: 'A=IN1/IN2 B=HIGH1..2', why: 'as delivered' }, '')).toBeNull();
    expect(made('A=IN1/IN2 B=HIGH1..2')).toMatchObject({
      form: 'switch',
      positions: ['A', 'B'],
      hears: { A: ['IN1', 'IN2'], B: ['HIGH1..2'] },
    });
    expect(made('LINE HIGH')).toMatchObject({ positions: ['LINE', 'HIGH'] });
    expect(made('LINE HIGH')).not.toHaveProperty('hears');
  });

  test('whose kind tells no reason is asked why its state is safe', () => {
    const mode = { what: 'input-mode', sets: 'LINE HI', safe: 'HI' };
    expect(whyFault(mode)).toMatch(/lacks why: write why HI is the safe state/);
    expect(whyFault({ ...mode, why: 'the radio comes in by its speaker wires' })).toBeNull();
    expect(whyFault({ what: 'turn-on-mode', sets: 'OFF DC', safe: 'OFF' })).toBeNull();
  });
});

describe('channels', () => {
  test('take the output and the input of their turn', () => {
    expect(channelRows('1..3, L R C, IN-L IN-R IN-C or IN9, 2 ohm, 60 W at 4 ohm')).toEqual([
      '1, L, IN-L or IN9, 2 ohm, 60 W at 4 ohm',
      '2, R, IN-R or IN9, 2 ohm, 60 W at 4 ohm',
      '3, C, IN-C or IN9, 2 ohm, 60 W at 4 ohm',
    ]);
  });

  test.each([
    '1..4, CH1..4, IN1..4, 2 ohm, 75 W at 4 ohm',
    '5, SUB, IN5 IN6 or IN1..4, 2 ohm, 300 W at 4 ohm',
  ])('stay one row: %s', (line) => {
    expect(channelRows(line)).toEqual([line]);
  });

  test.each([
    ['1..4, FL FR RL, IN1..4, 2 ohm', /4 channels \(1, 2, 3, 4\) and 3 outputs \(FL, FR, RL\)/],
    ['5, FL FR, IN1, 2 ohm', /1 channel \(5\) and 2 outputs/],
    ['1..4, CH1..4, IN1 IN2, 2 ohm', /4 channels .* and 2 inputs \(IN1, IN2\)/],
    ['1..4, CH1..3, IN1..4, 2 ohm', /3 outputs/],
  ])('of which there are as many as of what they have: %s', (line, fault) => {
    expect(channelRows(line)).toMatch(fault);
  });
});

test('an amplifier with names in place of numbers is taken as it is printed, and said back', async () => {
  const person = new Typed(
    'Four channels',
    '380 mm, 190 mm, 52 mm, 3.6 kg',
    'control',
    ...[
      'B+ GND, supply, bottom, 28 mm, 44 mm, set-screw, 8 AWG to 2 AWG',
      'REM, turn-on-in, bottom, 90 mm, , set-screw, 22 AWG to 14 AWG',
      'FL FR RL RR, speaker-out, bottom, 170 mm, 12 mm, set-screw, 18 AWG to 12 AWG',
      'HI-FL HI-FR HI-RL HI-RR, speaker-in, top, 40 mm, ?, supplied-lead, end',
    ],
    '1..4, FL FR RL RR, HI-FL HI-FR HI-RL HI-RR, 2 ohm, 60 W at 4 ohm, end',
    ...[
      'FRONT, gain, face, , 1..2, 14 to 0.8 V',
      'REAR, gain, face, , 3..4, 14 V to 0.8 V',
      'INPUT, input-mode, face, , , LINE HI, , HI, the radio comes in by its speaker wires',
      'XO, crossover-mode, face, , 1..2, FLAT HPF=high-pass, butterworth 12 dB',
      'BOOST, boost, face, , 3..4, 0 to 12 dB at 45 Hz, , 0 dB, end',
    ],
    'regulated, 40 A, 1, class-d',
  );
  const line = ['new', 'part', 'by-names', '--kind', 'amplifier'];
  const { status, told } = await shop.answered(person, ...line);
  expect([status, person.refused]).toEqual([0, []]);
  expect(person.said).toContain('  channel 4: 4, RR, HI-RR, 2 ohm, 60 W at 4 ohm');
  // The distance between the ways of the plug stays open, and is told.
  expect(told).toContain('terminal HI-FL HI-FR HI-RL HI-RR: from one to the next');
  const file = { path: 'content/parts/by-names.yaml', text: shop.read('content/parts/by-names.yaml') };
  const { 'by-names': own } = readContent([file]).parts;
  if (own?.kind !== 'amplifier') throw new Error(file.text);
  const wiring = Object.values(own.channels).map(({ positive, input, summed }) => [positive, input, summed]);
  expect(wiring).toEqual([
    ['FL+', 'HI-FL', []],
    ['FR+', 'HI-FR', []],
    ['RL+', 'HI-RL', []],
    ['RR+', 'HI-RR', []],
  ]);
  expect(own.terminals['HI-RR+']).toMatchObject({ panel: 'top', 'signal-range': { from: 0.8, to: 14 } });
  expect(own.terminals['HI-FL+']?.at).toBeUndefined();
});

test('inputs of one row take the range of their gains where these agree, and what their row tells before it', () => {
  const text = (rear: string, takes: string) =>
    partText('amplifier', 'p', {
      title: ['P'],
      terminal: [`L R, signal-in, top, 40 mm, 10 mm, phono, ${takes}`],
      channel: ['1, A, L, 2 ohm, 60 W at 4 ohm', '2, B, R, 2 ohm, 60 W at 4 ohm'],
      control: ['FRONT, gain, face, , 1, 6 V to 0.2 V', `REAR, gain, face, , 2, ${rear}`],
    });
  expect(text('6 V to 0.2 V', '')).toContain('signal-range: 0.2 V to 6 V');
  expect(text('8 V to 0.2 V', '')).not.toContain('signal-range');
  expect(text('6 V to 0.2 V', '0.3 V to 5 V')).toContain('signal-range: 0.3 V to 5 V');
});

test.each([
  ['lead-first', '20 AWG 300 mm 0.5 V to 12 V'],
  ['volts-first', '0.5 V to 12 V 20 AWG 300 mm'],
  ['parted', '20 AWG 300 mm; 0.5 V to 12 V'],
  ['by-a-lead', '0.5 V to 12 V by 20 AWG 300 mm'],
  ['dashed', '0.5-12 V / 300 mm of 20 AWG'],
  ['length-first', '300 mm 20 AWG 500 mV..12 V'],
  ['crossed', '20 AWG x 300 mm; 0.5 V - 12 V'],
])('an input tells its lead and its voltage in one cell, in either order: %s', async (id, takes) => {
  const { status } = await shop.run(...['new', 'part', id, '--kind', 'amplifier'], ...highInput(takes));
  expect(status).toBe(0);
  const file = { path: `content/parts/${id}.yaml`, text: shop.read(`content/parts/${id}.yaml`) };
  const { [id]: own } = readContent([file]).parts;
  if (own?.kind !== 'amplifier') throw new Error(file.text);
  expect(own.terminals['HI+']).toMatchObject({
    lead: { label: '20 AWG' },
    'lead-length': 0.3,
    'signal-range': { from: 0.5, to: 12 },
  });
});

test('a lead and a voltage that can not be parted are told how both are written; a hole at no known place, where it goes', async () => {
  const { told } = await shop.run(
    ...['new', 'part', 'odd', '--kind', 'amplifier', '--terminal'],
    'HI, speaker-in, top, 26 mm, 3 mm, supplied-lead, 20 AWG thick 1 V?',
  );
  expect(told).toContain('stand one behind the other: 20 AWG 300 mm 0.5 V to 12 V');
  const row = ['--case', '200 mm, 150 mm, 46 mm, 1.7 kg, inside, 20 mm, 5 mm'];
  const hole = await shop.run('new', 'part', 'odd-hole', '--kind', 'amplifier', ...row);
  expect(hole.told).toMatch(
    /tells no place of holes: write corners for holes inside its case.*mounting-holes: \[\{ x: 30 mm/,
  );
});

test('a range of volts is read as leaflets print it, and the most alone too', async () => {
  for (const [id, takes, range] of [
    ['most', '20 AWG 300 mm max. 12 V', { to: 12 }],
    ['tilde', '0.2 to 12 V 20 AWG 300 mm', { from: 0.2, to: 12 }],
  ] as const) {
    await shop.run(...['new', 'part', id, '--kind', 'amplifier'], ...highInput(takes));
    const file = { path: `content/parts/${id}.yaml`, text: shop.read(`content/parts/${id}.yaml`) };
    const { [id]: own } = readContent([file]).parts;
    expect(own?.kind === 'amplifier' && own.terminals['HI+']).toMatchObject({ 'signal-range': range });
  }
});

test('an input row that was refused leaves nothing of it in the file', async () => {
  const line = ['new', 'part', 'mended', '--kind', 'amplifier'];
  const refused = await shop.run(...line, ...highInput('3 V to 11 V 20 ABC 300 mm'));
  expect([refused.status, refused.told]).toEqual([2, expect.stringContaining('20 ABC')]);
  const mended = ['--terminal', 'HI, speaker-in, top, 26 mm, 3 mm, supplied-lead, 20 AWG 300 mm'];
  expect((await shop.run(...line, ...mended)).status).toBe(0);
  expect(shop.read('content/parts/mended.yaml')).not.toMatch(/signal-range|11 V/);
});

function highInput(takes: string): readonly string[] {
  const rows: readonly (readonly [string, string])[] = [
    ['title', 'One channel'],
    ['case', '200 mm, 150 mm, 46 mm, 1.7 kg'],
    ['terminal', 'B+ GND, supply, bottom, 22 mm, 36 mm, set-screw, 10 AWG to 4 AWG'],
    ['terminal', 'REM, turn-on-in, bottom, 40 mm, , set-screw, 22 AWG to 16 AWG'],
    ['terminal', 'SPK, speaker-out, bottom, 130 mm, 20 mm, set-screw, 16 AWG to 8 AWG'],
    ['terminal', `HI, speaker-in, top, 26 mm, 3 mm, supplied-lead, ${takes}`],
    ['channel', '1, SPK, HI, 1 ohm, 110 W at 4 ohm'],
    ['control', 'LEVEL, gain, face, , 1'],
    ['supply', 'regulated, 35 A, 1, class-d'],
  ];
  return rows.flatMap(([key, line]) => [`--${key}`, line]);
}
