import { describe, expect, test } from 'vitest';
import type { Side } from '../../../lib/board/layout/item.ts';
import { type BoardRemark, phrase } from '../../../lib/board/remark.ts';
import type { RouteEnd, RouteWire } from '../../../lib/board/route/route.ts';
import { drawOutline } from '../../../lib/board/shape/outline.ts';
import { worded } from '../../../lib/model/phrase.ts';
import { boardWires } from '../../../lib/plan/board/board-wires.ts';
import { withEdgeInWay } from '../../../lib/plan/board/edge-in-way.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { oneBoard } from './one-board.ts';

const lost: BoardRemark = {
  ...{ rule: 'wire-without-way', level: 'stop', of: ['feed'] },
  ...{ message: phrase`feed: no way is left`, remedy: phrase`move it` },
};
const facing = (faces: Side, xMm: number, yMm: number): RouteEnd => ({
  ...{ faces, xM: xMm / 1000, yM: yMm / 1000 },
});
const out: RouteEnd = { exit: 'left' };
// By hand: 4 mm of wire and 1.5 mm of air on each side of it, a bend of 30 mm, and lines 6.35 mm apart: 30 + 5.5 + 6.35.
const needMm = 41.85;

/** What is said of the feed, 8 mm thick, with its ends there, on the board of 500 mm by 300 mm. */
function said(
  ends: { readonly from?: RouteEnd; readonly to?: RouteEnd; readonly bendRadiusM?: number | undefined },
  fault: BoardRemark = lost,
  units: 'millimetre' | 'inch' = 'millimetre',
  ...changes: readonly Change[]
) {
  const { job, board, roles } = oneBoard(undefined, ...changes);
  const { shape } = drawOutline(board.given.outline);
  if (!shape) throw new Error('The board can be drawn.');
  const task: RouteWire = {
    ...{ id: 'feed', layer: 'power', diameterM: 0.008, bendRadiusM: 0.03, from: out, to: out },
    ...ends,
  };
  const on = { board, shape, wires: boardWires(job, board, roles), tasks: [task] };
  const [told] = withEdgeInWay({ shop: { ...job.shop, units, fraction: 16 } }, [fault], on);
  if (!told) throw new Error('A remark stays a remark.');
  const write = (text: BoardRemark['message']) =>
    worded(text, (_kind, lengthM) => `${Number((lengthM * 1000).toFixed(3))} mm`);
  return { told, message: write(told.message), remedy: write(told.remedy), advice: told.advice };
}
const isSaid = (...given: Parameters<typeof said>) => said(...given).told !== (given[1] ?? lost);

describe('a wire that the outline of its board leaves no way', () => {
  test('has an edge too near: which, before which part, how much is free and how much is needed', () => {
    const { message } = said({ to: facing('left', 20, 150) });
    expect(message).toBe(
      'feed: no way is left for 8 mm of wire between amp and the left edge of the board: 20 mm is free, 41.85 mm is needed',
    );
    expect(said({ from: facing('left', 20, 150) }).message).toContain('between main-fuse and the left edge');
  });

  test.each([
    ['right', 480, 150, 'width: 522 mm'],
    ['left', 20, 150, 'width: 522 mm'],
    ['top', 250, 280, 'height: 322 mm'],
    ['bottom', 250, 20, 'height: 322 mm'],
  ] as const)('is helped by moving the %s edge out, on to the next millimetre', (edge, x, y, written) => {
    const { remedy, advice } = said({ to: facing(edge, x, y) });
    expect(remedy).toContain('move amp 21.85 mm further from that edge or turn it');
    expect(remedy).toContain(`write ${written} of the outline of main`);
    // What is measured from the left and the bottom has to move with it, so that one value alone does not mend it.
    const isFar = edge === 'right' || edge === 'top';
    expect(remedy.endsWith('moved by as much')).toBe(!isFar);
    const [field, value] = written.split(': ');
    expect(advice).toEqual(
      isFar ? [[{ path: `/boards/main/outline/rectangle/${field}`, value }]] : undefined,
    );
  });

  test('is not told a millimetre more where the edge moves out by whole ones', () => {
    // 500 + 41.85 - 19.85 mm.
    expect(said({ to: facing('right', 480.15, 150) }).remedy).toContain('write width: 522 mm of');
    expect(said({ to: facing('right', 480.16, 150) }).remedy).toContain('write width: 523 mm of');
  });

  test('is told the next fraction of the tape of a shop that reads inches', () => {
    // 521.85 mm are 20.545 in: the next sixteenth is 20 9/16 in.
    const { remedy } = said({ to: facing('right', 480, 150) }, lost, 'inch');
    expect(remedy).toContain('write width: 20 9/16 in of the outline');
  });

  test('of an outline that is no rectangle is told no value for one', () => {
    const polygon = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { polygon: [[0 mm, 0 mm], [500 mm, 0 mm], [500 mm, 300 mm], [0 mm, 300 mm]] }',
    );
    const found = said({ to: facing('right', 480, 150) }, lost, 'millimetre', polygon);
    expect(found.message).toContain('the right edge');
    expect(found.advice).toBeUndefined();
  });

  test('has too little room below what its bend, the wire beside it and a line ask for, and not above', () => {
    expect(isSaid({ to: facing('left', needMm, 150) })).toBe(false);
    expect(isSaid({ to: facing('left', needMm - 0.001, 150) })).toBe(true);
    expect(isSaid({ to: facing('bottom', 250, needMm) })).toBe(false);
    expect(isSaid({ to: facing('bottom', 250, needMm - 0.001) })).toBe(true);
    // One that bends as it likes goes out by its half and the air alone: 5.5 + 5.5 + 6.35 mm.
    for (const bendRadiusM of [undefined, 0.001]) {
      expect(isSaid({ to: facing('left', 17.35, 150), bendRadiusM })).toBe(false);
      expect(isSaid({ to: facing('left', 17.349, 150), bendRadiusM })).toBe(true);
    }
  });

  test('has no room at all on the edge itself, and none is measured where the edge lies behind', () => {
    expect(said({ to: facing('left', 0, 150) }).message).toContain(': 0 mm is free');
    expect(isSaid({ to: facing('right', 20, 150) })).toBe(false);
    expect(isSaid({ to: facing('top', 250, 20) })).toBe(false);
    // Outside of the board nothing lies before it.
    expect(isSaid({ to: facing('left', -20, 150) })).toBe(false);
    expect(isSaid({ to: facing('left', 20, 400) })).toBe(false);
  });

  test('is measured to the edge that lies before it, slanting or cut', () => {
    const slanting = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { polygon: [[0 mm, 0 mm], [500 mm, 0 mm], [500 mm, 300 mm], [200 mm, 300 mm]] }',
    );
    // The slanting edge stands at two thirds of the height: 150 mm up it is 100 mm in.
    const { message } = said({ to: facing('left', 130, 150) }, lost, 'millimetre', slanting);
    expect(message).toContain(': 30 mm is free');
    expect(said({ to: facing('left', 130, 75) }, lost, 'millimetre', slanting).told).toBe(lost);
    expect(said({ to: facing('left', 70, 75) }, lost, 'millimetre', slanting).message).toContain(
      ': 20 mm is free',
    );
  });

  test('with both ends too near an edge is told of the nearer', () => {
    const near = facing('bottom', 250, 10);
    const far = facing('left', 20, 150);
    expect(said({ from: far, to: near }).message).toContain('between amp and the bottom edge');
    expect(said({ from: near, to: far }).message).toContain('between main-fuse and the bottom edge');
  });
});

describe('nothing is added', () => {
  test('to a wire with something else in its way, nor to another remark', () => {
    const to = facing('left', 20, 150);
    expect(isSaid({ to }, { ...lost, of: ['feed', 'amp'] })).toBe(false);
    expect(isSaid({ to }, { ...lost, rule: 'bend-too-tight' })).toBe(false);
    expect(isSaid({ to }, { ...lost, of: ['another'] })).toBe(false);
  });

  test('where both ends leave the board', () => {
    expect(isSaid({})).toBe(false);
  });
});
