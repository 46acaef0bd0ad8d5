import { expect, test } from 'vitest';
import { readShort, shortText } from './short-shop.ts';

const written = `  board:
    at: { x: 1 in, y: 1 in }
    outline: { rectangle: { width: 17 in, height: 12 in } }
    spacer: 12 mm
`;

/** The short job of one amplifier, its board written otherwise. */
function withBoard(board: string) {
  const text = shortText('one-bass-amplifier');
  if (!text.includes(written)) throw new Error('The short job writes its board otherwise.');
  return readShort(text.replace(written, board));
}

const inch = 0.0254;
const boardOf = (board: string) => {
  const { job, problems } = withBoard(board);
  expect(problems).toEqual([]);
  const [own] = job?.boards ?? [];
  if (!job || !own) throw new Error('The job has a board.');
  const proposed = job.proposals.filter(({ rule }) => rule === 'board-size');
  return { own, proposed, rectangle: own.given.outline.rectangle };
};

test('a board that says nothing is the largest rectangle of its space, and held by its sound points', () => {
  const { own, proposed, rectangle } = boardOf('  board: {}\n');
  expect(proposed.map(({ path }) => path.join('.')).slice(0, 2)).toEqual([
    'boards.board.at',
    'boards.board.outline',
  ]);
  expect(Object.keys(own.given.fixings)).toHaveLength(4);
  // Larger than what a fabricator wrote for the same space, and inside it.
  const { width = 0, height = 0 } = rectangle ?? {};
  expect(width * height).toBeGreaterThan(17 * 12 * inch * inch);
  const { x, y } = own.given.at ?? {};
  const [rights, tops] = [0, 1].map((axis) => own.space.outline.map((corner) => corner[axis] ?? 0));
  expect(Number(x) + width).toBeLessThanOrEqual(Math.max(...(rights ?? [])));
  expect(Number(y) + height).toBeLessThanOrEqual(Math.max(...(tops ?? [])));
});

test('what the job says of its place and its spacers stays', () => {
  const { own, proposed, rectangle } = boardOf('  board: { at: { x: 3 in, y: 2 in }, spacer: 12 mm }\n');
  expect(proposed.map(({ path }) => path.at(-1))).toEqual(['outline']);
  expect([own.given.at?.x, own.given.at?.y, own.given.spacer]).toEqual([0.0762, 0.0508, 0.012]);
  expect(rectangle?.width).toBeLessThan(boardOf('  board: {}\n').rectangle?.width ?? 0);
});

test('one that is written is not proposed', () => {
  const { proposed, rectangle } = boardOf(written);
  expect(proposed).toEqual([]);
  expect(rectangle?.width).toBeCloseTo(17 * inch, 9);
});

test('where no rectangle is free in the space, the outline is asked for', () => {
  const { problems } = withBoard('  board: { at: { x: 0 in, y: 0 in } }\n');
  expect(problems.map(({ message }) => message)).toContain(
    'board has no outline, and no rectangle is free in under-left-seat',
  );
});
