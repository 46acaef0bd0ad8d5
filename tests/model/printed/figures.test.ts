import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type FigureName, figures } from '../../../lib/model/printed/figures.ts';
import { printed, printedTone, printedValue } from '../../../lib/model/printed/index.ts';
import { instruments, stepOf } from '../../../lib/model/printed/instrument.ts';
import { type LengthName, lengths, printedLength } from '../../../lib/model/printed/lengths.ts';
import { parseQuantity } from '../../../lib/model/quantity/quantity.ts';
import { figureDirections, lengthDirections } from './safe-directions.ts';

const names = Object.keys(figures).filter((name): name is FigureName => Object.hasOwn(figures, name));
const lengthNames = Object.keys(lengths).filter((name): name is LengthName => Object.hasOwn(lengths, name));

describe('every kind of figure', () => {
  it('has the direction that is safe for it, and says why', () => {
    expect(Object.fromEntries(names.map((name) => [name, figures[name].direction]))).toEqual(
      figureDirections,
    );
    expect(Object.fromEntries(lengthNames.map((name) => [name, lengths[name].direction]))).toEqual(
      lengthDirections,
    );
    for (const { why } of [...Object.values(figures), ...Object.values(lengths)])
      expect(why.split(' ').length).toBeGreaterThan(2);
  });
});

test.each([
  // What must be carried up, what may be carried down, three digits and never finer than a clamp meter's 0.1 A.
  ['current-carried', 104.4, '105 A'],
  ['current-allowed', 104.4, '104 A'],
  ['current-carried', 28.98, '29 A'],
  ['current-allowed', 28.98, '28.9 A'],
  ['current-carried', 99.96, '100 A'],
  ['current-allowed', 99.96, '99.9 A'],
  ['current-carried', 0.1 + 0.2, '0.3 A'],
  ['current-carried', 0.01, '0.1 A'],
  ['current-allowed', 0.09, '0 A'],
  ['small-current-carried', 0.0502, '0.051 A'],
  ['small-current-allowed', 0.05, '0.05 A'],
  ['milliamperes-carried', 312.04, '313 mA'],
  ['voltage', 13.799, '13.80 V'],
  ['voltage', 12.604999, '12.60 V'],
  ['voltage-lost', 0.12301, '0.124 V'],
  ['voltage-lost', 0.123, '0.123 V'],
  ['loss-at-most', 50, '50 mV'],
  ['gain-voltage', 24.4949, '24.49 V'],
  ['load', 1.99, '1.9 ohm'],
  ['load-at-least', 1.91, '2.0 ohm'],
  ['first-mode', 29.99, '29 Hz'],
  ['sag', 0.2801, '0.29 mm'],
  ['torque', 9.99, '9.9 N m'],
  ['torque', 10, '10 N m'],
  ['mass', 12.301, '12.4 kg'],
  ['time-left', 59.9, '59 min'],
  ['time-needed', 59.1, '60 min'],
  ['pull-pounds', 30.0000000001, '30 lb'],
  ['level', -0.04, '0.0 dB'],
  ['current-left', -3.04, '-3.1 A'],
] as const)('%s of %d is printed as %s', (name, value, text) => {
  expect(printed(name, value)).toBe(text);
});

test('what is not known is a dash', () => {
  expect([null, undefined, Number.NaN, Number.POSITIVE_INFINITY].map((one) => printed('mass', one))).toEqual(
    Array.from({ length: 4 }, () => '—'),
  );
});

test.each([
  [80, '80 Hz'],
  [999, '999 Hz'],
  [3500, '3.5 kHz'],
  [2512, '2512 Hz'],
])('a corner of %d Hz is %s: it is set to just that', (hertz, text) => {
  expect(printedTone(hertz)).toBe(text);
});

/** The number that a reader takes from a printed figure. */
const readBack = (text: string): number => Number(/^-?[\d.]+/.exec(text)?.[0]);

test('no figure leaves its safe side, errs by a step or shows more than its instrument', () => {
  const value = fc.double({ min: -1e4, max: 1e4, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom(...names), value, (name, exact) => {
      const shown = readBack(printed(name, exact));
      const { direction, on } = figures[name];
      const step = stepOf(exact, on);
      const noise = step * 2e-6;
      if (direction === 'up') expect(shown).toBeGreaterThanOrEqual(exact - noise);
      if (direction === 'down') expect(shown).toBeLessThanOrEqual(exact + noise);
      const most = direction === 'nearest' ? step / 2 : step;
      expect(Math.abs(shown - exact)).toBeLessThanOrEqual(most + noise);
      expect(shown).toBe(printedValue(name, exact));
      const decimals = /\.(\d+)/.exec(printed(name, exact))?.[1]?.length ?? 0;
      expect(10 ** -decimals).toBeGreaterThanOrEqual(instruments[on].finest - 1e-12);
      const digits = String(Math.abs(shown))
        .replace(/^0\.0*|\./g, '')
        .replace(/0+$/, '');
      // One more where it was rounded to the next power of ten.
      expect(digits.length).toBeLessThanOrEqual(instruments[on].digits);
    }),
    { numRuns: 2000 },
  );
});

test('no length leaves its safe side, or errs by more than the tape shows', () => {
  const styles = fc.record({
    system: fc.constantFrom('inch' as const, 'mm' as const),
    fraction: fc.constantFrom(16 as const, 32 as const),
    feet: fc.boolean(),
  });
  fc.assert(
    fc.property(
      fc.constantFrom(...lengthNames),
      fc.double({ min: 0, max: 30, noNaN: true }),
      styles,
      (name, lengthM, style) => {
        const { direction } = lengths[name];
        const text = printedLength(name, lengthM, style);
        for (const [written, stepM] of [
          [text.fraction, 0.0254 / style.fraction],
          [text.decimal, 0.0000254],
          [text.mm, 0.001],
        ] as const) {
          const shownM = parseQuantity(written, 'length');
          if (typeof shownM !== 'number') throw new Error(`${written} is no length`);
          const noiseM = stepM * 2e-6 + 1e-10;
          if (direction === 'up') expect(shownM).toBeGreaterThanOrEqual(lengthM - noiseM);
          if (direction === 'down') expect(shownM).toBeLessThanOrEqual(lengthM + noiseM);
          expect(Math.abs(shownM - lengthM)).toBeLessThanOrEqual(
            (direction === 'nearest' ? stepM / 2 : stepM) + noiseM,
          );
        }
      },
    ),
    { numRuns: 1000 },
  );
});
