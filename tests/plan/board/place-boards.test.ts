import { describe, expect, test } from 'vitest';
import type { Job } from '../../../lib/model/content/resolved-job.ts';
import { placeBoards } from '../../../lib/plan/board/place-boards.ts';
import { PlanBook } from '../../../lib/plan/plan-book.ts';
import { inJob } from '../../read/problem-case.ts';
import type { Change } from '../../read/small-shop.ts';
import { inVehicle } from '../shop-changes.ts';
import { oneBoard } from './one-board.ts';

describe('a board without a place', () => {
  const open = (job: Job): Job => ({
    ...job,
    boards: job.boards.map(({ place: _place, ...board }) => {
      const { at: _at, ...given } = board.given;
      return { ...board, given };
    }),
  });

  test('gets the first that is free; one that has a place keeps it', () => {
    const { job } = oneBoard();
    expect(placeBoards(job, new PlanBook())).toBe(job);
    const book = new PlanBook();
    const [placed] = placeBoards(open(job), book).boards;
    expect(placed?.place).toBeDefined();
    expect(book.traces()['boards.main.datumInSpace.xM']).toMatchObject({ rule: 'board-place' });
    expect(book.remarks()).toEqual([]);
  });

  test('stands as its traces say, tried place by place on the grid of its space', () => {
    const book = new PlanBook();
    const [placed] = placeBoards(open(oneBoard().job), book).boards;
    for (const axis of ['xM', 'yM'] as const)
      expect(book.traces()[`boards.main.datumInSpace.${axis}`]).toMatchObject({
        ...{ value: placed?.place?.[axis], unit: 'm', rule: 'board-place' },
        inputs: [
          { name: 'space', value: 'well', unit: '' },
          { name: 'grid', unit: 'm' },
          { name: 'places tried', value: expect.any(Number), unit: '' },
        ],
      });
    // Each of its fixings comes through it, by the house distance from its edge at least.
    const { job } = oneBoard();
    const edgeM = job.rules['hole-edge'].value;
    const at = placed?.place ?? { xM: Number.NaN, yM: Number.NaN };
    for (const [x, y] of [
      [0.05, 0.05],
      [0.45, 0.27],
    ] as const) {
      expect(x - at.xM).toBeGreaterThanOrEqual(edgeM + 0.0032);
      expect(0.5 - (x - at.xM)).toBeGreaterThanOrEqual(edgeM + 0.0032);
      expect(y - at.yM).toBeGreaterThanOrEqual(edgeM + 0.0032);
      expect(0.3 - (y - at.yM)).toBeGreaterThanOrEqual(edgeM + 0.0032);
    }
  });

  // The points are 400 mm apart, their bolts 6.4 mm wide: beside one a board of 460 mm has 26.8 mm where it stands midway,
  // and one of 440 mm has 16.8 mm at most.
  test('leaves a good web beside each fixing where a place of the grid does, and what there is where none does', () => {
    const roomM = (width: string) => {
      const book = new PlanBook();
      const wide = inJob('rectangle: { width: 500 mm', `rectangle: { width: ${width}`);
      const [placed] = placeBoards(open(oneBoard(undefined, wide).job), book).boards;
      expect(book.remarks()).toEqual([]);
      const xM = placed?.place?.xM ?? Number.NaN;
      return Math.min(0.05 - xM, xM + Number.parseFloat(width) / 1000 - 0.45) - 0.0032;
    };
    expect(roomM('460 mm')).toBeCloseTo(0.0268, 9);
    expect(roomM('440 mm')).toBeCloseTo(0.0168, 9);
  });

  test('has none as long as its outline can’t be drawn, which is told where it is laid out', () => {
    const crossed = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { polygon: [[0 mm, 0 mm], [500 mm, 300 mm], [500 mm, 0 mm], [0 mm, 300 mm]] }',
    );
    const book = new PlanBook();
    const { job } = oneBoard(undefined, crossed);
    expect(placeBoards(open(job), book).boards).toEqual(open(job).boards);
    expect(book.remarks()).toEqual([]);
    expect(book.traces()).toEqual({});
  });

  test('keeps clear of what must stay reachable, and of what should, as long as there is room', () => {
    const area = (must: boolean, width: string) =>
      inVehicle(
        '    sound-points:\n',
        `    keep-reachable: { jack: { what: cover, x: 0 mm, y: 0 mm, width: ${width}, height: 500 mm, before: 300 mm, must: ${must} } }\n    sound-points:\n`,
      );
    const placeOf = (...changes: readonly Change[]) => {
      const book = new PlanBook();
      const [placed] = placeBoards(open(oneBoard(undefined, ...changes).job), book).boards;
      return { xM: placed?.place?.xM ?? Number.NaN, told: book.remarks().map(({ remark }) => remark.of) };
    };
    // The points are 50 mm from the side: what is kept free there is 20 mm wide, or wider than the board can give way to.
    for (const must of [true, false]) {
      expect(placeOf(area(must, '20 mm')).xM).toBeGreaterThanOrEqual(0.02);
      expect(placeOf(area(must, '20 mm')).told).toEqual([]);
    }
    expect(placeOf(area(false, '60 mm'))).toEqual({ ...placeOf(), told: [] });
    expect(placeOf(area(true, '60 mm')).told).toEqual([['main', 'jack']]);
  });

  test('that is larger than its space stands where it lacks least, told by its own name', () => {
    const wide = inJob(
      'outline: { rectangle: { width: 500 mm, height: 300 mm } }',
      'outline: { rectangle: { width: 900 mm, height: 300 mm } }',
    );
    const book = new PlanBook();
    placeBoards(open(oneBoard(undefined, wide).job), book);
    const [told] = book.remarks();
    expect(told?.remark).toMatchObject({ rule: 'no-place-for-board', level: 'stop', of: ['main'] });
    expect(told?.remark.message).toMatch(/main reaches .* past the edge of the space/);
  });
});
