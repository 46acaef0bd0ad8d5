import { describe, expect, test } from 'vitest';
import { placeText } from '../../../lib/model/place.ts';
import { readContent } from '../../../lib/read/read-content.ts';
import { inJob, vehicleFile } from '../problem-case.ts';
import { type Change, smallShop } from '../small-shop.ts';

const told = (change: Change): readonly string[] =>
  readContent(smallShop(change)).problems.map(({ where, message }) => `${placeText(where)} ${message}`);

/** A feed of two devices that shares its first stretch with another, which is the shortest way to write a branch. */
const branch = (after: string, leg: string) =>
  inJob(
    'to: body.cargo, length: 12 in }',
    `to: body.cargo, length: 12 in, branch: { from: feed, after: ${after}, leg: ${leg} } }`,
  );

describe('a conductor or a stretch of its way is longer than nothing', () => {
  test.each<readonly [string, Change]>([
    ['a link of the job', inJob('length: 6 in', 'length: 0 in')],
    ['a pair', inJob('length: 3 ft', 'length: 0 ft')],
    ['one below zero', inJob('length: 6 in', 'length: -6 in')],
    ['the leg of a branch', branch('6 in', '0 mm')],
    ['where a branch parts', branch('0 mm', '6 in')],
    ['a link of the vehicle', [vehicleFile, 'size: 4 AWG, length: 1 m }', 'size: 4 AWG, length: 0 m }']],
    [
      'a stretch of a route',
      [vehicleFile, 'zone: engine-bay, length: 500 mm', 'zone: engine-bay, length: 0 mm'],
    ],
  ])('%s of no length is refused at its place', (_, change) => {
    const [file] = change;
    const problems = told(change);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(
      /(length|leg|after) (is not above zero; write a length such as|.*negative|.*below zero)/,
    );
    expect(problems[0]).toContain(file);
  });

  test.each<readonly [string, Change]>([
    ['a link of the job', inJob('length: 6 in', 'length: 1/8 in')],
    [
      'a stretch of a route',
      [vehicleFile, 'zone: engine-bay, length: 500 mm', 'zone: engine-bay, length: 1 mm'],
    ],
  ])('%s of little length can be read', (_, change) => {
    expect(told(change)).toEqual([]);
  });

  test('a length beyond any vehicle is refused', () => {
    expect(told(inJob('length: 6 in', 'length: 6 km'))[0]).toMatch(
      /unit of length|beyond anything in a vehicle/,
    );
    expect(told(inJob('length: 6 in', 'length: 6000 m'))[0]).toMatch(/beyond anything in a vehicle/);
  });
});
