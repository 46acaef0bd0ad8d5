import type { BuildPlan, PlanRib } from '../../../../lib/model/plan/index.ts';
import type { Case } from '../../../../lib/rules/rule.ts';
import { aboutPlan } from '../../case.ts';
import { board } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** A strip of 12 mm plywood on edge, 12 mm high, along the middle of the board of 500 x 300 mm, on spacers of 25 mm. */
const rib = (change: Partial<PlanRib>): PlanRib => ({
  id: 'r1',
  face: 'rear',
  from: { xM: 0.1, yM: 0.15 },
  to: { xM: 0.4, yM: 0.15 },
  lengthM: 0.3,
  widthM: 0.012,
  heightM: 0.012,
  joint: 'screwed',
  sheet: 'plywood',
  material: 'birch-plywood',
  thicknessM: 0.012,
  sheetWidthM: 1.5,
  sheetHeightM: 1.5,
  sheetGrain: null,
  form: 'on-edge',
  strips: 1,
  cutWidthM: 0.012,
  massKg: 0.03,
  roomM: 0.013,
  screw: { part: 'wood-screw', count: 3, apartM: 0.12 },
  glue: null,
  bendingNm2: 20,
  ends: 'given',
  ...change,
});

/** The board with a rib, and with what a test changes beside it. */
function ribbed(change: Partial<PlanRib> = {}, more: (plan: BuildPlan) => void = () => {}): Case {
  return aboutPlan((plan) => {
    const own = board(plan);
    own.fixings = own.fixings.map((fixing) => ({ ...fixing, spacerM: 0.025 }));
    own.ribs = [rib(change)];
    more(plan);
  });
}

const at = (xM: number, yM: number) => ({ xM, yM });
const path = '/boards/main/ribs/r1';

export const ribsCases = {
  // Plane geometry: the board ends at x 500 mm.
  'rib-off-board': {
    fires: [
      {
        name: '20 mm past the right edge',
        about: () => ribbed({ to: at(0.52, 0.15) }),
        level: 'stop',
        subject: 'r1',
        says: /20 mm .* out of the board/,
        path,
      },
      {
        name: 'over a cut-out',
        about: () =>
          ribbed({}, (plan) => {
            const corner = (xM: number, yM: number) => ({ xM, yM, bulge: 0 });
            board(plan).cutouts = [[corner(0.2, 0.1), corner(0.2, 0.2), corner(0.3, 0.2), corner(0.3, 0.1)]];
          }),
        level: 'stop',
        subject: 'r1',
        says: /over a cut-out/,
      },
    ],
    quiet: [
      { name: 'from edge to edge', about: () => ribbed({ from: at(0, 0.15), to: at(0.5, 0.15) }) },
      { name: 'no rib', about: () => aboutPlan(() => {}) },
    ],
  },
  // A spacer may be a pad of 50 mm: the one of a reaches to y 75 mm.
  'rib-in-the-way': {
    fires: [
      {
        name: 'over the spacer of a fixing',
        about: () => ribbed({ from: at(0.02, 0.07), to: at(0.4, 0.07) }),
        level: 'stop',
        subject: 'r1',
        says: /into the spacer of a/,
      },
      {
        name: '4 mm from the spacer',
        about: () => ribbed({ from: at(0.02, 0.085), to: at(0.4, 0.085) }),
        level: 'caution',
        subject: 'r1',
        says: /4 mm .* from the spacer of a/,
      },
      {
        name: 'on the mounting side, under a part',
        about: () =>
          ribbed({ face: 'mounting' }, (plan) => {
            const size = { widthM: 0.1, depthM: 0.1, heightM: 0.05, raisedM: 0 };
            board(plan).placements = [
              { item: 'amp', xM: 0.2, yM: 0.1, turnDeg: 0, ...size, keepClear: [], chosen: 'given' },
            ];
          }),
        level: 'stop',
        subject: 'r1',
        says: /into amp/,
      },
      {
        name: 'through another rib',
        about: () =>
          ribbed({}, (plan) => {
            board(plan).ribs.push(rib({ id: 'r2', from: at(0.25, 0.05), to: at(0.25, 0.25) }));
          }),
        level: 'stop',
        subject: 'r1',
        says: /into the rib r2/,
      },
    ],
    quiet: [
      { name: '6 mm from the spacer', about: () => ribbed({ from: at(0.02, 0.087), to: at(0.4, 0.087) }) },
      {
        name: 'behind a part',
        about: () =>
          ribbed({}, (plan) => {
            const size = { widthM: 0.1, depthM: 0.1, heightM: 0.05, raisedM: 0 };
            board(plan).placements = [
              { item: 'amp', xM: 0.2, yM: 0.1, turnDeg: 0, ...size, keepClear: [], chosen: 'given' },
            ];
          }),
      },
      {
        name: 'two that meet end to side',
        about: () =>
          ribbed({}, (plan) => {
            board(plan).ribs.push(rib({ id: 'r2', from: at(0.25, 0.156), to: at(0.25, 0.25) }));
          }),
      },
    ],
  },
  // Spacers of 25 mm; common practice, no source: 6 mm between a rib and the panel.
  'rib-without-room': {
    fires: [
      {
        name: '26 mm high on spacers of 25 mm',
        about: () => ribbed({ heightM: 0.026 }),
        level: 'stop',
        subject: 'r1',
        says: /1 mm .* into the panel/,
      },
      { name: '20 mm high on them', about: () => ribbed({ heightM: 0.02 }), level: 'caution', subject: 'r1' },
    ],
    quiet: [
      { name: '19 mm high on them', about: () => ribbed({ heightM: 0.019 }) },
      { name: '26 mm high on the mounting side', about: () => ribbed({ heightM: 0.026, face: 'mounting' }) },
    ],
  },
  'rib-not-made': {
    fires: [
      {
        name: '20 mm wide of a sheet of 12 mm',
        about: () => ribbed({ widthM: 0.02, heightM: 0.015, strips: 0 }),
        level: 'stop',
        subject: 'r1',
        says: /20 mm.* no whole layers of plywood/,
      },
    ],
    quiet: [{ name: 'two strips on edge', about: () => ribbed({ widthM: 0.024, strips: 2 }) }],
  },
  // Common practice, no source.
  'rib-not-fastened': {
    fires: [
      { name: 'no screw', about: () => ribbed({ screw: null }), level: 'caution', subject: 'r1' },
      {
        name: 'glued without glue',
        about: () => ribbed({ joint: 'glued' }),
        level: 'caution',
        subject: 'r1',
        says: /no glue/,
      },
      {
        name: 'polyethylene, glued',
        about: () => ribbed({ joint: 'glued', glue: 'wood-glue', material: 'polyethylene' }),
        level: 'caution',
        subject: 'r1',
        says: /polyethylene takes none/,
      },
    ],
    quiet: [
      { name: 'screwed', about: () => ribbed() },
      { name: 'glued', about: () => ribbed({ joint: 'glued', glue: 'wood-glue' }) },
    ],
  },
} satisfies RuleCases;
