import { describe, expect, test } from 'vitest';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import { ferruleFor, ferrules } from '../../../lib/model/tables/ferrules.ts';
import { lugHoleM } from '../../../lib/model/tables/lugs.ts';
import { publishedRows } from './published.ts';

describe('ferrules', () => {
  // DIN 46228-4: cross-sections and collar colours.
  test.each(publishedRows('ferrule-colours-din46228-4.csv'))('%s mm2 has a %s collar', (area, colour) => {
    expect(ferrules.find(({ areaMm2 }) => areaMm2 === Number(area))?.colour).toBe(colour);
  });

  // The trade's list of the next size up.
  test.each([
    ['18', 1],
    ['16', 1.5],
    ['14', 2.5],
    ['12', 4],
    ['10', 6],
    ['8', 10],
    ['6', 16],
    ['4', 25],
    ['2', 35],
  ])('%s AWG takes a ferrule of %s mm2', (awg, areaMm2) => {
    expect(ferruleFor(awgAreaMm2(awg))?.areaMm2).toBe(areaMm2);
  });

  test('end at 35 mm2', () => {
    expect(ferruleFor(35)?.areaMm2).toBe(35);
    expect(ferruleFor(awgAreaMm2('1'))).toBeNull();
  });
});

test('lug holes follow the stud', () => {
  expect([lugHoleM(0.006), lugHoleM(0.008), lugHoleM(0.01), lugHoleM(0.007)]).toEqual([
    0.0064,
    0.0084,
    0.0105,
    null,
  ]);
});
