import { parentPort, workerData } from 'node:worker_threads';
import { computeAnew } from '../../model/keep.ts';
import { openKeeper } from '../kept/open-keeper.ts';
import { doTask, type TaskName, taskSteps } from './tasks.ts';
import type { ThreadAnswer, ThreadData, ThreadRequest } from './thread-messages.ts';

const { keptIn }: ThreadData = workerData;
const steps = taskSteps();
const kept = keptIn === null ? null : openKeeper(keptIn);

function answer<T extends TaskName>({ name, input }: ThreadRequest<T>): void {
  const done = doTask(steps, name, input, kept?.keep ?? computeAnew);
  const said: ThreadAnswer<T> = { done, fault: kept?.fault() ?? null };
  parentPort?.postMessage(said);
}

parentPort?.on('message', answer);
