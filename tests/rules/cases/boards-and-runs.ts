import type { BuildPlan, PlanBoard } from '../../../lib/model/plan/index.ts';
import { about, aboutContent, aboutPlan, byId, entry, one, partIn } from '../case.ts';
import type { Written } from '../content.ts';
import { route } from '../plan.ts';
import type { RuleCases } from '../rule-case.ts';

const board = (plan: BuildPlan) => byId(plan.boards, 'main');
const setBoard = (change: Partial<PlanBoard>) => aboutPlan((plan) => Object.assign(board(plan), change));
const hole = (xM: number, yM: number, behind: string | null = 'nothing') =>
  aboutPlan((plan) => {
    Object.assign(
      one(board(plan).holes, ({ n }) => n === 1),
      { xM, yM, behind, of: behind === null ? 'lead' : 'a' },
    );
  });
const space = ({ vehicle }: Written) => entry(vehicle.spaces, 'well');
const point = (content: Written) => entry(space(content)['sound-points'], 'p1');
const behind = (what: 'tank' | 'line' | 'airbag' | 'wiring' | 'unknown') =>
  aboutContent((content) => {
    point(content).behind = what;
  });
const fixingLength = (length: string, what: 'nothing' | 'tank') =>
  aboutContent((content) => {
    partIn(content, 'screw', 'fixing').length = length;
    point(content).behind = what;
  });
const wet = (spacerM: number, plan: (plan: BuildPlan) => void = () => {}) =>
  about({
    content: (content) => {
      space(content).wet = true;
    },
    plan: (made) => {
      for (const fixing of board(made).fixings) fixing.spacerM = spacerM;
      plan(made);
    },
  });
const run = (plan: BuildPlan) => byId(plan.runs, 'left');

export const boardCases: RuleCases = {
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
        says: /28.85 Hz, it sags 0 in \(0.3 mm\)/,
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
  // Common practice, no source: tank, line, airbag stop.
  'hole-before-hazard': {
    fires: [
      {
        name: 'tank',
        about: () => behind('tank'),
        level: 'stop',
        subject: 'a',
        path: '/boards/main/fixings/a',
      },
      { name: 'line', about: () => behind('line'), level: 'stop', subject: 'a' },
      { name: 'airbag', about: () => behind('airbag'), level: 'stop', subject: 'a' },
      { name: 'wiring', about: () => behind('wiring'), level: 'caution', subject: 'a' },
      { name: 'unknown', about: () => behind('unknown'), level: 'caution', subject: 'a' },
      {
        name: 'a hole of the plan that is no fixing',
        about: () =>
          aboutPlan((plan) => {
            Object.assign(
              one(board(plan).holes, ({ n }) => n === 1),
              { of: 'wire-way', behind: 'tank' },
            );
          }),
        level: 'stop',
        subject: 'wire-way',
      },
    ],
    quiet: [
      { name: 'nothing behind', about: () => about() },
      { name: 'a hole that ends in the board', about: () => hole(0.1, 0.1, null) },
    ],
  },
  // The free depth behind the point, as measured in the vehicle: 30 mm; the sheet is 12 mm.
  'fixing-too-long': {
    fires: [
      {
        name: '43 mm before nothing',
        about: () => fixingLength('43 mm', 'nothing'),
        level: 'caution',
        subject: 'a',
        says: /31.0 mm/,
      },
      {
        name: '43 mm before a tank',
        about: () => fixingLength('43 mm', 'tank'),
        level: 'stop',
        subject: 'a',
      },
    ],
    quiet: [{ name: '42 mm', about: () => fixingLength('42 mm', 'nothing') }],
  },
  // Common practice, no source.
  'fibreboard-in-wet-zone': {
    fires: [
      {
        name: 'bare fibreboard',
        about: () =>
          aboutContent((content) => {
            space(content).wet = true;
            partIn(content, 'plywood', 'board-sheet').material = 'fibreboard';
          }),
        level: 'caution',
        subject: 'main',
      },
    ],
    quiet: [
      { name: 'plywood', about: () => wet(0.012) },
      {
        name: 'sealed fibreboard',
        about: () =>
          aboutContent((content) => {
            space(content).wet = true;
            Object.assign(partIn(content, 'plywood', 'board-sheet'), {
              material: 'fibreboard',
              sealed: true,
            });
          }),
      },
    ],
  },
  // Common practice, no source: raise 12 mm, drip loop, drain clear.
  'board-low-in-wet-zone': {
    fires: [
      { name: '10 mm', about: () => wet(0.01), level: 'caution', subject: 'main' },
      { name: '12 mm: drip loops are told', about: () => wet(0.012), level: 'note', subject: 'main' },
    ],
    quiet: [{ name: 'a dry space', about: () => about() }],
  },
  // Common practice, no source. Axes of the vehicle: ISO 8855.
  'amplifier-upside-down': {
    fires: [
      {
        name: 'under a shelf: right is left, upward is front',
        about: () =>
          aboutContent((content) => {
            Object.assign(space(content), { right: 'left', upward: 'front' });
          }),
        level: 'caution',
        subject: 'amp',
      },
    ],
    quiet: [
      { name: 'upright on a side panel', about: () => about() },
      {
        name: 'face up on the floor: right is right, upward is front',
        about: () =>
          aboutContent((content) => {
            Object.assign(space(content), { right: 'right', upward: 'front' });
          }),
      },
    ],
  },
  // Common practice, no source.
  'cavity-heat': {
    fires: [
      {
        name: 'no fan, heat and air known',
        about: () =>
          aboutContent((content) => {
            delete partIn(content, 'two-channel', 'amplifier').cooling;
          }),
        level: 'note',
        subject: 'main',
        says: /90 W.*60 L/,
      },
      {
        name: 'no fan, nothing known',
        about: () =>
          aboutContent((content) => {
            const amplifier = partIn(content, 'two-channel', 'amplifier');
            delete amplifier.cooling;
            delete amplifier.heat;
            delete space(content).air;
          }),
        level: 'note',
        subject: 'main',
        says: /not known/,
      },
    ],
    quiet: [{ name: 'a fan', about: () => about() }],
  },
  // The shop's own stock.
  'stock-short': {
    fires: [
      {
        name: 'two lugs short',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'lug',
                title: 'Lug',
                kind: 'terminal',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 2,
                short: 2,
              },
            ];
          }),
        level: 'caution',
        subject: 'lug',
        path: '/stock/lug',
        file: 'shop.yaml',
      },
      {
        name: '14 ft that no single reel holds',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'reel',
                title: 'Wire',
                kind: 'wire',
                quantity: 4.27,
                unit: 'm',
                stockQuantity: 4.88,
                short: 1.83,
              },
            ];
          }),
        level: 'caution',
        subject: 'reel',
        file: 'shop.yaml',
        says: /no single reel/,
      },
    ],
    quiet: [
      {
        name: 'enough, and a fuse that has a rule of its own',
        about: () =>
          aboutPlan((plan) => {
            plan.pick = [
              {
                part: 'lug',
                title: 'Lug',
                kind: 'terminal',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 4,
                short: 0,
              },
              {
                part: 'some-fuse',
                title: 'Fuse',
                kind: 'fuse',
                quantity: 4,
                unit: 'piece',
                stockQuantity: 2,
                short: 2,
              },
            ];
          }),
      },
    ],
  },
  // Common practice, no source.
  'edge-without-grommet': {
    fires: [
      {
        name: 'an edge for which no grommet fits',
        about: () =>
          about({
            content: ({ vehicle }) => {
              one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill').edge = true;
            },
            plan: (plan) => {
              run(plan).grommets = [{ zone: 'sill', holeM: 0.02, part: null }];
            },
          }),
        level: 'caution',
        subject: 'left',
        path: '/runs/left',
      },
      {
        name: 'an edge that the plan does not tell of',
        about: () =>
          aboutContent(({ vehicle }) => {
            one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill').edge = true;
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      {
        name: 'an edge with a grommet',
        about: () =>
          about({
            content: ({ vehicle }) => {
              one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill').edge = true;
            },
            plan: (plan) => {
              run(plan).grommets = [{ zone: 'sill', holeM: 0.02, part: 'grommet-12' }];
            },
          }),
      },
    ],
  },
  // Geometry: a bundle does not go through a hole that is smaller.
  'bundle-over-hole': {
    fires: [
      {
        name: '12 mm through 11 mm',
        about: () =>
          aboutContent(({ vehicle }) => {
            one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill')['through-hole'] =
              '11 mm';
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      {
        name: '12 mm through 12 mm',
        about: () =>
          aboutContent(({ vehicle }) => {
            one(entry(vehicle.routes, 'left-sill').passes, ({ zone }) => zone === 'sill')['through-hole'] =
              '12 mm';
          }),
      },
    ],
  },
  // Geometry: the same for the bore of a covering.
  'bundle-over-covering': {
    fires: [
      {
        name: '26 mm in a bore of 25 mm',
        about: () =>
          aboutPlan((plan) => {
            run(plan).bundleM = 0.026;
          }),
        level: 'caution',
        subject: 'left',
      },
    ],
    quiet: [
      {
        name: '25 mm in a bore of 25 mm',
        about: () =>
          aboutPlan((plan) => {
            run(plan).bundleM = 0.025;
          }),
      },
    ],
  },
  // Common practice, no source: power and signal on opposite sides of the vehicle.
  'power-beside-signal': {
    fires: [
      {
        name: 'signal and power in one run',
        about: () =>
          aboutContent(({ job }) => {
            job.runs = { left: { route: 'left-sill', links: ['main', 'radio-signal'], covering: 'loom' } };
          }),
        level: 'caution',
        subject: 'left',
        says: /at no distance/,
      },
      {
        name: 'two routes on one side that share the sill',
        about: () =>
          aboutContent(({ vehicle }) => {
            entry(vehicle.routes, 'right-sill').side = 'left';
          }),
        level: 'caution',
        subject: 'right',
        says: /left side.*sill/,
      },
    ],
    quiet: [{ name: 'power on the left, signal on the right', about: () => about() }],
  },
  // Common practice, no source: the house distance is 3 in (76.2 mm).
  'power-near-signal-on-board': {
    fires: [
      {
        name: '50 mm apart for 300 mm',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.2], [0.4, 0.2]),
              route('signal-1', 'signal', [0.1, 0.15], [0.4, 0.15]),
            ],
          }),
        level: 'caution',
        subject: 'signal-1',
        says: /50.0 mm/,
      },
      {
        name: 'a crossing aslant',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.1], [0.4, 0.1]),
              route('signal-1', 'signal', [0.2, 0], [0.3, 0.2]),
            ],
          }),
        level: 'caution',
        subject: 'signal-1',
        says: /aslant/,
      },
    ],
    quiet: [
      { name: '100 mm apart', about: () => about() },
      {
        name: 'a crossing at a right angle, and 60 mm side by side on the way into one part',
        about: () =>
          setBoard({
            routes: [
              route('amp-feed', 'power', [0.1, 0.1], [0.4, 0.1]),
              route('signal-1', 'signal', [0.2, 0.25], [0.2, 0.05], [0.26, 0.05]),
            ],
          }),
      },
    ],
  },
};
