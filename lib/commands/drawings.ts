import { drawJob } from '../draw/draw-job.ts';
import type { Step } from '../model/keep.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import { shippedMetrics } from '../publish/site/shipped-metrics.ts';
import type { DrawingsOf, PlanDrawing } from '../publish/site/shop-site.ts';
import { type DrawingStore, keptDrawings } from './kept/kept-drawings.ts';

/** The drawings of a plan in the shipped type, of which those are drawn anew that `store` does not have. */
export function drawStep(store: DrawingStore): Step<BuildPlan, readonly PlanDrawing[]> {
  const metrics = shippedMetrics();
  return { id: 'drawings', compute: (plan) => keptDrawings(plan, metrics, store) };
}

/** Draws plans in the shipped type. */
export function jobDrawings(): DrawingsOf {
  const metrics = shippedMetrics();
  return (plan) => drawJob(plan, metrics);
}
