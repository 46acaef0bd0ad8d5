import { describe, it } from 'vitest';
import { drawJob } from '../../lib/draw/draw-job.ts';
import { expectGolden } from '../golden.ts';
import { demoJobs, demoPlan } from '../plan/demo.ts';
import { drawingSummary } from './drawing-summary.ts';
import { shippedMetrics } from './lettering/shipped-metrics.ts';

describe('the drawings of the demo jobs', () => {
  it('are those of before', () => {
    const files = demoJobs.map((job) => [
      `${job}.txt`,
      drawingSummary(drawJob(demoPlan(job), shippedMetrics)),
    ]);
    expectGolden(new URL('golden/demo/', import.meta.url), Object.fromEntries(files));
  });
});
