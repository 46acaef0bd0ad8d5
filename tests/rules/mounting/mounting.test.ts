import { expect, test } from 'vitest';
import { judge } from '../../../lib/rules/index.ts';
import { lowestModeHz } from '../../../lib/rules/mounting/board-strength.ts';
import { board, hole } from '../changes.ts';

// One mass on a spring sags m g / k and swings at sqrt(k / m) / (2 pi) (any textbook of vibrations), so that
// f = sqrt(g / sag) / (2 pi), with standard gravity 9.80665 m/s2.
const springHz = (sagM: number): number => Math.sqrt(9.80665 / sagM) / (2 * Math.PI);

test('a sag tells the frequency of one mass on a spring, within the rounding of 15.8', () => {
  for (const sagM of [0.00001, 0.00028, 0.001, 0.01]) {
    const found = lowestModeHz({ firstModeHz: null, sagM }) ?? 0;
    expect(found / springHz(sagM)).toBeCloseTo(1, 2);
  }
});

test('the lower of both counts, and nothing known stays nothing', () => {
  expect(lowestModeHz({ firstModeHz: 90, sagM: 0.001 })).toBeLessThan(20);
  expect(lowestModeHz({ firstModeHz: 12, sagM: 0.0001 })).toBe(12);
  expect(lowestModeHz({ firstModeHz: 12, sagM: null })).toBe(12);
  expect(lowestModeHz({ firstModeHz: null, sagM: null })).toBeNull();
  expect(lowestModeHz({ firstModeHz: 40, sagM: 0 })).toBe(40);
});

test('a hole past the edge leaves no web, and is told once for both', () => {
  const { job, plan } = hole(-0.007, 0.15);
  board(plan).narrowestWebM = -0.01;
  const told = judge(job, plan, []);
  const off = told.find(({ rule }) => rule === 'hole-off-board');
  expect(told.map(({ rule }) => rule)).not.toContain('narrow-web');
  expect(off?.follows?.map(({ rule }) => rule)).toEqual(['narrow-web']);
});
