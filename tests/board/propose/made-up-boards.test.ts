import { describe, expect, it } from 'vitest';
import { proposeBoard } from '../../../lib/board/propose/propose-board.ts';
import { barriersInPlace, wiresInPlace } from '../../../lib/board/propose/wires-in-place.ts';
import { boxOf } from '../../../lib/board/shape/point.ts';
import { type MadeUpBoard, madeUpBoard } from '../../../lib/commands/bench/made-up-board.ts';
import { caseCount } from '../../long-run.ts';
import { routeWires, usualRouting, usualScore } from '../usual-board.ts';

/** Drawn once the search was written; the boards are the numbers from here on. */
const firstSeed = 4711;
const boards = caseCount({ all: 200, some: 3 });
const diameterM = 0.004;

function boardOf(seed: number): MadeUpBoard {
  const board = madeUpBoard(seed);
  if (!board) throw new Error(`The board ${seed} can not be drawn.`);
  return board;
}

describe('boards made up from a solution', () => {
  it('are as full as asked, and their solution can be wired', () => {
    for (let n = 0; n < caseCount({ all: 200, some: 5 }); n += 1) {
      const { shape, items, links, solution, taken } = boardOf(firstSeed + n);
      expect(items.length).toBeGreaterThanOrEqual(4);
      expect(links.length).toBeGreaterThanOrEqual(25);
      expect(taken).toBeGreaterThanOrEqual(0.55);
      const inPlace = { box: boxOf(shape.outline), items, placements: solution };
      const wires = links.map(({ id, from, to, layer }) => {
        return { id, layer, diameterM, along: [{ link: id, from, to }] };
      });
      const { faults } = routeWires(
        { shape, barriers: barriersInPlace(inPlace), wires: wiresInPlace(inPlace, wires) },
        { pointsOfMany: 0 },
      );
      expect(faults).toEqual([]);
    }
  }, 600_000);

  it('are all wired with every place left open', () => {
    const unwired: string[] = [];
    const begun = process.cpuUsage();
    for (let n = 0; n < boards; n += 1) {
      const { shape, items, links } = boardOf(firstSeed + n);
      const task = { board: { shape }, items, given: [], links };
      const { routing } = proposeBoard(task, { ...usualScore, routing: usualRouting }, diameterM);
      const missing = links.length - routing.routes.length;
      if (missing > 0) unwired.push(`board ${firstSeed + n}: ${missing} of ${links.length}`);
    }
    const seconds = process.cpuUsage(begun).user / 1e6;
    process.stdout.write(`${boards} boards laid out and wired in ${seconds.toFixed(1)} s of the processor\n`);
    expect(unwired).toEqual([]);
  }, 3_600_000);
});
