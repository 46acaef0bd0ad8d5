import { describe, expect, test } from 'vitest';
import { turnedAbout } from '../../../lib/rules/supply/turned-about.ts';
import { about } from '../case.ts';
import { board, wire } from '../changes.ts';
import { found } from '../found.ts';

/** A device of 400 mm by 170 mm at 100 mm and 100 mm of a board 600 mm wide, whose lead goes over its right edge. */
function led(terminalXM: number, lengthM: number, onBoardM: number, leaves = true) {
  return about({
    plan: (made) => {
      const own = wire(made, 'board-ground');
      own.lengthM = lengthM;
      const main = board(made);
      const item = own.from.split('.')[0] ?? '';
      const size = { widthM: 0.4, depthM: 0.17, heightM: 0.05, raisedM: 0 };
      main.placements = [
        { item, xM: 0.1, yM: 0.1, turnDeg: 270, ...size, keepClear: [], chosen: 'computed' },
      ];
      const points = [
        { xM: terminalXM, yM: 0.1 },
        { xM: 0.6, yM: 0.05 },
      ];
      const width = { diameterM: null, bendRadiusM: null };
      main.routes = [
        { wire: own.id, along: [own.id], points, lengthM: onBoardM, layer: 'ground', bends: 1, ...width },
      ];
      main.exits = leaves ? [{ wire: own.id, edge: 'right', xM: 0.6, yM: 0.05 }] : [];
    },
  });
}

const turned = (...given: Parameters<typeof led>) => {
  const { plan } = led(...given);
  return turnedAbout(plan, wire(plan, 'board-ground'));
};

describe('a lead whose device is turned about', () => {
  // By hand: a terminal 30 mm from the left end lies 30 mm from the right one, at 470 mm, 130 mm from the edge.
  test('is as long as from there straight to the edge, with all that is not on the board', () => {
    const own = turned(0.13, 0.9, 0.5);
    expect(own?.turnDeg).toBe(90);
    expect(own?.lengthM).toBeCloseTo(0.9 - 0.5 + 0.13, 9);
  });

  test('is none that would be longer, and none that stays on the board', () => {
    expect(turned(0.499, 0.9, 0.101)).toBeNull();
    expect(turned(0.13, 0.9, 0.5, false)).toBeNull();
  });

  test('is told with the finding where that would do, and there alone', () => {
    // 18 in are 457 mm: 430 mm does, 530 mm does not.
    const remedy = (lengthM: number) => found('ground-lead-long', led(0.13, lengthM, 0.5))[0]?.remedy;
    expect(remedy(0.8)).toMatch(/^write turn: 90 at .*comes to about/);
    expect(remedy(0.9)).toMatch(/^choose a ground point/);
  });
});
