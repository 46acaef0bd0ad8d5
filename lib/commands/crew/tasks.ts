import type { Keep, Step } from '../../model/keep.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import type { PlanDrawing } from '../../publish/site/shop-site.ts';
import { jobDrawings } from '../drawings.ts';
import { failureText } from '../failure-text.ts';
import { type JobFiles, shopSteps } from '../kept/shop-steps.ts';

/** What a thread may be given to do, and what comes of it. */
export interface Tasks {
  readonly plan: { readonly input: JobFiles; readonly output: BuildPlan | null };
  readonly draw: { readonly input: BuildPlan; readonly output: readonly PlanDrawing[] };
}
export type TaskName = keyof Tasks;

/** Does tasks one after another, on one thread. */
export type TaskSteps = {
  readonly [T in TaskName]: Step<Tasks[T]['input'], Tasks[T]['output']>;
};

/** The tasks as steps. What several of them need, such as the metrics of the type, is made once. */
export function taskSteps(): TaskSteps {
  const { plan } = shopSteps();
  let drawingsOf: ReturnType<typeof jobDrawings> | null = null;
  return {
    plan,
    draw: {
      id: 'drawings',
      compute: (of) => {
        drawingsOf ??= jobDrawings();
        return drawingsOf(of);
      },
    },
  };
}

/** What came of a task; where it failed, that in the words of a message. */
export type Done<T> =
  | { readonly state: 'done'; readonly value: T }
  | { readonly state: 'failed'; readonly failure: string };

/** Does a task on the thread that asks. */
export function doTask<T extends TaskName>(
  steps: TaskSteps,
  name: T,
  input: Tasks[T]['input'],
  keep: Keep,
): Done<Tasks[T]['output']> {
  try {
    const step: Step<Tasks[T]['input'], Tasks[T]['output']> = steps[name];
    return { state: 'done', value: keep(step, input) };
  } catch (error) {
    return { state: 'failed', failure: failureText(error) };
  }
}
