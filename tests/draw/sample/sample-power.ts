import type { BuildPlan, PlanFuse, PlanWire } from '../../../lib/model/plan/index.ts';
import type { SampleShape } from './sample-shape.ts';

function fusesOf(shape: SampleShape, wires: readonly PlanWire[]): PlanFuse[] {
  const fuse = (item: string, way: string, ratingA: number | null): PlanFuse => {
    return {
      id: way === '' ? item : `${item}.${way}`,
      item,
      way,
      form: way === '' ? 'large-bolt-in' : 'small-bolt-in',
      ratingA,
      part: null,
      interruptA: 2000,
      needsInterruptA: null,
      holderA: null,
      from: `${item}.IN`,
      to: `${item}.${way === '' ? 'OUT' : way}`,
      source: 'starter',
      distanceM: 0.3,
      protects: [],
      ratedA: 60,
      ceilingA: null,
      leastAmpacityA: 80,
      stockQuantity: 1,
      chosen: 'computed',
      reason: 'next rating made',
      alternatives: [],
      loads: [],
    };
  };
  const ways = wires.flatMap(({ from }) => (from.startsWith('dist.OUT') ? [from.slice('dist.'.length)] : []));
  return [
    ...(shape.secondBattery ? [fuse('link-fuse', '', 150)] : []),
    fuse('main-fuse', '', shape.unsolved ? null : 100),
    ...ways.map((way) => fuse('dist', way, 40)),
  ];
}

/** The feed of a made-up job. */
export function samplePower(shape: SampleShape, wires: readonly PlanWire[]): BuildPlan['power'] {
  const devices = wires.flatMap(({ id }) => /^feed-(.+)$/.exec(id)?.[1] ?? []);
  return {
    points: [
      {
        name: 'rated-power',
        title: 'Rated power, cruising',
        state: shape.unsolved ? 'no-solution' : 'solved',
        referenceNode: 'starter.NEG',
        nodes: [],
        elements: [],
      },
    ],
    drops: shape.unsolved
      ? []
      : devices.map((device) => {
          return {
            point: 'rated-power',
            item: device,
            source: 'starter',
            voltageV: 13.1,
            feedDropV: 0.3,
            groundDropV: 0.1,
            share: 0.03,
          };
        }),
    turnOn: [],
    turnOnChain: [],
    conductors: [],
    fuses: fusesOf(shape, wires),
    charging: [],
    loads: devices.map((device) => {
      return { item: device, fuseA: 50, ratedA: 28.98550724637681, musicA: 5, idleA: 1, powerW: 300 };
    }),
  };
}
