import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { userTimeFile } from './user-time-file.ts';

/** What a process of its own did: its exit status, what it gave out and told, and the user time of all its threads (s). */
export interface MeasuredRun {
  readonly status: number | null;
  readonly out: string;
  readonly told: string;
  readonly userS: number;
}

/** How a process is started that runs TypeScript, with the probe before it. */
const forTypeScript = (): string[] => ['--import', loader(), '--import', probe];
const probe = new URL('./user-time-probe.ts', import.meta.url).href;

/** The same of one that runs what was compiled: nothing is loaded with it but the probe. */
export const forJavaScript = (): string[] => [
  '--import',
  `data:text/javascript,${encodeURIComponent(`
    import { writeFileSync } from 'node:fs';
    process.on('exit', () => writeFileSync(process.env.${userTimeFile}, String(process.cpuUsage().user / 1e6)));`)}`,
];

/**
 * Runs a script in a process of its own, from cold, and reads the user time of the processor that it took: neither
 * what else runs on the machine nor waiting for a disk counts, nor programs that it starts in turn.
 */
export async function runMeasured(
  script: string,
  line: readonly string[],
  folder: string,
  start: () => readonly string[] = forTypeScript,
): Promise<MeasuredRun> {
  const scratch = await mkdtemp(join(tmpdir(), 'rackleaf-bench-'));
  const file = join(scratch, 'user-time');
  try {
    const child = spawn(process.execPath, [...start(), script, ...line], {
      cwd: folder,
      env: { ...process.env, [userTimeFile]: file },
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    const out: Buffer[] = [];
    const told: Buffer[] = [];
    child.stdout.on('data', (chunk: Buffer) => out.push(chunk));
    child.stderr.on('data', (chunk: Buffer) => told.push(chunk));
    const status = await new Promise<number | null>((resolve, reject) => {
      child.once('error', reject);
      child.once('close', resolve);
    });
    const userS = Number(await readFile(file, 'utf8').catch(() => Number.NaN));
    return { status, out: Buffer.concat(out).toString(), told: Buffer.concat(told).toString(), userS };
  } finally {
    await rm(scratch, { recursive: true, force: true });
  }
}

/** What loads TypeScript, by its address: the measured folder has no packages. */
function loader(): string {
  return pathToFileURL(createRequire(fileURLToPath(import.meta.url)).resolve('tsx')).href;
}
