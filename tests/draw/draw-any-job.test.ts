import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawJobPages } from '../../lib/draw/draw-job.ts';
import { arbitraryShape } from './arbitrary-shape.ts';
import { overlapsOn } from './overlaps.ts';
import { samplePlan } from './sample-plan.ts';
import { shippedMetrics } from './shipped-metrics.ts';

const jobs = 40;

it(`lets nothing overlap and leaves nothing out in the drawings of ${jobs} made-up jobs`, {
  timeout: 900_000,
}, () => {
  fc.assert(
    fc.property(arbitraryShape, (shape) => {
      const pages = drawJobPages(samplePlan(shape), shippedMetrics);
      const found = pages.flatMap((page) =>
        [...overlapsOn(page), ...page.unplaced].map((what) => `${page.page.id}: ${what}`),
      );
      expect(found.length, found.join('\n')).toBe(0);
    }),
    { numRuns: jobs, seed: 20240514, endOnFailure: true },
  );
});
