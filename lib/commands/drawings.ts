import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { drawJob } from '../draw/draw-job.ts';
import { fontFiles, type TextMetrics, textMetricsFrom } from '../draw/lettering/text-metrics.ts';
import type { Step } from '../model/keep.ts';
import type { BuildPlan } from '../model/plan/index.ts';
import type { DrawingsOf, PlanDrawing } from '../publish/site/shop-site.ts';
import { type DrawingStore, keptDrawings } from './kept/kept-drawings.ts';
import { storedWoff2 } from './stored-woff2.ts';

/** The metrics of the shipped type, from the font files among the installed packages. */
export function shippedMetrics(): TextMetrics {
  const require = createRequire(import.meta.url);
  const bytes = (file: string) => storedWoff2(readFileSync(require.resolve(file)));
  return textMetricsFrom({
    'sans-400': bytes(fontFiles['sans-400']),
    'sans-600': bytes(fontFiles['sans-600']),
    'condensed-400': bytes(fontFiles['condensed-400']),
    'condensed-600': bytes(fontFiles['condensed-600']),
  });
}

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
