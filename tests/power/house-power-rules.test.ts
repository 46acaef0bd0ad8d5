import { expect, test } from 'vitest';
import { powerRules } from '../../lib/power/house-power-rules.ts';
import { readHouseRules } from '../../lib/read/read-house-rules.ts';
import { usualHouseRules } from './usual-rules.ts';

test('what a shop sets is what the power side computes with', () => {
  const rules = powerRules(
    readHouseRules({
      'conductor-temperature': 70,
      stranding: 0.03,
      'clad-conductivity': 0.6,
      'clad-per-kelvin': 0.004,
      'drop-limit': 0.02,
      'fuse-margin': 1.3,
      'reserve-end': 0.6,
      'charge-efficiency': 0.8,
      'charging-share': 0.7,
      'key-off-draw': 0.03,
      'insulation-unmarked': 75,
      'loom-factor': 0.75,
    }),
  );
  expect(rules).toMatchObject({
    conductorC: 70,
    claddedConductivity: 0.6,
    claddedPerK: 0.004,
    dropShare: 0.02,
    fuseMargin: 1.3,
    reserveShare: 0.6,
    chargeEfficiency: 0.8,
    chargingShare: 0.7,
    keyOffA: 0.03,
    unmarkedInsulationC: 75,
    coveredFactor: 0.75,
  });
  // Strands lie askew: 3 % more conductor to the metre, never less.
  expect(rules.strandedFactor).toBeCloseTo(1.03, 12);
});

// ABYC E-11, from memory: 3, 4 to 6, 7 to 24 and more than 24 conductors in a bundle.
test('a bundle carries less the more is in it, and two conductors are none', () => {
  const { bundleFactors } = powerRules(
    readHouseRules({
      'bundle-3': 0.69,
      'bundle-4-to-6': 0.59,
      'bundle-7-to-24': 0.49,
      'bundle-over-24': 0.39,
    }),
  );
  const factorOf = (count: number) => bundleFactors.find(({ upTo }) => count <= upTo)?.factor;
  expect([1, 2, 3, 4, 6, 7, 24, 25, 200].map(factorOf)).toEqual([
    ...[1, 1, 0.69, 0.59, 0.59, 0.49, 0.49, 0.39, 0.39],
  ]);
});

test('thin wires, batteries and fuses whose makers are silent have the figures of the house', () => {
  const { thinWireA, interruptNeeds, formInterruptA } = powerRules(
    readHouseRules({
      ...{ 'fuse-20-awg': 4, 'fuse-22-awg': 3, 'fuse-24-awg': 2 },
      ...{ 'interrupt-to-650': 1600, 'interrupt-to-1100': 2600, 'interrupt-above': 5100 },
      ...{ 'interrupt-maxi-blade': 900, 'interrupt-class-t': 19_000 },
    }),
  );
  expect(thinWireA).toEqual({ '20': 4, '22': 3, '24': 2 });
  expect(interruptNeeds).toEqual({ to650A: 1600, to1100A: 2600, aboveA: 5100 });
  expect(formInterruptA).toMatchObject({ 'maxi-blade': 900, 'class-t': 19_000 });
  for (const [form, interruptA] of Object.entries(powerRules(usualHouseRules).formInterruptA))
    expect(interruptA, form).toBeGreaterThan(0);
});
