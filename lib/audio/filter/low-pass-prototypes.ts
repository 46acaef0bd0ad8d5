import type { FilterType } from '../../model/vocabulary.ts';
import { type Complex, magnitude, multiply, polynomial, reciprocal } from './complex.ts';

/** Orders that filters are made in here. */
export const greatestOrder = 8;

/** The low-pass of a type and order with its corner at 1 rad/s: its response at the complex frequency `s`. */
export type Prototype = (s: Complex) => Complex;

interface PrototypeFamily {
  /** What `order` must be, in words, where not every one from 1 to 8 is made. */
  readonly made: (order: number) => boolean;
  readonly orders: string;
  /** Level at the corner, in dB. */
  readonly cornerDb: number;
  readonly prototype: (order: number) => Prototype;
  readonly citation: string;
}

const fromOneToEight = (order: number) => Number.isInteger(order) && order >= 1 && order <= greatestOrder;

/**
 * Butterworth: the poles lie evenly on the left half of the unit circle, in pairs s^2 + 2 sin((2k - 1) pi /
 * 2n) s + 1 (Butterworth 1930); |H|^2 = 1 / (1 + w^2n).
 */
function butterworth(order: number): Prototype {
  const sections = Array.from({ length: Math.floor(order / 2) }, (_, k) => [
    1,
    2 * Math.sin(((2 * k + 1) * Math.PI) / (2 * order)),
    1,
  ]);
  if (order % 2 === 1) sections.push([1, 1]);
  return (s) =>
    reciprocal(sections.map((section) => polynomial(section, s)).reduce(multiply, { re: 1, im: 0 }));
}

/** Linkwitz-Riley: a Butterworth of half the order, twice (Linkwitz 1976); |H| = 1 / (1 + w^n). */
function linkwitzRiley(order: number): Prototype {
  const half = butterworth(order / 2);
  return (s) => multiply(half(s), half(s));
}

/** Coefficients of the reverse Bessel polynomial: a_k = (2n - k)! / (2^(n - k) k! (n - k)!). */
function besselCoefficients(order: number): readonly number[] {
  const factorial = (n: number): number => (n < 2 ? 1 : n * factorial(n - 1));
  return Array.from(
    { length: order + 1 },
    (_, k) => factorial(2 * order - k) / (2 ** (order - k) * factorial(k) * factorial(order - k)),
  );
}

/**
 * Bessel: H = theta(0) / theta(w3 s), theta the reverse Bessel polynomial (Thomson 1949), scaled so that the
 * corner is 3.0103 dB down. w3 is found by halving; |H| falls all the way, and w3 lies between 0.5 and 4 for
 * the orders made here.
 */
function bessel(order: number): Prototype {
  const coefficients = besselCoefficients(order);
  const atZero = coefficients[0] ?? 1;
  const response = (s: Complex): Complex => {
    const { re, im } = reciprocal(polynomial(coefficients, s));
    return { re: atZero * re, im: atZero * im };
  };
  let [low, high] = [0.5, 4];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (magnitude(response({ re: 0, im: middle })) > Math.SQRT1_2) low = middle;
    else high = middle;
  }
  const scale = (low + high) / 2;
  return (s) => response({ re: scale * s.re, im: scale * s.im });
}

const halfPowerDb = 10 * Math.log10(0.5);

/** The families of filters that are made here, by type. */
export const prototypeFamilies: Readonly<Record<FilterType, PrototypeFamily>> = {
  butterworth: {
    made: fromOneToEight,
    orders: '1 to 8',
    cornerDb: halfPowerDb,
    prototype: butterworth,
    citation: 'Butterworth 1930, maximally flat magnitude',
  },
  'linkwitz-riley': {
    made: (order) => fromOneToEight(order) && order % 2 === 0,
    orders: '2, 4, 6 or 8',
    cornerDb: 2 * halfPowerDb,
    prototype: linkwitzRiley,
    citation: 'Linkwitz 1976, two equal Butterworth filters in a row',
  },
  bessel: {
    made: fromOneToEight,
    orders: '1 to 8',
    cornerDb: halfPowerDb,
    prototype: bessel,
    citation: 'Thomson 1949, maximally flat delay; corner at half power',
  },
};
