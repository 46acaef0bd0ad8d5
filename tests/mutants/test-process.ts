import { spawn } from 'node:child_process';
import { join } from 'node:path';

export interface TestRun {
  /** The folder in which the tests are run. */
  readonly folder: string;
  readonly heldBy: readonly string[];
  readonly env: Readonly<Record<string, string>>;
  readonly more?: readonly string[];
  /** Asked again and again while the tests run: true ends them. */
  readonly hangs: () => boolean;
}

const patienceMs = 2_000;
const keptCharacters = 20_000;

/** Runs tests in a process of their own: its status, null where it was ended or broke down, and what it printed. */
export function runTests({ folder, heldBy, env, more = [], hangs }: TestRun): Promise<{
  readonly status: number | null;
  readonly printed: string;
}> {
  return new Promise((resolve, reject) => {
    const child = spawn(
      process.execPath,
      [
        join(folder, 'node_modules/vitest/vitest.mjs'),
        'run',
        '--config',
        'tests/mutants/vitest.config.ts',
        ...more,
      ],
      {
        cwd: folder,
        env: { ...process.env, ...env, MUTANTS_HELD_BY: JSON.stringify(heldBy) },
        stdio: ['ignore', 'pipe', 'pipe'],
      },
    );
    let printed = '';
    const keep = (chunk: Buffer) => {
      printed = (printed + chunk.toString()).slice(-keptCharacters);
    };
    child.stdout.on('data', keep);
    child.stderr.on('data', keep);
    const watch = setInterval(() => {
      if (hangs()) child.kill('SIGKILL');
    }, patienceMs);
    child.on('error', reject);
    child.on('close', (status) => {
      clearInterval(watch);
      resolve({ status, printed });
    });
  });
}
