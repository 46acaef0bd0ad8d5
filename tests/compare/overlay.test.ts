import { describe, expect, it } from 'vitest';
import { comparePlans } from '../../lib/compare/compare-plans.ts';
import { type BoardOverlay, boardOverlays } from '../../lib/compare/overlay.ts';
import type { CompareLook } from '../../lib/compare/table.ts';
import type { BuildPlan, PlanBoard, PlanPlacement } from '../../lib/model/plan/index.ts';
import { everyFrozen, frozenIn } from './plans.ts';

const look: CompareLook = { audience: 'bench', style: { system: 'mm', fraction: 16 } };

function over(before: BuildPlan, after: BuildPlan): BoardOverlay[] {
  return boardOverlays(before, after, comparePlans(before, after, look), look.audience);
}

const plan = frozenIn(1, 'estate-side-well');

function withBoard(change: (board: PlanBoard) => PlanBoard): BuildPlan {
  return { ...plan, boards: plan.boards.map(change) };
}

function withPlacements(change: (one: PlanPlacement) => readonly PlanPlacement[]): BuildPlan {
  return withBoard((board) => ({ ...board, placements: board.placements.flatMap(change) }));
}

const statesOf = (overlays: readonly BoardOverlay[]): Record<string, string> =>
  Object.fromEntries(overlays.flatMap(({ items }) => items.map(({ item, state }) => [item, state])));

describe('a board over itself', () => {
  it('is the same in every edge, hole and device, of whatever job and format', () => {
    for (const own of everyFrozen()) {
      const overlays = over(own, own);
      expect(overlays.map(({ id }) => id)).toEqual(own.boards.map(({ id }) => id));
      const all = overlays.flatMap(({ edges, holes, items }) => [...edges, ...holes, ...items]);
      expect(all.length).toBeGreaterThan(5);
      expect(all.filter(({ state }) => state !== 'same')).toEqual([]);
    }
  });
});

describe('a board over another', () => {
  it('has what moved in both places, and all else as it was', () => {
    const after = withPlacements((one) => [one.item === 'dsp' ? { ...one, yM: one.yM + 0.05 } : one]);
    const states = statesOf(over(plan, after));
    expect(states).toEqual({ ...statesOf(over(plan, plan)), dsp: 'moved' });
    const dsp = over(plan, after)
      .flatMap(({ items }) => items)
      .find(({ item }) => item === 'dsp');
    expect(Number(dsp?.is?.yM) - Number(dsp?.was?.yM)).toBeCloseTo(0.05, 12);
    expect(dsp?.is?.xM).toBe(dsp?.was?.xM);
  });

  it('tells what is gone, and from the other side what is new', () => {
    const after = withPlacements((one) => (one.item === 'dsp' ? [] : [one]));
    expect(statesOf(over(plan, after)).dsp).toBe('gone');
    expect(statesOf(over(after, plan)).dsp).toBe('new');
  });

  it('tells a larger device at the same corner changed', () => {
    const after = withPlacements((one) => [one.item === 'dsp' ? { ...one, widthM: one.widthM + 0.02 } : one]);
    expect(statesOf(over(plan, after)).dsp).toBe('changed');
  });

  it('tells a hole apart by its place and its size, and counts those that lie on each other', () => {
    const [hole] = plan.boards[0]?.holes ?? [];
    if (!hole) throw new Error('The board has no hole.');
    const wider = withBoard((board) => ({
      ...board,
      holes: board.holes.map((one) =>
        one.n === hole.n ? { ...one, diameterM: one.diameterM + 0.001 } : one,
      ),
    }));
    const twice = withBoard((board) => ({ ...board, holes: [...board.holes, hole] }));
    const statesIn = (after: BuildPlan) =>
      over(plan, after)
        .flatMap(({ holes }) => holes.map(({ state }) => state))
        .filter((state) => state !== 'same')
        .toSorted();
    expect(statesIn(wider)).toEqual(['gone', 'new']);
    expect(statesIn(twice)).toEqual(['new']);
  });

  it('has an outline that is cut otherwise in both lines', () => {
    const after = withBoard((board) => ({
      ...board,
      outline: board.outline.map((corner, nth) => (nth === 0 ? { ...corner, xM: corner.xM - 0.01 } : corner)),
    }));
    const [first] = over(plan, after);
    const differing = first?.edges.filter(({ state }) => state !== 'same').map(({ state }) => state);
    expect(differing?.toSorted()).toEqual(['gone', 'new']);
  });

  it('belongs to the only one of the other job, whatever that is called; of several by their names', () => {
    const renamed = withBoard((board) => ({ ...board, id: 'another', title: 'Another board' }));
    expect(over(plan, renamed).map(({ id, over: below }) => [id, below])).toEqual([
      ['another', plan.boards[0]?.title],
    ]);
    const two = { ...plan, boards: [...plan.boards, ...renamed.boards] };
    expect(over(plan, two).map(({ id, edges }) => [id, edges.every(({ state }) => state === 'new')])).toEqual(
      [
        ['another', true],
        ['board', false],
      ],
    );
  });
});

describe('who may not see the places', () => {
  it('gets no drawing of them', () => {
    const tables = comparePlans(plan, plan, { ...look, audience: 'customer' });
    expect(boardOverlays(plan, plan, tables, 'customer')).toEqual([]);
  });
});
