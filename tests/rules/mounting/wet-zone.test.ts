import { expect, test } from 'vitest';
import type { Direction } from '../../../lib/model/vocabulary.ts';
import { looksDown } from '../../../lib/rules/mounting/wet-zone.ts';

const directions: readonly Direction[] = ['front', 'rear', 'left', 'right', 'up', 'down'];
const level: readonly Direction[] = ['front', 'right', 'rear', 'left'];

// Standing on a floor and looking down on it with the front ahead, right is to the right: the face looks up.
test('of the eight ways to lay a board flat, four look up and four look down', () => {
  level.forEach((right, at) => {
    const onTheLeft = level[(at + 3) % 4] ?? 'front';
    const onTheRight = level[(at + 1) % 4] ?? 'front';
    expect(looksDown(right, onTheLeft)).toBe(false);
    expect(looksDown(right, onTheRight)).toBe(true);
  });
  expect(looksDown('right', 'front')).toBe(false);
});

test('an upright board looks neither up nor down', () => {
  for (const right of directions) {
    expect(looksDown(right, 'up')).toBe(false);
    expect(looksDown('up', right)).toBe(false);
  }
});
