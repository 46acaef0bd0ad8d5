import { expect, test } from 'vitest';
import type { Remark } from '../../../lib/model/remark.ts';
import { judge } from '../../../lib/rules/index.ts';
import { lowestModeHz } from '../../../lib/rules/mounting/board-strength.ts';
import { about } from '../case.ts';
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

test('a board without fixings is told once, with why each sound point was not taken', () => {
  // The hole of an M6 bolt 50 mm from both edges is far enough in; 12 mm to an edge and 25 mm to a corner are asked for
  // (common practice, no source).
  const unfixed = about({
    content: ({ vehicle, job }) => {
      Object.assign(vehicle.spaces.well?.['sound-points'] ?? {}, {
        p1: { x: '50 mm', y: '50 mm', stud: 'M6', what: 'rivet nut', behind: 'wiring' },
        p2: { x: '600 mm', y: '50 mm', stud: 'M6', what: 'rivet nut', behind: 'nothing' },
        p3: { x: '250 mm', y: '8 mm', stud: 'M6', what: 'rivet nut', behind: 'nothing' },
        p4: { x: '450 mm', y: '50 mm', stud: 'M6', what: 'rivet nut', behind: 'nothing' },
      });
      Object.assign(job.boards?.main ?? {}, { at: { x: '0 mm', y: '0 mm' } });
    },
    plan: (plan) => {
      board(plan).fixings = [];
    },
  });
  const tips: Remark = {
    rule: 'board-not-held',
    level: 'stop',
    of: ['main'],
    message: 'main: its fixings leave it free to tip',
    remedy: 'add fixings on sound points',
  };
  const told = judge(unfixed.job, unfixed.plan, [{ remark: tips, path: '/boards/main' }]).filter(
    ({ related }) => related.includes('main'),
  );
  const [first] = told.filter(({ rule }) => rule === 'held-by-trim' || rule === 'board-not-held');
  expect(told.map(({ rule }) => rule)).not.toContain('board-not-held');
  expect(first?.message).toMatch(
    /; no fixing is proposed at p1, wiring behind it; p2, not under main; p3, less than 12 mm .* from an edge of main$/,
  );
  expect(first?.follows?.map(({ rule }) => rule)).toEqual(['board-not-held']);
});
