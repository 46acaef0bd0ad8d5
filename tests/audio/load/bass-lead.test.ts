import { expect, test } from 'vitest';
import { leastBassAwg } from '../../../lib/audio/load/bass-lead.ts';

// Common practice, no source: 12 AWG for 4 to 2 ohm, 10 AWG below.
test.each([
  [8, null],
  [4.01, null],
  [4, '12'],
  [2.67, '12'],
  [2, '12'],
  [1.99, '10'],
  [1, '10'],
] as const)('a bass lead at %f ohm is of at least %s AWG', (loadOhm, awg) => {
  expect(leastBassAwg(loadOhm)).toBe(awg);
});
