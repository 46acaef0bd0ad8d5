import type {
  BuildPlan,
  OperatingPoint,
  PlanBoard,
  PlanChannel,
  PlanConductor,
  PlanFuse,
  PlanSize,
  PlanTerminal,
  PlanWire,
} from '../../lib/model/plan/index.ts';
import { type Job, type Link, terminalId } from '../../lib/model/resolved-job.ts';
import type { ConductorRole } from '../../lib/model/vocabulary.ts';
import { awgSize } from '../../lib/model/wire-size.ts';

const roles: readonly (readonly [RegExp, ConductorRole])[] = [
  [/ground|strap|block$/, 'ground'],
  [/rem/, 'turn-on'],
  [/signal/, 'signal'],
  [/speaker/, 'speaker'],
];

export const sized = (awg: string): PlanSize => ({ ...awgSize(awg) });

/** Size of each link of the content: what its fuse and its port ask for. */
const sizes: Readonly<Record<string, string>> = {
  'dsp-feed': '16',
  'radio-feed': '16',
  'dsp-ground': '16',
  'radio-ground': '16',
  feed: '4',
  main: '4',
  'board-ground': '4',
  'amp-feed': '8',
  'amp-ground': '8',
};

/** A wire of a link, as a plan would hold it. */
export function wireOf(link: Link, job: Job): PlanWire {
  const name = link.id.replace(/^vehicle\./, '').replace(/\.[+-]$/, '');
  const role = roles.find(([pattern]) => pattern.test(name))?.[1] ?? 'power';
  const size = sized(sizes[name] ?? (role === 'speaker' ? '12' : role === 'power' ? '4' : '18'));
  const end = (terminal: string) => {
    const device = job.devices.find(({ id }) => terminal.startsWith(`${id}.`));
    const joint = device?.facts.terminals[terminal.slice(device.id.length + 1)]?.joint;
    return {
      terminal,
      prep: joint === 'set-screw' ? 'ferrule' : 'crimp',
      part: null,
      stripM: null,
      loopM: 0,
    };
  };
  const run = job.runs.find(({ links }) => links.includes(name));
  return {
    id: link.id,
    link: name,
    label: link.id,
    origin: link.origin,
    from: terminalId(link.from),
    to: terminalId(link.to),
    role,
    size,
    colour: null,
    lengthM: name === 'feed' ? 0.15 : 0.3,
    measured: 'given',
    part: null,
    ...(link.cable && { cable: link.cable.id, conductor: link.cable.conductor }),
    board: null,
    run: run?.id ?? null,
    zones: (run?.route.passes ?? []).map(({ zone, length, edge }) => ({ zone, lengthM: length, edge })),
    covering: run?.covering ? [run.covering] : [],
    ends: [end(terminalId(link.from)), end(terminalId(link.to))],
  };
}

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
    neededA: 0,
    chosen: 'computed',
    reason: 'smallest that carries its fuse',
  };
}

function point(name: string, title: string, supplyV: number): OperatingPoint {
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

const channel = (id: string, more: Partial<PlanChannel>): PlanChannel => ({
  id: `amp.${id}`,
  amplifier: 'amp',
  positive: `amp.CH${id}+`,
  negative: `amp.CH${id}-`,
  loadOhm: 4,
  minimumOhm: 2,
  dcResistanceOhm: { fromOhm: 3, toOhm: 3.4 },
  powerW: 75,
  gainVoltageV: 17.3,
  toneHz: 1000,
  filters: [],
  speakers: [],
  wiring: 'one coil',
  wireLossDb: 0.1,
  ...more,
});

const corner = (xM: number, yM: number) => ({ xM, yM, bulge: 0 });

function board(): PlanBoard {
  return {
    id: 'main',
    title: 'Main board',
    space: 'well',
    spaceTitle: 'Side well',
    sheet: 'plywood',
    material: 'birch-plywood',
    thicknessM: 0.012,
    outline: [corner(0, 0), corner(0.5, 0), corner(0.5, 0.3), corner(0, 0.3)],
    cutouts: [],
    holes: [
      {
        n: 1,
        xM: 0.05,
        yM: 0.05,
        diameterM: 0.006,
        depthM: null,
        purpose: 'fixing',
        of: 'a',
        behind: 'nothing',
      },
    ],
    areaM2: 0.15,
    massKg: 1.2,
    loadedMassKg: 6,
    centroid: { xM: 0.25, yM: 0.15 },
    widthM: 0.5,
    heightM: 0.3,
    narrowestWebM: 0.05,
    sagM: 0.00005,
    firstModeHz: 70,
    retentionG: 30,
    datumInSpace: { xM: 0, yM: 0 },
    spaceOutline: [],
    spaceDepthM: 0.2,
    obstacles: [],
    right: 'rear',
    upward: 'up',
    fixings: [
      { id: 'a', xM: 0.05, yM: 0.05, part: 'screw', point: 'p1', spacerM: 0 },
      { id: 'b', xM: 0.45, yM: 0.05, part: 'screw', point: 'p2', spacerM: 0 },
    ],
    placements: [],
    routes: [
      route('amp-feed', 'power', [0.1, 0.2], [0.4, 0.2]),
      route('signal-1', 'signal', [0.1, 0.1], [0.4, 0.1]),
    ],
    crossings: 0,
    evaluations: 0,
    proposals: [],
    exits: [],
  };
}

export function route(
  wire: string,
  layer: ConductorRole,
  ...points: readonly (readonly [number, number])[]
): PlanBoard['routes'][number] {
  return {
    wire,
    along: [wire],
    layer,
    points: points.map(([xM, yM]) => ({ xM, yM })),
    lengthM: 0.3,
    bends: 0,
  };
}

function terminalsOf(job: Job, wires: readonly PlanWire[]): PlanTerminal[] {
  return job.devices
    .filter(({ origin }) => origin === 'job')
    .flatMap(({ id, facts }) =>
      Object.keys(facts.terminals).map((terminal): PlanTerminal => {
        const own = wires
          .filter(({ from, to }) => [from, to].includes(`${id}.${terminal}`))
          .map((wire) => wire.id);
        const reason = job.file['left-open'][`${id}.${terminal}`];
        const state = own.length > 0 ? 'connected' : reason === undefined ? 'unaccounted' : 'open';
        return { item: id, terminal, wires: own, state, ...(reason !== undefined && { reason }) };
      }),
    );
}

function audioOf(): BuildPlan['audio'] {
  const speaker = { delayMs: 0, polarity: 'normal', distanceM: 1, powerW: 75 } as const;
  return {
    channels: [
      channel('1', {
        speakers: ['tweeter'],
        filters: [{ where: 'dsp.OUT1', pass: 'high-pass', type: 'linkwitz-riley', order: 4, cornerHz: 2500 }],
      }),
      channel('2', {
        speakers: ['sub'],
        filters: [{ where: 'dsp.OUT2', pass: 'subsonic', type: 'butterworth', order: 4, cornerHz: 27 }],
      }),
    ],
    speakers: [
      { id: 'tweeter', channel: 'amp.1', ...speaker },
      { id: 'sub', channel: 'amp.2', ...speaker },
    ],
  };
}

function headOf(job: Job): Pick<BuildPlan, 'rackleaf' | 'job' | 'shop' | 'vehicle'> {
  return {
    rackleaf: 1,
    job: {
      id: job.id,
      title: job.file.title,
      revision: 'A',
      status: 'draft',
      issuedOn: '2026-03-14',
      drawnBy: null,
      approvedBy: null,
      fabricator: null,
      notes: [],
      revisions: [],
    },
    shop: { name: job.shop.name, address: [], units: 'inch', fraction: 16, paper: 'letter', siteUrl: null },
    vehicle: { id: job.vehicle.id, title: job.vehicle.title, cautions: [] },
  };
}

/** The plan of the content, as a test changes it. */
export function planOf(job: Job): BuildPlan {
  const wires = job.links.map((link) => wireOf(link, job));
  const all = fuses();
  const carried = wires.filter(
    ({ role, origin }) => origin === 'job' && (role === 'power' || role === 'ground'),
  );
  const controls = job.devices
    .filter(({ origin }) => origin === 'job')
    .flatMap(({ id, facts }) =>
      Object.entries(facts.controls).map(([control, { safe, why }]) => {
        return { item: id, control, preset: safe, why, chosen: 'computed' as const, safe: true };
      }),
    );
  return {
    ...headOf(job),
    findings: [],
    traces: {},
    items: [],
    power: {
      points: [point('rated', 'Rated power', 14.4), point('engine-off', 'Engine off', 12.2)],
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
          point: 'rated',
          item: 'amp',
          source: 'battery',
          voltageV: 14.1,
          feedDropV: 0.2,
          groundDropV: 0.08,
          share: 0.02,
        },
      ],
      turnOn: [],
    },
    audio: audioOf(),
    boards: [board()],
    wires,
    cables: [],
    runs: job.runs.map(({ id, routeId, route: { title, side }, links, covering }) => {
      return {
        id,
        route: routeId,
        title,
        side,
        wires: [...links],
        lengthM: 4,
        bundleM: 0.012,
        covering,
        grommets: [],
      };
    }),
    terminals: terminalsOf(job, wires),
    controls,
    measurements: [],
    steps: [],
    pick: [],
    passes: 2,
  };
}
