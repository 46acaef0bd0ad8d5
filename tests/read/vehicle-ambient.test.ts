import { expect, test } from 'vitest';
import { planJob } from '../../lib/plan/plan-job.ts';
import { readContent } from '../../lib/read/read-content.ts';
import { houseRule } from '../../lib/rules/house-rule-of.ts';
import { type Change, smallShop } from './small-shop.ts';

const read = (...changes: readonly Change[]) => {
  const { jobs, problems } = readContent(smallShop(...changes));
  expect(problems).toEqual([]);
  const [job] = jobs;
  if (!job) throw new Error('No job was read.');
  return job;
};
const vehicle = 'content/vehicles/wagon.yaml';
const written: Change = [
  vehicle,
  'vehicle-load: 45 A',
  'vehicle-load: 45 A\nambient: { cabin: 41 C, engine-bay: 95 C }',
];

test('ambients that were read at a vehicle go before the house rules, for the zones that they count for', () => {
  const [usual, own] = [read(), read(written)];
  expect(own.rules['ambient-cabin']).toEqual({ value: 41, given: true, ofVehicle: true });
  expect(own.rules['ambient-engine-bay'].value).toBe(95);
  expect(own.rules['ambient-roof']).toEqual(usual.rules['ambient-roof']);
  expect(houseRule(own, 'ambient-cabin').from.source).toBe('ambient-cabin, as it was read at the vehicle');
});

// 4 AWG with insulation for 105 C carries 160 A at 30 C (33 CFR 183.425, Table 5); at T it carries sqrt((105 - T) / 75) of
// that, floored: by hand 82 A at 85 C, 58 A at 95 C.
test.each([
  ['the house rule of 85 C', [], 82],
  ['95 C as it was read', [written], 58],
] as const)('conductors in the engine bay are rated by %s', (_, changes, limitA) => {
  const { conductors } = planJob(read(...changes)).plan.power;
  const limits = conductors
    .find(({ id }) => id === 'tail')
    ?.limits.filter(({ zone }) => zone === 'engine-bay');
  expect(limits?.find(({ level }) => level === 'caution')?.limit).toBe(limitA);
});

test.each([
  ['ambient: { cabin: 41 }', /a temperature needs its unit/],
  ['ambient: { boot: 41 C }', /boot/],
])('%s is refused', (text, says) => {
  const { problems } = readContent(smallShop([vehicle, 'vehicle-load: 45 A', `vehicle-load: 45 A\n${text}`]));
  expect(problems.map(({ message }) => message).join()).toMatch(says);
});
