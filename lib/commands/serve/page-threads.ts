import type { Worker } from 'node:worker_threads';
import { openThread } from '../crew/open-thread.ts';
import { ownModule } from '../own-module.ts';
import type { PageTask, PageThreadAnswer, PageThreadData } from './thread-messages.ts';

/** Threads that make pages: one that is at out-of-date work is ended, since it can't be told to stop. */
export class PageThreads {
  readonly #data: PageThreadData;
  readonly #free: Worker[] = [];
  readonly #all = new Set<Worker>();
  #isClosed = false;

  constructor(data: PageThreadData) {
    this.#data = data;
  }

  /** Does a task on a thread of its own. Rejects with the reason of the signal once that is aborted. */
  async do(task: PageTask, signal: AbortSignal): Promise<PageThreadAnswer> {
    if (this.#isClosed) throw new Error('no more pages are made: the server ends');
    const thread = this.#free.pop() ?? this.#open();
    try {
      const answer = await answerOf(thread, task, signal);
      this.#free.push(thread);
      return answer;
    } catch (error) {
      this.#forget(thread);
      void thread.terminate();
      // Another is ready by the time that it is needed.
      if (signal.aborted && !this.#isClosed) this.#free.push(this.#open());
      throw error;
    }
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    await Promise.all([...this.#all].map((thread) => thread.terminate()));
  }

  #forget(thread: Worker): void {
    this.#all.delete(thread);
    const at = this.#free.indexOf(thread);
    if (at >= 0) this.#free.splice(at, 1);
  }

  #open(): Worker {
    const thread = openThread(ownModule('./page-thread', import.meta.url), this.#data);
    this.#all.add(thread);
    // One that ends while it has no task takes nothing with it.
    thread.on('error', () => undefined).on('exit', () => this.#forget(thread));
    return thread;
  }
}

/** What a thread makes of a task. Rejects where it breaks down over it. */
function answerOf(thread: Worker, task: PageTask, signal: AbortSignal): Promise<PageThreadAnswer> {
  return new Promise((resolve, reject) => {
    const leave = (): void => {
      thread.off('message', onMessage).off('error', onError).off('exit', onExit);
      signal.removeEventListener('abort', onAbort);
    };
    const settle = (end: () => void): void => {
      leave();
      end();
    };
    const onMessage = (answer: PageThreadAnswer) => settle(() => resolve(answer));
    const onError = (error: unknown) => settle(() => reject(error));
    const onExit = () => onError(new Error('the thread ended before its work did'));
    const onAbort = () => settle(() => reject(signal.reason));
    thread.on('message', onMessage).on('error', onError).on('exit', onExit);
    signal.addEventListener('abort', onAbort);
    thread.postMessage(task);
  });
}
