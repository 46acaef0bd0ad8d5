import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { promptsAsker } from '../../../lib/commands/new/ask/prompts.ts';
import { Interrupted } from '../../../lib/commands/new/ask/question.ts';
import { readRow } from '../../../lib/commands/new/ask/rows.ts';
import { wrapped } from '../../../lib/commands/new/ask/wrapped.ts';
import { idOf } from '../../../lib/commands/new/id-of.ts';
import { jobTables } from '../../../lib/commands/new/job/job-tables.ts';
import { vehicleFile } from '../../../lib/commands/new/new-vehicle.ts';
import { partTables } from '../../../lib/commands/new/part/part-tables.ts';
import { walk } from '../../../lib/model/survey/order-of-questions.ts';
import { blankSurvey } from '../../../lib/publish/pages/survey-on-paper.ts';
import { smallShop } from '../../read/small-shop.ts';
import { ShopFolder } from '../shop-folder.ts';
import { car } from './invented-car.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

describe('a person who is asked', () => {
  const [title = '', supply = '', ...cautions] = car.answers;

  test('is told in words what is wrong with an answer, and is asked again', async () => {
    const person = new Typed(
      ...['', title],
      ...['Coupe!', 'wagon', 'coupe-told'],
      ...[supply, ''],
      ...['battery, battery-b, engine-bay', 'battery, battery-bb, engine-bay, left', ''],
      ...['floor, cabin, left, M7', 'floor, cabin, left, M8', 'floor, cabin, right, M8', ''],
      ...['body.floor, body.roof, 2 AWG, 20 in', 'body.floor, body.floor, 2 AWG, 20', ''],
      ...['14.2 V, 40', '14.2 V, 40,5 A', '14.2 V, 40.5 A'],
    );
    await shop.answered(person, 'new', 'vehicle');
    for (const words of [
      'title: : needs an answer',
      'id: Coupe!: "Coupe!" is not an id',
      'id: wagon: the vehicle "wagon" is there already',
      'fitted 1: battery, battery-b, engine-bay: lacks side',
      'fitted 1: battery, battery-bb, engine-bay, left: there is no part "battery-bb"',
      'ground 1: floor, cabin, left, M7: stud can\'t be "M7": it needs one of M4, M5',
      'ground 2: floor, cabin, right, M8: is called floor, and there is one of that name already',
      'cable 1: body.floor, body.roof, 2 AWG, 20 in: there is no',
      'cable 1: body.floor, body.floor, 2 AWG, 20: length "20" has no unit',
      'reading: 14.2 V, 40: vehicle load "40" has no unit',
      'reading: 14.2 V, 40,5 A:',
    ])
      expect(
        person.refused.filter((told) => told.startsWith(words)),
        words,
      ).not.toEqual([]);
  });

  test('is told what terminals and outputs are called, of a part that is still to be written as well', async () => {
    const person = new Typed(
      ...[title, supply, ''],
      ...['battery, battery-cc, engine-bay, left', 'battery, battery-cc, engine-bay, left'],
      ...['radio, radio-a, cabin, middle', ''],
      ...Array.from({ length: 5 }, () => ''),
    );
    await shop.answered(person, 'new', 'vehicle', 'coupe-names');
    const said = person.said.join('\n');
    expect(said).toContain(
      'Of battery the part is still to be written: name each terminal as you will there',
    );
    expect(said).toMatch(/Outputs of radio: OUT1/);
  });

  test('who breaks off finds the answers again, and nothing is written until the last one', async () => {
    const first = new Typed(title, supply, ...cautions.slice(0, 3));
    const broken = await shop.answered(first, 'new', 'vehicle', 'coupe-later');
    expect([broken.status, broken.out]).toEqual([2, '']);
    expect(broken.told).toMatch(
      /no vehicle is written; \.rackleaf\/drafts\/vehicle-coupe-later\.json keeps the answers/,
    );
    expect(existsSync(join(shop.root, 'content/vehicles/coupe-later.yaml'))).toBe(false);

    // Everything that may be left out is.
    const second = new Typed(...Array.from({ length: 20 }, () => ''));
    const whole = await shop.answered(second, 'new', 'vehicle', 'coupe-later');
    expect(second.said.join('\n')).toMatch(/answers of an earlier try are taken/);
    expect([whole.status, whole.out]).toEqual([0, 'content/vehicles/coupe-later.yaml']);
    expect(shop.read('content/vehicles/coupe-later.yaml')).toContain('The tank lies under the rear seat.');
    expect(whole.told).toMatch(/still to be measured:\n {2}meter: vehicle-load/);
    expect(existsSync(join(shop.root, '.rackleaf/drafts/vehicle-coupe-later.json'))).toBe(false);
  });
});

test('who asks for a turn-on draw says what is reckoned without it, by the rules of this shop', async () => {
  const answers = [
    ...['Processor', '4 in, 3 in, 1 in, 0.3 kg', ''],
    'B+ GND, supply, top, 1 in, 1 in, screw-clamp',
    'REM, turn-on-in, top, 3 in, , screw-clamp, end',
    'regulated, 3 A, 0.7 A',
  ];
  const ask = async (id: string) => {
    const person = new Typed(...answers);
    const { status } = await shop.answered(person, 'new', 'part', id, '--kind', 'processor');
    expect([status, person.refused]).toEqual([0, []]);
    return person.said.join('\n');
  };
  expect(await ask('turned-on')).toContain(
    'Left empty, a turn on draw of 0.1 A is reckoned, by the house rules (common practice).',
  );
  expect(shop.read('content/parts/turned-on.yaml')).toMatch(
    /supply: \{ type: regulated, fuse: 3 A, draw: 0.7 A \}/,
  );
  const own = shop.read('content/shop.yaml');
  shop.write('content/shop.yaml', `${own}\nrules: { turn-on-draw: 40 mA }\n`);
  expect(await ask('turned-on-own')).toContain('0.04 A is reckoned, by the rules of this shop.');
  shop.write('content/shop.yaml', own);
});

describe('what seldom is there to tell', () => {
  const box = ['Interface', '4 in, 3 in, 1 in, 0.3 kg'];
  const rest = ['B+ GND, supply, top, 1 in, 1 in, screw-clamp, End', 'regulated, 3 A, 0.7 A'];
  const part = (person: Typed, id: string) => shop.answered(person, 'new', 'part', id, '--kind', 'processor');

  test('is passed over by one Enter, which is told what then holds', async () => {
    const person = new Typed(...box, '', ...rest);
    const { status } = await part(person, 'plain-box');
    expect([status, person.refused, person.count]).toEqual([0, [], 5]);
    const said = person.said.join('\n');
    expect(said).toMatch(/control: Its knobs and switches \(leaflet\)\. Else: it has none/);
    expect(said).not.toContain('control 1:');
    expect(shop.read('content/parts/plain-box.yaml')).not.toContain('controls:');
  });

  test('is asked in its turn where somebody names it; another word is refused', async () => {
    const control = 'GAIN, gain, face, , , end';
    const [terminal = '', supply = ''] = rest;
    const person = new Typed(...box, 'knobs', 'control', terminal, control, supply);
    const { status } = await part(person, 'knob-box');
    expect([status, person.refused]).toEqual([0, [expect.stringContaining('"knobs" is not one of them; ')]]);
    expect(shop.read('content/parts/knob-box.yaml')).toContain('GAIN: { what: gain');
  });

  test('a slope without its shape is asked once more, and taken as it is where nobody tells it', async () => {
    const knob = (slope: string) => `LP, crossover, face, , , low-pass 40 Hz to 160 Hz, ${slope}, 80 Hz, end`;
    const [terminal = '', supply = ''] = rest;
    const steep = knob('24 dB/oct');
    const silent = new Typed(...box, 'control', terminal, steep, steep, supply);
    await part(silent, 'slope-box');
    expect(silent.refused).toEqual([
      expect.stringContaining(
        'butterworth or linkwitz-riley or bessel, such as butterworth 24 dB/oct; Enter',
      ),
    ]);
    expect(shop.read('content/parts/slope-box.yaml')).toMatch(/filter: \{ order: 4, pass: low-pass/);
    const told = new Typed(...box, 'control', terminal, knob('butterworth 24 dB'), supply);
    await part(told, 'shape-box');
    expect(told.refused).toEqual([]);
  });

  test('is taken from a flag without being named', async () => {
    const person = new Typed(...box, '', ...rest);
    const line = ['new', 'part', 'flag-box', '--kind', 'processor', '--control', 'GAIN, gain, face'];
    const { status } = await shop.answered(person, ...line);
    expect([status, person.refused]).toEqual([0, []]);
    expect(shop.read('content/parts/flag-box.yaml')).toContain('GAIN: { what: gain');
  });

  test('is found among the answers to give anew, and is then asked', async () => {
    const [terminal = ''] = rest;
    const open = ['?, 3 A, 0.7 A', 'control', 'GAIN, gain, face, end', ''];
    const person = new Typed(...box, '', terminal, ...open);
    await part(person, 'later-box');
    expect(person.refused).toEqual([]);
    expect(shop.read('content/parts/later-box.yaml')).toContain('GAIN: { what: gain');
  });
});

test.each([
  [
    'a sentence that ends a list keeps its full stop',
    'Airbags in both seats. end',
    '"Airbags in both seats."',
  ],
  ['a comma before the word goes with it', 'Airbags in both seats, END', '"Airbags in both seats"'],
])('%s', async (_, line, written) => {
  const id = `ended-${written.length}`;
  const person = new Typed('Van', '', line, ...Array.from({ length: 12 }, () => ''));
  await shop.answered(person, 'new', 'vehicle', id);
  expect(shop.read(`content/vehicles/${id}.yaml`)).toContain(`  - ${written}\n`);
});

test('everything lacking or wrong among flags is told in one go, and nothing is written', async () => {
  const { status, told } = await shop.run('new', 'part', 'half', '--kind', 'speaker', '--facts', 'loud, 20');
  expect(status).toBe(2);
  expect(told).toMatch(/--case is needed: .*\n.*--facts "loud, 20": band can't be "loud"/);
  expect(existsSync(join(shop.root, 'content/parts/half.yaml'))).toBe(false);
  const stranger = await shop.run('new', 'part', 'half', '--kind', 'fues');
  expect(stranger.told).toMatch(/there is no kind "fues"; did you mean "fuse"\?/);
  const flags = await shop.run('new', 'vehicle', '--flags');
  expect(flags.out).toContain('--point  Points that are sound enough');
});

test('a side that is not known yet is marked in the file, and one that is known is not', async () => {
  const made = async (id: string, side: string) => {
    const fitted = ['--fitted', `battery, battery-b, engine-bay, ${side}`];
    const { told } = await shop.run('new', 'vehicle', id, '--title', 'Van', ...fitted);
    return { told, text: shop.read(`content/vehicles/${id}.yaml`) };
  };
  const mark = 'eye: the side of battery; until then it counts as middle';
  const open = await made('side-open', '?');
  expect([open.told, open.text]).toEqual([
    expect.stringContaining(mark),
    expect.stringContaining(`#   ${mark}`),
  ]);
  expect((await made('side-told', 'middle')).text).not.toContain('the side of');
});

test('a fan of the walk is one that the vehicle has, and none is written where nobody tells of one', async () => {
  const space = 'well, Well beside the wheel, cargo, left, 20 in, 15 in, 5 in, front, up';
  const vehicle = (id: string, ...more: readonly string[]) =>
    shop.run('new', 'vehicle', id, '--title', 'Van', '--space', space, ...more);
  await vehicle('fanned', '--fan', '20 m3/h');
  expect(shop.read('content/vehicles/fanned.yaml')).toContain('fan: { air: 20 m3/h, there: true }');
  await vehicle('unfanned');
  expect(shop.read('content/vehicles/unfanned.yaml')).not.toContain('fan:');
  const wrong = await vehicle('wrong-fan', '--fan', '20');
  expect(wrong.told).toMatch(/--fan "20": moves "20" has no unit/);
});

describe('the walk', () => {
  const keys = walk.flatMap(({ tables }) => tables.map(({ key }) => key));

  test('is asked in the order in which it stands on paper', () => {
    expect(vehicleFile(smallShop()).questions.map(({ key }) => key)).toEqual(keys);
    const asked = walk.flatMap(({ tables }) => tables.map(({ asks }) => asks));
    const onPaper = blankSurvey().flatMap(({ tables }) =>
      tables.flatMap(({ table }) => [table.caption, ...table.rows.map(({ cells }) => cells[0]?.text ?? '')]),
    );
    const places = asked.map((asks) => onPaper.findIndex((text) => text.startsWith(asks)));
    expect(places).not.toContain(-1);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  test('has room on paper for each thing that it asks', () => {
    const stations = blankSurvey();
    for (const [at, { tables }] of walk.entries())
      for (const { columns, rows } of tables.filter(({ columns: [, second] }) => second !== undefined)) {
        const titles = columns.map(({ title }) => title);
        const onPaper = stations[at]?.tables.find(({ table }) => {
          const across = table.columns.map(({ title }) => title);
          const down = table.rows.map(({ cells }) => cells[0]?.text);
          return (
            titles.every((title) => across.includes(title)) || titles.every((title) => down.includes(title))
          );
        });
        expect(onPaper, titles.join()).toBeDefined();
        const room = Math.max(onPaper?.table.rows.length ?? 0, onPaper?.table.columns.length ?? 0);
        expect(room).toBeGreaterThan(rows);
      }
  });
});

describe('the example of each question', () => {
  const tables = [
    ...walk.flatMap((station) => station.tables),
    ...jobTables,
    ...Object.values(partTables).flat(),
  ];

  test.each([...new Set(tables)].map((table) => [table.key, table] as const))(
    'can be typed as it stands: %s',
    (_, table) => {
      const examples = table.columns.map(({ example }) => example).join(', ');
      expect(readRow(table.columns, examples)).toMatchObject({ cells: {} });
    },
  );
});

test.each([
  ['Left door, front', 'left-door-front'],
  ["Driver's seat", 'drivers-seat'],
  ['Große Limousine', 'grosse-limousine'],
  ['Ærø  Crème', 'aero-creme'],
  ['  ../../etc ', 'etc'],
  ['con', null],
  ['###', null],
  ['ドア', null],
])('a name is made of the title %j', (title, id) => {
  expect(idOf(title)).toBe(id);
});

describe('at a terminal', () => {
  const asked = { choices: null, fallback: null };
  const input = new PassThrough();
  const output = new PassThrough();
  let shown = '';
  beforeAll(() => {
    output.on('data', (data: Buffer) => {
      shown += data.toString();
    });
  });

  test('what is wrong stands below the answer, which is typed anew', async () => {
    const asker = await promptsAsker({ input, output });
    const answer = asker.ask({
      ...asked,
      message: 'length',
      fault: (line) => (line.endsWith('in') ? null : 'needs its unit'),
    });
    input.write('13\r');
    await expect.poll(() => shown, { timeout: 20_000 }).toContain('needs its unit');
    input.write(' in\r');
    expect(await answer).toBe('13 in');
  });

  test('Enter takes what is offered, and breaking off is told as such', async () => {
    const asker = await promptsAsker({ input, output });
    const taken = asker.ask({ ...asked, message: 'date', fallback: '2026-02-09', fault: () => null });
    input.write('\r');
    expect(await taken).toBe('2026-02-09');
    const broken = asker.ask({ ...asked, message: 'name', fault: () => null });
    const told = expect(broken).rejects.toThrow(Interrupted);
    input.write('\x03');
    await told;
  });

  test('what is said breaks between words at the width of the terminal', async () => {
    const narrow = Object.assign(new PassThrough(), { columns: 40 });
    let said = '';
    narrow.on('data', (data) => {
      said += data.toString();
    });
    const asker = await promptsAsker({ input, output: narrow });
    asker.say(
      'Its case: width and depth on the board, height off it\n  Such as: 10 in, 6 1/2 in, 2 1/8 in, 3.2 kg, corners',
    );
    expect(said).toBe(
      'Its case: width and depth on the board,\nheight off it\n  Such as: 10 in, 6 1/2 in, 2 1/8 in,\n  3.2 kg, corners\n',
    );
  });
});

test.each([20, 31, 40, 77])(
  'no line of what is asked of a part is longer than %d columns, and no word is lost',
  (columns) => {
    for (const { asks, hint = '' } of Object.values(partTables).flat()) {
      const text = `${asks}\n  ${hint}`;
      const lines = wrapped(text, columns).split('\n');
      const words = (of: string) => of.split(/\s+/).filter(Boolean);
      expect(words(lines.join(' '))).toEqual(words(text));
      for (const line of lines) if (words(line).length > 1) expect(line.length).toBeLessThanOrEqual(columns);
    }
  },
);
