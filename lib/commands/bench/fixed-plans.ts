import { existsSync } from 'node:fs';
import { cp, mkdtemp, rename, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { basename, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Keep } from '../../model/keep.ts';
import { textsBelow } from '../effects.ts';

/*
 * Plans the fixed jobs by the code of a tree, once and from cold; gives out the user time (s) of what lays out and routes
 * their boards. The jobs are those of `tests/boards`; a tree from before these has them as its own. A tree that can keep
 * steps of a plan is handed what takes their time; of one from before that a copy is made in which the functions do.
 */
const [given = ''] = process.argv.slice(2);

let [takenS, within] = [0, 0];

/** Does something, and adds its user time, where it isn't a part of what is measured already. */
function measured<T>(doIt: () => T): T {
  const before = process.cpuUsage();
  within += 1;
  try {
    return doIt();
  } finally {
    within -= 1;
    if (within === 0) takenS += process.cpuUsage(before).user / 1e6;
  }
}

/** The steps of a plan that lay out and route its boards. */
const boardSteps = new Set(['room', 'layout', 'proposals', 'ports', 'routing']);

const keep: Keep = (step, input) => {
  const compute = () => step.compute(input, keep);
  return boardSteps.has(step.id) ? measured(compute) : compute();
};

/** What did the same before there were steps, by its file. */
const boardFunctions = {
  'lib/board/stacked-search.ts': 'searchStacked',
  'lib/board/port-choice.ts': 'choosePorts',
  'lib/board/routing.ts': 'routeWires',
} as const;

/** Puts a file before another of the same name, which hands on all that it gives and measures one function of it. */
async function measureIn(tree: string, file: string, name: string): Promise<void> {
  const inner = file.replace(/\.ts$/, '.inner.ts');
  await rename(join(tree, file), join(tree, inner));
  const from = JSON.stringify(`./${basename(inner)}`);
  await writeFile(
    join(tree, file),
    `import { ${name} as inner } from ${from};
export * from ${from};
export const ${name} = (...line) => globalThis.measured(() => inner(...line));
`,
  );
}

/** A copy of a tree's code in which these functions are measured. */
async function measuredCopy(tree: string): Promise<string> {
  const copy = await mkdtemp(join(tmpdir(), 'rackleaf-bench-'));
  for (const part of ['lib', 'content', 'package.json'])
    await cp(join(tree, part), join(copy, part), { recursive: true });
  await symlink(join(tree, 'node_modules'), join(copy, 'node_modules'), 'junction');
  for (const [file, name] of Object.entries(boardFunctions)) await measureIn(copy, file, name);
  Object.assign(globalThis, { measured });
  return copy;
}

const hasSteps = existsSync(join(given, 'lib/model/keep.ts'));
const tree = hasSteps ? given : await measuredCopy(given);
try {
  const inTree = (path: string): string => pathToFileURL(join(tree, path)).href;
  const engine = 'lib/commands/engine.ts';
  if (existsSync(join(tree, engine))) await import(inTree(engine));
  const reading: typeof import('../../read/read-content.ts') = await import(
    inTree('lib/read/read-content.ts')
  );
  const planning: typeof import('../../plan/plan-job.ts') = await import(inTree('lib/plan/plan-job.ts'));
  const fixed = join(tree, 'tests', 'boards');
  const folder = existsSync(fixed) ? fixed : tree;
  const { jobs } = reading.readContent(await textsBelow(folder, join(folder, 'content')));
  if (jobs.length === 0) throw new Error(`No job can be read below ${folder}.`);
  for (const job of jobs) planning.planJob(job, keep);
  process.stdout.write(String(takenS));
} finally {
  if (tree !== given) await rm(tree, { recursive: true, force: true });
}
