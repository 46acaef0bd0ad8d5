import { parentPort, workerData } from 'node:worker_threads';
import { openKeeper } from '../kept/open-keeper.ts';
import { TaskBench, type TaskName } from './tasks.ts';
import type { ThreadAnswer, ThreadData, ThreadRequest } from './thread-messages.ts';

const { keptIn }: ThreadData = workerData;
const kept = keptIn === null ? null : openKeeper(keptIn);
const bench = new TaskBench(kept);

async function answer<T extends TaskName>({ name, input }: ThreadRequest<T>): Promise<void> {
  const said: ThreadAnswer<T> = { done: await bench.task(name, input), fault: kept?.fault() ?? null };
  parentPort?.postMessage(said);
}

parentPort?.on('message', answer);
