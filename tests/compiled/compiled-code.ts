import { randomUUID } from 'node:crypto';
import { existsSync, renameSync, rmSync } from 'node:fs';
import { isAbsolute, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { type Plugin, rolldown } from 'rolldown';
import { codeDigest } from '../../lib/kept/code-digest.ts';
import { isLongRun } from '../long-run.ts';
import { compiledVariable, startsCompiled } from './starts-compiled.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const folder = join(root, 'node_modules/.cache/rackleaf-compiled');

/** What is started in a process or a thread of its own, by its path below the repository. */
const started = ['lib/cli.ts', 'lib/commands/crew/thread.ts', 'lib/commands/serve/page-thread.ts'];

/** Each module takes itself for the source that it was compiled from: what it finds from there is the same, the digest of the code too. */
const placedAsWritten: Plugin = {
  name: 'placed-as-written',
  transform: {
    filter: { code: 'import.meta.url' },
    handler: (code, id) => code.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(id).href)),
  },
};

/**
 * Compiles the code for what the tests of a file start in processes and threads of their own, once for a state of the code.
 * To load it as TypeScript takes a processor several seconds at each start; `serve-ends.test.ts` and the long run do.
 */
export async function startCompiled(): Promise<void> {
  if (isLongRun) return;
  const digest = codeDigest();
  const compiled = join(folder, digest);
  if (!existsSync(compiled)) {
    const unfinished = join(folder, randomUUID());
    await compileInto(unfinished);
    // Another process may have been first.
    try {
      renameSync(unfinished, compiled);
    } catch (error) {
      rmSync(unfinished, { recursive: true });
      if (!existsSync(compiled)) throw error;
    }
  }
  process.env[compiledVariable] = compiled;
}

async function compileInto(target: string): Promise<void> {
  const bundle = await rolldown({
    cwd: root,
    input: Object.fromEntries(started.map((path) => [path.replace(/\.ts$/, ''), join(root, path)])),
    platform: 'node',
    // Packages stay as they are installed.
    external: (id) => !id.startsWith('.') && !isAbsolute(id),
    tsconfig: false,
    treeshake: false,
    plugins: [startsCompiled(), placedAsWritten],
  });
  await bundle.write({ dir: target, format: 'esm' });
  await bundle.close();
}

/** What Node is started with to run a command of the tool in a process of its own: after `startCompiled` the compiled one. */
export function commandLine(): readonly string[] {
  const compiled = process.env[compiledVariable];
  return compiled === undefined ? sourceCommand : [join(compiled, 'lib/cli.js')];
}

/** The same from TypeScript, as a checkout runs it. */
export const sourceCommand: readonly string[] = [
  '--import',
  pathToFileURL(join(root, 'node_modules/tsx/dist/esm/index.mjs')).href,
  join(root, 'lib/cli.ts'),
];
