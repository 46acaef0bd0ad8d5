/** A complex number, rectangular. */
export interface Complex {
  readonly re: number;
  readonly im: number;
}

/** The number one. */
export const one: Complex = { re: 1, im: 0 };

/** Sum of two complex numbers. */
export function add(a: Complex, b: Complex): Complex {
  return { re: a.re + b.re, im: a.im + b.im };
}

/** Product of two complex numbers. */
export function multiply(a: Complex, b: Complex): Complex {
  return { re: a.re * b.re - a.im * b.im, im: a.re * b.im + a.im * b.re };
}

/** One over a complex number; the number must not be zero. */
export function reciprocal({ re, im }: Complex): Complex {
  const square = re * re + im * im;
  return { re: re / square, im: -im / square };
}

/** The number of a magnitude and an angle in radians. */
export function polar(magnitude: number, angleRad: number): Complex {
  return { re: magnitude * Math.cos(angleRad), im: magnitude * Math.sin(angleRad) };
}

/** Magnitude of a complex number. */
export function magnitude({ re, im }: Complex): number {
  return Math.hypot(re, im);
}

/** Value at `s` of a polynomial whose coefficients stand lowest power first (Horner). */
export function polynomial(coefficients: readonly number[], s: Complex): Complex {
  return coefficients.reduceRight<Complex>(
    (sum, coefficient) => add(multiply(sum, s), { re: coefficient, im: 0 }),
    {
      re: 0,
      im: 0,
    },
  );
}

/** The complex response at a frequency in Hz. */
export type Response = (frequencyHz: number) => Complex;
