import { describe, expect, it } from 'vitest';
import { comparePlans } from '../../../lib/compare/compare-plans.ts';
import { type BoardOverlay, boardOverlays } from '../../../lib/compare/overlay.ts';
import { drawBoardOverlay, layBoardOverlay } from '../../../lib/draw/overlay/board-overlay.ts';
import type { BuildPlan, PlanPlacement } from '../../../lib/model/plan/index.ts';
import { frozenIn } from '../../compare/plans.ts';
import { shippedMetrics } from '../lettering/shipped-metrics.ts';
import { overlapsOn } from '../overlaps.ts';

const request = { id: 'job', before: 'job, revision A', after: 'job, revision B', metrics: shippedMetrics };

function over(before: BuildPlan, after: BuildPlan): BoardOverlay[] {
  const look = { audience: 'bench', style: { system: 'mm', fraction: 16 } } as const;
  return boardOverlays(before, after, comparePlans(before, after, look), 'bench');
}

function laid(overlay: BoardOverlay) {
  const drawn = layBoardOverlay(overlay, request);
  if (!drawn) throw new Error('Nothing was drawn.');
  return drawn;
}

const plan = frozenIn(1, 'estate-side-well');

function withPlacements(change: (one: PlanPlacement) => readonly PlanPlacement[]): BuildPlan {
  return {
    ...plan,
    boards: plan.boards.map((board) => ({ ...board, placements: board.placements.flatMap(change) })),
  };
}

describe('a board drawn over another', () => {
  it('says each state by its letter, and the key each letter by its word and its line', () => {
    const after = withPlacements((one) => {
      if (one.item === 'dsp') return [{ ...one, yM: one.yM + 0.06 }];
      if (one.item === 'dist') return [{ ...one, item: 'dist-two' }];
      return [one.item === 'amp-front' ? { ...one, widthM: one.widthM - 0.02 } : one];
    });
    const texts = over(plan, after).flatMap((one) => laid(one).drawing.texts.map(({ text }) => text));
    for (const text of ['M dsp', 'G dist', 'N dist-two', 'C amp-front', 'amp-sub'])
      expect(texts).toContain(text);
    for (const text of ['G gone', 'N new', 'M moved', 'C changed', 'the same in both'])
      expect(texts).toContain(text);
    expect(texts).toContain('For comparing, not for building; not to scale');
  });

  it('has what is gone in dashes, and an arrow where something moved', () => {
    const moved = withPlacements((one) => [one.item === 'dsp' ? { ...one, yM: one.yM + 0.06 } : one]);
    const count = (after: BuildPlan, pattern: RegExp): number =>
      over(plan, after)
        .map((one) => drawBoardOverlay(one, request)?.svg ?? '')
        .join('')
        .split(pattern).length - 1;
    const [dashed, head] = [/stroke-dasharray/, /<path[^>]*fill="var\(--draw-line, #000\)"(?![^>]*stroke=)/];
    // The key has one of each.
    expect([count(plan, dashed), count(plan, head)]).toEqual([1, 1]);
    expect([count(moved, dashed), count(moved, head)]).toEqual([2, 2]);
  });

  it('lets no two texts meet and no line run through one, also of boards that have nothing in common', () => {
    const pairs = [
      [frozenIn(0, 'estate-side-well'), plan],
      [frozenIn(1, 'under-seat-five'), plan],
      [frozenIn(0, 'van-three-amps'), frozenIn(1, 'van-three-amps')],
    ] as const;
    for (const [before, after] of pairs)
      for (const overlay of over(before, after)) {
        const drawn = laid(overlay);
        expect(overlapsOn(drawn)).toEqual([]);
        const named = new Set(drawn.drawing.texts.map(({ text }) => text.split(' ').at(-1)));
        const left = overlay.items.filter(({ item }) => !named.has(item)).map(({ item }) => item);
        // What finds no place is told beside the drawing.
        for (const item of left) expect(drawn.unplaced.join(' ')).toContain(item);
      }
  });

  it('is the same text again', () => {
    const [overlay] = over(frozenIn(0, 'estate-side-well'), plan);
    if (!overlay) throw new Error('There is no board.');
    expect(drawBoardOverlay(overlay, request)).toEqual(drawBoardOverlay(overlay, request));
  });

  it('is none where nothing has a size', () => {
    const nothing = { id: 'b', title: 'B', over: null, edges: [], items: [], holes: [] };
    expect(drawBoardOverlay(nothing, request)).toBeNull();
  });
});
