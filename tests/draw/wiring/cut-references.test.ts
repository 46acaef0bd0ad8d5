import { expect, it } from 'vitest';
import type { BoardScene } from '../../../lib/draw/board/scaled-sheet.ts';
import { at, boxAt, type PaperBox, type PaperPoint } from '../../../lib/draw/paper.ts';
import { cutReferences } from '../../../lib/draw/wiring/cross-references.ts';
import { laidRoute } from '../../../lib/draw/wiring/strands.ts';
import { fixedPlan } from '../../boards/fixed-jobs.ts';

const plan = fixedPlan('van-three-amps');
const [board] = plan.boards;
const [route] = board?.routes ?? [];
if (!board || !route) throw new Error('the van has a board with routes');
const view = { ratio: 1, datum: at(0, 0), mirrored: false } as const;

/** References of a line on a sheet that shows a box, where another sheet shows the other. */
function textsOn(line: readonly PaperPoint[], clip: PaperBox, box: PaperBox): string[] {
  const scene: BoardScene = {
    ...{ plan, board: board ?? fail(), view, clip, room: boxAt(-10, -10, 500, 500) },
    elsewhere: () => ({ part: 'part 2', zone: 'B3', box }),
  };
  const laid = laidRoute(plan, view, [], route ?? fail());
  return cutReferences(scene, [{ ...laid, axis: line }]).map(({ text }) => text);
}

function fail(): never {
  throw new Error('the van has a board with routes');
}

const [left, right] = [boxAt(0, 0, 60, 100), boxAt(50, 0, 60, 100)];
const letters = (texts: readonly string[]) => texts.map((text) => / ([a-h])\n/.exec(text)?.[1] ?? '');

it('a line that crosses a cut once has its label alone', () => {
  const texts = textsOn([at(10, 20), at(90, 20)], left, right);
  expect(texts).toHaveLength(1);
  expect(letters(texts)).toEqual(['']);
  expect(texts[0]).toMatch(/\nto part 2, B3$/);
});

it('a line that crosses a cut there and back has a letter at each, the same on both sheets', () => {
  const line = [at(10, 20), at(90, 20), at(90, 50), at(10, 50), at(10, 80), at(90, 80)];
  expect(letters(textsOn(line, left, right))).toEqual(['a', 'b', 'c']);
  expect(letters(textsOn(line, right, left))).toEqual(['a', 'b', 'c']);
});

it('no letter is given where a turn in the common strip makes the sheets count differently', () => {
  const line = [at(10, 20), at(90, 20), at(90, 50), at(55, 50), at(55, 80), at(90, 80)];
  expect(letters(textsOn(line, left, right))).toEqual(['', '', '']);
  expect(letters(textsOn(line, right, left))).toEqual(['']);
});
