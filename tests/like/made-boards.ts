import type { PastBoard, PastItem } from '../../lib/like/past-board.ts';
import type { LikeRules, Wish, WishedPart, WishedSpace } from '../../lib/like/wish.ts';

/** Minutes of work, written out so that sums are worked out by hand. */
const minutes: LikeRules['minutes'] = {
  ...{ 'check-in': 20, 'battery-off': 15, 'cut-board': 40, 'drill-hole': 2, 'fix-rib': 12, 'mount-item': 10 },
  ...{ 'set-control': 1, 'lay-wire': 8, 'dress-board': 15, 'bench-test': 30, 'open-run': 25, 'pull-wire': 6 },
  ...{ 'board-in': 20, 'connect-wire': 4, 'test-wire': 1, 'fit-fuse': 3, 'set-gain': 5, 'take-reading': 2 },
};

export const madeRules: LikeRules = {
  clearanceM: 0.005,
  partGapM: 0.013,
  holeEdgeM: 0.012,
  fuseMargin: 1.25,
  minutes,
  bearsC: {},
};

/** A rectangle as an outline, its datum at the lower left corner; metres. */
export function rectangle(width: number, height: number) {
  return [
    { xM: 0, yM: 0, bulge: 0 },
    { xM: width, yM: 0, bulge: 0 },
    { xM: width, yM: height, bulge: 0 },
    { xM: 0, yM: height, bulge: 0 },
  ];
}

/** A board of 400 mm by 300 mm and 12 mm on spacers of 12 mm, with nothing on it. */
export function madeBoard(change: Partial<PastBoard> = {}): PastBoard {
  return {
    ...{ job: 'past', title: 'Past board', revision: 'A', status: 'released', issuedOn: '2026-01-01' },
    ...{ vehicle: 'other', space: 'well', board: 'board' },
    outline: rectangle(0.4, 0.3),
    cutouts: [],
    ...{ thicknessM: 0.012, standoffM: 0.012, datum: { xM: 0.02, yM: 0.02 } },
    ...{ fixings: [], items: [], feeds: [], exits: {}, stops: 0, cautions: 0 },
    ...change,
  };
}

/** An amplifier of 200 mm by 100 mm by 50 mm with its lower left corner at 50 mm and 50 mm, screwed down by four holes. */
export function madeItem(change: Partial<PastItem> = {}): PastItem {
  return {
    ...{ id: 'amp', part: 'amp-a', kind: 'amplifier', sort: 'amplifier' },
    at: { minX: 0.05, minY: 0.05, maxX: 0.25, maxY: 0.15 },
    ...{ turnDeg: 0, heightM: 0.05, raisedM: 0, keepClear: [] },
    holes: [
      { xM: 0.06, yM: 0.06 },
      { xM: 0.24, yM: 0.06 },
      { xM: 0.06, yM: 0.14 },
      { xM: 0.24, yM: 0.14 },
    ],
    ...{ drawA: 20, lossW: 0 },
    ...change,
  };
}

/** The same amplifier as it is wanted. */
export function madePart(change: Partial<WishedPart> = {}): WishedPart {
  return {
    ...{ part: 'amp-a', kind: 'amplifier', sort: 'amplifier', widthM: 0.2, depthM: 0.1, heightM: 0.05 },
    holes: [
      { xM: 0.01, yM: 0.01 },
      { xM: 0.19, yM: 0.01 },
      { xM: 0.01, yM: 0.09 },
      { xM: 0.19, yM: 0.09 },
    ],
    ...{ wires: 5, plannedA: null, mostA: 30 },
    ...change,
  };
}

/** A space of some width and height, 100 mm deep, with nothing in it. */
export function madeSpace(width: number, height: number, change: Partial<WishedSpace> = {}): WishedSpace {
  return {
    ...{ vehicle: 'car', id: 'well', title: 'Well', depthM: 0.1 },
    outline: rectangle(width, height).map(({ xM, yM }) => ({ xM, yM })),
    ...{ inTheWay: [], soundPoints: [], open: [], reached: [] },
    cavity: { outsideC: 50, surfaceM2: 1, passesWM2K: 3.5, fanM3S: 0, openings: [] },
    ...change,
  };
}

export function madeWish(
  space: WishedSpace,
  parts: Wish['parts'] = null,
  rules: LikeRules = madeRules,
): Wish {
  return { space, parts, rules };
}
