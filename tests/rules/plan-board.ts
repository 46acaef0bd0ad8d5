import type { PlanBoard } from '../../lib/model/plan/index.ts';
import type { ConductorRole } from '../../lib/model/vocabulary.ts';

const corner = (xM: number, yM: number) => ({ xM, yM, bulge: 0 });

/** The board of the plan that rules are tried on. */
export function boardOf(): PlanBoard {
  return {
    id: 'main',
    title: 'Main board',
    space: 'well',
    spaceTitle: 'Side well',
    sheet: 'plywood',
    sheetChosen: 'given',
    sheetWidthM: 1.22,
    sheetHeightM: 2.44,
    material: 'birch-plywood',
    thicknessM: 0.012,
    sheetGrain: null,
    grain: null,
    grainChosen: null,
    edgeProfile: null,
    ribs: [],
    pieces: [],
    outline: [corner(0, 0), corner(0.5, 0), corner(0.5, 0.3), corner(0, 0.3)],
    cutouts: [],
    holes: [
      {
        n: 1,
        xM: 0.05,
        yM: 0.05,
        diameterM: 0.006,
        depthM: null,
        pilotFor: null,
        purpose: 'fixing',
        of: 'a',
        behind: 'nothing',
      },
    ],
    areaM2: 0.15,
    massKg: 1.2,
    loadedMassKg: 6,
    centroid: { xM: 0.25, yM: 0.15 },
    widthM: 0.5,
    heightM: 0.3,
    narrowestWebM: 0.05,
    sagM: 0.00005,
    firstModeHz: 70,
    sagCreptM: null,
    retentionG: 30,
    datumInSpace: { xM: 0, yM: 0 },
    spaceOutline: [],
    spaceDepthM: 0.2,
    obstacles: [],
    right: 'rear',
    upward: 'up',
    fixings: [
      { id: 'a', xM: 0.05, yM: 0.05, part: 'screw', point: 'p1', spacerM: 0, torqueNm: null, torqueBy: null },
      { id: 'b', xM: 0.45, yM: 0.05, part: 'screw', point: 'p2', spacerM: 0, torqueNm: null, torqueBy: null },
    ],
    placements: [],
    routes: [
      route('amp-feed', 'power', [0.1, 0.2], [0.4, 0.2]),
      route('signal-1', 'signal', [0.1, 0.1], [0.4, 0.1]),
    ],
    crossings: 0,
    firstCrossings: 0,
    pathSearches: 0,
    evaluations: 0,
    proposals: [],
    exits: [],
  };
}

export function route(
  wire: string,
  layer: ConductorRole,
  ...points: readonly (readonly [number, number])[]
): PlanBoard['routes'][number] {
  return {
    wire,
    along: [wire],
    layer,
    points: points.map(([xM, yM]) => ({ xM, yM })),
    lengthM: 0.3,
    bends: 0,
  };
}
