import { describe, expect, test } from 'vitest';
import { awgAreaMm2 } from '../../../lib/model/tables/awg-sizes.ts';
import { foldedEnd, type Splice, spliceJoins, spliceTakes } from '../../../lib/power/conductor/joint-size.ts';

const splice = (form: Splice['form'], smallestMm2: number, largestMm2: number): Splice => ({
  form,
  smallestMm2,
  largestMm2,
});
const [awg18, awg20] = [awgAreaMm2('18'), awgAreaMm2('20')];

// Common practice, no source. Areas by ASTM B258: 18 AWG has 0.823 mm2, 20 AWG 0.518.
describe('a splice that joins a wire to another', () => {
  test('as a butt splice holds two side by side in one barrel: two of 18 AWG have 1.65 mm2', () => {
    expect(spliceTakes(splice('butt-splice', 0.8, 1.65), awg18, awg18)).toBe(true);
    expect(spliceTakes(splice('butt-splice', 0.8, 1.63), awg18, awg18)).toBe(false);
    // The wire to the port is alone in the other barrel, and too thin for it.
    expect(spliceTakes(splice('butt-splice', 0.83, 1.65), awg18, awg18)).toBe(false);
  });

  test('as a solder sleeve holds all three in the room of two: three of 20 AWG have 1.56 mm2', () => {
    expect(spliceTakes(splice('solder-sleeve', 0.5, 0.78), awg20, awg20)).toBe(true);
    expect(spliceTakes(splice('solder-sleeve', 0.5, 0.77), awg20, awg20)).toBe(false);
    expect(spliceTakes(splice('solder-sleeve', 0.77, 2), awg20, awg20)).toBe(true);
    expect(spliceTakes(splice('solder-sleeve', 0.79, 2), awg20, awg20)).toBe(false);
  });
});

describe('a splice that joins the ends of two wires', () => {
  test.each(['butt-splice', 'solder-sleeve'] as const)(
    'as a %s holds each of them within its range',
    (form) => {
      expect(spliceJoins(splice(form, 0.5, 0.83), awg18, awg20)).toBe(true);
      expect(spliceJoins(splice(form, 0.5, 0.83), awg20, awg18)).toBe(true);
      expect(spliceJoins(splice(form, 0.5, 0.82), awg18, awg20)).toBe(false);
      expect(spliceJoins(splice(form, 0.53, 0.83), awg18, awg20)).toBe(false);
    },
  );
});

// Common practice, no source: a conductor folded back on itself fills a barrel as twice its area does. By ASTM B258 two of
// 20 AWG have 1.04 mm2, two of 18 AWG 1.65 mm2, and 16 AWG has 1.31 mm2.
describe('a splice into which the thinner of two ends is folded back', () => {
  const blue = splice('butt-splice', 1.3, 2.1);
  const awg16 = awgAreaMm2('16');

  test('takes 18 AWG on 16 AWG, whichever of them comes first', () => {
    expect(foldedEnd(blue, awg18, awg16)).toBe(0);
    expect(foldedEnd(blue, awg16, awg18)).toBe(1);
  });

  test('does not take 20 AWG, which is too thin twice over, nor a thicker one than its range', () => {
    expect(foldedEnd(blue, awg20, awg16)).toBeNull();
    expect(foldedEnd(blue, awg18, awgAreaMm2('12'))).toBeNull();
  });

  test('has none folded where both go in as they are, where both are too thin, and in a sleeve', () => {
    expect(foldedEnd(splice('butt-splice', 0.8, 1.7), awg18, awg16)).toBeNull();
    expect(foldedEnd(blue, awg18, awg18)).toBeNull();
    expect(foldedEnd(splice('solder-sleeve', 1.3, 2.1), awg18, awg16)).toBeNull();
  });
});

// Common practice, no source: a step-down splice for 16 to 14 AWG on 22 to 18 AWG.
describe('a splice that steps down', () => {
  const down: Splice = { ...splice('butt-splice', 1.3, 2.1), other: { smallestMm2: 0.32, largestMm2: 0.83 } };
  const awg16 = awgAreaMm2('16');

  test('joins a thick end to a thin one, whichever is named first, and no two alike', () => {
    expect(spliceJoins(down, awg16, awg20)).toBe(true);
    expect(spliceJoins(down, awg20, awg16)).toBe(true);
    expect(spliceJoins(down, awg16, awg16)).toBe(false);
    expect(spliceJoins(down, awg20, awg18)).toBe(false);
  });

  test('holds an opened wire by itself in the thin barrel, with the joined one in the thick barrel', () => {
    // 20 AWG alone, and 20 with 18 AWG: 1.34 mm2.
    expect(spliceTakes(down, awg20, awg18)).toBe(true);
    expect(spliceTakes(down, awg20, awg20)).toBe(false);
  });
});
