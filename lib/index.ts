/**
 * What a program of a shop's own takes from here. The command line goes the same road:
 *
 *   files ─readContent─▶ Job ─judgedPlan─▶ BuildPlan ─drawJob─▶ SVG
 */

export { judgedPlan } from './commands/shop/judged-plan.ts';
export { drawJob, type JobDrawing } from './draw/draw-job.ts';
export type { SourceFile } from './model/content/source-file.ts';
export type { Finding, Level } from './model/finding.ts';
export { type BuildPlan, buildPlanSchema, isStopped, planJsonSchema } from './model/plan/index.ts';
export { type Problem, problemText } from './model/problem.ts';
export { shippedMetrics } from './publish/site/shipped-metrics.ts';
export { type Content, readContent } from './read/read-content.ts';
