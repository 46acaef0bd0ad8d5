import { checkPlacements, type LayoutBoard } from '../../../lib/board/layout/check-placements.ts';
import { tooFull } from '../../../lib/board/layout/fullness.ts';
import type { Item, Placement } from '../../../lib/board/layout/item.ts';
import type { RouteWire } from '../../../lib/board/route/route.ts';
import { regionOf } from '../../../lib/board/shape/region.ts';
import {
  roomyAmp as amp,
  smallBlock as block,
  gapRules as rules,
  plainShape as shape,
} from '../../board/layout/two-items.ts';
import { shapeOf } from '../../board/shapes.ts';
import { routeWires } from '../../board/usual-board.ts';
import { crowded } from '../../plan/board/crowded-board.ts';
import { inParts, inShop } from '../../plan/shop-changes.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import { fires, inSmallShop, quiet, type RemarkCases } from '../remark-case.ts';

const holed: Item = {
  ...block,
  mountingHoles: [{ id: 'block.hole-1', xM: 0.005, yM: 0.05, diameterM: 0.005 }],
};

type Spot = Partial<Placement> & Pick<Placement, 'xM' | 'yM'>;
const put = (item: string, spot: Spot): Placement => ({ item, turnDeg: 0, heightM: 0, ...spot });

/** The block somewhere on a board where the amplifier stands 200 mm from the left, 100 mm from below. */
const beside =
  (spot: Spot, one: Item = amp) =>
  () =>
    checkPlacements({ shape }, [one, block], [put('amp', { xM: 0.2, yM: 0.1 }), put('block', spot)], rules);
/** The block alone, 100 mm from the left and below unless told, on a board of a kind. */
const alone =
  (board: LayoutBoard, spot: Spot = { xM: 0.1, yM: 0.1 }, item: Item = block) =>
  () =>
    checkPlacements(board, [item], [put(item.id, spot)], rules);
const clear = quiet('400 mm from it', beside({ xM: 0.6, yM: 0.1 }));

const cutOut = shapeOf({
  rectangle: { width: '800 mm', height: '500 mm' },
  cuts: [{ cut: 'window', x: '150 mm', y: '150 mm', width: '100 mm', height: '100 mm' }],
});
const bored = shapeOf({
  rectangle: { width: '800 mm', height: '500 mm' },
  cuts: [{ cut: 'hole', id: 'loom', x: '150 mm', y: '150 mm', diameter: '30 mm', purpose: 'wire' }],
});
const headed: LayoutBoard = { shape, heads: [{ id: 'f1', xM: 0.15, yM: 0.15, radiusM: 0.006 }] };
const raised = quiet(
  'the same raised by 20 mm',
  alone({ shape: cutOut }, { xM: 0.1, yM: 0.1, heightM: 0.02 }),
);
const sides = { shape, signalSide: 'left', powerSide: 'right' } as const;
const turned = (turnDeg: Placement['turnDeg']) => alone(sides, { xM: 0.2, yM: 0.1, turnDeg }, amp);

const wire: RouteWire = {
  id: 'p',
  from: { xM: 0.1, yM: 0.1, faces: 'right' },
  to: { xM: 0.16, yM: 0.2, faces: 'bottom' },
  layer: 'power',
  diameterM: 0.009,
};
const bent =
  (bendRadiusM: number, kinkRadiusM = 0) =>
  () =>
    routeWires({ shape, barriers: [], wires: [{ ...wire, bendRadiusM, kinkRadiusM }] }).faults;
/** A wall over the whole board, or with a gate of 60 mm. */
const walled = (gateM: number) => () =>
  routeWires({
    shape,
    barriers: [{ id: 'wall', box: { minX: 0.39, maxX: 0.41, minY: 0, maxY: 0.5 - gateM } }],
    wires: [{ ...wire, to: { xM: 0.7, yM: 0.2, faces: 'left' } }],
  }).faults;

const onMain = inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main');
const ampOf = (width: number) =>
  inParts(
    'title: Amplifier\n    size: { width: 100 mm, depth: 80 mm, height: 40 mm }',
    `title: Amplifier\n    size: { width: ${width} mm, depth: 80 mm, height: 40 mm }`,
  );
const onBoard = (width: number) => inSmallShop(withBoard(), onMain, ampOf(width));
/** The ground of an amplifier on its board, the body at the far end of it, as long as it is written. */
const groundOf = (length: string) =>
  inSmallShop(
    withBoard(),
    inJob(
      'title: Bass amplifier\n    in: boot',
      'title: Bass amplifier\n    on: main\n    at: { x: 200 mm, y: 110 mm }',
    ),
    inJob('from: amp.GND, to: body.cargo, length: 12 in', `from: amp.GND, to: body.cargo, length: ${length}`),
  );

/** A sheet of which a board of 500 x 300 mm leaves too little for rails, the amplifier over a bar on that board. */
const railed = (shelf: string) => () =>
  crowded(
    inParts('width: 1500 mm\n    height: 1500 mm', 'width: 525 mm\n    height: 325 mm'),
    inShop('  large-60: { pieces: 2 }\n', `  large-60: { pieces: 2 }\n  ply-a: ${shelf}\n`),
  ).remarks;

/** Where parts stand: plane geometry, and the room that the house asks for. Amounts in metres. */
const placementCases = {
  'placement-of-nothing': {
    fires: [
      fires('a relay that is no item', 'stop', 'relay', () =>
        checkPlacements({ shape }, [amp], [put('relay', { xM: 0, yM: 0 })], rules),
      ),
    ],
    quiet: [clear],
  },
  'item-outside-board': {
    fires: [fires('30 mm past the right edge', 'stop', 'block', alone({ shape }, { xM: 0.73, yM: 0.1 }))],
    quiet: [quiet('up to the edge', alone({ shape }, { xM: 0.7, yM: 0.1 }))],
  },
  'item-over-opening': {
    fires: [fires('over a window', 'caution', 'block', alone({ shape: cutOut }))],
    quiet: [raised, quiet('beside it', alone({ shape: cutOut }, { xM: 0.3, yM: 0.1 }))],
  },
  'item-over-hole': {
    fires: [fires('over a hole', 'caution', 'block', alone({ shape: bored }))],
    quiet: [quiet('beside it', alone({ shape: bored }, { xM: 0.17, yM: 0.1 }))],
  },
  'item-over-fixing': {
    fires: [fires('over the head of a bolt', 'caution', 'block', alone(headed))],
    quiet: [quiet('beside it', alone(headed, { xM: 0.157, yM: 0.1 }))],
  },
  'mounting-hole-off-board': {
    fires: [fires('over the edge', 'stop', 'block', alone({ shape }, { xM: -0.01, yM: 0.1 }, holed))],
    quiet: [quiet('on the board', alone({ shape }, { xM: 0.1, yM: 0.1 }, holed))],
  },
  'items-overlap': {
    fires: [fires('20 mm in the amplifier', 'stop', 'amp', beside({ xM: 0.48, yM: 0.1 }))],
    quiet: [clear],
  },
  'part-gap-short': {
    fires: [
      fires('10 mm below it, where 12.7 mm are asked for', 'caution', 'amp', beside({ xM: 0.3, yM: -0.01 })),
    ],
    quiet: [quiet('13 mm below it', beside({ xM: 0.3, yM: -0.013 }))],
  },
  'air-gap-short': {
    fires: [
      fires('20 mm before its air, where it wants 25 mm', 'caution', 'amp', beside({ xM: 0.3, yM: 0.32 })),
      fires('24 mm over it', 'caution', 'amp', beside({ xM: 0.3, yM: 0.15, heightM: 0.084 })),
    ],
    quiet: [clear, quiet('25 mm over it', beside({ xM: 0.3, yM: 0.15, heightM: 0.085 }))],
  },
  'control-covered': {
    fires: [
      fires('30 mm from its knobs, where a hand wants 80 mm', 'stop', 'amp', beside({ xM: 0.07, yM: 0.1 })),
    ],
    quiet: [quiet('100 mm from them', beside({ xM: 0, yM: 0.1 }))],
  },
  'control-under-part': {
    fires: [
      fires(
        'over 50 mm of the room for a hand',
        'caution',
        'amp',
        beside({ xM: 0.15, yM: 0.15, heightM: 0.1 }),
      ),
    ],
    quiet: [quiet('over the amplifier alone', beside({ xM: 0.3, yM: 0.15, heightM: 0.1 }))],
  },
  'face-covered': {
    fires: [
      fires(
        'over a face to reach',
        'stop',
        'amp',
        beside({ xM: 0.3, yM: 0.15, heightM: 0.09 }, { ...amp, faceAccess: true }),
      ),
    ],
    quiet: [quiet('over one that is not', beside({ xM: 0.3, yM: 0.15, heightM: 0.09 }))],
  },
  'bend-room-short': {
    fires: [
      fires('50 mm before its plugs, where they want 70 mm', 'caution', 'amp', beside({ xM: 0.55, yM: 0.1 })),
    ],
    quiet: [clear],
  },
  'signal-end-faces-wrong-side': {
    fires: [fires('half a turn', 'caution', 'amp', turned(180))],
    quiet: [quiet('as it comes', turned(0)), quiet('a quarter turn', turned(90))],
  },
  'power-end-faces-wrong-side': {
    fires: [fires('half a turn', 'caution', 'amp', turned(180))],
    quiet: [quiet('as it comes', turned(0)), quiet('a quarter turn', turned(270))],
  },
} satisfies RemarkCases;

/** A square board of a tenth of a metre with parts of so many millimetres by as many. */
const covered =
  (...sidesMm: readonly number[]) =>
  () => {
    const square = [
      { xM: 0, yM: 0 },
      { xM: 0.1, yM: 0 },
      { xM: 0.1, yM: 0.1 },
      { xM: 0, yM: 0.1 },
    ];
    const items = sidesMm.map(
      (mm, at): Item => ({ ...block, id: `p${at}`, widthM: mm / 1000, depthM: mm / 1000 }),
    );
    return [tooFull('board', { region: regionOf(square) }, items) ?? []].flat();
  };

export const layoutRemarks = {
  'board-too-small-for-parts': {
    fires: [fires('71 mm and 71 mm on 100 mm: 100.8 cm2 of 100', 'stop', 'board', covered(71, 71))],
    quiet: [quiet('70 mm and 71 mm: 99.4 cm2', covered(70, 71))],
  },
  ...placementCases,
  'item-does-not-fit': {
    fires: [fires('510 mm on a board of 500 mm', 'stop', 'amp', onBoard(510))],
    quiet: [quiet('300 mm on it', onBoard(300))],
  },
  'no-sheet-for-rails': {
    fires: [fires('one sheet, all but a rim of it the board', 'stop', 'amp', railed('{ pieces: 1 }'))],
    quiet: [
      quiet(
        'an off-cut beside it',
        railed('{ pieces: 1, off-cuts: { a: { width: 300 mm, height: 240 mm } } }'),
      ),
    ],
  },
  'wire-without-way': {
    fires: [fires('a wall from edge to edge', 'stop', 'p', walled(0), /in the way: wall/)],
    quiet: [quiet('a wall with a gate of 60 mm', walled(0.06))],
  },
  'bend-too-tight': {
    fires: [
      fires('a radius of 200 mm within 60 mm', 'caution', 'p', bent(0.2)),
      fires('the same of a wire that kinks below 100 mm', 'stop', 'p', bent(0.2, 0.1), /it kinks below/),
    ],
    quiet: [quiet('one of 20 mm', bent(0.02, 0.01))],
  },
  'length-short-of-way': {
    fires: [fires('50 mm to an edge that is 110 mm away', 'stop', 'ground', groundOf('50 mm'))],
    quiet: [quiet('1 m to it', groundOf('1 m'))],
  },
} satisfies RemarkCases;
