import type { BuildPlan, PlanWire } from '../../../lib/model/plan/index.ts';

function wire(id: string, label: string, from: string, to: string, lengthM: number): PlanWire {
  const end = {
    prep: 'ferrule, 16 mm2',
    part: 'ferrule-16',
    stripM: 0.018,
    torqueNm: 4,
    loopM: 0.0762,
  };
  return {
    id,
    link: id,
    label,
    origin: 'job',
    from,
    to,
    role: 'power',
    size: { label: '4 AWG', awg: '4', areaMm2: 21.15 },
    colour: 'RD',
    lengthM,
    measured: 'run 4.10 + board 0.30 + loops 0.38 m',
    part: 'wire-4-red',
    board: null,
    run: 'left-sill',
    zones: [{ zone: 'sill', lengthM: 2, edge: false }],
    covering: ['loom-13'],
    ends: [
      { terminal: from, ...end },
      { terminal: to, ...end },
    ],
  };
}

/** Wires, terminals and controls of the sample plan, and what is done and measured. */
export function sampleWiring(): Pick<
  BuildPlan,
  | 'wires'
  | 'runs'
  | 'branches'
  | 'cables'
  | 'terminals'
  | 'controls'
  | 'measurements'
  | 'steps'
  | 'schedule'
  | 'pick'
> {
  return {
    wires: [
      wire('p1', 'P1', 'main-fuse.OUT', 'amp-front.B+', 4.8),
      wire('p0', 'P0', 'battery.+', 'main-fuse.IN', 0.508),
    ],
    runs: [
      {
        id: 'left-sill',
        route: 'left-sill',
        title: 'Battery to left side well',
        side: 'left',
        wires: ['p1'],
        lengthM: 3.96,
        bundleM: 0.009,
        covering: 'loom-13',
        grommets: [{ zone: 'bulkhead', holeM: 0.016, part: 'grommet-16' }],
      },
    ],
    branches: [],
    cables: [
      {
        id: 'harness',
        part: 'cable-9',
        lengthM: 5.2,
        conductors: [
          { name: 'white', colour: 'WH', size: { label: '18 AWG', awg: '18', areaMm2: 0.82 }, wire: null },
        ],
      },
    ],
    terminals: [
      { item: 'amp-front', terminal: 'B+', wires: ['p1'], state: 'connected' },
      { item: 'amp-front', terminal: 'IN3', wires: [], state: 'open', reason: 'rear channels not used' },
    ],
    controls: [
      {
        item: 'amp-front',
        control: 'GAIN 1/2',
        preset: 'fully counter-clockwise',
        why: 'no signal passes until the gain is set with a meter',
        safeState: 'fully counter-clockwise',
        panel: 'left',
        atM: 0.05,
        order: 1,
        chosen: 'computed',
        safe: true,
        final: {
          state: '17.3 V at 1 and 2, 1000 Hz',
          why: 'set by the meter, speakers off',
          chosen: 'computed',
          during: 'gains',
        },
      },
    ],
    measurements: [
      {
        id: 'amp-front.B+',
        what: 'Voltage at the amplifier',
        predicted: 13.84,
        unit: 'V',
        least: 13.54,
        greatest: 14.14,
        when: 'power',
        state: 'open',
        explanation: null,
      },
      {
        id: 'battery.rest',
        what: 'Battery at rest',
        predicted: 12.6,
        unit: 'V',
        least: 12.4,
        greatest: null,
        when: 'survey',
        asBuilt: 12.5,
        state: 'agrees',
        explanation: null,
      },
    ],
    steps: [
      {
        id: 'cut-main-board',
        layer: 'place',
        place: 'bench',
        after: [],
        waitsFor: [],
        by: 'board',
        startMinute: 0,
        critical: true,
        text: 'Cut main-board and drill its holes.',
        tools: ['saw', 'drill'],
        minutes: 45,
        installs: [],
        acts: ['main-board'],
        proof: 'the outline agrees with the sheet to 1 mm',
      },
      {
        id: 'pull-p1',
        layer: 'power',
        place: 'vehicle',
        after: ['cut-main-board'],
        waitsFor: [{ step: 'cut-main-board', why: 'the wire is led to its edge' }],
        by: 'vehicle',
        startMinute: 45,
        critical: true,
        text: 'Pull P1 along the left sill.',
        tools: ['pull line'],
        minutes: 30,
        installs: ['p1'],
        acts: ['p1'],
        proof: 'no continuity to body',
      },
    ],
    schedule: {
      totalMinutes: 75,
      twoPersonMinutes: 75,
      criticalMinutes: 75,
      criticalPath: ['cut-main-board', 'pull-p1'],
      times: [
        { name: 'cut-board', says: 'Cut a board to its outline', minutes: 45, given: true },
        {
          name: 'pull-wire',
          says: 'Pull and label one wire, pair or cable along a run',
          minutes: 30,
          given: false,
          mark: 'cp',
        },
      ],
    },
    pick: [
      {
        part: 'wire-4-red',
        title: 'Wire, 4 AWG, red',
        kind: 'wire',
        quantity: 5.308,
        unit: 'm',
        stockQuantity: 9.1,
        short: 0,
      },
      {
        part: 'fuse-60',
        title: 'Fuse, 60 A',
        kind: 'fuse',
        quantity: 1,
        unit: 'piece',
        stockQuantity: 4,
        short: 0,
      },
    ],
  };
}
