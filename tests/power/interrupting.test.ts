import { expect, test } from 'vitest';
import { isFault } from '../../lib/model/fault.ts';
import { interruptNeedA, prospectiveFaultA } from '../../lib/power/interrupting.ts';
import { usualRules } from './usual-rules.ts';

function need(crankingA: number) {
  const found = interruptNeedA(crankingA, usualRules);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

// ABYC E-11, from memory: 1.5 kA to 650 A of cranking current, 3 kA to 1,100 A, 5 kA above.
test('what a main fuse must interrupt steps up just above each bound, never at it', () => {
  const steps = [1, 650, 650.1, 1100, 1100.1, 5000].map((crankingA) => need(crankingA).value);
  expect(steps).toEqual([1500, 1500, 3000, 3000, 5000, 5000]);
});

test('its working names the cranking current of all batteries together', () => {
  expect(need(700).trace).toMatchObject({
    rule: 'fuse-interrupting',
    unit: 'A',
    mark: 'mem',
    citation: 'ABYC E-11',
    inputs: [{ name: 'cranking', value: 700, unit: 'A' }],
  });
});

test.each([0, -1, Number.NaN, Number.POSITIVE_INFINITY])(
  'no need follows from %s A of cranking',
  (crankingA) => {
    expect(interruptNeedA(crankingA, usualRules)).toHaveProperty('fault');
  },
);

function prospective(...given: Parameters<typeof prospectiveFaultA>) {
  const found = prospectiveFaultA(...given);
  if (isFault(found)) throw new Error(found.message);
  return found;
}

// By hand: 12 V over 12 mohm are 1,000 A, over 5 mohm 2,400 A.
test('a resistance below nothing helps no fault along: it counts as none', () => {
  expect(prospective(12, 0.005, 0.007).value).toBeCloseTo(1000, 9);
  expect(prospective(12, -0.004, 0.005).value).toBeCloseTo(2400, 9);
  expect(prospective(12, 0.005, -0.004).value).toBeCloseTo(2400, 9);
  expect(prospectiveFaultA(12, -1, -1)).toHaveProperty('fault');
});

test.each([0, -12, Number.NaN])('a source of %s V drives nothing', (emfV) => {
  expect(prospectiveFaultA(emfV, 0.005, 0.005)).toHaveProperty('fault');
});

test('the working lists the way and the sources, and how they are summed where there are any', () => {
  const bare = prospective(12, 0.005, 0.007).trace;
  expect(bare.formula).toBe('I = E / (Rs + Rl)');
  expect(bare.inputs).toEqual([
    { name: 'E', value: 12, unit: 'V' },
    { name: 'Rs', value: 0.005, unit: 'ohm' },
    { name: 'Rl', value: 0.007, unit: 'ohm' },
  ]);
  const whole = prospective(12, 0.005, 0.007, [['tail', 0.007]], [['one', 1000]]).trace;
  expect(whole.formula).toMatch(/^I = E \/ \(Rs \+ Rl\); Rl = the sum/);
  expect(whole.inputs.slice(3)).toEqual([
    { name: 'tail', value: 0.007, unit: 'ohm' },
    { name: 'one gives', value: 1000, unit: 'A' },
  ]);
});
