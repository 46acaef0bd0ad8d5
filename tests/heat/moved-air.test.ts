import { expect, test } from 'vitest';
import { movedAir } from '../../lib/heat/moved-air.ts';

const m3h = 1 / 3600;

// Common practice, no source: a fan in a space with grilles moves about half of what it moves in the open.
test('a fitted fan moves its share of what its maker states, beside one that is there', () => {
  const { value, trace } = movedAir({ thereM3S: 10 * m3h, statedM3S: 60 * m3h, delivers: 0.5 });
  expect(value * 3600).toBeCloseTo(40, 9);
  expect(trace).toMatchObject({ rule: 'moved-air', mark: 'cp' });
});

test('one that is there moves what was measured', () => {
  const { value, trace } = movedAir({ thereM3S: 40 * m3h, statedM3S: 0, delivers: 0.5 });
  expect(value * 3600).toBeCloseTo(40, 9);
  expect(trace.origin).toBe('given');
});
