import { type BuiltJob, nothingReleased, type ReleasedFacts } from '../../model/content/built.ts';
import type { ReleasedTakes } from '../../model/content/promised.ts';
import type { SourceFile } from '../../model/content/source-file.ts';
import { computeAnew, type Keep, type Step } from '../../model/keep.ts';
import { type BuildPlan, broughtUp, buildPlanSchema, planFormat } from '../../model/plan/index.ts';
import type { Problem } from '../../model/problem.ts';
import { builtJob } from '../../plan/built/built-job.ts';
import { shelfTakes } from '../../plan/work/shelf-takes.ts';
import { frozenAt, revisionTurn } from '../../read/frozen-file.ts';
import type { ReleasedJobs } from '../../read/read-content.ts';

/** What of a frozen plan a shop of many jobs asks for: small beside the plan, so that it is read for all of them. */
export interface FrozenFacts extends ReleasedTakes {
  /** Labels of wires, by wire. */
  readonly labels: Readonly<Record<string, string>>;
  readonly built: BuiltJob;
}

/** A revision that was released, as it was frozen. */
export interface FrozenPlan {
  readonly job: string;
  readonly revision: string;
  readonly facts: FrozenFacts;
  /** The plan itself, read when it is first asked for. */
  readonly plan: BuildPlan;
}

/** The frozen plans among the files of a shop, oldest revision first. One that can't be read is a problem. */
export function frozenPlans(
  files: readonly SourceFile[],
  keep: Keep = computeAnew,
): {
  readonly frozen: readonly FrozenPlan[];
  readonly problems: readonly Problem[];
} {
  const frozen: FrozenPlan[] = [];
  const problems: Problem[] = [];
  for (const { path, text } of files) {
    const of = frozenAt(path);
    if (of === null) continue;
    const facts = keep(factsStep, text);
    if (typeof facts === 'object') frozen.push(openFrozen({ ...of, facts }, text, keep));
    else problems.push(unreadable(path, facts));
  }
  const key = ({ job, revision }: FrozenPlan) => `${job} ${revisionTurn(revision)}`;
  return { frozen: frozen.toSorted((a, b) => (key(a) < key(b) ? -1 : 1)), problems };
}

function openFrozen(known: Omit<FrozenPlan, 'plan'>, text: string, keep: Keep): FrozenPlan {
  let read: BuildPlan | null = null;
  return {
    ...known,
    get plan() {
      read ??= planOf(keep(frozenStep, text));
      return read;
    },
  };
}

function planOf(read: BuildPlan | string): BuildPlan {
  if (typeof read === 'string')
    throw new Error(`A plan of which the facts are known can not be read: ${read}.`);
  return read;
}

/** What of a frozen file is asked for of all jobs: a shop of a thousand does not read as many plans for it. */
const factsStep: Step<string, FrozenFacts | string> = {
  id: 'frozen-facts',
  compute: (text, keep) => {
    const plan = keep(frozenStep, text);
    return typeof plan === 'string' ? plan : factsOf(plan);
  },
};

function factsOf(plan: BuildPlan): FrozenFacts {
  const { revision, issuedOn } = plan.job;
  const labels = plan.wires.filter(({ label }) => label !== '').map(({ id, label }) => [id, label] as const);
  return {
    revision,
    issuedOn,
    labels: Object.fromEntries(labels),
    built: builtJob(plan),
    takes: shelfTakes(plan),
  };
}

/** The text of a frozen file, read. */
const frozenStep: Step<string, BuildPlan | string> = { id: 'frozen', compute: readPlan };

/** The plan of a frozen file, brought up to today's format; where it is none, what should stand there. */
function readPlan(text: string): BuildPlan | string {
  const asWritten = 'the file exactly as `rackleaf release` wrote it';
  const read = broughtUp(parsed(text));
  if (read.state === 'too-new')
    return `a plan of format ${planFormat} or earlier; this one is of format ${read.format}, of a later version of Rackleaf: update it`;
  if (read.state === 'no-plan') return asWritten;
  const { data, error } = buildPlanSchema.safeParse(read.plan);
  if (data) return data;
  const lacking = error.issues[0]?.path.join('.');
  return lacking === undefined ? asWritten : `${asWritten}; ${lacking} is amiss`;
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function unreadable(path: string, expected: string): Problem {
  return {
    where: { file: path, line: 1, column: 1, path: '' },
    message: 'the frozen plan of a released revision can not be read',
    expected,
    remedy: 'bring it back from version control: its sheets were handed out',
  };
}

/** What released revisions fixed, by job: labels, the latest revision last and so in force, and all that is built. */
export function releasedJobs(frozen: readonly FrozenPlan[]): ReleasedJobs {
  const released: Record<string, ReleasedFacts> = {};
  for (const { job, facts } of frozen) {
    const { labels, built, takes } = released[job] ?? nothingReleased;
    released[job] = {
      labels: { ...labels, ...facts.labels },
      built: [...built, facts.built],
      takes: { ...takes, [facts.revision]: facts.takes },
    };
  }
  return released;
}
