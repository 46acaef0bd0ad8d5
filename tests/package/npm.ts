import { execFile } from 'node:child_process';
import { promisify } from 'node:util';

/** What a program said. */
export interface Said {
  readonly status: number;
  readonly out: string;
  readonly told: string;
}

/** Settings that a run of npm hands down to what it starts: an npm of ours inside is to be as one of its own. */
const handedDown = /^npm_/i;

/** Runs a program in a folder; its exit status is told, not thrown. */
export async function run(folder: string, program: string, ...words: readonly string[]): Promise<Said> {
  const env = Object.fromEntries(Object.entries(process.env).filter(([name]) => !handedDown.test(name)));
  const started = promisify(execFile)(program, words, {
    cwd: folder,
    env: { ...env, LONG: '' },
    maxBuffer: 1 << 26,
    // On Windows npm is a script, and no program that could be started by itself.
    shell: process.platform === 'win32' && program === 'npm',
  });
  return started.then(
    ({ stdout, stderr }) => ({ status: 0, out: stdout, told: stderr }),
    (error: { code?: unknown; stdout?: string; stderr?: string }) => {
      if (typeof error.code !== 'number') throw error;
      return { status: error.code, out: error.stdout ?? '', told: error.stderr ?? '' };
    },
  );
}

/** Runs npm, which must end well. */
export async function npm(folder: string, ...words: readonly string[]): Promise<string> {
  const { status, out, told } = await run(folder, 'npm', ...words);
  if (status !== 0) throw new Error(`npm ${words.join(' ')} ended with ${status}:\n${told}${out}`);
  return out;
}
