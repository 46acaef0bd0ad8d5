import { existsSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { openThread as openInSource } from '../../lib/commands/crew/open-thread.ts';
import { compiledVariable } from './starts-compiled.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Opens a thread from the compiled code where a test asked for it, otherwise as a checkout does. */
export function openThread(module: URL, workerData: object): Worker {
  const folder = process.env[compiledVariable];
  if (folder === undefined) return openInSource(module, workerData);
  const compiled = join(folder, relative(root, fileURLToPath(module)).replace(/\.ts$/, '.js'));
  if (!existsSync(compiled)) throw new Error(`${compiled} is not among what is compiled for tests.`);
  return new Worker(pathToFileURL(compiled), { workerData, execArgv: [] });
}
