import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { projectFolder } from '../publish/site/templates.ts';
import {
  type AgainstRow,
  type MeasuredPart,
  type MeasuredTree,
  measureAgainst,
  measuredParts,
} from './bench/against.ts';
import { openCommit, repositoryOf } from './bench/other-commit.ts';
import { goalText } from './bench/timing.ts';
import { jobsOf, longestJob, sharedShop, type Tree, writePlans } from './bench/trees.ts';
import type { Effects } from './effects.ts';
import { type ExitStatus, exitStatus } from './exit-status.ts';

/** What is measured, and how often. */
export interface AgainstChoices {
  /** A commit, by any name that git knows. */
  readonly reference: string;
  readonly rounds: number;
  readonly parts: readonly MeasuredPart[];
  /** The job that `check` is asked for; null for the one of the longest file. */
  readonly job: string | null;
}

/** The choices as they were written, read; or what is wrong with them. */
export function readAgainst(
  reference: string,
  parts: readonly string[],
  rounds: string | null,
  job: string | null,
): AgainstChoices | string {
  const known = measuredParts.filter((part) => parts.length === 0 || parts.includes(part));
  const count = Number(rounds ?? 3);
  if (parts.some((part) => !measuredParts.some((one) => one === part)))
    return `--part takes ${measuredParts.join(', ')}`;
  if (!Number.isInteger(count) || count < 1) return '--rounds takes a whole number from 1';
  return { reference, parts: known, rounds: count, job };
}

/**
 * `rackleaf bench --against COMMIT`: what this tree costs over what another commit of it does, both in turns within
 * one run. Needs the repository of the tool: status 3 without.
 */
export async function benchAgainst(
  effects: Effects,
  choices: AgainstChoices,
  json: boolean,
): Promise<ExitStatus> {
  const repository = await repositoryOf(projectFolder);
  const other = repository === null ? null : await openCommit(repository, choices.reference);
  if (repository === null || other === null) {
    effects.tell(
      repository === null
        ? `--against needs the repository of the tool, with git: ${projectFolder} is in none`
        : `there is no commit "${choices.reference}" in ${repository}`,
    );
    return repository === null ? exitStatus.missing : exitStatus.inputErrors;
  }
  const scratch = await mkdtemp(join(tmpdir(), 'rackleaf-plans-'));
  try {
    const present = { folder: repository, shop: effects.root };
    const { trees, same } = await sharedShop([present, { folder: other.folder, shop: other.folder }]);
    if (!same) effects.tell('the two read no shop alike: each is measured on its own');
    const measured = [];
    for (const tree of trees)
      measured.push(await measuredTree(tree, choices, join(scratch, String(measured.length))));
    const [now, then] = measured;
    if (!now || !then) {
      effects.tell(`there is no job to measure${choices.job === null ? '' : `: ${choices.job}`}`);
      return exitStatus.inputErrors;
    }
    const rows = await measureAgainst(then, now, choices.rounds, choices.parts);
    effects.out(json ? JSON.stringify({ commit: other.commit, rows }, null, 2) : againstTable(rows));
    return exitStatus.done;
  } finally {
    await Promise.all([other.remove(), rm(scratch, { recursive: true, force: true })]);
  }
}

/** A tree with its job and, where drawings are measured, its plans; null where the shop has no such job. */
async function measuredTree(
  tree: Tree,
  { job, parts }: AgainstChoices,
  folder: string,
): Promise<MeasuredTree | null> {
  const known = await jobsOf(tree);
  const own = job ?? (await longestJob(tree));
  if (own === null || !known.includes(own)) return null;
  return { ...tree, job: own, plans: parts.includes('draw') ? await writePlans(tree, folder) : [] };
}

/** The rows as plain columns. */
function againstTable(rows: readonly AgainstRow[]): string {
  const width = Math.max(...rows.map(({ what }) => what.length));
  const head = `${'user time of the processor'.padEnd(width)}      then       now   now/then`;
  const seconds = (value: number) => `${value.toFixed(2)} s`.padStart(9);
  return [
    head,
    ...rows.map(({ what, thenS, nowS, ratio, goal }) =>
      `${what.padEnd(width)} ${seconds(thenS)} ${seconds(nowS)} ${ratio.toFixed(3).padStart(10)}  ${goalText(goal)}`.trimEnd(),
    ),
  ].join('\n');
}
