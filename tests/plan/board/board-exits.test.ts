import { describe, expect, it } from 'vitest';
import { outward, sides } from '../../../lib/board/layout/item.ts';
import { fixedJob, fixedPlan } from '../../boards/fixed-jobs.ts';

describe('wires that leave a board', () => {
  it.each(['under-seat-five', 'estate-side-well'] as const)(
    'of %s do so straight over the edge that their run reaches',
    (id) => {
      const job = fixedJob(id);
      let led = 0;
      for (const board of fixedPlan(id).boards)
        for (const { wire, edge, xM, yM } of board.exits) {
          const run = job.links.find((link) => link.id === wire)?.run;
          const reaches = job.runs.find((one) => one.id === run)?.route.reaches;
          if (reaches?.space === board.space) {
            led += 1;
            expect([wire, edge]).toEqual([wire, reaches.edge]);
          }
          const points = board.routes.find((route) => route.wire === wire)?.points ?? [];
          const [first, second] = [points[0], points[1]];
          const fromExit = first?.xM === xM && first.yM === yM;
          const [end, before] = fromExit ? [first, second] : [points.at(-1), points.at(-2)];
          expect([end?.xM, end?.yM]).toEqual([xM, yM]);
          const way = [(end?.xM ?? 0) - (before?.xM ?? 0), (end?.yM ?? 0) - (before?.yM ?? 0)].map((step) =>
            Math.abs(step) < 1e-9 ? 0 : Math.sign(step),
          );
          const side = sides.find((one) => one === edge) ?? 'right';
          expect([wire, edge, ...way]).toEqual([wire, side, outward[side].xM, outward[side].yM]);
        }
      expect(led).toBeGreaterThan(0);
    },
  );
});
