import { fitBoard, type MountingSpace } from '../../../lib/board/layout/fit-in-space.ts';
import type { Ring } from '../../../lib/board/shape/point.ts';
import { retention, retentionFaults } from '../../../lib/board/strength/retention.ts';
import type { LaidRib } from '../../../lib/board/strength/rib.ts';
import { ribFaults } from '../../../lib/board/strength/rib-check.ts';
import type { RibLimits } from '../../../lib/board/strength/rib-limits.ts';
import { evenSheet } from '../../../lib/board/strength/sheet-stiffness.ts';
import { type Build, boardStiffness, stiffnessFaults } from '../../../lib/board/strength/stiffness.ts';
import { shapeOf } from '../../board/shapes.ts';
import { onFourPoints, stocked } from '../../plan/power/four-points.ts';
import { inParts, inShop, inVehicle } from '../../plan/shop-changes.ts';
import { inJob, withBoard } from '../../read/problem-case.ts';
import { fires, inSmallShop, quiet, type RemarkCases } from '../remark-case.ts';

const box = (x: number, y: number, w: number, h: number): Ring =>
  [
    [x, y],
    [x + w, y],
    [x + w, y + h],
    [x, y + h],
  ].map(([xM = 0, yM = 0]) => ({ xM, yM }));
const shape = shapeOf({ rectangle: { width: '800 mm', height: '400 mm' } });
const amp = { id: 'amp', widthM: 0.3, depthM: 0.2, heightM: 0.06, massKg: 4, rooms: {}, terminals: [] };
const board = {
  shape,
  thicknessM: 0.018,
  items: [amp],
  placements: [{ item: 'amp', xM: 0.4, yM: 0.1, turnDeg: 0 as const, heightM: 0 }],
};
/** The board on spacers of 10 mm in a space of 840 by 440 by 120 mm, 6 mm to keep clear; its front stands at 88 mm. */
const fitted = (change: Partial<MountingSpace>) => () =>
  fitBoard(
    board,
    { outline: box(-0.02, -0.02, 0.84, 0.44), depthM: 0.12, obstacles: [], ...change },
    { xM: 0, yM: 0, turnDeg: 0, standoffM: 0.01 },
    0.006,
  ).faults;
const roomy = quiet('20 mm round it, 32 mm before it', fitted({}));
const hinge = (x: number) =>
  fitted({ obstacles: [{ id: 'hinge', outline: box(x, 0.2, 0.05, 0.05), fromM: 0, toM: 0.1 }] });

const corners = [
  { xM: 0.03, yM: 0.03 },
  { xM: 0.77, yM: 0.03 },
  { xM: 0.77, yM: 0.37 },
  { xM: 0.03, yM: 0.37 },
];
const limits = { leastHz: 30, wantedHz: 40 };
const ply = (thicknessM: number): Build => ({
  id: 'ply',
  ways: [{ grain: null, sheet: evenSheet({ thicknessM, modulusPa: 8e9, poisson: 0.3, densityKgM3: 680 }) }],
  ...{ kept: [], ribs: [], assumed: [] },
});
/** The first mode of the board on its corners, of a sheet as thick as told (mm), against given limits. */
const moded =
  (thicknessMm: number, { leastHz, wantedHz } = limits, supports = corners) =>
  () =>
    stiffnessFaults('main', boardStiffness({ ...board, supports }, ply(thicknessMm / 1000), { wantedHz }), {
      leastHz,
      wantedHz,
    });

/** A board of 10 kg whose centre stands 30 mm off its panel, on fixings that pull out at what is told (N). */
const held =
  (strengthN: number, at: readonly { xM: number; yM: number }[] = corners) =>
  () => {
    const fixings = at.map((spot, k) => ({
      id: `f${k + 1}`,
      ...spot,
      pullOutN: strengthN,
      shearN: strengthN,
    }));
    return retentionFaults(
      'main',
      retention([{ id: 'main', massKg: 10, xM: 0.4, yM: 0.2, zM: 0.03 }], fixings),
      20,
    );
  };
const strong = quiet('10 kg on four fixings of 4 kN', held(4000));

/** A strip along the middle of the board, behind which are 25 mm. */
const rib = (change: Partial<LaidRib> = {}): LaidRib => ({
  ...{ id: 'r1', face: 'rear', widthM: 0.012, heightM: 0.012 },
  ...{ from: { xM: 0.1, yM: 0.2 }, to: { xM: 0.7, yM: 0.2 } },
  ...change,
});
const ground: RibLimits = {
  region: shape.region,
  ...{ fixings: [], holes: [], parts: [], obstacles: [], standoffM: 0.025, thicknessM: 0.018, depthM: 0.12 },
  ...{ clearanceM: 0.006, padM: 0.05 },
};
const ran =
  (change: Partial<LaidRib>, ...others: readonly LaidRib[]) =>
  () =>
    ribFaults(rib(change), { ...ground }, others);
const alone = quiet('a strip on the board, nothing near it', ran({}));
/** A head or spacer of 12 mm before the rib, its centre so far from the middle of the rib (m). */
const pastFixing = (offM: number) => () =>
  ribFaults(
    rib(),
    { ...ground, fixings: [{ id: 'a', xM: 0.4, yM: 0.2 + offM, spacerM: 0.025, holeM: 0.0064 }] },
    [],
  );

const onMain = inJob('title: Bass amplifier\n    in: boot', 'title: Bass amplifier\n    on: main');
const wall = inVehicle(
  '    depth: 200 mm\n',
  '    depth: 200 mm\n    obstacles: { hinge: { what: seat hinge, x: 250 mm, y: 0 mm, width: 20 mm, height: 500 mm, stands-out: 100 mm } }\n',
);
/** Spacers of 25 mm in stock, for fixings that want another height. */
const onSpacers = (height: string) =>
  inSmallShop(
    withBoard(
      'a: { point: p1, fixing: bolt-a }, b: { point: p2, fixing: bolt-a }',
      `a: { point: p1, fixing: bolt-a, spacer: ${height} }, b: { point: p2, fixing: bolt-a, spacer: ${height} }`,
    ),
    onMain,
    inParts(
      '  loom-a:',
      '  spacer-25: { kind: fixing, title: Spacer, form: spacer, thread: M6, length: 25 mm }\n  loom-a:',
    ),
    inShop('  large-60: { pieces: 2 }\n', '  large-60: { pieces: 2 }\n  spacer-25: { pieces: 9 }\n'),
  );

/** Boards that leave their sheet open, on four points, with one sheet in stock (mm). */
const openSheet = (mm: number) =>
  inSmallShop(...stocked({ id: 'ply', mm, pieces: 1 }), ...onFourPoints(['title: Main']));
const wide = (width: string) => inSmallShop(withBoard('width: 500 mm', `width: ${width}`));

const ribCases = {
  'rib-off-board': {
    fires: [
      fires('100 mm past the edge', 'stop', 'r1', ran({ to: { xM: 0.9, yM: 0.2 } })),
      fires(
        'no stretch of it on the board',
        'stop',
        'r1',
        inSmallShop(
          ...stocked({ id: 'ply-9', mm: 9, pieces: 1 }),
          ...onFourPoints(['sheet: ply-9', 'ribs: { r1: { edge: top, distance: 400 mm, height: 18 mm } }']),
        ),
      ),
    ],
    quiet: [alone],
  },
  'rib-in-the-way': {
    fires: [
      fires('through a fixing', 'stop', 'r1', pastFixing(0)),
      fires('near a fixing', 'caution', 'r1', pastFixing(0.033)),
      fires(
        'across another rib',
        'stop',
        'r1',
        ran({}, rib({ id: 'r2', from: { xM: 0.4, yM: 0.1 }, to: { xM: 0.4, yM: 0.3 } })),
      ),
    ],
    quiet: [alone, quiet('60 mm from a fixing', pastFixing(0.06))],
  },
  'rib-without-room': {
    fires: [
      fires('30 mm high before 25 mm', 'stop', 'r1', ran({ heightM: 0.03 })),
      fires('20 mm high before 25 mm, where 6 mm are asked for', 'caution', 'r1', ran({ heightM: 0.02 })),
    ],
    quiet: [alone],
  },
} satisfies RemarkCases;

/** How a board is held and where it stands. Limits: 30 Hz and 20 g, common practice or from memory, no source. */
export const mountingRemarks = {
  ...ribCases,
  'no-sheet-for-board': {
    fires: [fires('6 mm, too soft for its amplifier', 'stop', 'main', openSheet(6))],
    quiet: [quiet('12 mm', openSheet(12))],
  },
  'piece-larger-than-sheet': {
    fires: [fires('2 m of a sheet of 1.5 m', 'stop', 'main', wide('2 m'))],
    quiet: [quiet('half a metre of it', wide('500 mm'))],
  },
  'no-place-for-board': {
    fires: [
      fires('a wall through its space', 'stop', 'main', inSmallShop(withBoard(), onMain, wall), /past hinge/),
    ],
    quiet: [quiet('nothing in it', inSmallShop(withBoard(), onMain))],
  },
  'space-too-small': {
    fires: [
      fires('10 mm less than the board', 'stop', 'board', fitted({ outline: box(0, -0.02, 0.79, 0.44) })),
      fires(
        '5 mm on one side, where 6 mm are asked for',
        'caution',
        'board',
        fitted({ outline: box(-0.005, -0.02, 0.84, 0.44) }),
      ),
    ],
    quiet: [roomy],
  },
  'space-too-shallow': {
    fires: [
      fires('80 mm for 88 mm', 'stop', 'amp', fitted({ depthM: 0.08 })),
      fires('93 mm for 88 mm, where 6 mm are asked for', 'caution', 'amp', fitted({ depthM: 0.093 })),
    ],
    quiet: [roomy, quiet('95 mm', fitted({ depthM: 0.095 }))],
  },
  'obstacle-in-the-way': {
    fires: [
      fires('10 mm in the board', 'stop', 'board', hinge(0.79)),
      fires('5 mm from it, where 6 mm are asked for', 'caution', 'board', hinge(0.805)),
    ],
    quiet: [roomy, quiet('7 mm from it', hinge(0.807))],
  },
  'board-not-held': {
    fires: [
      fires('two fixings', 'stop', 'main', held(4000, corners.slice(0, 2))),
      fires('a sheet on two points', 'stop', 'main', moded(18, limits, corners.slice(0, 2))),
    ],
    quiet: [strong, quiet('a sheet on four', moded(18))],
  },
  'fixings-too-weak': {
    fires: [fires('fixings of 400 N', 'stop', 'main', held(400), /20 g is asked for/)],
    quiet: [strong],
  },
  'first-mode-low': {
    fires: [
      fires('6 mm of plywood, far under 30 Hz', 'stop', 'main', moded(6)),
      fires(
        'more than is asked for, less than beside a subwoofer',
        'caution',
        'main',
        moded(18, { leastHz: 5, wantedHz: 500 }),
      ),
    ],
    quiet: [quiet('more than either limit', moded(18, { leastHz: 5, wantedHz: 8 }))],
  },
  'height-not-in-stock': {
    fires: [fires('27 mm, where spacers of 25 mm are in stock', 'caution', 'a', onSpacers('27 mm'))],
    quiet: [quiet('25 mm', onSpacers('25 mm'))],
  },
} satisfies RemarkCases;
