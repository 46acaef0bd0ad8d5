import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { ShopFolder } from '../shop-folder.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());

const grounds = (name: string) => [
  ...shop.read(`content/vehicles/${name}.yaml`).matchAll(/^ {2}(\S+): \{ zone/gm),
];
const flags = (key: string, ...lines: readonly string[]) => lines.flatMap((line) => [`--${key}`, line]);
const [floor, roof, sill] = ['floor, cabin, left, M8', 'roof, cabin, left, M6', 'sill, sill, left, M8'];
const wrong = 'sill, sill, left, 8';

describe('a row that was refused is given mended alone', () => {
  test('and the rows that were right beside it are written too', async () => {
    const line = ['new', 'vehicle', 'van'];
    const first = await shop.run(...line, ...flags('ground', floor, wrong, roof), '--title', 'Van');
    expect([first.status, first.out]).toEqual([2, '']);
    expect(first.told).toContain('give a refused row alone, the others are kept');
    const second = await shop.run(...line, ...flags('ground', sill));
    expect(second.out).toBe('content/vehicles/van.yaml');
    expect(grounds('van').map(([, name]) => name)).toEqual(['floor', 'roof', 'sill']);
    expect(existsSync(join(shop.root, '.rackleaf/drafts/vehicle-van.json'))).toBe(false);
  });

  test('whoever gives all rows again has each of them once', async () => {
    const line = ['new', 'vehicle', 'bus', '--title', 'Bus'];
    await shop.run(...line, ...flags('ground', floor, wrong, roof));
    const again = await shop.run(...line, ...flags('ground', floor, sill, 'roof, cabin, right, M6'));
    expect(again.out).toBe('content/vehicles/bus.yaml');
    expect(grounds('bus').map(([, name]) => name)).toEqual(['floor', 'sill', 'roof']);
    expect(shop.read('content/vehicles/bus.yaml')).toMatch(/roof: \{ .*right/);
  });

  test('a refused row that the next command does not mend is refused again, until an empty one leaves it out', async () => {
    const line = ['new', 'vehicle', 'truck', '--title', 'Truck'];
    await shop.run(...line, ...flags('ground', floor, wrong));
    const other = await shop.run(...line, ...flags('ground', roof));
    expect([other.status, other.out]).toEqual([2, '']);
    expect(other.told).toContain(`--ground "${wrong}"`);
    const silent = await shop.run(...line);
    expect(silent.told).toContain(`--ground "${wrong}"`);
    const without = await shop.run(...line, ...flags('ground', ''));
    expect(without.out).toBe('content/vehicles/truck.yaml');
    expect(grounds('truck').map(([, name]) => name)).toEqual(['floor', 'roof']);
  });

  test('of rows for several in one line, where only one of them is wrong', async () => {
    const line = ['new', 'vehicle', 'pair', '--title', 'Pair'];
    await shop.run(...line, ...flags('ground', 'left-stud|right-stud, cabin, left|right, M8|8'));
    const mended = await shop.run(...line, ...flags('ground', 'right-stud, cabin, right, M8'));
    expect(mended.out).toBe('content/vehicles/pair.yaml');
    expect(grounds('pair').map(([, name]) => name)).toEqual(['left-stud', 'right-stud']);
  });

  test('nothing of a line for several is left where another one stands in its place', async () => {
    const line = ['new', 'vehicle', 'twin', '--title', 'Twin'];
    await shop.run(...line, ...flags('ground', 'stud|other-stud, cabin, left|right, M8|8'));
    await shop.run(...line, ...flags('ground', 'quite-another-name|other-stud, cabin, left|right, M8'));
    expect(grounds('twin').map(([, name]) => name)).toEqual(['quite-another-name', 'other-stud']);
  });

  test('what names a refused row is told once, as following from it, and is read once that is mended', async () => {
    const line = ['new', 'vehicle', 'chain', '--title', 'Chain'];
    const lid = 'Lid, nowhere, left';
    const ways = ['lid, shelf, left, cabin 30 in', 'lid, body.floor, left, cabin 31 in'];
    const wall = 'shelf, body.floor, left, nowhere 3 in';
    const first = await shop.run(
      ...line,
      ...flags('place', lid, 'Shelf, cabin, left'),
      ...flags('way', ...ways, wall),
      ...flags('ground', floor),
    );
    const told = first.told.split('\n');
    expect(told.filter((one) => one.includes('follow from'))).toEqual([
      `new: kept until --place "${lid}" is mended, which they follow from, and read then: --way "${ways[0]}", --way "${ways[1]}"`,
    ]);
    expect(first.told).not.toContain('no place or fitted device "lid"');
    expect(first.told).toContain(`--way "${wall}": has the stretch`);
    await shop.run(
      ...line,
      ...flags('place', 'Lid, cabin, left'),
      ...flags('way', 'shelf, body.floor, left, cabin 3 in'),
    );
    const text = shop.read('content/vehicles/chain.yaml');
    for (const length of [30, 31, 3]) expect(text).toContain(`cabin ${length} in`);
  });

  test('a way goes by both of its ends', async () => {
    const line = ['new', 'vehicle', 'wide', '--title', 'Wide'];
    const place = flags('place', 'Left door|Right door, cabin, left|right, 2 in, 30 in');
    await shop.run(
      ...line,
      ...place,
      ...flags(
        'way',
        'left-door, right-door, left, cabin 30 in',
        'left-door, body.floor, left, cabin thirty',
      ),
      ...flags('ground', floor),
    );
    const mended = await shop.run(...line, ...flags('way', 'left-door, body.floor, left, cabin 31 in'));
    expect(mended.out).toBe('content/vehicles/wide.yaml');
    const text = shop.read('content/vehicles/wide.yaml');
    expect(text).toContain('cabin 30 in');
    expect(text).toContain('cabin 31 in');
  });

  test('another vehicle without a name takes nothing of one that was refused', async () => {
    await shop.run('new', 'vehicle', '--title', 'First one', ...flags('ground', floor, wrong));
    const other = await shop.run('new', 'vehicle', '--title', 'Second one', ...flags('ground', roof));
    expect(other.out).toBe('content/vehicles/second-one.yaml');
    expect(grounds('second-one').map(([, name]) => name)).toEqual(['roof']);
  });

  test('a vehicle like another keeps what was right, where it is not asked for', async () => {
    const line = ['new', 'vehicle', 'wagon-2', '--like', 'wagon'];
    const own = flags('ground', 'new-floor, cabin, left, M8');
    await shop.run(...line, '--title', 'Second wagon', ...own, ...flags('place', 'Shelf, nowhere, left'));
    const mended = await shop.run(...line, ...flags('place', 'Shelf, cabin, left'));
    expect(mended.out).toBe('content/vehicles/wagon-2.yaml');
    expect(shop.read('content/vehicles/wagon-2.yaml')).toContain('new-floor:');
  });
});

test('an answer that belongs to nothing is left out where the next command leaves it out', async () => {
  const line = ['new', 'job', 'no-board', '--title', 'No board', '--vehicle', 'wagon'];
  const first = await shop.run(...line, '--board', '1 in, 1 in, 17 in, 12 in');
  expect(first.told).toMatch(/--board .*or leave it out/);
  const second = await shop.run(...line);
  expect(second.out).toBe('content/jobs/no-board.yaml');
});

describe('the shelf', () => {
  const count = (part: string) =>
    new RegExp(`^ {2}${part}: \\{ pieces: (\\d+) \\}`, 'm').exec(shop.read('content/shop.yaml'))?.[1];

  test('is counted with the things that were right beside a refused one, each once', async () => {
    const line = ['new', 'shelf', ...flags('thing', 'rivet nut M7 x11')];
    const first = await shop.run(...line, ...flags('thing', 'wondrous thing x3'));
    expect([first.status, count('rivet-nut-m7')]).toEqual([2, undefined]);
    const second = await shop.run('new', 'shelf', ...flags('thing', ''));
    expect([second.status, count('rivet-nut-m7')]).toEqual([0, '11']);
  });

  test('is counted as its list says, where the list is mended', async () => {
    shop.write('shelf.txt', 'rivet nut M9 x11\nrivet nut M11 x5\nwondrous thing x3\n');
    const first = await shop.run('new', 'shelf', '--list', 'shelf.txt');
    expect(first.status).toBe(2);
    shop.write('shelf.txt', 'rivet nut M9 x12\n');
    const second = await shop.run('new', 'shelf', '--list', 'shelf.txt');
    expect([second.status, count('rivet-nut-m9'), count('rivet-nut-m11')]).toEqual([0, '12', undefined]);
  });
});
