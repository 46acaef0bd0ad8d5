import { describe, expect, it } from 'vitest';
import { terminalOnBoard } from '../../../lib/board/layout/item.ts';
import { terminalId } from '../../../lib/model/content/resolved-job.ts';
import { computeAnew } from '../../../lib/model/keep.ts';
import { layOutBoards } from '../../../lib/plan/board/board-layout.ts';
import { boardWires, routeWiresOf } from '../../../lib/plan/board/board-wires.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { fixedJob, fixedPlan } from '../../boards/fixed-jobs.ts';

const id = 'van-three-amps';
const job = fixedJob(id);
const plan = fixedPlan(id);
const roles = new Map(plan.wires.map((wire) => [wire.id, wire.role]));
const [laid] = layOutBoards(job, { roles, sized: () => new Map() }, new PlanBook(), computeAnew);
if (!laid) throw new Error('the job has a board');
const wires = boardWires(job, laid.board, roles);
const together = wires.filter(({ along }) => along.length > 1);

/** Level and upright distance between the two terminals of a link that are on the board; null where one is not. */
function apartM(link: (typeof wires)[number]['link']): number | null {
  const [from, to] = [link.from, link.to].map((end) => {
    const item = laid?.items.find((one) => one.id === end.device);
    const at = laid?.placements.find((one) => one.item === end.device);
    const terminal = item?.terminals.find((one) => one.id === terminalId(end));
    return item && at && terminal ? terminalOnBoard(item, at, terminal) : null;
  });
  return from && to ? Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM) : null;
}

describe('what lies together on a board', () => {
  it('is there to be looked at', () => {
    expect(together.length).toBeGreaterThan(2);
  });

  it('is routed alike whichever of it was written first', () => {
    for (const wire of together) {
      const ends = wire.along.map((_, turn) => {
        const along = [...wire.along.slice(turn), ...wire.along.slice(0, turn)];
        const [first = wire.link] = along;
        const [route] = routeWiresOf(
          job,
          laid.board,
          [{ ...wire, link: first, along }],
          laid,
          () => undefined,
        );
        return route && { from: route.from, to: route.to };
      });
      for (const one of ends) expect(one).toEqual(ends[0]);
    }
  });

  it('is as long as the longest of its conductors asks', () => {
    let told = 0;
    for (const wire of together) {
      const spans = wire.along.map(apartM);
      const most = Math.max(...spans.map((span) => span ?? 0));
      if (spans.includes(null)) continue;
      told += 1;
      const [route] = routeWiresOf(job, laid.board, [wire], laid, () => undefined);
      if (!route || 'exit' in route.from || 'exit' in route.to)
        throw new Error(`${wire.link.id} has no ends`);
      const { from, to } = route;
      expect(Math.abs(from.xM - to.xM) + Math.abs(from.yM - to.yM)).toBeCloseTo(most, 9);
    }
    expect(told).toBeGreaterThan(0);
  });
});

it('a cable is as long as the longest of its conductors, and a conductor of it on the board no longer than it', () => {
  for (const cable of plan.cables) {
    const own = plan.wires.filter((wire) => wire.cable === cable.id);
    expect(cable.lengthM).toBe(Math.max(...own.map(({ lengthM }) => lengthM)));
  }
  for (const board of plan.boards)
    for (const { along, lengthM } of board.routes)
      for (const wire of plan.wires.filter((one) => along.includes(one.id) && one.measured.includes('board')))
        expect(wire.lengthM).toBeGreaterThanOrEqual(lengthM - 1e-9);
});
