import { availableParallelism } from 'node:os';
import type { Worker } from 'node:worker_threads';
import type { Keeper } from '../../kept/keeper.ts';
import { computeAnew, computeLater, type Keep, type KeepLater } from '../../model/keep.ts';
import { type OpenKeeper, openKeeper } from '../kept/open-keeper.ts';
import { type ShopReader, shopReader } from '../kept/shop-steps.ts';
import { ownModule } from '../own-module.ts';
import { failureText } from '../told/failure-text.ts';
import { openThread } from './open-thread.ts';
import { type Done, keptAs, TaskBench, type TaskName, type Tasks } from './tasks.ts';
import type { ThreadAnswer, ThreadData, ThreadRequest } from './thread-messages.ts';

/** Plans and draws: what is kept is given at once, the rest done on several threads. */
export interface Crew {
  /** Does a task. A bug in it is an answer; an abort ends the work and rejects with its reason. */
  readonly task: <T extends TaskName>(
    name: T,
    input: Tasks[T]['input'],
    signal?: AbortSignal,
  ) => Promise<Done<Tasks[T]['output']>>;
  /** For steps that are not worth a thread. */
  readonly keep: Keep;
  /** Reads the files of a shop on this thread. */
  readonly read: ShopReader;
  readonly keepLater: KeepLater;
  readonly known: Keeper['known'];
  readonly put: Keeper['put'];
  /** Why results could not be kept, such as a full disk; null while they can. */
  readonly fault: () => string | null;
  /** Ends the threads, and all that they are at. */
  readonly close: () => Promise<void>;
}

export interface CrewOptions {
  /** The folder of kept results; null to keep none. */
  readonly keptIn: string | null;
  /** The most threads beside this one. Default: one for each processor. With none, all is done on this one. */
  readonly threads?: number;
  /** Where a few tasks are done: a new thread takes longer to start than they do. Default: here. */
  readonly few?: 'here' | 'on a thread';
}

/** A task that waits or is done. */
interface Assignment {
  readonly name: TaskName;
  /** Does it on this thread. */
  readonly here: () => void;
  /** Sends it to a thread; the promise settles when that is free again, true where it can go on. */
  readonly send: (thread: Worker) => Promise<boolean>;
}

/** Opens a crew. Its threads start when there is work for them, and end with `close`. */
export function openCrew(options: CrewOptions): Crew {
  const keeper = options.keptIn === null ? null : openKeeper(options.keptIn);
  const read = shopReader();
  const desk = new Desk(options, keeper, read);
  return {
    task: (name, input, signal) => desk.task(name, input, signal),
    keep: keeper?.keep ?? computeAnew,
    read,
    keepLater: keeper?.keepLater ?? computeLater,
    known: (step, input) => keeper?.known(step, input) ?? null,
    put: (step, input, value) => keeper?.put(step, input, value),
    fault: () => keeper?.fault() ?? desk.fault,
    close: async () => {
      await desk.close();
      keeper?.trim();
    },
  };
}

/** So many tasks of a kind are worth the start of threads. */
const leastForThreads: { readonly [T in TaskName]: number } = { plan: 2, draw: 8 };

/** Hands tasks to threads in the order in which they came. */
class Desk {
  /** Why a thread could not keep its results. */
  fault: string | null = null;
  readonly #options: CrewOptions;
  readonly #keeper: OpenKeeper | null;
  readonly #bench: TaskBench;
  readonly #waiting: Assignment[] = [];
  readonly #threads = new Set<Worker>();
  readonly #free: Worker[] = [];
  #called = false;

  constructor(options: CrewOptions, keeper: OpenKeeper | null, read: ShopReader) {
    this.#options = options;
    this.#keeper = keeper;
    this.#bench = new TaskBench(keeper, read);
  }

  task<T extends TaskName>(
    name: T,
    input: Tasks[T]['input'],
    signal?: AbortSignal,
  ): Promise<Done<Tasks[T]['output']>> {
    if (signal?.aborted) return Promise.reject(signal.reason);
    const known = this.#keeper?.known<Tasks[T]['input'], Tasks[T]['output']>(keptAs[name], input);
    if (known) return Promise.resolve({ state: 'done', value: known.value });
    return new Promise((resolve, reject) => {
      const assignment: Assignment = {
        name,
        here: () => resolve(this.#bench.task(name, input)),
        send: async (thread) => {
          const answer = await sent<T>(thread, { name, input }, signal);
          if (answer === 'aborted') return false;
          this.fault ??= answer.fault;
          resolve(answer.done);
          return !answer.ended;
        },
      };
      this.#waiting.push(assignment);
      signal?.addEventListener('abort', () => {
        const at = this.#waiting.indexOf(assignment);
        if (at >= 0) this.#waiting.splice(at, 1);
        reject(signal.reason);
      });
      this.#call();
    });
  }

  async close(): Promise<void> {
    await Promise.all([...this.#threads].map((thread) => thread.terminate()));
  }

  /** Gives tasks out once all that are asked for now are known. */
  #call(): void {
    if (this.#called) return;
    this.#called = true;
    setImmediate(() => {
      this.#called = false;
      this.#giveOut();
    });
  }

  #giveOut(): void {
    const { threads: most = availableParallelism(), few = 'here' } = this.#options;
    const worthThreads = Math.min(...this.#waiting.map(({ name }) => leastForThreads[name]));
    const areFew = few === 'here' && this.#threads.size === 0 && this.#waiting.length < worthThreads;
    if (most === 0 || areFew) {
      for (const assignment of this.#waiting.splice(0)) assignment.here();
      return;
    }
    while (this.#waiting.length > 0) {
      const thread = this.#free.pop() ?? (this.#threads.size < most ? this.#open() : null);
      if (!thread) return;
      const assignment = this.#waiting.shift();
      void assignment?.send(thread).then((goesOn) => {
        if (goesOn) this.#free.push(thread);
        else this.#threads.delete(thread);
        this.#giveOut();
      });
    }
  }

  #open(): Worker {
    const data: ThreadData = { keptIn: this.#options.keptIn };
    const thread = openThread(ownModule('./thread', import.meta.url), data);
    this.#threads.add(thread);
    return thread;
  }
}

interface Answered<T extends TaskName> extends ThreadAnswer<T> {
  /** True where the thread broke down over it. */
  readonly ended: boolean;
}

/** Sends a task to a thread and waits for what comes of it. An abort ends the thread: it can't be told to stop. */
function sent<T extends TaskName>(
  thread: Worker,
  request: ThreadRequest<T>,
  signal: AbortSignal | undefined,
): Promise<Answered<T> | 'aborted'> {
  return new Promise((resolve) => {
    const settle = (answer: Answered<T> | 'aborted'): void => {
      thread.off('message', onMessage).off('error', onError).off('exit', onExit);
      signal?.removeEventListener('abort', onAbort);
      resolve(answer);
    };
    const onMessage = (answer: ThreadAnswer<T>) => settle({ ...answer, ended: false });
    const onError = (error: unknown) =>
      settle({ done: { state: 'failed', failure: failureText(error) }, fault: null, ended: true });
    const onExit = () => onError(new Error('the thread ended before its work did'));
    const onAbort = () => {
      settle('aborted');
      void thread.terminate();
    };
    thread.on('message', onMessage).on('error', onError).on('exit', onExit);
    signal?.addEventListener('abort', onAbort);
    thread.postMessage(request);
  });
}
