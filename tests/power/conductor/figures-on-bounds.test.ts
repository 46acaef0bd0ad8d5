import { describe, expect, test } from 'vitest';
import { isFault } from '../../../lib/model/fault.ts';
import type { Traced } from '../../../lib/model/trace.ts';
import { bundleDiameterM, outsideDiameterM } from '../../../lib/power/conductor/bundle-diameter.ts';
import { chooseCovering } from '../../../lib/power/conductor/covering-size.ts';
import { ohmPerM } from '../../../lib/power/conductor/resistance.ts';
import { redone } from '../../publish/workings/redo.ts';
import { usualRules } from '../usual-rules.ts';

function redoneOf(made: Traced<number> | { readonly fault: string }): number {
  if (!('trace' in made)) throw new Error(made.fault);
  expect(redone(made.trace), made.trace.rule).toBeCloseTo(made.value, 12);
  return made.value;
}

describe('the resistance of a conductor', () => {
  const at = (temperatureC: number) => ohmPerM({ areaMm2: 10, material: 'copper' }, temperatureC, usualRules);

  test('is known from -60 C to 250 C, both with', () => {
    for (const temperatureC of [-60, 250]) redoneOf(at(temperatureC));
    for (const temperatureC of [-60.1, 250.1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(at(temperatureC)).toMatchObject({ fault: 'temperature-unlikely', of: ['temperature'] });
  });

  test('of the part itself needs no area, and must be above zero', () => {
    const measured = (measuredOhmPerM: number) =>
      ohmPerM({ areaMm2: Number.NaN, material: 'copper', measuredOhmPerM }, 20, usualRules);
    expect(redoneOf(measured(0.0013))).toBeCloseTo(0.0013, 12);
    for (const none of [0, -1, Number.NaN]) expect(measured(none)).toHaveProperty('fault');
  });

  // Strands lie askew: 2 % more conductor to the metre by the house rule.
  test('is that of strands where nothing else is said, and cites what it rests on', () => {
    const made = ohmPerM({ areaMm2: 10, material: 'copper' }, 20, usualRules);
    const solid = ohmPerM({ areaMm2: 10, material: 'copper', solid: true }, 20, usualRules);
    expect(redoneOf(made) / redoneOf(solid)).toBeCloseTo(1.02, 9);
    expect(made).toMatchObject({ trace: { mark: 'cp', citation: expect.stringMatching(/IEC 60028/) } });
    expect(ohmPerM({ areaMm2: 10, material: 'copper-clad-aluminium' }, 20, usualRules)).toMatchObject({
      trace: { mark: 'mem', citation: expect.stringMatching(/ASTM B566/) },
    });
  });
});

describe('a bundle', () => {
  // By hand: 10 + 9 mm side by side are more than 1.25 * sqrt(4 + 100 + 81) = 17.0 mm.
  test('is never thinner than its two thickest wires, in whatever order they stand', () => {
    for (const all of [
      [0.002, 0.01, 0.009],
      [0.01, 0.009, 0.002],
      [0.009, 0.002, 0.01],
    ])
      expect(redoneOf(bundleDiameterM(all))).toBeCloseTo(0.019, 12);
    expect(redoneOf(bundleDiameterM([0.002, 0.01]))).toBeCloseTo(0.012, 12);
    expect(redoneOf(bundleDiameterM([0.01]))).toBeCloseTo(0.01, 12);
    // 1.25 * sqrt(3) * 10 mm = 21.65 mm.
    expect(redoneOf(bundleDiameterM([0.01, 0.01, 0.01]))).toBeCloseTo(0.02165, 5);
  });

  test('without wires, or with one of no thickness, is refused', () => {
    expect(bundleDiameterM([])).toMatchObject({ fault: 'bundle-empty', of: ['diameters'] });
    const made = bundleDiameterM([0.01, 0]);
    expect(isFault(made) && made.of).toEqual(['diameter 2']);
  });

  // ISO 6722-1, thick wall, from memory: 1.5 mm up to 70 mm2, 1.6 mm above.
  test('of thick cables counts their wall too', () => {
    const wallOf = (areaMm2: number) => {
      const made = outsideDiameterM(areaMm2);
      redoneOf(made);
      return isFault(made) ? Number.NaN : made.trace.inputs.find(({ name }) => name === 'w')?.value;
    };
    expect([70, 70.1, 240].map(wallOf)).toEqual([0.0015, 0.0016, 0.0016]);
  });
});

describe('a covering', () => {
  // Over 10 mm with a tenth of room: 11 mm open. On 8 mm with a twentieth of grip: 7.6 mm closed.
  const chosen = (openMm: number, closedMm: number, stockM?: number) => {
    const size = {
      ...{ part: 'sleeve', openM: openMm / 1000, closedM: closedMm / 1000 },
      ...(stockM !== undefined && { stockM }),
    };
    const over = { thickestM: 0.01, thinnestM: 0.008, lengthM: 0.05 };
    const made = chooseCovering(over, [size], { room: 1.1, grip: 0.95 });
    if (isFault(made)) throw new Error(made.message);
    return made.chosen ? 'chosen' : made.reason;
  };

  test('slides over the thickest with its room, and closes on the thinnest with its grip, on the bounds too', () => {
    expect(chosen(11, 7.6)).toBe('chosen');
    expect(chosen(10.99, 7.6)).toBe('none opens wide enough: 11 mm open, 7.6 mm closed');
    expect(chosen(11, 7.61)).toBe(
      'none closes far enough, a higher ratio is needed: 11 mm open, 7.6 mm closed',
    );
  });

  test('is as long as it is asked for, where its stock is counted', () => {
    expect(chosen(11, 7.6, 0.05)).toBe('chosen');
    expect(chosen(11, 7.6, 0.049)).toBe('too little on the shelf of 11 mm open, 7.6 mm closed');
  });
});
