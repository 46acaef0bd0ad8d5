import type { Keeper } from '../../kept/keeper.ts';
import { computeAnew, computeLater } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { once } from '../../plan/once-each.ts';
import type { PlanDrawing } from '../../publish/site/shop-site.ts';
import { type JobFiles, type ShopReader, shopReader } from '../kept/shop-steps.ts';
import { failureText } from '../told/failure-text.ts';

/** What a thread may be given to do, and what comes of it. */
export interface Tasks {
  readonly plan: { readonly input: JobFiles; readonly output: BuildPlan | null };
  readonly draw: { readonly input: BuildPlan; readonly output: readonly PlanDrawing[] };
}
export type TaskName = keyof Tasks;

/** The steps that the results of tasks are kept as. */
export const keptAs = { plan: { id: 'plan' }, draw: { id: 'drawings' } } as const;

/** What came of a task; where it failed, that in the words of a message. */
export type Done<T> =
  | { readonly state: 'done'; readonly value: T }
  | { readonly state: 'failed'; readonly failure: string };

type Kept = Pick<Keeper, 'keep' | 'keepLater' | 'known' | 'put'>;

/** Keeps nothing. */
const nothingKept: Kept = {
  keep: computeAnew,
  keepLater: computeLater,
  known: () => null,
  put: () => undefined,
};

type Work = { readonly [T in TaskName]: (input: Tasks[T]['input']) => Promise<Tasks[T]['output']> };

/** Does tasks on its thread, one after another. What several of them need is loaded and made once. */
export class TaskBench {
  readonly #work: Work;

  /** @param kept Where results are kept; null to keep none. */
  constructor(kept: Kept | null, read: ShopReader = shopReader()) {
    const { keep, keepLater, known, put } = kept ?? nothingKept;
    const planning = once(async () =>
      (await import('../kept/plan-step.ts')).planStep(read, { keep, keepLater }),
    );
    const drawing = once(async () => (await import('../drawings.ts')).drawStep({ known, put }));
    this.#work = {
      plan: async (files) => keepLater(await planning(), files),
      draw: async (plan) => keep(await drawing(), plan),
    };
  }

  async task<T extends TaskName>(name: T, input: Tasks[T]['input']): Promise<Done<Tasks[T]['output']>> {
    try {
      return { state: 'done', value: await this.#work[name](input) };
    } catch (error) {
      return { state: 'failed', failure: failureText(error) };
    }
  }
}
