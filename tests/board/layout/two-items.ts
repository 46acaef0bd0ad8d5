import type { Item } from '../../../lib/board/layout/item.ts';
import { shapeOf } from '../shapes.ts';

/** A board of 800 by 500 mm, and what is asked between the parts on it. */
export const plainShape = shapeOf({ rectangle: { width: '800 mm', height: '500 mm' } });
export const gapRules = { partGapM: 0.0127, powerToSignalM: 0.15 };

/** 80 mm for a hand on its left, 70 mm for bends on its right, 25 mm of air at its top and over it. */
export const roomyAmp: Item = {
  id: 'amp',
  widthM: 0.3,
  depthM: 0.2,
  heightM: 0.06,
  massKg: 4,
  rooms: { left: { accessM: 0.08 }, right: { bendM: 0.07 }, top: { airM: 0.025 } },
  terminals: [
    { id: 'IN', side: 'left', alongM: 0.1, layer: 'signal' },
    { id: 'B+', side: 'right', alongM: 0.1, layer: 'power' },
  ],
};

export const smallBlock: Item = {
  id: 'block',
  widthM: 0.1,
  depthM: 0.1,
  heightM: 0.04,
  massKg: 0.5,
  rooms: {},
  terminals: [],
};
