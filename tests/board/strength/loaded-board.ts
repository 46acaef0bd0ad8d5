import { expect } from 'vitest';
import { evenSheet } from '../../../lib/board/strength/sheet-stiffness.ts';
import type { Build } from '../../../lib/board/strength/stiffness.ts';
import type { OutsideFinder } from '../../outside-check.ts';
import { shapeOf } from '../shapes.ts';

/** m/s2 */
export const g = 9.80665;

/** Birch plywood of 12 mm, level along its grain: moduli from memory. */
export const birch12 = {
  thicknessM: 0.012,
  modulusXPa: 10.7e9,
  modulusYPa: 6.8e9,
  shearPa: 0.62e9,
  poisson: 0.05,
  densityKgM3: 680,
};

const item = { id: 'amp', widthM: 0.3, depthM: 0.2, heightM: 0.06, massKg: 4, rooms: {}, terminals: [] };

/** Four fixings, 30 mm from the edges of a board of 800 x 400 mm. */
export const corners = [
  { xM: 0.03, yM: 0.03 },
  { xM: 0.77, yM: 0.03 },
  { xM: 0.77, yM: 0.37 },
  { xM: 0.03, yM: 0.37 },
];

/** That board with an amplifier of 4 kg in its middle. */
export const loadedBoard = {
  shape: shapeOf({ rectangle: { width: '800 mm', height: '400 mm' } }),
  items: [item],
  placements: [{ item: 'amp', xM: 0.25, yM: 0.1, turnDeg: 0 as const, heightM: 0 }],
  supports: corners,
};

/** It built of an even sheet of 8 GPa. */
export const even = (thicknessM: number, densityKgM3 = 680): Build => ({
  ...{ id: `even-${thicknessM * 1000}-${densityKgM3}`, kept: [], ribs: [], assumed: [] },
  ways: [{ grain: null, sheet: evenSheet({ thicknessM, modulusPa: 8e9, poisson: 0.3, densityKgM3 }) }],
});

/** Holds a figure against one from outside, to a share of it. */
export const nearIn =
  (check: OutsideFinder) =>
  (found: number | undefined, expected: number, share: number): void =>
    expect(Math.abs(check.differs(found ?? Number.NaN, expected) / expected - 1)).toBeLessThan(share);
