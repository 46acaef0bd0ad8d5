import { fileURLToPath } from 'node:url';
import { exitStatus } from '../exit-status.ts';
import { compiled } from './compiled.ts';
import { type EditName, editShop } from './edits.ts';
import { atMost, type Goal } from './timing.ts';
import { inFreshFolder, runTree, type Tree } from './trees.ts';
import { forJavaScript, type MeasuredRun, runMeasured } from './user-time.ts';

/** A tree with what is measured of it. */
export interface MeasuredTree extends Tree {
  /** The job that `check` is asked for. */
  readonly job: string;
  /** Plan documents of every job, by the tree's own code. */
  readonly plans: readonly string[];
}

/** What is measured in one go; starts of a process always are, since they are left out of the others. */
export const measuredParts = ['help', 'check', 'build', 'draw', 'board'] as const;
export type MeasuredPart = (typeof measuredParts)[number];

/** One line: the present tree over the other commit, in user time of the processor. */
export interface AgainstRow {
  readonly id: string;
  readonly what: string;
  readonly thenS: number;
  readonly nowS: number;
  readonly ratio: number;
  /** What the ratio is held against, and whether it keeps to that. */
  readonly goal?: Goal;
}

/** User time by what it was taken for (s). */
type Seconds = Readonly<Record<string, number>>;

type StartId = 'start-node' | 'start-check' | 'start-judge' | 'start-plan' | 'start-build' | 'start-draw';

interface RowKind {
  readonly id: string;
  readonly what: string;
  /** What the present tree's time is held against; the same where left out. */
  readonly over?: string;
  /** The start of a process that is left out of both. */
  readonly less?: StartId;
  /** The goal: the greatest ratio. */
  readonly most?: number;
}

/** What is edited in turn where a command is repeated; an edit that finds nothing to change is left out. */
const editsOf = {
  check: ['title', 'length', 'filter', 'gain', 'name', 'colour'],
  build: ['title', 'length'],
} as const satisfies Readonly<Record<string, readonly EditName[]>>;

/** The row of a command after an edit that leaves the board alone. */
function ofEdit(command: 'check' | 'build', edit: EditName): RowKind {
  const row = { id: `${command}-${edit}`, what: `after another ${edit}, over cold`, over: command };
  if (command === 'build') return { ...row, less: 'start-draw' };
  // Under another title the plan stands: it is judged anew.
  return { ...row, less: edit === 'title' ? 'start-judge' : 'start-plan', most: 0.1 };
}

const rowKinds: readonly RowKind[] = [
  { id: 'start-node', what: 'process start: Node alone' },
  { id: 'start-help', what: 'process start: --help, in a checkout' },
  { id: 'start-check', what: 'process start: check of an empty folder' },
  { id: 'start-judge', what: 'process start: the same with what judges a plan loaded' },
  { id: 'start-plan', what: 'process start: the same with what plans loaded too' },
  { id: 'start-build', what: 'process start: build of an empty folder' },
  { id: 'start-draw', what: 'process start: the same with what plans and draws loaded' },
  {
    id: 'help',
    what: '--help of the package, over that of a checkout',
    over: 'start-help',
    less: 'start-node',
    most: 0.2,
  },
  { id: 'check', what: 'check of one job from cold', less: 'start-plan' },
  {
    id: 'check-again',
    what: 'the same again, over cold',
    over: 'check',
    less: 'start-check',
    most: 0.05,
  },
  ...editsOf.check.map((edit) => ofEdit('check', edit)),
  { id: 'build', what: 'build of the shop from cold', less: 'start-draw' },
  {
    id: 'build-again',
    what: 'the same again, over cold',
    over: 'build',
    less: 'start-build',
    most: 0.1,
  },
  ...editsOf.build.map((edit) => ofEdit('build', edit)),
  { id: 'draw', what: 'all drawings from ready plans, from cold', most: 0.5 },
  { id: 'board', what: 'a made-up board placed and routed, from cold' },
  { id: 'fixed', what: 'the fixed boards placed and routed, from cold', most: 0.333 },
];

/**
 * Measures two trees in turn, so many rounds, each run in a process of its own that finds nothing kept: the least
 * user time of each, which other work on the machine can only add to, as ratios within this one run. What is done
 * a second time is measured of the present tree alone.
 */
export async function measureAgainst(
  then: MeasuredTree,
  now: MeasuredTree,
  rounds: number,
  parts: readonly MeasuredPart[],
): Promise<AgainstRow[]> {
  const thenTaken: Seconds[] = [];
  const nowTaken: Seconds[] = [];
  for (let round = 0; round < rounds; round += 1) {
    thenTaken.push(await measureTree(then, parts, false));
    nowTaken.push(await measureTree(now, parts, true));
  }
  return rowsOf(least(thenTaken), least(nowTaken));
}

/** The rows of two trees' times; what was not measured of either is left out. */
export function rowsOf(then: Seconds, now: Seconds): AgainstRow[] {
  return rowKinds.flatMap(({ id, what, over = id, less, most }) => {
    const own = now[id];
    const other = then[over];
    if (own === undefined || other === undefined) return [];
    // What hardly takes longer than to start may come out shorter in one reading: it is none, not less.
    const nowS = Math.max(0, own - startS(now, less));
    // From cold the other tree loads what that takes, whatever this row loads.
    const coldLess = rowKinds.find((row) => row.id === over)?.less ?? less;
    const thenS = Math.max(0, other - startS(then, coldLess));
    const ratio = nowS / thenS;
    return [{ id, what, thenS, nowS, ratio, ...(most !== undefined && { goal: atMost(ratio, most) }) }];
  });
}

/** What is left out as the start of a process, none where nothing is. */
function startS(taken: Seconds, less: StartId | undefined): number {
  return less === undefined ? 0 : (taken[less] ?? 0);
}

/** The least of each over the rounds. */
function least(rounds: readonly Seconds[]): Seconds {
  const ids = new Set(rounds.flatMap((round) => Object.keys(round)));
  return Object.fromEntries(
    [...ids].map((id) => [id, Math.min(...rounds.map((round) => round[id] ?? Number.POSITIVE_INFINITY))]),
  );
}

async function measureTree(
  tree: MeasuredTree,
  parts: readonly MeasuredPart[],
  repeated: boolean,
): Promise<Seconds> {
  const wanted = new Set(parts);
  return {
    ...(await starts(tree)),
    ...(wanted.has('help') && repeated && (await help(tree))),
    ...(wanted.has('check') && (await commandRuns(tree, 'check', repeated))),
    ...(wanted.has('build') && (await commandRuns(tree, 'build', repeated))),
    ...(wanted.has('draw') && { draw: await scriptSeconds('./draw-plans.ts', [tree.folder, ...tree.plans]) }),
    ...(wanted.has('board') && {
      board: await scriptSeconds('./route-board.ts', [tree.folder]),
      fixed: await scriptSeconds('./fixed-plans.ts', [tree.folder]),
    }),
  };
}

/** What `check` loads for a job that is judged anew, what for one that is planned anew, and what a build that draws. */
const judging = ['commands/kept/plan-step.ts'];
const planning = [...judging, 'plan/plan-job.ts'];
const drawing = [...planning, 'commands/drawings.ts'];

/** Starts of the process, with every module that the command loads: in an empty folder there is nothing to plan. */
function starts(tree: MeasuredTree): Promise<Seconds> {
  return inFreshFolder(null, async (folder) => {
    const fine = [exitStatus.done, exitStatus.inputErrors];
    const secondsOf = async (word: string) => (await runTree(tree, [word], folder, fine)).userS;
    const loading = (word: string, modules: readonly string[]) =>
      scriptRun('./start.ts', [tree.folder, word, ...modules], folder);
    return {
      'start-node': (await runMeasured('--eval', ['0'], folder, forJavaScript)).userS,
      'start-help': await secondsOf('--help'),
      'start-check': await secondsOf('check'),
      'start-judge': (await loading('check', judging)).userS,
      'start-plan': (await loading('check', planning)).userS,
      'start-build': await secondsOf('build'),
      'start-draw': (await loading('build', drawing)).userS,
    };
  });
}

/** What a shop waits for that installed the package. */
async function help(tree: MeasuredTree): Promise<Seconds> {
  const { cli, remove } = await compiled(tree.folder);
  try {
    return await inFreshFolder(null, async (folder) => ({
      help: (await runMeasured(cli, ['--help'], folder, forJavaScript)).userS,
    }));
  } finally {
    await remove();
  }
}

/** A command in a fresh shop from cold; where it is repeated, again, and after each edit. */
function commandRuns(tree: MeasuredTree, part: 'check' | 'build', repeated: boolean): Promise<Seconds> {
  const line = part === 'check' ? [part, tree.job] : [part];
  return inFreshFolder(tree.shop, async (folder) => {
    const secondsOf = async () => (await runTree(tree, line, folder)).userS;
    const taken: Record<string, number> = { [part]: await secondsOf() };
    if (!repeated) return taken;
    taken[`${part}-again`] = await secondsOf();
    for (const edit of editsOf[part])
      if (await editShop(folder, tree.job, edit)) taken[`${part}-${edit}`] = await secondsOf();
    return taken;
  });
}

/** The user time that a script of this folder gives out (s). */
async function scriptSeconds(script: string, line: readonly string[]): Promise<number> {
  return Number((await scriptRun(script, line, process.cwd())).out);
}

/** Runs a script of this folder. Throws where it ends in another way than it should. */
async function scriptRun(script: string, line: readonly string[], folder: string): Promise<MeasuredRun> {
  const run = await runMeasured(fileURLToPath(new URL(script, import.meta.url)), line, folder);
  if (run.status !== exitStatus.done) throw new Error(`${script} ended with ${run.status}: ${run.told}`);
  return run;
}
