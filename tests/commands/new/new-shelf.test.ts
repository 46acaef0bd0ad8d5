import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { readThing } from '../../../lib/commands/new/shelf/thing.ts';
import { begunShop } from './begun-shop.ts';
import { Typed } from './typed.ts';

const { folder, read } = begunShop();

describe('a line of the shelf', () => {
  test.each([
    [
      'power wire 2 AWG red 40 ft + 8 ft',
      { for: ['power'], size: '2 AWG', colour: 'RD' },
      null,
      ['40 ft', '8 ft'],
    ],
    ['wire 18 AWG white/black 30 ft', { size: '18 AWG', colour: 'WH/BK' }, null, ['30 ft']],
    ['large bolt-in fuse 80 A x4', { form: 'large-bolt-in', rating: '80 A' }, 4, []],
    ['bolt-in 30 mm fuse 70 A x 2', { form: 'bolt-in-30mm', rating: '70 A' }, 2, []],
    ['blade fuse 7.5 A 5 pcs', { form: 'standard-blade', rating: '7.5 A' }, 5, []],
    [
      'ring lug 4 AWG M8 x10',
      { form: 'ring-lug', takes: { from: '4 AWG', to: '4 AWG' }, stud: 'M8' },
      10,
      [],
    ],
    [
      'receptacle 16-14 AWG x50',
      { form: 'blade-receptacle', takes: { from: '16 AWG', to: '14 AWG' } },
      50,
      [],
    ],
    [
      'receptacle 2.8 mm 22-18 AWG x50',
      { form: 'blade-receptacle', tab: '2.8 mm', takes: { from: '22 AWG', to: '18 AWG' } },
      50,
      [],
    ],
    [
      'blade receptacle 22-18 AWG 4.8 mm x20',
      { form: 'blade-receptacle', tab: '4.8 mm', takes: { from: '22 AWG', to: '18 AWG' } },
      20,
      [],
    ],
    ['wood screw #8 5/8 in x100', { form: 'wood-screw', thread: '#8', length: '5/8 in' }, 100, []],
    ['rubber bush M6 10 mm x12', { form: 'rubber-bush', thread: 'M6', length: '10 mm' }, 12, []],
    [
      'phono lead 17 ft x4, outside diameter 9 mm',
      { form: 'coaxial', plugs: 'phono', 'made-length': '17 ft', 'outside-diameter': '9 mm' },
      4,
      [],
    ],
    ['bolt M6 x 30 mm x20', { form: 'bolt', thread: 'M6', length: '30 mm' }, 20, []],
    ['blade fuse holder x2', { 'fuse-form': 'standard-blade' }, 2, []],
    ['small bolt-in holder 100 A x1', { 'fuse-form': 'small-bolt-in', current: '100 A' }, 1, []],
    ['phono lead 17 ft x4', { form: 'coaxial', plugs: 'phono', 'made-length': '17 ft' }, 4, []],
    ['heat-shrink 12 mm 20 ft', { form: 'heat-shrink', bore: '12 mm' }, null, ['20 ft']],
    [
      'birch plywood 1/2 in 24 x 48 in x1, modulus 10 GPa',
      { material: 'birch-plywood', thickness: '1/2 in', width: '24 in', height: '48 in', modulus: '10 GPa' },
      1,
      [],
    ],
  ])('%s', (line, fields, pieces, reels) => {
    const thing = readThing(line);
    if (typeof thing === 'string') throw new Error(thing);
    expect(thing.fields).toEqual(fields);
    expect(thing.count).toEqual({ pieces, reels });
  });

  // DIN 46228-4: a ferrule of 25 mm2 is the next above 4 AWG (21.2 mm2, ASTM B258), one of 0.75 mm2 above 20 AWG (0.52).
  test.each([
    ['ferrule 25 mm2 x20', '4 AWG'],
    ['ferrule 0.75 mm2 x20', '20 AWG'],
    ['ferrule 12 AWG x20', '12 AWG'],
  ])('a ferrule is called by its own area or by the gauge of its conductor: %s', (line, size) => {
    expect(readThing(line)).toMatchObject({ fields: { takes: { from: size, to: size } } });
  });

  test.each([
    ['sprocket 4 x2', /begins with no thing that is known here. .*Known here are: .*ring lug 4 AWG M8 x10/],
    ['ring lug 4 AWG x10', /lacks stud .* write it so: ring lug 4 AWG M8 x10/],
    ['wire 4 AWG crimson 30 ft', /lacks colour/],
    ['bolt M6 30 mm shiny x4', /has "shiny"/],
    ['ferrule 3 mm2 x4', /lacks takes/],
    ['bolt M6 30 mm x4, shiny', /has "shiny" behind a comma/],
  ])('that can not be read says how it is written: %s', (line, fault) => {
    expect(readThing(line)).toMatch(fault);
  });
});

// IEC 61210 has flat tabs of 2.8, 4.8 and 6.3 mm; common practice, no source: a tweeter has the narrowest.
test('a beginning shelf has receptacles for each width of tab on a speaker, and one that tells no width is asked which', async () => {
  const { parts, shop } = await read();
  const widths = Object.entries(parts).flatMap(([id, part]) =>
    part.kind === 'terminal' && part.form === 'blade-receptacle' && shop?.stock[id] ? [part.tab ?? 0] : [],
  );
  expect(new Set(widths)).toEqual(new Set([0.0028, 0.0048, 0.0063]));
  const unclear = await folder.run('new', 'shelf', '--thing', 'receptacle 22-18 AWG x10');
  expect(unclear.status).toBe(2);
  expect(unclear.told).toMatch(
    /may be receptacle-18 or receptacle-48-18 or receptacle-28-18: .*or tell its tab: receptacle 6\.3 mm/,
  );
});

test('a shelf that is typed becomes parts and stock, and takes the invented one away', async () => {
  const person = new Typed(
    'power wire 4 AWG red 30 ft',
    'power wire 2 AWG red 105 C 40 ft',
    'power wire 2 AWG red 105 C 8 ft',
    'ring lug 4 AWG M8 x20',
    'ring lug 4 AWG M5 x20',
    'bolt M6 30 mm x20',
    'washer M8 x10',
    'birch plywood 15 mm 24 x 48 in x1',
    'birch plywood 15 mm 24 x 48 in x1, modulus 10.3 GPa, modulus-across 7.1 GPa',
    'wood-screw-8-16 x100',
    'speaker pair 16 AWG 80 C 200 ft',
    'ring lug 4 AWG M8 x5',
    '',
    'yes',
  );
  const { status, told } = await folder.answered(person, 'new', 'shelf');
  expect(status).toBe(0);
  // No sheet of this thickness is known: plies of other ones differ in stiffness, so that it is asked for.
  expect(person.refused).toEqual([
    expect.stringMatching(/birch plywood 15 mm .*: lacks something .*modulus is missing/),
  ]);
  expect(told).toMatch(/new: ring-lug-4-awg-m5 \(strip, die as lug-4-m6\)/);
  const { shop, parts, problems } = await read();
  expect(problems).toEqual([]);
  expect(Object.keys(shop?.stock ?? {}).toSorted()).toEqual(
    [
      ...['birch-plywood-15-mm-24-x-48-in', 'bolt-m6-30-mm', 'lug-4-m8', 'power-wire-2-awg-red-105-c'],
      ...['ring-lug-4-awg-m5', 'speaker-pair-16-awg-80-c', 'washer-m8', 'wire-power-4-rd', 'wood-screw-8-16'],
    ].toSorted(),
  );
  expect(shop?.stock['lug-4-m8']).toMatchObject({ pieces: 25 });
  // 1 ft is 0.3048 m.
  expect(shop?.stock['power-wire-2-awg-red-105-c']).toMatchObject({
    reels: [expect.closeTo(40 * 0.3048, 9), expect.closeTo(8 * 0.3048, 9)],
  });
  expect(shop?.['stock-counted']).toBe(true);
  const { 'ring-lug-4-awg-m5': lug, 'lug-4-m6': model, 'bolt-m6-30-mm': bolt, 'washer-m8': washer } = parts;
  expect(lug).toMatchObject({
    form: 'ring-lug',
    stud: 'M5',
    strip: model?.kind === 'terminal' ? model.strip : null,
  });
  // Its load hangs on more than its thread: it is not taken over.
  expect(bolt).toMatchObject({ length: 0.03, clearance: 0.0066, torque: 10 });
  expect(bolt).not.toHaveProperty('holds', expect.anything());
  expect(washer).toMatchObject({ serrated: false });
});

test('a list is taken from a file, counted beside what is there', async () => {
  folder.write('shelf.txt', '# counted on Monday\nwood-screw-8-16 x40\n\nlarge bolt-in fuse 80 A x4\n');
  const before = Object.keys((await read()).shop?.stock ?? {}).length;
  const { status, out } = await folder.run('new', 'shelf', '--list', 'shelf.txt');
  expect([status, out]).toEqual([0, '']);
  const { shop } = await read();
  expect(shop?.stock['wood-screw-8-16']).toMatchObject({ pieces: 40 });
  expect(shop?.stock['fuse-large-80']).toMatchObject({ pieces: 4 });
  expect(Object.keys(shop?.stock ?? {})).toHaveLength(before + 1);
  const wrong = await folder.run(
    'new',
    'shelf',
    '--thing',
    'ring lug 4 AWG x10',
    '--thing',
    'wood-screw-8-16 x1',
  );
  expect([wrong.status, wrong.told]).toEqual([
    2,
    expect.stringContaining('--thing "ring lug 4 AWG x10": lacks stud'),
  ]);
  rmSync(join(folder.root, '.rackleaf/drafts/shelf.json'));
});

test('holders and leads of the catalogue are counted by what they are, and leads of another length become parts', async () => {
  const things = [
    'blade fuse holder x3',
    'phono lead 17 ft x4',
    'phono lead 9 ft x2',
    'twisted pair 20 AWG 50 ft',
  ];
  const { status, told } = await folder.run('new', 'shelf', ...things.flatMap((one) => ['--thing', one]));
  expect([status, told.split('\n')[0]]).toEqual([
    0,
    'new: phono-lead-9-ft (conductors, insulation, for, outside-diameter as lead-phono-18in)',
  ]);
  const { shop, parts, problems } = await read();
  expect(problems).toEqual([]);
  expect(shop?.stock).toMatchObject({
    'holder-standard-blade': { pieces: 3 },
    'lead-phono-17ft': { pieces: 4 },
    'phono-lead-9-ft': { pieces: 2 },
    'cable-twisted-pair-20': { reels: [expect.closeTo(50 * 0.3048, 9)] },
  });
  expect(parts['phono-lead-9-ft']).toMatchObject({
    'made-length': expect.closeTo(9 * 0.3048, 9),
    plugs: 'phono',
  });
});

test('a holder that the catalogue lacks is no guess: it is told how its part is written', async () => {
  const { status, told } = await folder.run('new', 'shelf', '--thing', 'small bolt-in holder 100 A x1');
  expect(status).toBe(2);
  expect(told).toContain('rackleaf new part small-bolt-in-holder-100-a --like holder-small-inline first');
  rmSync(join(folder.root, '.rackleaf/drafts/shelf.json'));
});

test('a thing that no line can tell is made a part by the command that is told, in the words of the line', async () => {
  const line = 'threaded insert M6 13 mm x10';
  const refused = await folder.run('new', 'shelf', '--thing', line);
  expect(refused.status).toBe(2);
  const [, command = '', row = ''] =
    /Make it a part: rackleaf (.*?); then give its row as (.*?)\. /.exec(refused.told) ?? [];
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
  expect((await folder.run(...words)).out).toBe('content/parts/threaded-insert-m6-13-mm.yaml');
  const counted = await folder.run('new', 'shelf', '--thing', row);
  expect(counted.status).toBe(0);
  const { shop, parts } = await read();
  expect(shop?.stock).toMatchObject({ 'threaded-insert-m6-13-mm': { pieces: 10 } });
  expect(parts['threaded-insert-m6-13-mm']).toMatchObject({
    ...{ kind: 'fixing', form: 'threaded-insert', thread: 'M6' },
    length: 0.013,
  });
});

test('a fuse tap is made a part of its kind by the command that is told, without a place on a board', async () => {
  const refused = await folder.run('new', 'shelf', '--thing', 'fuse tap small blade 16 AWG 7.5 A x2');
  expect(refused.status).toBe(2);
  expect(refused.told).not.toContain('KIND');
  const [, command = '', row = ''] =
    /Make it a part: rackleaf (.*?); then give its row as (.*?)\. /.exec(refused.told) ?? [];
  const words = [...command.matchAll(/"([^"]*)"|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');
  expect((await folder.run(...words)).status).toBe(0);
  expect((await folder.run('new', 'shelf', '--thing', row)).status).toBe(0);
  const { shop, parts } = await read();
  const [id = ''] = row.split(' ');
  expect(shop?.stock[id]).toMatchObject({ pieces: 2 });
  expect(parts[id]).toMatchObject({
    ...{ kind: 'distribution', current: 7.5 },
    'fused-ways': { TAP: { from: 'IN', 'fuse-form': 'mini-blade' } },
    terminals: { IN: { role: 'feed-in', joint: 'plug' }, TAP: { joint: 'supplied-lead' } },
  });
});

test('a thing of no kind that its words tell names the kinds', async () => {
  const refused = await folder.run('new', 'shelf', '--thing', 'wondrous pad 3 mm x4');
  expect(refused.told).toMatch(
    /rackleaf new part wondrous-pad-3-mm --kind KIND --title "Wondrous pad 3 mm" with its kind for KIND: amplifier, /,
  );
  rmSync(join(folder.root, '.rackleaf/drafts/shelf.json'));
});

test('what was typed stays in its draft until it is written', async () => {
  const draft = '.rackleaf/drafts/shelf.json';
  folder.write('content/parts/on-the-shelf-3.yaml/held.txt', 'a folder stands where the parts would');
  const person = new Typed('power wire 2 AWG blue 105 C 8 ft', '', 'no');
  expect((await folder.answered(person, 'new', 'shelf')).status).not.toBe(0);
  expect(folder.read(draft)).toContain('power wire 2 AWG blue 105 C 8 ft');
});
