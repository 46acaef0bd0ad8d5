import { type Fault, faultOf, isPositive } from '../../model/fault.ts';
import { type Traced, traced } from '../../model/trace.ts';
import { type FilterPass, type FilterType, filterNames } from '../../model/vocabulary.ts';
import { type Complex, magnitude, multiply, one, polar, type Response, reciprocal } from './complex.ts';
import { type Prototype, prototypeFamilies } from './low-pass-prototypes.ts';
import { isShaped, type Peak, peakResponse } from './peak.ts';

/** One filter. A subsonic filter is a high-pass; a band-pass is a high-pass and a low-pass in a row. */
export interface Filter {
  readonly pass: FilterPass;
  readonly type: FilterType;
  readonly order: number;
  readonly cornerHz: number;
}

export type FilterFault = Fault<'filter-order-not-made' | 'filter-corner-unclear'>;

function filterFault(where: string, { type, order, cornerHz }: Filter): FilterFault | null {
  const family = prototypeFamilies[type];
  if (!family.made(order))
    return faultOf(
      'filter-order-not-made',
      [where],
      `a ${filterNames[type]} filter of order ${order} on ${where} can't be made; its orders are ${family.orders}`,
      'choose one of these orders, or another type',
    );
  if (isPositive(cornerHz)) return null;
  return faultOf(
    'filter-corner-unclear',
    [where],
    `the corner of a filter on ${where} is not a frequency above 0 Hz`,
    'write its corner, such as 80 Hz',
  );
}

/**
 * Complex response of one filter: H(j f / fc) of its low-pass prototype, H(fc / (j f)) for a high-pass. At 0
 * Hz a high-pass passes nothing.
 */
export function filterResponse(where: string, filter: Filter): Response | FilterFault {
  const fault = filterFault(where, filter);
  if (fault) return fault;
  const prototype: Prototype = prototypeFamilies[filter.type].prototype(filter.order);
  if (filter.pass === 'low-pass')
    return (frequencyHz) => prototype({ re: 0, im: frequencyHz / filter.cornerHz });
  return (frequencyHz) =>
    frequencyHz === 0
      ? { re: 0, im: 0 }
      : prototype(reciprocal({ re: 0, im: frequencyHz / filter.cornerHz }));
}

/** What a signal passes from the source to the listener, as far as it shapes the sum. */
export interface Path {
  readonly id: string;
  readonly filters: readonly Filter[];
  /** Equalising and boosts; one of unknown shape is left out of the response. */
  readonly peaks?: readonly Peak[];
  /** 0 where left out. */
  readonly gainDb?: number;
  readonly delayMs?: number;
  readonly reversed?: boolean;
}

/** Complex response of a path: its filters and peaks in a row, times gain, polarity and delay exp(-j 2 pi f t). */
export function pathResponse(path: Path): Response | FilterFault {
  const responses: Response[] = [];
  for (const filter of path.filters) {
    const response = filterResponse(path.id, filter);
    if ('fault' in response) return response;
    responses.push(response);
  }
  responses.push(...(path.peaks ?? []).filter(isShaped).map(peakResponse));
  const { gainDb = 0, delayMs = 0, reversed = false } = path;
  const gain = (reversed ? -1 : 1) * 10 ** (gainDb / 20);
  return (frequencyHz) =>
    responses
      .map((response) => response(frequencyHz))
      .reduce(multiply, multiply(one, polar(gain, (-2 * Math.PI * frequencyHz * delayMs) / 1000)));
}

/** What is below this level counts as it, so that it can be drawn. */
export const lowestLevelDb = -200;

/** Level in dB of a response, at least `lowestLevelDb`. */
export function levelDb(response: Complex): number {
  return 20 * Math.log10(Math.max(10 ** (lowestLevelDb / 20), magnitude(response)));
}

const levelRules = {
  butterworth: 'filter-level-butterworth',
  'linkwitz-riley': 'filter-level-linkwitz-riley',
  bessel: 'filter-level-bessel',
} as const satisfies Readonly<Record<FilterType, string>>;

/** Level in dB of one filter at a frequency, with its working. */
export function filterLevel(
  where: string,
  filter: Filter,
  frequencyHz: number,
): Traced<number> | FilterFault {
  const response = filterResponse(where, filter);
  if ('fault' in response) return response;
  const { type, order, cornerHz, pass } = filter;
  const ratio = pass === 'low-pass' ? 'f / fc' : 'fc / f';
  const formulas: Readonly<Record<FilterType, string>> = {
    butterworth: `L = -10 * log10(1 + w^(2n)), w = ${ratio}`,
    'linkwitz-riley': `L = -20 * log10(1 + w^n), w = ${ratio}`,
    bessel: `L = 20 * log10(|theta(0) / theta(j * w3 * w)|), w = ${ratio}, theta the reverse Bessel polynomial of order n, w3 its half-power frequency`,
  };
  return traced(levelDb(response(frequencyHz)), 'dB', {
    rule: levelRules[type],
    formula: formulas[type],
    citation: prototypeFamilies[type].citation,
    inputs: [
      ['f', frequencyHz, 'Hz'],
      ['fc', cornerHz, 'Hz'],
      ['n', order],
    ],
  });
}
