import { describe, expect, test } from 'vitest';
import type { Change } from '../../../read/small-shop.ts';
import { smallPlan } from '../../plan-small-shop.ts';
import { inParts, inVehicle } from '../../shop-changes.ts';

const toCut = inVehicle('boot: { title: Boot,', 'boot: { opening: to-cut, title: Boot,');
const sized = inParts('band: subwoofer', 'band: subwoofer\n    cut-out: 280 mm');
const stepsOf = (...changes: readonly Change[]) => smallPlan(...changes).plan.steps;

describe('an opening that is still to be cut', () => {
  test('has a step with its size, the look behind it first, before the speaker is mounted', () => {
    const steps = stepsOf(toCut, sized);
    const step = steps.find(({ id }) => id === 'opening-boot');
    expect(step?.text).toMatch(
      /^Cut the opening at boot: for sub 11 in \(280 mm\) across\. First .* no airbag/,
    );
    expect(step?.after).toEqual(['battery-off', 'trim-off-cargo']);
    expect(steps.find(({ id }) => id === 'mount-boot')?.after).toContain('opening-boot');
  });

  test('is cut by its template where its maker tells no size', () => {
    expect(stepsOf(toCut).find(({ id }) => id === 'opening-boot')?.text).toContain('template');
  });

  test('asks for no step where it is there', () => {
    expect(stepsOf(sized).some(({ id }) => id.startsWith('opening-'))).toBe(false);
  });
});

test('the grommet of a run is told with its hole, and one that is not there yet with the look behind it', () => {
  const grommet = inParts(
    '  bolt-a:',
    '  ring-a: { kind: grommet, title: Ring, hole: 32 mm, bore: 28 mm, panel: 2 mm }\n  bolt-a:',
  );
  const at = (more: string) =>
    inVehicle(
      '{ zone: sill, length: 3 m }]\n    reaches',
      `{ zone: sill, length: 3 m, edge: true${more} }]\n    reaches`,
    );
  const textOf = (...changes: readonly Change[]) =>
    stepsOf(grommet, ...changes).find(({ id }) => id === 'run-power')?.text;
  expect(textOf(at(', through-hole: 32 mm'))).toMatch(
    /; ring-a in the hole of 32 mm at the sill \(a blind plug in it comes out first\); sealer/,
  );
  expect(textOf(at(''))).toMatch(
    /; ring-a at the sill, in a hole of 32 mm: where it is not there, look and feel behind first .* cut it/,
  );
});
