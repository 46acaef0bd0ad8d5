import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import {
  crossingsOf,
  diagramKinds,
  drawnCrossings,
  elkCrossings,
  elkGraph,
  openElk,
} from '../../../lib/commands/bench/diagrams.ts';
import { drawJobPages } from '../../../lib/draw/draw-job.ts';
import { at } from '../../../lib/draw/paper.ts';
import type { PlanWire } from '../../../lib/model/plan/index.ts';
import { fixedJobs, fixedPlan } from '../../boards/fixed-jobs.ts';
import { shippedMetrics } from '../../draw/lettering/shipped-metrics.ts';

// elkjs takes the `window` of ngspice, left in a worker by another test, for a browser's.
beforeAll(() => void vi.stubGlobal('window', undefined));
afterAll(() => void vi.unstubAllGlobals());

const level = (id: string, y: number) => ({ id, strokes: [{ from: at(0, y), to: at(10, y) }] });
const upright = (id: string, x: number) => ({ id, strokes: [{ from: at(x, 0), to: at(x, 10) }] });

describe('crossings', () => {
  it('are counted between conductors, not where they share an end', () => {
    expect(crossingsOf([level('a', 2), level('b', 4), upright('c', 5)])).toBe(2);
    expect(crossingsOf([level('a', 0), upright('c', 5)])).toBe(0);
    expect(crossingsOf([level('a', 2), upright('a', 5)])).toBe(0);
  });

  it('are found by elkjs where no drawing can do without: three sources to each of three devices', async () => {
    const layOut = await openElk();
    if (!layOut) throw new Error('elkjs is not installed');
    const [model] = fixedPlan('under-seat-five').wires;
    if (!model) throw new Error('the job has no wire');
    const wires = [1, 2, 3].flatMap((from) =>
      [1, 2, 3].map((to): PlanWire => {
        return { ...model, id: `w${from}${to}`, role: 'power', from: `s${from}.${to}`, to: `d${to}.${from}` };
      }),
    );
    const [power] = diagramKinds;
    if (!power) throw new Error('there is no diagram');
    // The complete bipartite graph of three and three can't be drawn without a crossing (Kuratowski 1930).
    expect(elkCrossings(await layOut(elkGraph(power, wires)))).toBeGreaterThan(0);
  });

  it.each(fixedJobs)('of %s are no more in our diagrams than by elkjs', async (id) => {
    const plan = fixedPlan(id);
    const layOut = await openElk();
    if (!layOut) throw new Error('elkjs is not installed');
    const pages = drawJobPages(plan, shippedMetrics);
    for (const kind of diagramKinds) {
      const theirs = elkCrossings(await layOut(elkGraph(kind, plan.wires)));
      expect(drawnCrossings(pages, kind, plan.wires), kind.id).toBeLessThanOrEqual(theirs);
    }
  });
});
