import { afterAll, describe, expect, test } from 'vitest';
import { wholeNames } from '../../../lib/commands/new/ask/shared-ending.ts';
import { writtenRight } from '../../../lib/commands/new/ask/written-right.ts';
import { walk } from '../../../lib/model/survey/order-of-questions.ts';
import { ShopFolder } from '../shop-folder.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

const flags = (tables: Readonly<Record<string, readonly string[]>>): readonly string[] =>
  Object.entries(tables).flatMap(([key, lines]) => lines.flatMap((line) => [`--${key}`, line]));

const car = {
  title: ['Car'],
  fitted: ['battery, battery-a, engine-bay, left', 'radio, radio-a, cabin, middle'],
  ground: ['rear, cargo, left, M8'],
  cable: ['battery.NEG, body.rear, 2 AWG, 20 in'],
  space: ['wall, Wall, cargo, middle, 42 in, 16 in, 5 in, right, up'],
  place: ['Left door|Right door, cabin, left|right, 2 in'],
};
const told = async (name: string, more: Readonly<Record<string, readonly string[]>>) =>
  (await shop.run('new', 'vehicle', name, ...flags({ ...car, ...more }))).told;

test('a zone is written in two words as well', async () => {
  const way = 'battery, left edge, left, engine bay 26 in, sill 30 in';
  const ground = 'well, engine bay, left, M8';
  expect(await told('zones', { way: [way], ground: [...car.ground, ground] })).not.toMatch(
    /--(?:way|ground)/,
  );
  const text = shop.read('content/vehicles/zones.yaml');
  expect(text).toContain('passes: [engine-bay 26 in, sill 30 in]');
  expect(text).toMatch(/well: \{ zone: engine-bay/);
});

describe('a row that is refused is told written right', () => {
  test('where the unit stands behind the last of several alone', async () => {
    expect(await told('units', { point: ['a|b, 3|18 1/2 in, 2 in, M6, nothing, rivet nut, 1 in'] })).toMatch(
      /has no unit.*; written right: "a\|b, 3 in\|18 1\/2 in, 2 in, M6, nothing, rivet nut, 1 in"/,
    );
  });

  test('where one of several ways lacks a stretch', async () => {
    const way = 'left-door|right-door, left edge, left, cabin 16 in, cabin 0|48 in, cargo 10 in';
    const right = 'left-door|right-door, left edge, left, cabin 16 in, |cabin 48 in, cargo 10 in';
    expect(await told('stretches', { way: [way] })).toContain(`; written right: "${right}"`);
    expect(await told('stretches', { way: [right] })).not.toContain('--way');
    const text = shop.read('content/vehicles/stretches.yaml');
    expect(text).toContain('passes: [cabin 16 in, cargo 10 in]');
    expect(text).toContain('passes: [cabin 16 in, cabin 48 in, cargo 10 in]');
  });

  test('where names of several rows are parted by blanks', async () => {
    expect(await told('names', { output: ['OUT1 OUT2, 20 Hz, 20 kHz, 4 V'] })).toContain(
      '; written right: "OUT1|OUT2, 20 Hz, 20 kHz, 4 V"',
    );
  });

  test('and not where nothing right can be made of it', async () => {
    const says = await told('none', { point: ['a, 3 in, 2 in, M7, nothing, rivet nut'] });
    expect(says).toContain('stud can\'t be "M7"');
    expect(says).not.toContain('written right');
  });

  test('never as a line in which something is wrong', () => {
    const seen: string[] = [];
    const isRight = (line: string) => {
      seen.push(line);
      return false;
    };
    expect(writtenRight('a b, 1|2 in, engine bay 3 in', { isRight, isNamed: true })).toBeNull();
    expect(seen.length).toBeGreaterThan(2);
  });
});

describe('words that names of several rows share stand behind the last of them', () => {
  test('in a name and in what leads to it', async () => {
    const place = 'Left|Right front door, door, left|right, 2 in, 40 in|54 in, front';
    const way = 'left|right-front-door, left|right edge, left|right, door 17 in';
    expect(await told('ending', { place: [place], way: [way] })).not.toMatch(/--(?:place|way)/);
    const text = shop.read('content/vehicles/ending.yaml');
    expect(
      [...text.matchAll(/^ {2}(\S+): \{ title: (.*?), zone: door/gm)].map(([, ...found]) => found),
    ).toEqual([
      ['left-front-door', 'Left front door'],
      ['right-front-door', 'Right front door'],
    ]);
    expect(text).toMatch(/left-front-door-to-wall-left-edge:/);
    expect(text).toMatch(/right-front-door-to-wall-right-edge:/);
  });

  test.each([
    [
      ['Left', 'Right door'],
      ['Left door', 'Right door'],
    ],
    [
      ['left', 'right-kick-panel'],
      ['left-kick-panel', 'right-kick-panel'],
    ],
    [
      ['front left', 'rear right door'],
      ['front left door', 'rear right door'],
    ],
    [
      ['Left door', 'Right door'],
      ['Left door', 'Right door'],
    ],
    [
      ['left', 'right'],
      ['left', 'right'],
    ],
    [
      ['a', 'b'],
      ['a', 'b'],
    ],
    [
      ['shelf', 'left door'],
      ['shelf', 'left door'],
    ],
    [
      ['', 'cabin 48 in'],
      ['', 'cabin 48 in'],
    ],
  ])('%j are %j', (written, whole) => {
    expect(wholeNames(written)).toEqual(whole);
  });

  test.each([[['Left front door', 'Right']], [['Left front', 'right door']]])(
    '%j are refused, since nothing tells what the one of them goes on with',
    (written) => {
      expect(wholeNames(written)).toMatch(/is no whole name: write each of them whole/);
    },
  );
});

describe('a way that goes on from where another one ends', () => {
  const places = ['Left kick panel|Left door|Beside the battery, cabin|door|engine bay, left'];
  const shared =
    'battery beside-the-battery, left-kick-panel, left, engine-bay 30 in, bulkhead 6 in edge hole 20 mm, sill 20 in';
  const own = [
    'left-kick-panel, left edge, left, sill 30 in',
    'left-kick-panel, left-door, left, door 5 in grommet 18 mm, door 16 in',
  ];

  test('has its own stretches alone, and what it ends at first is named first and last', async () => {
    expect(await told('kicked', { place: places, way: [shared, ...own] })).not.toContain('--way');
    const text = shop.read('content/vehicles/kicked.yaml');
    expect(text).toContain('ends: [battery, beside-the-battery, left-kick-panel]');
    expect(text).toContain('passes: [sill 30 in]');
    expect(text.match(/bulkhead, length: 6 in/g)).toHaveLength(1);
  });

  test('is told where ways have the same stretches from one end on, and not where they tell them once', async () => {
    const toLeft = 'battery, left edge, left, engine-bay 30 in, bulkhead 6 in edge hole 20 mm, sill 50 in';
    const toDoor = 'battery, left-door, left, engine-bay 30 in, bulkhead 6 in edge hole 20 mm, door 20 in';
    const beside = 'battery, beside-the-battery, left, engine-bay 30 in';
    const alike = await told('alike', { place: places, way: [toLeft, toDoor, beside] });
    expect(alike.match(/ alike from /g)).toHaveLength(1);
    expect(alike).toMatch(
      /have engine-bay 30 in and .*bulkhead.* alike from battery on: a way that ends in a place/,
    );
    expect(await told('once', { place: places, way: [shared, ...own] })).not.toContain(' alike from ');
  });

  test('is asked for in the walk, with the place where ways part', () => {
    const hints = walk.flatMap(({ tables }) => tables.flatMap(({ hint = '' }) => hint));
    expect(hints).toContainEqual(expect.stringMatching(/What several ways share.* its own stretches alone/));
    expect(hints).toContainEqual(expect.stringMatching(/Where ways for wires part is a place too/));
  });
});

describe('a ground point at the end of a way', () => {
  test('is told by its whole name where it is called without body.', async () => {
    expect(await told('ground', { way: ['rear, left edge, left, cargo 9 in'] })).toMatch(
      /rear is a ground point: write body\.rear in its place/,
    );
  });

  test('is among the names that are known', async () => {
    expect(await told('known', { way: ['nowhere, left edge, left, cargo 9 in'] })).toMatch(
      /there is no place or fitted device "nowhere".*body\.rear/,
    );
    expect(await told('edges', { way: ['body.rear, left, left, cargo 9 in'] })).toContain(
      'an edge of a space is written left edge',
    );
  });
});

test('a ground point that is still to be made is asked what lies behind it', async () => {
  const ground = (behind: string) => ({
    ground: [`rear, cargo, left, M8, rivet-nut, nothing-else, no, ${behind}`],
  });
  expect(await told('made', ground('line'))).not.toContain('what lies behind the ground point');
  expect(shop.read('content/vehicles/made.yaml')).toMatch(/rear: \{[^}]*there: false, behind: line/);
  expect(await told('unseen', ground(''))).toContain('eye: what lies behind the ground point rear');
});

test('a hole on the way of wires that is to be drilled is asked what lies behind it', async () => {
  const way = (hole: string) => ({ way: [`body.rear, left edge, left, cargo 9 in, bulkhead 3 in ${hole}`] });
  expect(await told('drilled', way('drill 24 mm behind nothing'))).not.toContain('what lies behind the hole');
  expect(shop.read('content/vehicles/drilled.yaml')).toMatch(
    /zone: bulkhead, length: 3 in, edge: true, through-hole: 24 mm, there: false, behind: nothing/,
  );
  expect(await told('blind', way('drill 24 mm'))).toMatch(
    /eye: what lies behind the hole that is to be drilled at the bulkhead of/,
  );
  expect(await told('odd', way('hole 24 mm behind tank'))).toContain(
    'behind goes with a hole that is to be drilled',
  );
});

describe('what goes through sheet metal and is not measured yet', () => {
  const way = (hole: string) => ({ way: [`body.rear, left edge, left, cargo 9 in, bulkhead 3 in ${hole}`] });

  test('stays a grommet of the vehicle, and its bore is asked for by the file', async () => {
    expect(await told('open-bore', way('grommet ?'))).toMatch(
      /tape: bore of the vehicle's own grommet at the bulkhead of ground-rear-to-wall-left-edge: .*stretch 2/,
    );
    const text = shop.read('content/vehicles/open-bore.yaml');
    expect(text).toContain('{ zone: bulkhead, length: 3 in, own-grommet: true }');
    expect(text).toMatch(/^# +tape: bore of the vehicle's own grommet at the bulkhead/m);
    expect(await told('known-bore', way('grommet 18 mm'))).not.toContain('tape: bore');
  });

  test('counts as a sharp edge where it is a hole', async () => {
    expect(await told('open-hole', way('hole ?'))).toMatch(
      /tape: width of the hole at the bulkhead of .* counts as a sharp edge/,
    );
    expect(shop.read('content/vehicles/open-hole.yaml')).toContain(
      '{ zone: bulkhead, length: 3 in, edge: true }',
    );
    expect(await told('open-drill', way('drill ? behind nothing'))).not.toContain('--way');
    expect(shop.read('content/vehicles/open-drill.yaml')).toContain(
      '{ zone: bulkhead, length: 3 in, edge: true, there: false, behind: nothing }',
    );
  });

  test('is told written right where one of two ways lacks its stretch', async () => {
    const line = 'left-door|right-door, left edge, left, cabin 5 in grommet 18 mm|grommet ?';
    const right = 'left-door|right-door, left edge, left, cabin 5 in grommet 18 mm|cabin 5 in grommet ?';
    expect(await told('sleeves', { way: [line] })).toContain(`; written right: "${right}"`);
    expect(await told('sleeves', { way: [right] })).not.toContain('--way');
    expect(shop.read('content/vehicles/sleeves.yaml')).toContain(
      'passes: [{ zone: cabin, length: 5 in, own-grommet: true }]',
    );
  });

  test('is refused where it would take a stretch of one of two ways with it, and told written right', async () => {
    const line = 'left-door|right-door, left edge, left, cabin 5 in grommet 18 mm|?, sill 36 in';
    const right =
      'left-door|right-door, left edge, left, cabin 5 in grommet 18 mm|cabin 5 in grommet ?, sill 36 in';
    const refused = await told('sleeve', { way: [line] });
    expect(refused).toContain('has ? alone among its stretches');
    expect(refused).toContain(`; written right: "${right}"`);
    expect(await told('sleeve', { way: [right] })).not.toContain('--way');
    expect(shop.read('content/vehicles/sleeve.yaml')).toContain(
      'passes: [{ zone: cabin, length: 5 in, own-grommet: true }, sill 36 in]',
    );
  });
});

test('a box with a terminal cup is told in the row of its air', async () => {
  const box = [
    'new',
    'part',
    'cup-box',
    '--kind',
    'enclosure',
    '--title',
    'Box',
    '--case',
    '15 in, 11 in, 15 in, 7 kg',
  ];
  await shop.run(...box, '--facts', '20 L, sealed, , 236 mm, , 16 AWG to 10 AWG, 12 mm');
  expect(shop.read('content/parts/cup-box.yaml')).toMatch(
    /terminals:\n\s+CUP: \{ role: coil, joint: binding-post, takes: 16 AWG to 10 AWG, strip: 12 mm \}/,
  );
  expect(shop.read('content/parts/cup-box.yaml')).not.toContain('lead-inside');
  await shop.run(...box.with(2, 'bare-box'), '--facts', '20 L, sealed, , 236 mm, , 16 AWG to 10 AWG, , no');
  expect(shop.read('content/parts/bare-box.yaml')).toContain('lead-inside: false');
  const long = (lead: string) => `20 L, sealed, , 236 mm, , 16 AWG to 10 AWG, , ${lead}`;
  await shop.run(...box.with(2, 'long-box'), '--facts', long('400 mm'));
  expect(shop.read('content/parts/long-box.yaml')).toContain('lead-inside: 400 mm');
  const { told: says } = await shop.run(...box.with(2, 'odd-box'), '--facts', long('400'));
  expect(says).toMatch(/lead inside .*400 mm/);
});

describe('what is given and belongs to nothing', () => {
  const part = async (name: string, ...line: readonly string[]) =>
    shop.run(...['new', 'part', name, '--kind', 'speaker', '--title', 'Woofer'], ...line);
  const measures = ['--case', '165 mm, 165 mm, 58 mm, 1 kg'];
  const woofer = 'midbass, 70 W, 58 Hz, 142 mm, C1, 4 ohm, , screw-clamp, 18 AWG to 12 AWG';

  test('is refused: the set of a woofer that is told as one alone', async () => {
    const set = '3 kHz, 2 in, 7/8 in, 0.09 kg, 4 in, 3 in, 1 in, 0.2 kg, set-screw, up to 12 AWG';
    const { status, told: says } = await part('lone', ...measures, '--facts', woofer, '--set', set);
    expect(status).toBe(2);
    expect(says).toContain(`--set "${set}": belongs to a speaker of the band component`);
  });

  test('keeps quiet where it is left empty', async () => {
    const { status } = await part('empty', ...measures, '--facts', woofer, '--set', '', '--box', '');
    expect(status).toBe(0);
  });

  test('is refused: an output where no source unit is told', async () => {
    const says = await told('deaf', {
      fitted: ['battery, battery-a, engine-bay, left'],
      output: ['OUT1, 20 Hz, 20 kHz, 4 V'],
    });
    expect(says).toContain('--output "OUT1, 20 Hz, 20 kHz, 4 V": belongs to a source unit');
  });
});
