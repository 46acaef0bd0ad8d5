import type { BuildPlan, PlanStep } from '../../model/plan/index.ts';
import { counted, joined, spelled } from '../words.ts';
import { builderSheet } from './sheet.ts';

/** The steps in order, layer by layer. */
export interface OrderOfWorkSheet {
  readonly summary: string;
  readonly layers: readonly Layer[];
}

interface Layer {
  readonly title: string;
  readonly steps: readonly Step[];
}

interface Step {
  readonly id: string;
  readonly number: number;
  readonly place: string;
  readonly text: string;
  /** How it is known to be right. */
  readonly proof: string;
  readonly tools: string;
  readonly minutes: string;
  /** Numbers of the steps that come before it. */
  readonly after: string;
}

function stepModel(step: PlanStep, numbers: ReadonlyMap<string, number>): Step {
  const before = step.after.flatMap((id) => numbers.get(id) ?? []).sort((a, b) => a - b);
  return {
    id: step.id,
    number: numbers.get(step.id) ?? 0,
    place: spelled(step.place),
    text: step.text,
    proof: step.proof,
    tools: joined(step.tools),
    minutes: `${step.minutes} min`,
    after: before.length === 0 ? '' : `after ${joined(before.map(String))}`,
  };
}

/** Runs of steps of one layer, in the order of the plan. */
function layersOf(steps: readonly PlanStep[]): Layer[] {
  const numbers = new Map(steps.map((step, index) => [step.id, index + 1]));
  const layers: { title: string; steps: Step[] }[] = [];
  for (const step of steps) {
    const title = spelled(step.layer);
    const last = layers.at(-1);
    if (last?.title === title) last.steps.push(stepModel(step, numbers));
    else layers.push({ title, steps: [stepModel(step, numbers)] });
  }
  return layers;
}

function orderModel(plan: BuildPlan): OrderOfWorkSheet | null {
  if (plan.steps.length === 0) return null;
  const minutes = plan.steps.reduce((sum, step) => sum + step.minutes, 0);
  const hours = `${Math.floor(minutes / 60)} h ${Math.round(minutes % 60)} min`;
  return {
    summary: `${counted(plan.steps.length, 'step')}, ${hours} in all. Tick each one when its proof is seen.`,
    layers: layersOf(plan.steps),
  };
}

export const orderOfWork = builderSheet('order-of-work', 'Order of work', orderModel, { cautions: [
  'battery',
  'restraints',
] });
