import { parentPort, workerData } from 'node:worker_threads';
import { openCrew } from '../crew/crew.ts';
import { keptFolder } from '../kept/open-keeper.ts';
import { PageDesk } from './page-desk.ts';
import type { PageAnswer, PageTask, PageThreadAnswer, PageThreadData } from './thread-messages.ts';

/** Makes pages on a thread of its own, one after the other as they are asked for. */
const { root }: PageThreadData = workerData;
const crew = openCrew({ keptIn: keptFolder(root), threads: 0 });
const desk = new PageDesk(root, crew);

async function answered(task: PageTask): Promise<PageAnswer> {
  try {
    switch (task.what) {
      case 'page':
        return { what: 'page', made: await desk.page(task.wish) };
      case 'search':
        return { what: 'search', made: await desk.search(task.wish) };
      case 'schemas':
        return { what: 'schemas', made: await desk.schemas(task.wish) };
    }
  } catch (error) {
    const chain: string[] = [];
    for (let cause = error; cause instanceof Error; cause = cause.cause) chain.push(cause.message);
    return { what: 'fault', chain };
  }
}

parentPort?.on('message', async (task: PageTask) => {
  const answer: PageThreadAnswer = { answer: await answered(task), unkept: crew.fault() };
  parentPort?.postMessage(answer);
});
