import fc from 'fast-check';
import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Filter,
  filterLevel,
  filterResponse,
  levelDb,
  pathResponse,
} from '../../../lib/audio/filter/filter-response.ts';
import { sumResponse } from '../../../lib/audio/filter/response-curve.ts';
import { isFault } from '../../../lib/model/fault.ts';
import { outsideCheck } from '../../outside-check.ts';
import { type Spice, startSpice } from '../spice.ts';
import { ladderResponse } from './ladder.ts';

const inSpice = outsideCheck('ladders-in-ngspice');
const inScipy = outsideCheck('bessel-in-scipy');

let spice: Spice;
beforeAll(async () => {
  spice = await startSpice();
});

const orders = [1, 2, 3, 4, 5, 6, 7, 8];
const evenOrders = [2, 4, 6, 8];
/** A corner of 1 rad/s, so that a prototype's figures can be read off. */
const unitHz = 1 / (2 * Math.PI);

function respond(filter: Filter, frequencyHz: number) {
  const response = filterResponse('front', filter);
  if (isFault(response)) throw new Error(response.message);
  return response(frequencyHz);
}

function level(filter: Filter, frequencyHz: number): number {
  return levelDb(respond(filter, frequencyHz));
}

describe('the level at the corner', () => {
  const passes = ['high-pass', 'low-pass', 'subsonic'] as const;

  it.each(orders)('is -3.0103 dB for Butterworth and Bessel of order %i', (order) => {
    for (const pass of passes)
      for (const type of ['butterworth', 'bessel'] as const)
        expect(level({ pass, type, order, cornerHz: 80 }, 80)).toBeCloseTo(-3.0103, 5);
  });

  it.each(evenOrders)('is -6.0206 dB for Linkwitz-Riley of order %i', (order) => {
    for (const pass of passes)
      expect(level({ pass, type: 'linkwitz-riley', order, cornerHz: 2500 }, 2500)).toBeCloseTo(-6.0206, 5);
  });
});

describe('Butterworth', () => {
  // Textbook ladder between equal resistances: g_k = 2 sin((2k - 1) pi / 2n).
  it.each(orders)('of order %i is the response that ngspice gives of its ladder', async (order) => {
    const ladder = orders.slice(0, order).map((k) => 2 * Math.sin(((2 * k - 1) * Math.PI) / (2 * order)));
    for (const pass of ['high-pass', 'low-pass'] as const)
      for (const radPerS of [0.3, 0.9, 1, 1.3, 3]) {
        const reference = await ladderResponse(spice, pass, ladder, radPerS);
        const ours = respond({ pass, type: 'butterworth', order, cornerHz: unitHz }, radPerS * unitHz);
        expect(ours.re).toBeCloseTo(reference.re, 6);
        expect(ours.im).toBeCloseTo(reference.im, 6);
        const db = (one: { readonly re: number; readonly im: number }) =>
          20 * Math.log10(Math.hypot(one.re, one.im));
        inSpice.differs(db(ours), db(reference));
      }
  });

  // |H|^2 = 1 / (1 + 2^(2n)) one octave out: 10 log10(1 + 4^n).
  it.each([
    [1, 6.9897],
    [2, 12.3045],
    [4, 24.0993],
    [8, 48.1649],
  ])('of order %i is %f dB down one octave out', (order, db) => {
    expect(level({ pass: 'low-pass', type: 'butterworth', order, cornerHz: 100 }, 200)).toBeCloseTo(-db, 4);
  });
});

describe('Linkwitz-Riley', () => {
  it.each(evenOrders)(
    'of order %i is two Butterworth ladders of half the order in a row in ngspice',
    async (order) => {
      const half = order / 2;
      const ladder = orders.slice(0, half).map((k) => 2 * Math.sin(((2 * k - 1) * Math.PI) / order));
      for (const pass of ['high-pass', 'low-pass'] as const)
        for (const radPerS of [0.4, 1, 2.2]) {
          const { re, im } = await ladderResponse(spice, pass, ladder, radPerS);
          const ours = respond({ pass, type: 'linkwitz-riley', order, cornerHz: unitHz }, radPerS * unitHz);
          expect(ours.re).toBeCloseTo(re * re - im * im, 6);
          expect(ours.im).toBeCloseTo(2 * re * im, 6);
        }
    },
  );

  // Linkwitz 1976: the pair sums to an all-pass; second and sixth order with one side reversed.
  it('high-pass and low-pass sum flat at every frequency', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...evenOrders),
        fc.double({ min: 20, max: 8000, noNaN: true }),
        fc.double({ min: 10, max: 20_000, noNaN: true }),
        (order, cornerHz, frequencyHz) => {
          const half = (pass: 'high-pass' | 'low-pass', reversed: boolean) => {
            const filters: Filter[] = [{ pass, type: 'linkwitz-riley', order, cornerHz }];
            const response = pathResponse({ id: pass, filters, reversed });
            if (isFault(response)) throw new Error(response.message);
            return response;
          };
          const sum = sumResponse([half('low-pass', false), half('high-pass', order % 4 !== 0)]);
          expect(levelDb(sum(frequencyHz))).toBeCloseTo(0, 7);
        },
      ),
    );
  });
});

describe('Bessel', () => {
  // Ladder values for equal terminations and half power at 1 rad/s, to four figures: table "Bessel Filter
  // Lowpass Prototype Element Values", rfcafe.com/references/electrical/bessel-proto-values.htm. Four figures
  // allow 0.03 dB.
  it.each([
    [2, [0.576, 2.148]],
    [3, [0.3374, 0.9705, 2.2034]],
    [4, [0.2334, 0.6725, 1.0815, 2.2404]],
    [5, [0.1743, 0.5072, 0.804, 1.111, 2.2582]],
    [6, [0.1365, 0.4002, 0.6392, 0.8538, 1.1126, 2.2645]],
    [7, [0.1106, 0.3259, 0.5249, 0.702, 0.869, 1.1052, 2.2659]],
    [8, [0.0919, 0.2719, 0.4409, 0.5936, 0.7303, 0.8695, 1.0956, 2.2656]],
  ])('of order %i agrees with ngspice on its published ladder', async (order, ladder) => {
    for (const radPerS of [0.3, 1, 2]) {
      const reference = levelDb(await ladderResponse(spice, 'low-pass', ladder, radPerS));
      const ours = level({ pass: 'low-pass', type: 'bessel', order, cornerHz: unitHz }, radPerS * unitHz);
      expect(Math.abs(ours - reference)).toBeLessThan(0.03);
    }
  });

  // Magnitude and phase computed with scipy 1.17.1, signal.bessel(n, 1, analog=True, norm='mag'), at w = 0.5
  // and w = 2.
  it.each([
    [1, -0.9691, -26.5651, -6.9897, -63.4349],
    [2, -0.712859, -38.8426, -9.815283, -118.3943],
    [3, -0.689232, -50.2834, -12.000283, -170.9661],
    [4, -0.705117, -60.5584, -13.405395, 140.6208],
    [5, -0.71955, -69.5402, -14.06269, 97.4849],
    [6, -0.728239, -77.4466, -14.172093, 59.7778],
    [7, -0.733352, -84.5606, -13.978249, 26.9551],
    [8, -0.736627, -91.0893, -13.67572, -1.8505],
  ])(
    'of order %i agrees with an independent program, level and phase',
    (order, lowDb, lowDeg, highDb, highDeg) => {
      for (const [radPerS, db, deg] of [
        [0.5, lowDb, lowDeg],
        [2, highDb, highDeg],
      ] as const) {
        const ours = respond({ pass: 'low-pass', type: 'bessel', order, cornerHz: unitHz }, radPerS * unitHz);
        expect(inScipy.differs(levelDb(ours), db)).toBeCloseTo(db, 4);
        expect((Math.atan2(ours.im, ours.re) * 180) / Math.PI).toBeCloseTo(deg, 3);
      }
    },
  );
});

describe('a filter', () => {
  it('as high-pass mirrors its low-pass about the corner', () => {
    const types = fc.constantFrom('butterworth', 'bessel', 'linkwitz-riley');
    fc.assert(
      fc.property(
        types,
        fc.constantFrom(...evenOrders),
        fc.double({ min: -4, max: 4, noNaN: true }),
        (type, order, octaves) => {
          const low = level({ pass: 'low-pass', type, order, cornerHz: 100 }, 100 * 2 ** octaves);
          const high = level({ pass: 'high-pass', type, order, cornerHz: 100 }, 100 * 2 ** -octaves);
          expect(high).toBeCloseTo(low, 7);
        },
      ),
    );
  });

  it('never raises the level, and a low-pass falls all the way', () => {
    const types = fc.constantFrom('butterworth', 'bessel', 'linkwitz-riley');
    const hertz = fc.double({ min: 1, max: 20_000, noNaN: true });
    fc.assert(
      fc.property(types, fc.constantFrom(...evenOrders), hertz, (type, order, frequencyHz) => {
        const filter: Filter = { pass: 'low-pass', type, order, cornerHz: 300 };
        expect(level(filter, frequencyHz)).toBeLessThanOrEqual(1e-9);
        expect(level(filter, 1.1 * frequencyHz)).toBeLessThanOrEqual(level(filter, frequencyHz) + 1e-9);
      }),
    );
  });

  it('blocks 0 Hz as high-pass without a division by zero', () => {
    expect(level({ pass: 'subsonic', type: 'butterworth', order: 4, cornerHz: 25 }, 0)).toBe(-200);
  });

  it('tells its level with the working', () => {
    const found = filterLevel(
      'front',
      { pass: 'high-pass', type: 'linkwitz-riley', order: 4, cornerHz: 80 },
      40,
    );
    if (isFault(found)) throw new Error(found.message);
    // By hand: w = 2, 20 log10(1 + 16) = 24.609 dB.
    expect(found.value).toBeCloseTo(-24.609, 3);
    expect(found.trace.formula).toContain('fc / f');
  });

  it.each([
    ['filter-order-not-made', { type: 'linkwitz-riley', order: 3 }],
    ['filter-order-not-made', { type: 'butterworth', order: 9 }],
    ['filter-order-not-made', { type: 'bessel', order: 2.5 }],
    ['filter-corner-unclear', { cornerHz: 0 }],
    ['filter-corner-unclear', { cornerHz: Number.NaN }],
  ] as const)('%s is named', (fault, wrong) => {
    const filter: Filter = { pass: 'high-pass', type: 'butterworth', order: 2, cornerHz: 80, ...wrong };
    expect(filterResponse('front', filter)).toMatchObject({ fault, of: ['front'] });
    expect(pathResponse({ id: 'front', filters: [filter] })).toMatchObject({ fault });
  });
});

describe('a band-pass', () => {
  it('is its high-pass and its low-pass in a row', () => {
    const corner = { type: 'linkwitz-riley', order: 4 } as const;
    const filters: Filter[] = [
      { ...corner, pass: 'high-pass', cornerHz: 80 },
      { ...corner, pass: 'low-pass', cornerHz: 2500 },
    ];
    const response = pathResponse({ id: 'mid', filters });
    if (isFault(response)) throw new Error(response.message);
    // Each corner by itself is 6.0206 dB down, the other filter adds next to nothing there.
    expect(levelDb(response(80))).toBeCloseTo(-6.0206, 3);
    expect(levelDb(response(2500))).toBeCloseTo(-6.0206, 3);
  });
});
