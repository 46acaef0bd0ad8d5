import type { BuildPlan } from '../../lib/model/plan/index.ts';

/** The board of the sample plan. */
export function sampleBoard(): Pick<BuildPlan, 'boards'> {
  return {
    boards: [
      {
        id: 'main-board',
        title: 'Main board',
        space: 'side-well',
        spaceTitle: 'Left side well',
        sheet: 'birch-12',
        sheetWidthM: 1.22,
        sheetHeightM: 2.44,
        material: 'birch-plywood',
        thicknessM: 0.012,
        outline: [
          { xM: 0, yM: 0, bulge: 0 },
          { xM: 0.6, yM: 0, bulge: 0 },
          { xM: 0.6, yM: 0.4, bulge: 0 },
          { xM: 0, yM: 0.4, bulge: 0 },
        ],
        cutouts: [],
        holes: [
          {
            n: 1,
            xM: 0.025,
            yM: 0.025,
            diameterM: 0.0064,
            depthM: null,
            purpose: 'fixing',
            of: 'fix-1',
            behind: 'nothing',
          },
          {
            n: 2,
            xM: 0.18,
            yM: 0.12,
            diameterM: 0.0028,
            depthM: 0.01,
            purpose: 'mounting',
            of: 'amp-front',
            behind: null,
          },
        ],
        areaM2: 0.24,
        massKg: 1.96,
        loadedMassKg: 5.1,
        centroid: { xM: 0.31, yM: 0.2 },
        widthM: 0.6,
        heightM: 0.4,
        narrowestWebM: 0.025,
        sagM: 0.0001,
        firstModeHz: 50,
        retentionG: 24,
        datumInSpace: { xM: 0.05, yM: 0.02 },
        spaceOutline: [],
        spaceDepthM: 0.15,
        obstacles: [],
        right: 'front',
        upward: 'up',
        fixings: [{ id: 'fix-1', xM: 0.025, yM: 0.025, part: 'bolt-m6', point: 'nut-a', spacerM: 0.006 }],
        placements: [
          {
            item: 'amp-front',
            xM: 0.15,
            yM: 0.1,
            turnDeg: 90,
            widthM: 0.2,
            depthM: 0.3,
            heightM: 0.055,
            raisedM: 0,
            keepClear: [{ kind: 'air', side: 'right', depthM: 0.025 }],
            chosen: 'computed',
          },
        ],
        routes: [
          {
            wire: 'p1',
            along: ['p1'],
            points: [
              { xM: 0, yM: 0.1 },
              { xM: 0.3, yM: 0.1 },
            ],
            lengthM: 0.3,
            layer: 'power',
            bends: 0,
          },
        ],
        crossings: 0,
        proposals: [
          {
            total: 0.82,
            score: { air: 0.9, wires: 0.74 },
            placements: [{ item: 'amp-front', xM: 0.15, yM: 0.1, turnDeg: 90 }],
          },
        ],
        evaluations: 420,
        exits: [{ wire: 'p1', edge: 'left', xM: 0, yM: 0.1 }],
      },
    ],
  };
}
