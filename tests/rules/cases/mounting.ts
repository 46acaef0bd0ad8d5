import { about, aboutContent, aboutPlan, one } from '../case.ts';
import { board, hole, setBoard, space } from '../changes.ts';
import type { RuleCases } from '../rule-case.ts';

export const mountingCases = {
  // Common practice, no source: at least 25 mm good, under 12 mm stop.
  'narrow-web': {
    fires: [
      {
        name: '11 mm',
        about: () => setBoard({ narrowestWebM: 0.011 }),
        level: 'stop',
        subject: 'main',
        says: /11.0 mm/,
      },
      { name: '20 mm', about: () => setBoard({ narrowestWebM: 0.02 }), level: 'caution', subject: 'main' },
    ],
    quiet: [
      { name: '25 mm', about: () => setBoard({ narrowestWebM: 0.025 }) },
      { name: 'a board without cuts', about: () => setBoard({ narrowestWebM: null }) },
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
        says: /11.0 mm/,
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
        says: /22.0 mm/,
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
      { name: '29 Hz', about: () => setBoard({ firstModeHz: 29 }), level: 'stop', subject: 'main' },
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
