import type { BuildPlan } from '../../lib/model/plan/index.ts';

/** The parts of a plan in which nothing stands. */
export const nothingPlanned = {
  power: {
    points: [],
    drops: [],
    turnOn: [],
    turnOnChain: [],
    conductors: [],
    fuses: [],
    charging: [],
    loads: [],
  },
  audio: {
    channels: [],
    speakers: [],
    sharedDelays: [],
    inputs: [],
    outputs: [],
    curves: { frequenciesHz: [], sums: [] },
  },
  boards: [],
  wires: [],
  runs: [],
  terminals: [],
  controls: [],
} satisfies Partial<BuildPlan>;
