import { afterAll, expect, test } from 'vitest';
import { realEffects } from '../../../lib/commands/effects.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { ShopFolder } from '../shop-folder.ts';
import { Typed } from './typed.ts';

const shop = new ShopFolder();
afterAll(() => shop.remove());
const path = 'content/vehicles/wagon.yaml';
const vehicles = async () => readContent(await realEffects(shop.root).readContent()).vehicles;

test('a vehicle like another has its spaces, places and ways, and none of what a meter read in it', async () => {
  shop.change(path, 'id: wagon\n', 'id: wagon\ncharging-voltage: 14.1 V\nvehicle-load: 47 A\n');
  const { status, told } = await shop.run(
    'new',
    'vehicle',
    'wagon-2',
    '--like',
    'wagon',
    '--title',
    'Second wagon',
  );
  expect([status, told]).toEqual([
    0,
    expect.stringContaining('hold every measure against this vehicle with a tape'),
  ]);
  const { wagon, 'wagon-2': second } = await vehicles();
  expect(second).toMatchObject({ id: 'wagon-2', title: 'Second wagon' });
  const { id: _, title: __, 'charging-voltage': volts, 'vehicle-load': load, ...others } = wagon ?? {};
  expect([volts, load]).toEqual([14.1, 47]);
  expect(second).toMatchObject(others);
  expect(second?.['charging-voltage']).toBeUndefined();
  expect(second?.['vehicle-load']).toBeUndefined();
  expect(shop.read('content/vehicles/wagon-2.yaml')).toContain(
    '# As wagon: what stands here was measured there',
  );
});

test('what is told anew stands in the place of its namesake, and beside the rest', async () => {
  const told = [
    '--reading',
    '13.9 V, 31 A',
    '--place',
    'Bay, cargo, right',
    '--place',
    'Left shelf, cargo, left',
  ];
  const { status } = await shop.run(
    'new',
    'vehicle',
    'wagon-3',
    '--like',
    'wagon',
    '--title',
    'Third',
    ...told,
  );
  expect(status).toBe(0);
  const { wagon, 'wagon-3': third } = await vehicles();
  expect(third).toMatchObject({ 'charging-voltage': 13.9, 'vehicle-load': 31 });
  expect(third?.places.bay).toMatchObject({ zone: 'cargo', side: 'right' });
  expect(Object.keys(third?.places ?? {})).toEqual([...Object.keys(wagon?.places ?? {}), 'left-shelf']);
});

test('somebody who sits there is asked for its title and its readings alone', async () => {
  const person = new Typed('Fourth wagon', '14.2 V, 38 A');
  const { status } = await shop.answered(person, 'new', 'vehicle', 'wagon-4', '--like', 'wagon');
  expect([status, person.refused, person.count]).toEqual([0, [], 2]);
});

test('a vehicle that is not there is told with the one that may be meant', async () => {
  const { status, told } = await shop.run('new', 'vehicle', 'x', '--like', 'wagn', '--title', 'X');
  expect([status, told]).toEqual([
    2,
    expect.stringContaining('there is no vehicle "wagn"; did you mean "wagon"?'),
  ]);
});
