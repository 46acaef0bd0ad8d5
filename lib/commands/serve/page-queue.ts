import type { MakeOptions } from '../../publish/serve/page-maker.ts';

/** Does one task away from this thread; an abort ends the work. */
export type Worked<I, O> = (input: I, signal: AbortSignal) => Promise<O>;

interface Waiting<I, O> {
  readonly input: I;
  readonly options: MakeOptions;
  readonly resolve: (output: O) => void;
  readonly reject: (reason: unknown) => void;
}

/**
 * Hands out tasks to a number of workers: first what a reader waits for. What is made ahead leaves one worker free, so
 * that a reader waits for no more than what was asked for.
 */
export class PageQueue<I, O> {
  readonly #work: Worked<I, O>;
  readonly #workers: number;
  readonly #waiting: Waiting<I, O>[] = [];
  readonly #atWork = new Set<Waiting<I, O>>();
  /** What waits until there is nothing to do. */
  readonly #whenIdle = new Set<() => void>();

  /** `workers`: two at least. */
  constructor(work: Worked<I, O>, workers: number) {
    this.#work = work;
    this.#workers = Math.max(2, workers);
  }

  /** Does a task in its turn. Rejects with the reason of its signal once that is aborted. */
  do(input: I, options: MakeOptions): Promise<O> {
    const { signal } = options;
    if (signal.aborted) return Promise.reject(signal.reason);
    return new Promise((resolve, reject) => {
      const task: Waiting<I, O> = { input, options, resolve, reject };
      this.#waiting.push(task);
      signal.addEventListener('abort', () => {
        const at = this.#waiting.indexOf(task);
        if (at >= 0) this.#waiting.splice(at, 1);
        reject(signal.reason);
      });
      this.handOut();
    });
  }

  /** Settles once there is nothing to do, for what no reader waits for; rejects with the reason of the signal. */
  idle(signal: AbortSignal): Promise<void> {
    if (signal.aborted) return Promise.reject(signal.reason);
    if (this.#waiting.length + this.#atWork.size === 0) return Promise.resolve();
    return new Promise((resolve, reject) => {
      const settle = (): void => {
        this.#whenIdle.delete(settle);
        resolve();
      };
      this.#whenIdle.add(settle);
      signal.addEventListener('abort', () => {
        this.#whenIdle.delete(settle);
        reject(signal.reason);
      });
    });
  }

  /** Begins what may begin now: also to be called where a reader has begun to wait. */
  handOut(): void {
    while (this.#atWork.size < this.#workers) {
      const isLast = this.#atWork.size === this.#workers - 1;
      const awaited = this.#waiting.findIndex(({ options }) => options.isAwaited());
      const next = awaited >= 0 ? awaited : isLast ? -1 : 0;
      const [task] = next < 0 ? [] : this.#waiting.splice(next, 1);
      if (!task) return;
      this.#begin(task);
    }
  }

  #begin(task: Waiting<I, O>): void {
    this.#atWork.add(task);
    void this.#work(task.input, task.options.signal)
      .then(task.resolve, task.reject)
      .finally(() => {
        this.#atWork.delete(task);
        this.handOut();
        if (this.#waiting.length + this.#atWork.size === 0) for (const settle of this.#whenIdle) settle();
      });
  }
}
