import clipping from 'polygon-clipping';
import { vi } from 'vitest';
import { drillFaults, type HoleToDrill } from '../../../lib/board/cut/drill.ts';
import { drawOutline } from '../../../lib/board/shape/outline.ts';
import { outlineFaults } from '../../../lib/board/shape/outline-faults.ts';
import { mm, shapeOf, written } from '../../board/shapes.ts';
import { withBoard } from '../../read/problem-case.ts';
import { fires, inSmallShop, quiet, type RemarkCases } from '../remark-case.ts';

const rectangle = { width: '36 in', height: '18 in' };
const cut =
  (...cuts: readonly object[]) =>
  () =>
    drawOutline(written({ rectangle, cuts })).faults;
const notch = (offset: string, width: string, depth: string) => {
  return { cut: 'notch', edge: 'top', offset, width, depth };
};
const slot = (length: string, width: string) => {
  return { cut: 'slot', x: '15 in', y: '9 in', length, width };
};
const window = { cut: 'window', x: '5 in', y: '5 in', width: '4 in', height: '4 in' };
const corner = (size: object) => ({ cut: 'corner', corner: 'upper-left', ...size });

const polygon = (...points: readonly (readonly [number, number])[]) =>
  inSmallShop(
    withBoard(
      'rectangle: { width: 500 mm, height: 300 mm }',
      `polygon: [${points.map(([x, y]) => `[${x} mm, ${y} mm]`).join(', ')}]`,
    ),
  );
const fiveHundred = quiet('a polygon of four corners', polygon([0, 0], [500, 0], [500, 300], [0, 300]));

const goodNotch = quiet('a notch of 8 by 2 in', cut(notch('3 in', '8 in', '2 in')));
const goodSlot = quiet('a slot of 4 by 1 in', cut(slot('4 in', '1 in')));

const hole = (id: string, xM: number): HoleToDrill => ({
  ...{ id, xM, yM: 0.1, diameterM: 0.004, depthM: null, pilotFor: null },
  ...{ purpose: 'mounting', of: id, behind: null },
});
const drilled =
  (...xs: readonly number[]) =>
  () =>
    drillFaults(xs.map((xM, at) => hole(`h${at + 1}`, xM)));

/** A board of 600 by 400 mm with a hole of 10 mm; a web of 25 mm is good, 12 mm is the least. */
const holeAt = (x: number, y: number) => () =>
  outlineFaults(
    shapeOf({
      rectangle: { width: '600 mm', height: '400 mm' },
      cuts: [{ cut: 'hole', x: mm(x), y: mm(y), diameter: '10 mm', purpose: 'wire' }],
    }),
    { webGoodM: 0.025, webStopM: 0.012, holeToEdgeM: 0.012, holeToCornerM: 0.025 },
    null,
  );

/** The geometry library gives up, as it may where lines nearly fall together. */
function unresolved() {
  const giveUp = vi.spyOn(clipping, 'difference').mockImplementation(() => {
    throw new Error('Unable to find segment in sweep line tree.');
  });
  try {
    return cut(window)();
  } finally {
    giveUp.mockRestore();
  }
}

/** The outline as written: lengths and lines against each other, by plane geometry. */
export const outlineRemarks = {
  'outline-edge-without-length': {
    fires: [
      fires('a corner twice', 'stop', 'main', polygon([0, 0], [100, 0], [100, 0], [0, 100]), /edge 2 /),
    ],
    quiet: [fiveHundred],
  },
  'outline-crosses-itself': {
    fires: [fires('a bow', 'stop', 'main', polygon([0, 0], [500, 300], [500, 0], [0, 300]), /edges 1 and 3/)],
    quiet: [fiveHundred],
  },
  'outline-without-area': {
    fires: [fires('half a millimetre by one', 'stop', 'main', polygon([0, 0], [1, 0], [1, 0.5]))],
    quiet: [fiveHundred],
  },
  'cut-without-size': {
    fires: [
      fires('a step of 0 in', 'stop', 'step-1', cut({ ...corner({ dx: '0 in', dy: '1 in' }), cut: 'step' })),
    ],
    quiet: [quiet('one of an inch', cut({ ...corner({ dx: '1 in', dy: '1 in' }), cut: 'step' }))],
  },
  'cut-without-place': {
    fires: [
      fires(
        'the seventh edge of four',
        'stop',
        'notch-1',
        cut({ ...notch('3 in', '8 in', '2 in'), edge: 7 }),
      ),
    ],
    quiet: [goodNotch],
  },
  'cut-outside-board': {
    fires: [fires('a notch deeper than the board', 'stop', 'notch-1', cut(notch('3 in', '8 in', '19 in')))],
    quiet: [goodNotch],
  },
  'corner-cut-longer-than-edge': {
    fires: [fires('37 in of an edge of 36 in', 'stop', 'corner-1', cut(corner({ dx: '37 in', dy: '1 in' })))],
    quiet: [quiet('35 in of it', cut(corner({ dx: '35 in', dy: '1 in' })))],
  },
  'corner-radius-too-large': {
    fires: [fires('19 in on an edge of 18 in', 'stop', 'corner-1', cut(corner({ radius: '19 in' })))],
    quiet: [quiet('17 in on it', cut(corner({ radius: '17 in' })))],
  },
  'notch-wider-than-edge': {
    fires: [fires('37 in in an edge of 36 in', 'stop', 'notch-1', cut(notch('0 in', '37 in', '2 in')))],
    quiet: [goodNotch],
  },
  'notch-past-end-of-edge': {
    fires: [
      fires('8 in that begin at 30 in of 36 in', 'stop', 'notch-1', cut(notch('30 in', '8 in', '2 in'))),
    ],
    quiet: [quiet('that begin at 27 in', cut(notch('27 in', '8 in', '2 in')))],
  },
  'slot-wider-than-long': {
    fires: [fires('1 in long, 4 in wide', 'stop', 'slot-1', cut(slot('1 in', '4 in')))],
    quiet: [goodSlot],
  },
  'board-in-pieces': {
    fires: [fires('a notch right through', 'stop', 'notch-1', cut(notch('3 in', '8 in', '18 in')))],
    quiet: [quiet('a notch that leaves an inch', cut(notch('3 in', '8 in', '17 in')))],
  },
  'cuts-overlap': {
    fires: [fires('a window over another', 'caution', 'window-2', cut(window, { ...window, x: '8 in' }))],
    quiet: [quiet('beside it', cut(window, { ...window, x: '10 in' }))],
  },
  'cut-not-resolved': {
    fires: [fires('a cut that the geometry gives up on', 'stop', 'window-1', unresolved)],
    quiet: [quiet('the same where it does not', cut(window))],
  },
  'holes-run-together': {
    fires: [fires('3.9 mm apart, 4 mm wide', 'stop', 'h1', drilled(0.1, 0.1039))],
    quiet: [quiet('4.1 mm apart', drilled(0.1, 0.1041))],
  },
  'narrow-web': {
    fires: [
      fires('11.9 mm to the edge', 'stop', 'hole-1', holeAt(16.9, 200)),
      fires('24.9 mm to it', 'caution', 'hole-1', holeAt(29.9, 200)),
    ],
    quiet: [quiet('25.1 mm', holeAt(30.1, 200))],
  },
  'hole-near-edge': {
    fires: [fires('11.9 mm from its rim', 'caution', 'hole-1', holeAt(16.9, 200))],
    quiet: [quiet('12.1 mm', holeAt(17.1, 200))],
  },
  'hole-near-corner': {
    fires: [fires('20 mm from either edge: 28.3 mm less 5 mm', 'caution', 'hole-1', holeAt(20, 20))],
    quiet: [quiet('22 mm from either: 31.1 mm less 5 mm', holeAt(22, 22))],
  },
} satisfies RemarkCases;
