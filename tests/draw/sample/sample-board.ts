import type {
  PlanBoard,
  PlanItem,
  PlanPlacement,
  PlanRoute,
  PlanWire,
} from '../../../lib/model/plan/index.ts';
import type { SampleShape } from './sample-shape.ts';

const gapM = 0.04;

/** Puts items into rows from the lower left, as many as the board holds. */
function placementsOf(items: readonly PlanItem[], widthM: number, heightM: number): PlanPlacement[] {
  const placed: PlanPlacement[] = [];
  let [xM, yM, rowM] = [gapM, gapM, 0];
  for (const { id, widthM: w, depthM: d, board } of items) {
    if (board === null || w === null || d === null) continue;
    if (xM + w + gapM > widthM) [xM, yM, rowM] = [gapM, yM + rowM + gapM, 0];
    if (xM + w + gapM > widthM || yM + d + gapM > heightM) continue;
    placed.push({
      item: id,
      xM,
      yM,
      turnDeg: 0,
      widthM: w,
      depthM: d,
      heightM: 0.05,
      raisedM: 0,
      keepClear: [
        { kind: 'air', side: 'top', depthM: 0.025 },
        { kind: 'control', side: 'left', depthM: 0.04 },
      ],
      chosen: 'given',
    });
    xM += w + gapM;
    rowM = Math.max(rowM, d);
  }
  return placed;
}

/** The board of a made-up job, with what has room on it. */
export function sampleBoard(
  shape: SampleShape,
  items: readonly PlanItem[],
  wires: readonly PlanWire[],
): PlanBoard {
  const { boardWidthM: widthM, boardHeightM: heightM } = shape;
  const round = Math.tan(Math.PI / 8);
  const radius = 0.03;
  const placements = placementsOf(items, widthM, heightM);
  const routes = routesOf(items, placements, wires, widthM);
  const holeAt = [
    [0.02, 0.02],
    [widthM - 0.02, 0.02],
    [0.02, heightM - 0.02],
    [widthM - 0.02, heightM - 0.02],
  ] as const;
  return {
    id: 'board',
    title: 'Main board',
    space: 'side-well',
    spaceTitle: 'Left side well',
    sheet: 'birch-18',
    sheetChosen: 'given',
    sheetWidthM: 1.22,
    sheetHeightM: 2.44,
    material: 'birch-plywood',
    thicknessM: 0.018,
    sheetGrain: 'height',
    grain: null,
    grainChosen: null,
    edgeProfile: { kind: 'round-over', sizeM: 0.00635 },
    outline: [
      { xM: 0, yM: 0, bulge: 0 },
      { xM: widthM - radius, yM: 0, bulge: round },
      { xM: widthM, yM: radius, bulge: 0 },
      { xM: widthM, yM: heightM, bulge: 0 },
      { xM: 0.07, yM: heightM, bulge: 0 },
      { xM: 0, yM: heightM - 0.05, bulge: 0 },
    ],
    cutouts: [],
    holes: holeAt.map(([xM, yM], index) => {
      return {
        n: index + 1,
        xM,
        yM,
        diameterM: 0.0066,
        depthM: null,
        pilotFor: null,
        purpose: 'fixing',
        of: `f${index + 1}`,
        behind: 'nothing',
      };
    }),
    areaM2: widthM * heightM,
    massKg: 4,
    loadedMassKg: 12,
    centroid: { xM: widthM / 2, yM: heightM / 2 },
    widthM,
    heightM,
    narrowestWebM: null,
    sagM: null,
    firstModeHz: null,
    sagCreptM: null,
    retentionG: null,
    datumInSpace: { xM: 0.02, yM: 0.02 },
    spaceOutline: [
      { xM: 0, yM: 0 },
      { xM: widthM + 0.04, yM: 0 },
      { xM: widthM + 0.04, yM: heightM + 0.04 },
      { xM: 0, yM: heightM + 0.04 },
    ],
    spaceDepthM: 0.15,
    obstacles: [{ id: 'wheel-arch', xM: 0.3, yM: 0, widthM: 0.1, heightM: 0.02, standsOutM: 0.06 }],
    right: 'front',
    upward: 'up',
    fixings: holeAt.map(([xM, yM], index) => {
      return {
        id: `f${index + 1}`,
        xM,
        yM,
        part: 'bolt-m6',
        point: `point-${index + 1}`,
        spacerM: 0.0254,
        torqueNm: null,
        torqueBy: null,
      };
    }),
    placements,
    routes,
    ribs: [],
    pieces: [],
    crossings: 0,
    firstCrossings: 0,
    pathSearches: 0,
    proposals: [],
    evaluations: 0,
    exits: routes.flatMap(({ wire, points }) => {
      const last = points.at(-1);
      return last && last.xM === widthM ? [{ wire, edge: 'right', ...last }] : [];
    }),
  };
}

/** From the right edge of its item straight to the right edge of the board, for what is not hidden by another item. */
function routesOf(
  items: readonly PlanItem[],
  placements: readonly PlanPlacement[],
  wires: readonly PlanWire[],
  widthM: number,
): PlanRoute[] {
  return wires.flatMap((wire): PlanRoute[] => {
    const [id = '', name = ''] = wire.from.split('.');
    const at = placements.find(({ item: own }) => own === id);
    const pin = items.find((each) => each.id === id)?.terminals.find((each) => each.name === name);
    if (!at || pin?.panel !== 'right' || pin.atM === null || wire.id.endsWith('.-')) return [];
    const [fromM, yM] = [at.xM + at.widthM, at.yM + pin.atM];
    const hidden = placements.some(
      (other) => other.xM > at.xM && other.yM <= yM && other.yM + other.depthM >= yM,
    );
    if (hidden) return [];
    const pair = wires.filter(({ link: own }) => own === wire.link).map((each) => each.id);
    return [
      {
        wire: wire.id,
        along: pair,
        points: [
          { xM: fromM, yM },
          { xM: widthM, yM },
        ],
        lengthM: widthM - fromM,
        layer: wire.role,
        bends: 0,
      },
    ];
  });
}
