import { type BuildPlan, type PlanItem, planFormat } from '../../../lib/model/plan/index.ts';
import { sampleBoard } from './sample-board.ts';
import { samplePower } from './sample-power.ts';
import { sampleWiring } from './sample-wiring.ts';

/** A terminal of a sample item. */
function terminal(name: string, role: PlanItem['terminals'][number]['role']): PlanItem['terminals'][number] {
  return { name, role, panel: 'bottom', atM: 0.02 };
}

function item(own: Pick<PlanItem, 'id' | 'kind' | 'title' | 'partTitle'> & Partial<PlanItem>): PlanItem {
  return {
    part: `part-${own.id}`,
    origin: 'job',
    board: null,
    seat: null,
    seatTitle: null,
    zone: 'cargo',
    side: 'left',
    massKg: 3.1,
    widthM: 0.3,
    depthM: 0.2,
    heightM: 0.055,
    cooling: {},
    terminals: [],
    controls: [],
    ...own,
  };
}

const place = { file: 'content/jobs/sample-job.yaml', line: 12, column: 5, path: '/devices/amp-front' };

/** A small plan with something on every sheet. Its numbers are for show: nothing is computed here. */
export function samplePlan(change: Partial<BuildPlan> = {}): BuildPlan {
  return {
    rackleaf: 1,
    format: planFormat,
    job: {
      id: 'sample-job',
      title: 'Side-well board with one amplifier',
      revision: 'B',
      status: 'released',
      issuedOn: '2026-03-14',
      drawnBy: 'RK',
      approvedBy: 'LM',
      fabricator: 'RK',
      notes: ['Vehicle returns in 30 days.'],
      revisions: [
        { revision: 'A', date: '2026-02-02', what: 'First issue' },
        { revision: 'B', date: '2026-03-14', what: 'Fuse moved nearer to the battery' },
      ],
    },
    shop: {
      name: 'Sample Shop',
      address: ['1 Sample Street'],
      units: 'inch',
      fraction: 16,
      paper: 'letter',
      largerPaper: null,
      siteUrl: null,
    },
    vehicle: {
      id: 'sample-estate',
      title: 'Estate car, five doors',
      cautions: ['Curtain airbags run along both roof rails.'],
    },
    rules: [
      {
        name: 'ground-lead',
        says: 'Longest ground lead',
        value: 0.4064,
        unit: 'm',
        given: true,
        standard: 0.4572,
        citation: 'common practice, no source',
        mark: 'cp',
      },
    ],
    findings: [
      {
        rule: 'fuse-distance',
        level: 'caution',
        where: place,
        related: ['main-fuse'],
        message: 'main-fuse stands 20 in from the battery; up to 18 in is common practice.',
        value: 20,
        limit: 18,
        unit: 'in',
        source: 'common practice, no source',
        mark: 'cp',
        remedy: 'Move the holder towards the battery, or sheathe the conductor all the way.',
      },
    ],
    traces: {
      'power.conductors.p1.ampacityA': {
        origin: 'computed',
        value: 97.6,
        unit: 'A',
        rule: 'ampacity',
        formula: 'I = I30 * sqrt((Tins - Tamb) / (Tins - 30))',
        citation: '33 CFR 183.425, Table 5',
        inputs: [
          { name: 'I30', value: 160, unit: 'A' },
          { name: 'L', value: 4.8, unit: 'm', trace: 'wires.p1.lengthM' },
        ],
        where: place,
      },
      'wires.p1.lengthM': {
        origin: 'computed',
        value: 4.8,
        unit: 'm',
        rule: 'wire-length',
        citation: 'measured along the run',
        mark: 'cp',
        inputs: [],
      },
    },
    items: [
      item({
        id: 'amp-front',
        kind: 'amplifier',
        title: 'Front amplifier',
        partTitle: 'Four-channel amplifier, 4 x 75 W',
        part: 'amp-4x75',
        board: 'main-board',
        terminals: [terminal('B+', 'supply-positive'), terminal('GND', 'supply-negative')],
      }),
      item({
        id: 'battery',
        kind: 'battery',
        title: 'Starter battery',
        partTitle: 'Battery, 70 Ah',
        origin: 'vehicle',
        zone: 'engine-bay',
      }),
      item({
        id: 'front-left',
        kind: 'speaker',
        title: 'Front left speaker',
        partTitle: 'Speaker, 6.5 in',
        seat: 'door-left',
        seatTitle: 'Front left door',
      }),
    ],
    ...samplePower(),
    ...sampleBoard(),
    ...sampleWiring(),
    offCuts: [],
    heat: [],
    passes: 2,
    ...change,
  };
}
