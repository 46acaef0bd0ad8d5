import { availableParallelism } from 'node:os';
import type { SourceFile } from '../../model/content/source-file.ts';
import type { SeenFile } from '../../publish/serve/file-looks.ts';
import type { MakeOptions, PageMaker } from '../../publish/serve/page-maker.ts';
import { unkeptText } from '../crew/with-crew.ts';
import { keptFolder, openKeeper } from '../kept/open-keeper.ts';
import { PageQueue } from './page-queue.ts';
import { PageThreads } from './page-threads.ts';
import type { PageAnswer, PageTask, PageThreadAnswer } from './thread-messages.ts';

/** More threads than these would each hold the code and the catalogue, and a reader looks at one page. */
const mostWorkers = 4;

/** Makes pages, and beside them the schemas for editors. */
export interface ShopPageMaker extends PageMaker {
  /** The schemas of these files; rejects with the reason of the signal once that is aborted. */
  schemas(files: readonly SeenFile[], signal: AbortSignal): Promise<readonly SourceFile[]>;
}

/** Makes the pages of a shop on threads: the server's own has nothing to do but to answer. */
export function openPageMaker(
  root: string,
  say: (message: string) => void,
  workers = Math.min(mostWorkers, availableParallelism()),
): ShopPageMaker {
  const threads = new PageThreads({ root });
  const queue = new PageQueue<PageTask, PageThreadAnswer>(
    (task, signal) => threads.do(task, signal),
    workers,
  );
  let isToldUnkept = false;
  const ask = async (task: PageTask, options: MakeOptions): Promise<PageAnswer> => {
    const { answer, unkept } = await queue.do(task, options);
    if (unkept !== null && !isToldUnkept) {
      isToldUnkept = true;
      say(unkeptText(unkept));
    }
    if (answer.what === 'fault') throw chained(answer.chain);
    return answer;
  };
  return {
    page: async (wish, options) => {
      const answer = await ask({ what: 'page', wish }, options);
      if (answer.what !== 'page') throw new Error(`A page was asked for, and ${answer.what} was given.`);
      return answer.made;
    },
    search: async (wish, options) => {
      const answer = await ask({ what: 'search', wish }, options);
      if (answer.what !== 'search') throw new Error(`A search was asked for, and ${answer.what} was given.`);
      return answer.made;
    },
    schemas: async (files, signal) => {
      await queue.idle(signal);
      const wish = { files };
      const answer = await ask({ what: 'schemas', wish }, { signal, isAwaited: () => false });
      if (answer.what !== 'schemas') throw new Error(`Schemas were asked for, and ${answer.what} was given.`);
      return answer.made;
    },
    hurry: () => queue.handOut(),
    close: async () => {
      await threads.close();
      openKeeper(keptFolder(root)).trim();
    },
  };
}

/** An error with its causes, as they were told. */
function chained(chain: readonly string[]): Error {
  return (
    chain.reduceRight<Error | undefined>(
      (cause, message) => new Error(message, cause ? { cause } : undefined),
      undefined,
    ) ?? new Error('a fault that says nothing')
  );
}
