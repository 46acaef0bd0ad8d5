import { drawJobPages } from '../draw/draw-job.ts';
import { solveNetwork } from '../power/network/network.ts';
import type { Network, NetworkResult } from '../power/network/network-types.ts';
import { pageWithFiles } from '../publish/page/render-page.ts';
import { plainNames } from '../publish/site/assets/asset-names.ts';
import { shippedMetrics } from '../publish/site/shipped-metrics.ts';
import { sitePages } from '../publish/site/site-pages.ts';
import { openTemplates } from '../publish/site/templates.ts';
import { benchBoard, layOutAndRoute, layOutMadeUp, madeUpCount } from './bench/boards.ts';
import { processClock, wallClock } from './bench/clocks.ts';
import { diagramKinds, drawnCrossings, elkCrossings, elkGraph, openElk } from './bench/diagrams.ts';
import { fixedRows } from './bench/fixed/fixed-rows.ts';
import { benchNetwork } from './bench/networks.ts';
import { serveRows } from './bench/serve-save.ts';
import { openSpiceProcess, type SpiceProcess } from './bench/spice-process.ts';
import {
  type BenchRow,
  type Clock,
  type Goal,
  goalText,
  readingOf,
  secondsOf,
  secondsOfEach,
} from './bench/timing.ts';
import { withCrew } from './crew/with-crew.ts';
import { jobDrawings } from './drawings.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';
import { type LoadedShop, loadShop, siteOf } from './shop/load-shop.ts';

/** What is measured; all of it where none is named. */
export const benchParts = ['solve', 'board', 'job', 'serve', 'diagrams'] as const;
export type BenchPart = (typeof benchParts)[number];

/** How it is measured. */
export interface BenchWish {
  /** True to search the fixed boards for minutes. */
  readonly longest?: boolean;
  readonly clock?: Clock;
}

/** The parts as they were written, read; or what is wrong with them. */
export function readBenchParts(parts: readonly string[]): readonly BenchPart[] | string {
  if (parts.some((part) => !benchParts.some((one) => one === part)))
    return `--part takes ${benchParts.join(', ')}`;
  return benchParts.filter((part) => parts.length === 0 || parts.includes(part));
}

/**
 * `rackleaf bench [--part PART] [--longest] [--json]`: what the computations cost on this machine, as ratios within one run, so that
 * no figure depends on how fast the machine is. The solver needs ngspice beside it, which only a development install has:
 * status 3 without. `--longest` looks for the fewest crossings of the fixed boards for minutes.
 */
export async function bench(
  effects: Effects,
  json: boolean,
  parts: readonly BenchPart[] = benchParts,
  { longest = false, clock = processClock }: BenchWish = {},
): Promise<ExitStatus> {
  const rows: BenchRow[] = [];
  if (parts.includes('solve')) {
    const solved = await solveRows(clock);
    if (!solved) {
      effects.tell(
        'bench holds the solver against ngspice, and eecircuit-engine is not installed: npm install',
      );
      return exitStatus.missing;
    }
    rows.push(...solved);
  }
  if (parts.includes('board')) rows.push(...(await boardRows(clock, effects.root, longest)));
  if (parts.some((part) => part === 'job' || part === 'serve' || part === 'diagrams')) {
    const shop = await withCrew(effects, (crew) => loadShop(effects, crew, { compares: false }));
    if (parts.includes('job')) rows.push(...(await jobRows(clock, shop)));
    if (parts.includes('serve')) rows.push(...(await saveRows(effects.root, shop)));
    if (parts.includes('diagrams')) rows.push(...(await diagramRows(shop)));
  }
  effects.out(json ? JSON.stringify({ rows }, null, 2) : table(rows));
  return exitStatus.done;
}

/** The solver by itself and beside ngspice; null where that is not installed. */
async function solveRows(clock: Clock): Promise<BenchRow[] | null> {
  const network = benchNetwork(1, 50);
  const spice = await openSpiceProcess(network, 13.8);
  if (!spice) return null;
  const solver = await solverRows(network, spice);
  spice.close();
  return [...(await scalingRows(clock)), ...solver];
}

/**
 * One solve of a network of 50 elements, by this project and by ngspice: as a caller waits for it, and by the work of
 * the processor alone, without what the engine spends waiting.
 */
async function solverRows(network: Network, spice: SpiceProcess): Promise<BenchRow[]> {
  const solve = () => solveNetwork(network);
  const apart = differenceUv(solve(), await spice.voltages());
  const [own = Number.NaN, theirs = Number.NaN] = await secondsOfEach([
    readingOf(wallClock, solve),
    spice.reading('wall'),
  ]);
  const [ownWork = Number.NaN, theirWork = Number.NaN] = await secondsOfEach([
    readingOf(processClock, solve),
    spice.reading('process'),
  ]);
  return [
    ms('solve', 'one network of 50 elements solved', own),
    ms('solve-ngspice', 'the same by ngspice', theirs),
    {
      id: 'solve-apart',
      what: 'greatest difference of a voltage',
      value: apart,
      unit: 'uV',
      goal: { says: 'under 10', met: apart < 10 },
    },
    times('solve-ratio', 'ngspice over this, as a caller waits', theirs / own, {
      says: 'at least 100',
      met: theirs / own >= 100,
    }),
    times('solve-work-ratio', 'ngspice over this, by work of the processor', theirWork / ownWork),
  ];
}

/** The greatest difference between two answers (uV): a ratio of times says something only of equal answers. */
function differenceUv(own: NetworkResult, theirs: ReadonlyMap<string, number> | null): number {
  if (own.state !== 'solved' || !theirs)
    throw new Error('The network of the benchmark was not solved by both.');
  const apartV = own.nodes.map(({ id, voltageV }) => Math.abs(voltageV - (theirs.get(id) ?? Number.NaN)));
  return 1e6 * Math.max(...apartV);
}

/** A thousand networks of 50 elements; the cost of an element in networks ten times as large. */
async function scalingRows(clock: Clock): Promise<BenchRow[]> {
  const solveAll = (count: number, size: number) => {
    const networks = Array.from({ length: count }, (_, k) => benchNetwork(k + 1, size));
    return secondsOf(clock, () => networks.forEach((network) => void solveNetwork(network)));
  };
  const thousand = await solveAll(1000, 50);
  const hundred = await solveAll(100, 50);
  const large = await solveAll(100, 500);
  return [
    ms('networks', '1,000 networks of 50 elements solved', thousand),
    times('networks-count', 'per network: 1,000 networks over 100', thousand / 10 / hundred, {
      says: 'about 1',
    }),
    times('networks-size', 'per element: 500 elements over 50', large / 10 / hundred, { says: 'about 1' }),
  ];
}

/** Three amplifiers and eight parts placed and routed; then twice as many on a board twice as long. */
async function boardRows(clock: Clock, root: string, longest: boolean): Promise<BenchRow[]> {
  const [one, two] = [benchBoard(1), benchBoard(2)];
  if (!one || !two) return [];
  const single = await secondsOf(clock, () => layOutAndRoute(one));
  const double = await secondsOf(clock, () => layOutAndRoute(two));
  return [
    ms('board', 'a board of three amplifiers and eight parts placed and routed', single),
    times('board-double', 'twice the parts over once', double / single),
    ...(await madeUpRows(clock)),
    ...(await fixedRows(root, longest)),
  ];
}

/** Boards made up from a solution, every place left open: how long they take, and how many wires find no way. */
async function madeUpRows(clock: Clock): Promise<BenchRow[]> {
  let unwired = 0;
  const seconds = await secondsOf(clock, () => {
    unwired = layOutMadeUp().unwired;
  });
  const what = `${madeUpCount} made-up boards of 30 to 48 wires placed and routed`;
  return [
    ms('made-up', what, seconds),
    {
      id: 'made-up-unwired',
      what: 'their wires without a way',
      value: unwired,
      unit: 'wires',
      goal: { says: 'none', met: unwired === 0 },
    },
  ];
}

/** Drawing the largest job of the shop, and building its page. A shop without a job has neither. */
async function jobRows(clock: Clock, shop: LoadedShop): Promise<BenchRow[]> {
  const site = siteOf(shop);
  const largest = shop.jobs.toSorted((a, b) => b.plan.wires.length - a.plan.wires.length)[0];
  if (!site || !largest) return [];
  const drawingsOf = jobDrawings();
  const drawings = drawingsOf(largest.plan);
  const page = sitePages({ site, audience: 'bench' }).find(({ plan }) => plan?.job.id === largest.job.id);
  const templates = openTemplates();
  const draw = await secondsOf(clock, () => drawingsOf(largest.plan));
  const drawn = ms('draw', `the drawings of ${largest.job.id}`, draw);
  if (!page) return [drawn];
  const look = { templates, names: plainNames };
  const build = await secondsOf(clock, () => pageWithFiles(page, look, () => drawings));
  return [drawn, ms('page', `its page of ${page.address}, drawings at hand`, build)];
}

/** A save of the largest job that is not released: what is released stays as it is. */
async function saveRows(root: string, { jobs }: LoadedShop): Promise<BenchRow[]> {
  const open = jobs.filter(({ released }) => !released);
  const largest = open.toSorted((a, b) => b.plan.wires.length - a.plan.wires.length)[0];
  return largest ? serveRows(root, largest.job.id) : [];
}

/** Crossings in the diagrams of every job, and those that elkjs comes to with the same conductors where it is installed. */
async function diagramRows({ jobs }: LoadedShop): Promise<BenchRow[]> {
  const layOut = await openElk();
  const metrics = shippedMetrics();
  const rows: BenchRow[] = [];
  for (const { plan } of jobs) {
    const pages = drawJobPages(plan, metrics);
    for (const kind of diagramKinds) {
      const id = `${kind.id}-${plan.job.id}`;
      const what = `the ${kind.id} diagram of ${plan.job.id}`;
      const own = drawnCrossings(pages, kind, plan.wires);
      rows.push({ id, what, value: own, unit: 'crossings', goal: { says: 'no more than by elkjs' } });
      if (!layOut) continue;
      const theirs = elkCrossings(await layOut(elkGraph(kind, plan.wires)));
      rows.push({ id: `${id}-elkjs`, what: 'the same by elkjs', value: theirs, unit: 'crossings' });
    }
  }
  return rows;
}

function ms(id: string, what: string, seconds: number): BenchRow {
  return { id, what, value: seconds * 1000, unit: 'ms' };
}

function times(id: string, what: string, value: number, goal?: Goal): BenchRow {
  return { id, what, value, unit: 'times', ...(goal && { goal }) };
}

/** The rows as plain columns. */
function table(rows: readonly BenchRow[]): string {
  const cells = rows.map(({ what, value, unit, goal }) => {
    return { what, value: `${Number(value.toPrecision(3))} ${unit}`, target: goalText(goal) };
  });
  const [whatWidth, valueWidth] = [
    Math.max(...cells.map(({ what }) => what.length)),
    Math.max(...cells.map(({ value }) => value.length)),
  ];
  return cells
    .map(({ what, value, target }) =>
      `${what.padEnd(whatWidth)}  ${value.padStart(valueWidth)}  ${target}`.trimEnd(),
    )
    .join('\n');
}
