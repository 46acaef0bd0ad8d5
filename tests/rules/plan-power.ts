import type { OperatingPointName } from '../../lib/model/operating-points.ts';
import type {
  BuildPlan,
  OperatingPoint,
  PlanConductor,
  PlanFuse,
  PlanWire,
} from '../../lib/model/plan/index.ts';

const fuse = (id: string, more: Partial<PlanFuse> & Pick<PlanFuse, 'from' | 'to' | 'ratingA'>): PlanFuse => ({
  id,
  item: id.split('.')[0] ?? id,
  way: id.split('.')[1] ?? '',
  form: 'standard-blade',
  part: 'some-fuse',
  interruptA: 1000,
  needsInterruptA: null,
  holderA: null,
  source: null,
  distanceM: null,
  protects: [],
  ratedA: 2,
  ceilingA: null,
  leastAmpacityA: null,
  stockQuantity: 5,
  chosen: 'computed',
  reason: 'next made rating',
  alternatives: [],
  loads: [],
  ...more,
});

const fuses = (): PlanFuse[] => [
  fuse('main-fuse', {
    form: 'large-bolt-in',
    ratingA: 80,
    interruptA: 6000,
    source: 'battery',
    distanceM: 0.15,
    from: 'main-fuse.IN',
    to: 'main-fuse.OUT',
    protects: ['main'],
    ratedA: 45,
  }),
  fuse('block.OUT1', {
    form: 'maxi-blade',
    ratingA: 60,
    ceilingA: 60,
    ratedA: 40,
    from: 'block.IN',
    to: 'block.OUT1',
    protects: ['amp-feed'],
  }),
  fuse('block.OUT2', { ratingA: 5, ceilingA: 5, from: 'block.IN', to: 'block.OUT2', protects: ['dsp-feed'] }),
  fuse('block.OUT3', {
    ratingA: 10,
    ceilingA: 10,
    from: 'block.IN',
    to: 'block.OUT3',
    protects: ['radio-feed'],
  }),
];

/** Ampacity at 105 C and 50 C ambient, by size: 33 CFR 183.425, Table 5, times its factor 0.85, rounded down. */
const ampacityA: Readonly<Record<string, number>> = { '16 AWG': 21, '8 AWG': 68, '4 AWG': 136 };

function conductorOf(wire: PlanWire, all: readonly PlanFuse[]): PlanConductor {
  return {
    id: wire.id,
    from: wire.from,
    to: wire.to,
    role: wire.role,
    size: wire.size,
    material: 'copper',
    insulationC: 105,
    lengthM: wire.lengthM,
    ampacityA: ampacityA[wire.size.label] ?? 17,
    cautionA: ampacityA[wire.size.label] ?? 17,
    limits: [],
    fuses: all.filter(({ protects }) => protects.includes(wire.id)).map(({ id }) => id),
    fed: true,
    neededA: Math.max(
      0,
      ...all.filter(({ protects }) => protects.includes(wire.id)).map(({ ratingA }) => ratingA ?? 0),
    ),
    chosen: 'computed',
    reason: 'smallest that carries its fuse',
  };
}

function point(name: OperatingPointName, title: string, supplyV: number): OperatingPoint {
  const node = (id: string, voltageV: number) => ({ id, voltageV });
  return {
    name,
    title,
    state: 'solved',
    referenceNode: 'battery.NEG',
    nodes: [
      node('battery.POS', supplyV),
      node('battery.NEG', 0),
      node('alternator.B+', supplyV + 0.1),
      node('amp.B+', supplyV - 0.2),
      node('amp.GND', 0.08),
    ],
    elements: [
      { id: 'amp', of: 'amp', kind: 'load', model: 'power', from: 'amp.B+', to: 'amp.GND', cutoutV: 10.5 },
      {
        id: 'main-lug',
        of: 'main',
        kind: 'joint',
        model: 'resistance',
        from: 'x',
        to: 'y',
        currentA: 40,
        dropV: 0.02,
      },
    ],
  };
}

/** The power side of the plan of the content. */
export function powerOf(wires: readonly PlanWire[]): BuildPlan['power'] {
  const all = fuses();
  const carried = wires.filter(
    ({ role, origin }) => origin === 'job' && (role === 'power' || role === 'ground'),
  );
  return {
    points: [point('rated-power', 'Rated power', 14.4), point('engine-off', 'Engine off', 12.2)],
    conductors: carried.map((wire) => conductorOf(wire, all)),
    fuses: all,
    charging: [
      { name: 'idle', alternatorA: 70, vehicleA: 45, averageA: 10, marginA: 15, reserveMinutes: null },
      { name: 'cruise', alternatorA: 120, vehicleA: 45, averageA: 10, marginA: 65, reserveMinutes: null },
      { name: 'engine-off', alternatorA: 0, vehicleA: 5, averageA: 10, marginA: -15, reserveMinutes: 120 },
    ],
    loads: [],
    drops: [
      {
        point: 'rated-power',
        item: 'amp',
        source: 'battery',
        voltageV: 14.1,
        feedDropV: 0.2,
        groundDropV: 0.08,
        share: 0.02,
      },
    ],
    turnOn: [],
    turnOnChain: [],
  };
}
