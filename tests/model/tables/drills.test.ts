import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { printedBit } from '../../../lib/model/printed/holes.ts';
import { drillBit, drillBits, numberDrills, pilotToleranceM } from '../../../lib/model/tables/drills.ts';

const mm = 0.001;
const inchM = 0.0254;

describe('number drills', () => {
  // ANSI B94.11M as published lists quote it, in inches.
  it.each([
    ['#1', 0.228],
    ['#7', 0.201],
    ['#21', 0.159],
    ['#25', 0.1495],
    ['#30', 0.1285],
    ['#40', 0.098],
    ['#60', 0.04],
  ])('%s is %s in', (name, inches) => {
    expect(numberDrills.find((bit) => bit.name === name)?.diameterM).toBeCloseTo(inches * inchM, 9);
  });

  it('get thinner by number, without one missing', () => {
    expect(numberDrills.map(({ name }) => name)).toEqual(Array.from({ length: 60 }, (_, at) => `#${at + 1}`));
    const sizes = numberDrills.map(({ diameterM }) => diameterM);
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    expect(new Set(sizes).size).toBe(60);
  });
});

describe('a hole that something passes', () => {
  it.each([
    // 5/16 in is 7.94 mm: an M8 bolt does not pass it, and 8.5 mm is what its maker asks for.
    [8.5 * mm, '11/32 in or 8.5 mm'],
    [6.6 * mm, '17/64 in or 6.6 mm'],
    // Just what it is, and a hair over.
    [(11 / 32) * inchM, '11/32 in or 8.8 mm'],
    [(11 / 32) * inchM + 1e-6, '23/64 in or 8.8 mm'],
    [10 * mm, '13/32 in or 10 mm'],
    [10.1 * mm, '13/32 in or 10.5 mm'],
    [26 * mm, '1 1/16 in or 26 mm'],
  ])('of %s m is drilled with %s', (diameterM, text) => {
    expect(printedBit(diameterM, 'clearance', 'inch')).toBe(text);
  });

  it('lets pass what it is for, and is not wider than a step of its system', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5 * mm, max: 60 * mm, noNaN: true }),
        fc.constantFrom('inch' as const, 'mm' as const),
        (diameterM, system) => {
          const bitM = drillBit(diameterM, 'clearance', system)?.diameterM ?? 0;
          expect(bitM).toBeGreaterThanOrEqual(diameterM - 2e-9);
          expect(bitM - diameterM).toBeLessThan(inchM / 16);
        },
      ),
    );
  });
});

describe('a pilot', () => {
  it.each([
    // A rivet nut holds in the hole of its maker alone: 23/64 in is 0.13 mm wide of 9 mm.
    [9 * mm, '9 mm'],
    [11 * mm, '11 mm'],
    [7 * mm, '7 mm'],
    // Screws by number: fractions as their makers name them.
    [(1 / 8) * inchM, '1/8 in or 3.2 mm'],
    [(9 / 64) * inchM, '9/64 in or 3.6 mm'],
    // Between two fractions a number drill: #20 is 4.09 mm, 5/32 in 3.97, 11/64 in 4.37.
    [4.15 * mm, '#20 or 4.1 mm'],
  ])('of %s m is drilled with %s', (diameterM, text) => {
    expect(printedBit(diameterM, 'pilot', 'inch')).toBe(text);
  });

  it('is within 0.1 mm of what its maker asks for, or to its tenth in millimetres', () => {
    fc.assert(
      fc.property(fc.double({ min: 1 * mm, max: 13 * mm, noNaN: true }), (diameterM) => {
        const bits = drillBits(diameterM, 'pilot', 'inch');
        expect(bits.length).toBeGreaterThan(0);
        for (const bit of bits)
          expect(Math.abs(bit.diameterM - diameterM)).toBeLessThanOrEqual(pilotToleranceM + 2e-9);
      }),
    );
  });

  it('takes a fraction that is just within 0.1 mm, and none that is just beyond', () => {
    const fraction = (23 / 64) * inchM;
    expect(drillBit(fraction + 0.000099, 'pilot', 'inch')?.name).toBe('23/64 in');
    expect(drillBit(fraction + 0.000101, 'pilot', 'inch')).toBeNull();
    expect(drillBit(fraction - 0.000099, 'pilot', 'inch')?.name).toBe('23/64 in');
    expect(drillBit(fraction - 0.000101, 'pilot', 'inch')).toBeNull();
  });
});

test('a shop that works in millimetres reads its own bit first', () => {
  expect(printedBit(8.5 * mm, 'clearance', 'mm')).toBe('8.5 mm or 11/32 in');
});

test('a hole whose size is not known has no bit', () => {
  expect(drillBits(0, 'clearance', 'inch')).toEqual([]);
  expect(printedBit(0, 'clearance', 'inch')).toBe('not known');
});
