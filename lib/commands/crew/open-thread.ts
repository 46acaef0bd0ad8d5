import { Worker } from 'node:worker_threads';

/** Opens a thread that runs a module of ours. In the repository it loads TypeScript by itself; the package holds what was compiled. */
export function openThread(module: URL, workerData: object): Worker {
  if (!module.href.endsWith('.ts')) return new Worker(module, { workerData });
  const [loader, start] = [import.meta.resolve('tsx/esm/api'), module.href].map((at) => JSON.stringify(at));
  const script = `import(${loader}).then(({ register }) => { register(); return import(${start}); })`;
  return new Worker(script, { eval: true, workerData, execArgv: [] });
}
