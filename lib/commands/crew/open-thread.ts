import { Worker } from 'node:worker_threads';
import { ownModule } from '../own-module.ts';
import type { ThreadData } from './thread-messages.ts';

/** Opens a thread for tasks. In the repository it loads TypeScript by itself; the package holds what was compiled. */
export function openThread(workerData: ThreadData): Worker {
  const module = ownModule('./thread', import.meta.url);
  if (!module.href.endsWith('.ts')) return new Worker(module, { workerData });
  const [loader, start] = [import.meta.resolve('tsx/esm/api'), module.href].map((at) => JSON.stringify(at));
  const script = `import(${loader}).then(({ register }) => { register(); return import(${start}); })`;
  return new Worker(script, { eval: true, workerData, execArgv: [] });
}
