import { type Link, type ReadJob, terminalId } from '../../lib/model/content/resolved-job.ts';
import {
  type BuildPlan,
  type PlanChannel,
  type PlanSize,
  type PlanTerminal,
  type PlanWire,
  planFormat,
} from '../../lib/model/plan/index.ts';
import { awgSize } from '../../lib/model/quantity/wire-size.ts';
import type { ConductorRole } from '../../lib/model/vocabulary.ts';
import { planHouseRules } from '../../lib/plan/plan-house-rules.ts';
import { boardOf } from './plan-board.ts';
import { powerOf } from './plan-power.ts';

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
export function wireOf(link: Link, job: ReadJob): PlanWire {
  const name = link.id.replace(/^vehicle\./, '').replace(/\.[+-]$/, '');
  const role = roles.find(([pattern]) => pattern.test(name))?.[1] ?? 'power';
  const size = sized(sizes[name] ?? (role === 'speaker' ? '12' : role === 'power' ? '4' : '18'));
  const end = (terminal: string) => {
    const device = job.devices.find(({ id }) => terminal.startsWith(`${id}.`));
    const joint = device?.facts.terminals[terminal.slice(device.id.length + 1)]?.joint;
    return {
      terminal,
      ...(joint === 'set-screw'
        ? ({ prep: 'ferrule', form: 'ferrule' } as const)
        : ({ prep: 'crimp', form: 'crimp' } as const)),
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
  peaks: [],
  speakers: [],
  wiring: 'one coil',
  wireLossDb: 0.1,
  outputLoadOhm: 4,
  mayDrive: true,
  gain: null,
  coils: [],
  wirings: [],
  wiringsInAll: 1,
  damping: 60,
  belowDb: 0,
  levelsDb: [],
  ...more,
});

function terminalsOf(job: ReadJob, wires: readonly PlanWire[]): PlanTerminal[] {
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
  const speaker = {
    delayMs: 0,
    polarity: 'normal',
    distanceM: 1,
    powerW: 75,
    delaySamples: 0,
    mounted: 'normal',
    reversedWhy: null,
  } as const;
  return {
    channels: [
      channel('1', {
        speakers: ['tweeter'],
        filters: [{ where: 'dsp.OUT1', pass: 'high-pass', type: 'linkwitz-riley', order: 4, cornerHz: 2500 }],
      }),
      channel('2', {
        speakers: ['sub'],
        filters: [
          { where: 'dsp.OUT2', pass: 'subsonic', type: 'butterworth', order: 4, cornerHz: 27 },
          { where: 'dsp.OUT2', pass: 'low-pass', type: 'linkwitz-riley', order: 4, cornerHz: 2500 },
        ],
      }),
    ],
    speakers: [
      { id: 'tweeter', channel: 'amp.1', ...speaker },
      { id: 'sub', channel: 'amp.2', ...speaker },
    ],
    sharedDelays: [],
    inputs: [],
    outputs: [],
    curves: { frequenciesHz: [], sums: [] },
  };
}

function headOf(job: ReadJob): Pick<BuildPlan, 'rackleaf' | 'format' | 'job' | 'shop' | 'vehicle'> {
  return {
    rackleaf: 1,
    format: planFormat,
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
    shop: {
      name: job.shop.name,
      address: [],
      units: 'inch',
      fraction: 16,
      paper: 'letter',
      largerPaper: null,
      siteUrl: null,
    },
    vehicle: { id: job.vehicle.id, title: job.vehicle.title, cautions: [] },
  };
}

/** The plan of the content, as a test changes it. */
export function planOf(job: ReadJob): BuildPlan {
  const wires = job.links.map((link) => wireOf(link, job));
  const controls = job.devices
    .filter(({ origin }) => origin === 'job')
    .flatMap(({ id, facts }) =>
      Object.entries(facts.controls).map(([control, { safe, why, panel }], index) => {
        return {
          item: id,
          control,
          preset: safe,
          why,
          safeState: safe,
          panel,
          atM: null,
          order: index + 1,
          chosen: 'computed' as const,
          safe: true,
          final: { state: safe, why: 'stays', chosen: 'computed' as const, during: 'presets' as const },
        };
      }),
    );
  return {
    ...headOf(job),
    rules: planHouseRules(job),
    findings: [],
    traces: {},
    items: [],
    power: powerOf(wires),
    audio: audioOf(),
    boards: [boardOf()],
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
    schedule: { totalMinutes: 0, twoPersonMinutes: 0, criticalMinutes: 0, criticalPath: [], times: [] },
    branches: [],
    pick: [],
    offCuts: [],
    heat: [],
    passes: 2,
  };
}
