import fc from 'fast-check';
import { expect, it } from 'vitest';
import { drawJobPages } from '../../../lib/draw/draw-job.ts';
import type { BuildPlan, PlanControl } from '../../../lib/model/plan/index.ts';
import { caseCount } from '../../long-run.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';
import { arbitraryShape } from './arbitrary-shape.ts';
import { samplePlan } from './sample-plan.ts';

/** So many made-up jobs on each paper, in two files that run side by side: two hundred in the long run. */
const jobs = caseCount({ all: 100, some: 12 });

/** Draws made-up jobs on one paper, measures every text of them, and prints how many overlap: none may. */
export function testAnyJobs(paper: 'letter' | 'a4'): void {
  it(`lets nothing overlap and leaves nothing out in the drawings of ${jobs} made-up jobs on ${paper}`, {
    timeout: 900_000,
  }, () => {
    let [drawings, overlaps] = [0, 0];
    fc.assert(
      fc.property(arbitraryShape, (shape) => {
        const pages = drawJobPages(withPresets(samplePlan({ ...shape, paper })), shippedMetrics);
        const found = pages.flatMap((page) =>
          [...overlapsOn(page), ...page.unplaced].map((what) => `${page.page.id}: ${what}`),
        );
        drawings += pages.length;
        overlaps += found.length;
        expect(found.length, found.join('\n')).toBe(0);
      }),
      { numRuns: jobs, seed: 20240514, endOnFailure: true },
    );
    process.stdout.write(`${jobs} made-up jobs on ${paper}: ${drawings} drawings, ${overlaps} overlaps\n`);
    expect(drawings).toBeGreaterThan(5 * jobs);
  });
}

/** A plan whose controls all have a preset, so that their panels are drawn as well. */
function withPresets(plan: BuildPlan): BuildPlan {
  const controls = plan.items.flatMap(({ id, controls: own }) =>
    own.map(({ name, panel, atM }, index): PlanControl => {
      const preset = index % 2 === 0 ? 'fully counter-clockwise' : '80 Hz';
      const base = { item: id, control: name, preset, why: 'nothing is heard before it is meant to be' };
      const final = { state: preset, why: 'stays', chosen: 'computed', during: 'presets' } as const;
      return {
        ...base,
        safeState: preset,
        safe: true,
        final,
        panel,
        atM,
        order: index + 1,
        chosen: 'computed',
      };
    }),
  );
  return { ...plan, controls };
}
