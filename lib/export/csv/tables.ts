import type { BuildPlan } from '../../model/plan/index.ts';

/** Tables by the name of their file, each as CSV text of a plan. */
export type CsvTables = Readonly<Record<string, (plan: BuildPlan) => string>>;
