import { type BuildPlan, planFormat } from '../../../lib/model/plan/index.ts';
import { sampleAudio } from './sample-audio.ts';
import { sampleBoard } from './sample-board.ts';
import { sampleItems } from './sample-items.ts';
import { samplePower } from './sample-power.ts';
import type { SampleShape } from './sample-shape.ts';
import { sampleWires } from './sample-wires.ts';

/** A whole plan of a made-up job: enough of it to draw, and coherent in its names. */
export function samplePlan(shape: SampleShape): BuildPlan {
  const items = sampleItems(shape);
  const wires = sampleWires(shape);
  return {
    rackleaf: 1,
    format: planFormat,
    job: {
      id: 'sample-job',
      title: 'A made-up job',
      revision: 'A',
      status: shape.released ? 'released' : 'draft',
      issuedOn: '2024-05-14',
      drawnBy: 'A. S.',
      approvedBy: null,
      fabricator: null,
      notes: [],
      revisions: [],
    },
    shop: {
      name: 'Example Fabrication',
      address: [],
      units: shape.units,
      fraction: 16,
      paper: shape.paper,
      largerPaper: null,
      siteUrl: null,
    },
    vehicle: { id: 'estate', title: 'Estate car', cautions: [] },
    rules: [],
    findings: [],
    traces: {},
    items,
    power: samplePower(shape, wires),
    audio: sampleAudio(shape),
    boards: [sampleBoard(shape, items, wires)],
    wires,
    runs: [],
    branches: [],
    cables: [],
    terminals: [],
    controls: [],
    measurements: [],
    steps: [],
    schedule: { totalMinutes: 0, twoPersonMinutes: 0, criticalMinutes: 0, criticalPath: [], times: [] },
    pick: [],
    offCuts: [],
    heat: [],
    passes: 1,
  };
}
