import type { PlanHole } from '../../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, one } from '../../case.ts';
import { board, hole, setBoard, space } from '../../changes.ts';
import type { RuleCases } from '../../rule-case.ts';

/** The hole at a height of 150 mm, so far from the left, on a board with a window from 150 to 250 mm both ways. */
const inWindow = (xM: number, more: Partial<PlanHole> = {}) =>
  aboutPlan((plan) => {
    const corner = (x: number, y: number) => ({ xM: x, yM: y, bulge: 0 });
    board(plan).cutouts = [[corner(0.15, 0.05), corner(0.15, 0.25), corner(0.25, 0.25), corner(0.25, 0.05)]];
    Object.assign(
      one(board(plan).holes, ({ n }) => n === 1),
      { xM, yM: 0.15, ...more },
    );
  });

export const mountingCases = {
  // Common practice, no source: at least 25 mm good, under 12 mm stop.
  'narrow-web': {
    fires: [
      {
        name: '11 mm',
        about: () => setBoard({ narrowestWebM: 0.011 }),
        level: 'stop',
        subject: 'main',
        says: /11 mm/,
      },
      { name: '20 mm', about: () => setBoard({ narrowestWebM: 0.02 }), level: 'caution', subject: 'main' },
    ],
    quiet: [
      { name: '25 mm', about: () => setBoard({ narrowestWebM: 0.025 }) },
      { name: 'a board without cuts', about: () => setBoard({ narrowestWebM: null }) },
    ],
  },
  // Plane geometry: a board of 500 by 300 mm, a hole of 6 mm.
  'hole-off-board': {
    fires: [
      {
        name: '7 mm outside the outline: its rim is 10 mm past the edge',
        about: () => hole(-0.007, 0.15),
        level: 'stop',
        subject: 'a',
        path: '/boards/main/fixings/a',
        says: /stands outside the outline, its rim .*10 mm/,
      },
      {
        name: 'far outside, past a corner',
        about: () => hole(0.53, 0.34),
        level: 'stop',
        subject: 'a',
        says: /its rim .*53 mm.* past the top edge/,
      },
      {
        name: 'in a window, 20 mm from the edge of it',
        about: () => inWindow(0.17),
        level: 'stop',
        subject: 'a',
        says: /stands in a cut-out, its rim .*23 mm/,
      },
      {
        name: 'in the board by 2 mm: the rim breaks out by 1 mm',
        about: () => hole(0.002, 0.15),
        level: 'stop',
        subject: 'a',
        says: /fixing, a at p1, x: 50 mm .* in well\) breaks out over the left edge by .*1 mm/,
        toDo: /^measure p1 anew .* at its left edge .* another sound point$/,
      },
      {
        name: 'a screw of a part in a window',
        about: () => inWindow(0.2, { purpose: 'mounting', of: 'amp' }),
        level: 'stop',
        subject: 'amp',
        path: '/devices/amp/at',
        toDo: /^move what it is for, or move the cut-out/,
      },
    ],
    quiet: [
      { name: 'its rim 1 mm from the edge', about: () => hole(0.004, 0.15) },
      { name: 'beside the window', about: () => inWindow(0.12) },
      { name: 'in the middle', about: () => hole(0.25, 0.15) },
    ],
  },
  // Common practice, no source: hole to edge 12 mm. A 6 mm hole has its rim 3 mm from its middle.
  'hole-near-edge': {
    fires: [
      {
        name: 'rim 11 mm from the edge',
        about: () => hole(0.014, 0.15),
        level: 'caution',
        subject: 'a',
        says: /11 mm/,
      },
    ],
    quiet: [{ name: 'rim 12 mm from the edge', about: () => hole(0.015, 0.15) }],
  },
  // Common practice, no source: to a corner 25 mm in fibreboard. 3-4-5: 24 and 18 mm are 30 mm, less 3 mm.
  'hole-near-corner': {
    fires: [
      {
        name: 'fibreboard, rim 22 mm from the corner',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(board(plan), { material: 'fibreboard' });
            Object.assign(
              one(board(plan).holes, ({ n }) => n === 1),
              { xM: 0.015, yM: 0.02 },
            );
          }),
        level: 'caution',
        subject: 'a',
        says: /22 mm/,
      },
    ],
    quiet: [
      { name: 'the same in plywood', about: () => hole(0.015, 0.02) },
      {
        name: 'fibreboard, rim 27 mm from the corner',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(board(plan), { material: 'fibreboard' });
            Object.assign(
              one(board(plan).holes, ({ n }) => n === 1),
              { xM: 0.024, yM: 0.018 },
            );
          }),
      },
    ],
  },
  // Common practice, no source: at least 30 Hz, a caution to 80 Hz beside a subwoofer; sag at 30 Hz is 0.28 mm.
  'first-mode-low': {
    fires: [
      {
        name: '29 Hz',
        about: () => setBoard({ firstModeHz: 29 }),
        level: 'stop',
        subject: 'main',
        says: /; at least 30 Hz is asked for$/,
      },
      {
        name: 'a sag of 0.3 mm alone',
        about: () => setBoard({ firstModeHz: null, sagM: 0.0003 }),
        level: 'stop',
        subject: 'main',
        says: /28 Hz, it sags 0.3 mm/,
      },
      {
        name: '70 Hz beside a subwoofer',
        about: () =>
          aboutContent((content) => {
            space(content)['beside-subwoofer'] = true;
          }),
        level: 'caution',
        subject: 'main',
        says: /at least 30 Hz is asked for of every board, 80 Hz beside a subwoofer/,
      },
      {
        name: '29 Hz beside a subwoofer: both limits, each by its name',
        about: () =>
          about({
            content: (content) => {
              space(content)['beside-subwoofer'] = true;
            },
            plan: (plan) => Object.assign(board(plan), { firstModeHz: 29 }),
          }),
        level: 'stop',
        subject: 'main',
        says: /at least 30 Hz is asked for of every board, 80 Hz beside a subwoofer/,
      },
      {
        name: 'not known',
        about: () => setBoard({ firstModeHz: null, sagM: null }),
        level: 'note',
        subject: 'main',
      },
    ],
    quiet: [
      {
        name: '30 Hz, with the sag that goes with it',
        about: () => setBoard({ firstModeHz: 30, sagM: 0.000277 }),
      },
      {
        name: '80 Hz beside a subwoofer',
        about: () =>
          about({
            content: (content) => {
              space(content)['beside-subwoofer'] = true;
            },
            plan: (plan) => Object.assign(board(plan), { firstModeHz: 80, sagM: 0.000039 }),
          }),
      },
    ],
  },
  // From memory: fixings hold 20 g forward.
  'retention-low': {
    fires: [
      { name: '19 g', about: () => setBoard({ retentionG: 19 }), level: 'caution', subject: 'main' },
      { name: 'not known', about: () => setBoard({ retentionG: null }), level: 'note', subject: 'main' },
    ],
    quiet: [{ name: '20 g', about: () => setBoard({ retentionG: 20 }) }],
  },
  // Common practice, no source: 3 mm.
  'board-creeps': {
    fires: [
      {
        name: 'just over 3 mm',
        about: () => setBoard({ sagCreptM: 0.00301 }),
        level: 'caution',
        subject: 'main',
        says: /main lies, and plywood/,
      },
    ],
    quiet: [
      { name: '3 mm', about: () => setBoard({ sagCreptM: 0.003 }) },
      { name: 'a board that does not creep', about: () => setBoard({ sagCreptM: null }) },
    ],
  },
  // Common practice, no source.
  'held-by-trim': {
    fires: [
      {
        name: 'no fixing',
        about: () => setBoard({ fixings: [] }),
        level: 'stop',
        subject: 'main',
        path: '/boards/main/fixings',
      },
    ],
    quiet: [{ name: 'two fixings', about: () => about() }],
  },
} satisfies RuleCases;
