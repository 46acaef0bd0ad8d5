import { describe, it } from 'vitest';
import { drawJob } from '../../lib/draw/draw-job.ts';
import { expectGolden } from '../golden.ts';
import { demoJobs, demoPlan } from '../plan/demo.ts';
import { shippedMetrics } from './shipped-metrics.ts';

/** Sheets whose drawings are kept here: what is cut, drilled and nested, and what stands where. */
const sheets: readonly string[] = ['cut-and-drill', 'risers', 'placement'];

describe('cut, drill, nest and placement drawings', () => {
  it.each(demoJobs)('of %s keep their look', (job) => {
    const drawings = drawJob(demoPlan(job), shippedMetrics).filter(({ sheet }) => sheets.includes(sheet));
    const files = drawings.map(({ id, svg }) => [`${id}.svg`, svg]);
    expectGolden(new URL(`golden/demo-boards/${job}/`, import.meta.url), Object.fromEntries(files));
  });
});
