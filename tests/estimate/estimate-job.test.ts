import { describe, expect, test } from 'vitest';
import { computation, isComputationId, isFormulaOf, isSourceOf } from '../../lib/model/computations/index.ts';
import { workedHoursSchema } from '../../lib/model/estimate/worked-hours.ts';
import { outsideCheck } from '../outside-check.ts';
import { demoJobs, demoPlan } from '../plan/demo.ts';
import { samplePlan } from '../publish/sample/sample-plan.ts';
import { costsOf, estimated, pieces, sumOf } from './estimated-job.ts';

const ft = 0.3048;
const { differs } = outsideCheck('estimates-by-hand');
const worked = (day: string, own: string, layer?: string) =>
  workedHoursSchema.parse({ day, worked: own, ...(layer !== undefined && { layer }) });

/** Worked by hand. */
describe('what parts cost', () => {
  test.each([
    // 11 x 0.145 = 1.595; 4 x 0.145 = 0.58 to the cent, which stays.
    ['14.50 per 100', 11, 160],
    ['14.50 per 100', 4, 58],
    ['480 each', 2, 96_000],
    // 3 x 0.0375 = 0.1125.
    ['0.0375 each', 3, 12],
    // A third of a cent.
    ['1 per 300', 1, 1],
    // 29 x 0.07 is 2.0300000000000002 in floating point: no cent for that.
    ['0.07 each', 29, 203],
    // 9,999,999.9999 x 100,000 is more than floating point holds to the cent.
    ['9999999.9999 each', 10_000, 9_999_999_999_900],
  ])('at %s, %i of them: %i cents, as many as are taken', (text, quantity, cents) => {
    const estimate = estimated({
      pick: [pieces('bolt', quantity)],
      shop: { currency: 'EUR', prices: { bolt: text } },
    });
    expect(differs(costsOf(estimate).bolt ?? 0, cents)).toBe(cents);
    expect(estimate.totalMinor).toBe(cents);
  });

  test.each([
    // 25 ft at 1.85; to the millimetre it is 7.62 m, no cent more.
    ['1.85 per ft', [12.5 * ft, 12.5 * ft], 4625],
    // As much of a reel as is cut: 25 ft of 50 ft at 89.
    ['89 per 50 ft', [25 * ft], 4450],
    ['6 per m', [1.0001], 601],
    // Ten cuts of 0.3333 m are 3.333 m; told to the millimetre each would be 3.33 m.
    ['1 per m', Array.from({ length: 10 }, () => 0.3333), 334],
    // Half a millimetre below what a pick list says is not given away: 1.0004 m at 100 is 100.04.
    ['100 per m', [1.0004], 10_004],
  ])('at %s, cuts of %j m: %i cents, by the length that is cut', (text, cuts, cents) => {
    const estimate = estimated({ cutM: { red: cuts }, shop: { currency: 'EUR', prices: { red: text } } });
    expect(differs(costsOf(estimate).red ?? 0, cents)).toBe(cents);
  });

  test.each([
    ['JPY', '1499.5 each', 0, 1500],
    ['EUR', '1499.5 each', 2, 149_950],
    ['KWD', '1.0005 each', 3, 1001],
  ])('in %s at %s it is whole smallest units of the currency', (currency, text, decimals, minor) => {
    const estimate = estimated({ pick: [pieces('bolt', 1)], shop: { currency, prices: { bolt: text } } });
    expect(estimate).toMatchObject({ currency, decimals, totalMinor: minor });
  });

  test('that the customer brings, the box holds or the vehicle has cost nothing, and are told', () => {
    const [item] = samplePlan().items;
    if (!item) throw new Error('The sample has an item.');
    const fitted = { ...item, origin: 'vehicle', part: 'radio', partTitle: 'Radio' } as const;
    const estimate = estimated({
      pick: [
        pieces('amp', 1, { broughtBy: 'customer', title: 'Amplifier' }),
        pieces('amp-lead', 2, { suppliedWith: 'amp', title: 'Lead', kind: 'cable' }),
        pieces('woofer-screws', 2, { suppliedWith: 'woofer', title: 'Screws', kind: 'fixing' }),
        pieces('bolt', 1),
      ],
      shop: {
        currency: 'EUR',
        prices: { amp: '300 each', 'amp-lead': '5 each', radio: '90 each', bolt: '1 each' },
      },
      plan: { items: [fitted, { ...fitted, id: 'other' }, { ...fitted, part: null }, item] },
    });
    expect(costsOf(estimate)).toEqual({ bolt: 100 });
    expect(estimate).toMatchObject({ totalMinor: 100, isAtLeast: false });
    expect(estimate.freeOfCost).toEqual([
      { title: 'Amplifier', part: 'amp', quantity: 1, from: 'customer' },
      { title: 'Lead', part: 'amp-lead', quantity: 2, from: 'box' },
      { title: 'Radio', part: 'radio', quantity: 2, from: 'vehicle' },
    ]);
  });

  test('without a price are named with their quantity, not counted, and the total is the least', () => {
    const estimate = estimated({
      pick: [pieces('bolt', 4), pieces('nut', 3)],
      shop: { currency: 'EUR', prices: { bolt: '1 each' } },
    });
    expect(costsOf(estimate)).toEqual({ bolt: 400, nut: null });
    expect(estimate.parts[1]).toMatchObject({ part: 'nut', quantity: 3, price: null });
    expect(estimate).toMatchObject({ totalMinor: 400, isAtLeast: true });
  });

  test('priced by the length count for nothing where the list counts pieces, as those without a price do', () => {
    const estimate = estimated({
      pick: [pieces('bolt', 4)],
      shop: { currency: 'EUR', prices: { bolt: '1 per m' } },
    });
    expect(estimate).toMatchObject({ totalMinor: 0, isAtLeast: true });
  });

  test('are those beside what is in place, never less than their list tells', () => {
    const onReel = { unit: 'm', kind: 'wire', stockQuantity: 9 } as const;
    const beside = { revision: 'A', inPlace: [] };
    const reel = { lengthM: 9, cuts: 1, leftM: 8 };
    const costs = (row: Parameters<typeof pieces>[2]) =>
      costsOf(
        estimated({
          pick: [pieces('red', 1, { ...onReel, ...row })],
          shop: { currency: 'EUR', prices: { red: '100 per m' } },
          plan: { pickBeyond: beside },
        }),
      ).red;
    expect(costs({ reels: [{ ...reel, cutsM: [1.0004] }] })).toBe(10_004);
    // Lists that do not keep their cuts tell a length to the millimetre: half of one more is counted.
    expect(costs({ reels: [reel] })).toBe(10_005);
    expect(costs({ short: 0.25, reels: [{ ...reel, cutsM: [0.75] }] })).toBe(10_005);
  });
});

/** Worked by hand. */
describe('what work costs', () => {
  const minutes = { board: 71, run: 245, test: 70.5 };

  test('is the hours of all layers at the rate, rounded up', () => {
    // 386.5 min at 85 an hour: 547.541666...
    const estimate = estimated({ minutes, shop: { currency: 'EUR', estimate: { labour: '85 per h' } } });
    expect(estimate.estimatedMinutes).toBe(386.5);
    expect(differs(sumOf(estimate).labour ?? 0, 54_755)).toBe(54_755);
    expect(estimate).toMatchObject({ labour: '85.00 per h', isAtLeast: false });
  });

  test('is not counted without a rate: the total is then the least, and hours are told all the same', () => {
    const estimate = estimated({ minutes, shop: { currency: 'EUR' } });
    expect(estimate).toMatchObject({ totalMinor: 0, isAtLeast: true, labour: null, estimatedMinutes: 386.5 });
    expect(estimated({ shop: { currency: 'EUR' } })).toMatchObject({ totalMinor: 0, isAtLeast: false });
  });

  test('stands beside what was worked, by layer, those of no step last', () => {
    const estimate = estimated({
      minutes,
      shop: { currency: 'EUR', estimate: { labour: '60 per h' } },
      worked: [
        worked('2026-02-11', '35 min'),
        worked('2026-02-10', '1.5 h', 'board'),
        worked('2026-02-11', '20 min', 'board'),
        worked('2026-02-11', '10 min', 'hand-over'),
      ],
    });
    expect(estimate.hours).toEqual([
      { layer: 'board', minutes: 71, workedMinutes: 110 },
      { layer: 'run', minutes: 245, workedMinutes: 0 },
      { layer: 'test', minutes: 70.5, workedMinutes: 0 },
      { layer: 'hand-over', minutes: 0, workedMinutes: 10 },
      { layer: null, minutes: 0, workedMinutes: 35 },
    ]);
    // 155 min at 1 a minute. What was worked changes no estimate.
    expect(estimate).toMatchObject({ workedMinutes: 155, workedMinor: 15_500 });
    expect(sumOf(estimate).labour).toBe(38_650);
    expect(estimate.days).toEqual({ first: '2026-02-10', last: '2026-02-11', count: 2 });
    expect(estimated({ minutes })).toMatchObject({ days: null, workedMinutes: 0, workedMinor: null });
  });
});

/** Worked by hand. */
describe('what is put on it', () => {
  const shop = { currency: 'USD', prices: { bolt: '33.33 each' } };
  const made = { pick: [pieces('bolt', 1)], minutes: { board: 61 } };

  test('is a share of the parts, and tax on the whole, each rounded up', () => {
    const estimate = estimated({
      ...made,
      shop: { ...shop, estimate: { labour: '85 per h', markup: '12.5 %', tax: '8.875 %' } },
    });
    // 33.33 x 0.125 = 4.16625; 61 min at 85 = 86.41666...; (33.33 + 4.17 + 86.42) x 0.08875 = 10.9979.
    const sum = { parts: 3333, markup: 417, labour: 8642, tax: 1100 };
    expect(sumOf(estimate)).toEqual(sum);
    expect(differs(estimate.totalMinor ?? 0, 13_492)).toBe(13_492);
    expect(estimate.traces.total?.inputs.map(({ name, value }) => [name, value])).toEqual([
      ['parts', '33.33'],
      ['markup', '4.17'],
      ['labour', '86.42'],
      ['tax', '11.00'],
    ]);
  });

  test('is nothing where the shop states none', () => {
    expect(sumOf(estimated({ ...made, shop }))).toEqual({ parts: 3333 });
  });
});

test('without a currency nothing is told in money', () => {
  const estimate = estimated({
    pick: [pieces('bolt', 4)],
    minutes: { board: 60 },
    shop: { prices: { bolt: '1 each' }, estimate: { labour: '85 per h', tax: '20 %' } },
  });
  expect(estimate).toMatchObject({
    currency: null,
    totalMinor: null,
    sum: [],
    labour: null,
    isAtLeast: true,
  });
  expect(costsOf(estimate)).toEqual({ bolt: null });
});

test.each(demoJobs)(
  'every figure of the estimate of %s says how it came about, as the catalogue tells',
  (id) => {
    const plan = demoPlan(id);
    const priced = plan.pick.map(({ part, unit }) => [part, unit === 'm' ? '1.25 per ft' : '3.10 each']);
    const estimate = estimated({
      pick: plan.pick,
      shop: {
        currency: 'EUR',
        prices: Object.fromEntries(priced),
        estimate: { labour: '85 per h', markup: '30 %', tax: '20 %' },
      },
      worked: [worked('2026-02-10', '2 h', 'board')],
      plan: { wires: plan.wires, cables: plan.cables, runs: plan.runs, steps: plan.steps, items: plan.items },
    });
    const { traces } = estimate;
    const ids = [
      ...estimate.parts.map(({ part }) => `parts.${part}`),
      ...estimate.sum.map(({ of }) => of),
      ...estimate.hours.flatMap(({ layer, minutes }) => (minutes > 0 ? [`hours.${layer}`] : [])),
      ...['worked.board', 'worked', 'total'],
    ];
    expect(Object.keys(traces).toSorted()).toEqual(ids.toSorted());
    for (const trace of Object.values(traces)) {
      expect(isComputationId(trace.rule)).toBe(true);
      if (!isComputationId(trace.rule)) continue;
      expect(isFormulaOf(computation(trace.rule), trace.formula ?? '')).toBe(true);
      expect(isSourceOf(computation(trace.rule), trace)).toBe(true);
    }
    // The estimate counts the hours of the order of work: those of its sheet.
    expect(estimate.estimatedMinutes).toBe(plan.schedule.totalMinutes);
  },
);
