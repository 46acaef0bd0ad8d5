import { describe, expect, test } from 'vitest';
import type { SideRoom } from '../../../lib/board/layout/item.ts';
import { boardItems, partGapM } from '../../../lib/plan/board/board-items.ts';
import { givenPlacement } from '../../../lib/plan/board/board-layout.ts';
import { wallsBefore } from '../../../lib/plan/board/board-pose.ts';
import { boardFixings } from '../../../lib/plan/board/board-shape.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { byId } from '../plan-small-shop.ts';
import { inParts, inShop, inVehicle } from '../shop-changes.ts';
import { type OneBoard, oneBoard } from './one-board.ts';

describe('a device as the layout of its board sees it', () => {
  const item = (found: OneBoard) => {
    const book = new PlanBook();
    return { ...byId(boardItems(found.job, 'main', found.roles, book), 'amp'), traces: book.traces() };
  };
  const panels = [
    inParts(
      'B+: { role: supply-positive, joint: set-screw,',
      'B+: { role: supply-positive, panel: left, joint: set-screw,',
    ),
    inParts('IN1: { role: signal-in, joint: phono,', 'IN1: { role: signal-in, panel: right, joint: phono,'),
  ];

  test('has the terminals that are wired, in the layer of what they carry, at the side of their panel', () => {
    const { terminals } = item(oneBoard(undefined, ...panels));
    expect(terminals.map(({ id, side, layer }) => [id, side, layer])).toEqual([
      ['amp.B+', 'left', 'power'],
      ['amp.GND', 'bottom', 'ground'],
      ['amp.REM', 'bottom', 'speaker'],
      ['amp.IN1', 'right', 'signal'],
      ['amp.CH1+', 'bottom', 'speaker'],
      ['amp.CH1-', 'bottom', 'speaker'],
    ]);
    // In the middle of a side of 80 mm, of one of 100 mm.
    expect(terminals.map(({ alongM }) => alongM)).toEqual([0.04, 0.05, 0.05, 0.04, 0.05, 0.05]);
  });

  test('keeps room for bends and plugs where a conductor is wired, for a hand at its knobs, for a tool at its screws', () => {
    // House rules, common practice, no source: power bend 3 in, signal plug 2 in, knobs 3 in, set screws 6 in.
    const { rooms, traces } = item(oneBoard(undefined, ...panels));
    const inch = (room: SideRoom | undefined) =>
      Object.values(room ?? {}).map((m) => (m / 0.0254).toFixed(6));
    expect(inch(rooms.left)).toEqual(['0.000000', '3.000000', '6.000000', '3.000000']);
    expect(inch(rooms.right)).toEqual(['0.000000', '0.000000', '0.000000', '2.000000']);
    expect(rooms.top).toEqual({ airM: 0, accessM: 0, toolM: 0, bendM: 0 });
    expect(traces['boards.main.placements.amp.keepClear.left.connector']).toMatchObject({
      ...{ origin: 'assumed', rule: 'gap-power-bend', mark: 'cp' },
    });
    const own = item(
      oneBoard(undefined, ...panels, inShop('stock:', 'rules:\n  gap-power-bend: 5 in\nstock:')),
    );
    expect(own.rooms.left?.bendM).toBeCloseTo(0.127, 9);
    expect(own.traces['boards.main.placements.amp.keepClear.left.connector']).toMatchObject({
      ...{ origin: 'given', citation: 'the shop' },
    });
    const unwired = inJob('  feed: { from: main-fuse.OUT, to: amp.B+ }\n', '');
    const open = inJob('links: [feed], covering: loom-a', 'links: [signal], covering: loom-a');
    expect(item(oneBoard(undefined, ...panels, unwired, open)).rooms.left?.bendM).toBe(0);
  });

  test('is reached on its face where any of its controls is there', () => {
    expect(item(oneBoard()).faceAccess).toBe(false);
    const two = inParts(
      'GAIN: { what: gain, form: knob, panel: left,',
      'PHASE: { what: phase, form: switch, positions: [a, b], panel: face, safe: a, why: it stays }\n      GAIN: { what: gain, form: knob, panel: left,',
    );
    expect(item(oneBoard(undefined, two)).faceAccess).toBe(true);
  });
});

test('parts stand no nearer than the house gap, nor than the tolerance of their size', () => {
  const { rules } = oneBoard().job;
  const gap = (gapM: number, toleranceM: number) =>
    partGapM({
      ...rules,
      'gap-parts': { ...rules['gap-parts'], value: gapM },
      'part-tolerance': { ...rules['part-tolerance'], value: toleranceM },
    });
  expect([gap(0.0127, 0.003), gap(0.002, 0.003)]).toEqual([0.0127, 0.003]);
});

test('a place that the job gives is as high as it says, flat on the board where it does not', () => {
  const at = (more: string) =>
    givenPlacement(
      oneBoard(undefined, inJob('at: { x: 200 mm, y: 110 mm }', `at: { x: 200 mm, y: 110 mm }${more}`)).job,
      'amp',
    );
  expect(at('')).toEqual({ item: 'amp', xM: 0.2, yM: 0.11, turnDeg: 0, heightM: 0 });
  expect(at('\n    raised: 36 mm\n    turn: 90')).toMatchObject({ turnDeg: 90, heightM: 0.036 });
  expect(givenPlacement(oneBoard().job, 'sub')).toBeNull();
});

describe('what stands before the parts of a board', () => {
  const walls = (...more: readonly Change[]) => {
    const { job, board } = oneBoard(undefined, ...more);
    return wallsBefore(board, boardFixings(board, job.parts));
  };

  test('is each edge of its space that is not open, in the axes of the board, and an obstacle as far as it stands out', () => {
    const bounds = inVehicle(
      '    depth: 200 mm',
      '    depth: 200 mm\n    bounds: { left: wall, right: open }',
    );
    const pipe =
      'obstacles: { pipe: { x: 100 mm, y: 100 mm, width: 20 mm, height: 30 mm, stands-out: 80 mm, what: a pipe } }';
    const found = walls(bounds, inVehicle('    sound-points:', `    ${pipe}\n    sound-points:`));
    const edges = found.filter(({ toM }) => !Number.isFinite(toM));
    expect(edges.flatMap(({ sides }) => sides).toSorted()).toEqual(['bottom', 'left', 'top']);
    expect(edges.filter(({ certain }) => certain).flatMap(({ sides }) => sides)).toEqual(['left']);
    // The board stands at 10 mm, 10 mm of its space: the corner of that lies outside it.
    expect(edges[0]?.ring[0]).toEqual({ xM: -0.01, yM: -0.01 });
    // 80 mm less the spacer of 25 mm and the sheet of 12 mm.
    const [obstacle] = found.filter(({ toM }) => Number.isFinite(toM));
    expect(obstacle?.toM).toBeCloseTo(0.043, 9);
    expect(obstacle?.certain).toBe(true);
  });
});
