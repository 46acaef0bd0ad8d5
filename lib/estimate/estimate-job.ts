import type { Shop } from '../model/content/shop.ts';
import { decimalsOf, moneyText, writtenAmount } from '../model/estimate/currency.ts';
import type { Estimate, EstimatePart, SumLine } from '../model/estimate/estimate.ts';
import type { LabourRate } from '../model/estimate/labour-rate.ts';
import type { WorkedHours } from '../model/estimate/worked-hours.ts';
import { type BuildPlan, isStopped } from '../model/plan/index.ts';
import { type Figure, traced } from '../model/trace.ts';
import { layerHours, workedDays } from './estimate-hours.ts';
import { estimateParts, freeOfCost } from './estimate-parts.ts';
import { labourCostMinor, shareMinor } from './exact-cost.ts';
import { type Money, TraceBook } from './money.ts';

/** What an estimate is made from. */
export interface EstimateInput {
  readonly plan: Pick<
    BuildPlan,
    'job' | 'pick' | 'pickBeyond' | 'items' | 'wires' | 'cables' | 'runs' | 'steps' | 'findings'
  >;
  readonly shop: Pick<Shop, 'currency' | 'prices' | 'estimate'>;
  /** What was worked on the job so far. */
  readonly worked: readonly WorkedHours[];
}

/**
 * The estimate of a job for the counter: parts by the shop's prices, work by the order of work and the shop's rate, what
 * the shop puts on its parts, tax where it states one. Each line is rounded up to the smallest unit of the currency, and
 * the total is the sum of the lines. A part without a price, and work without a rate, counts for nothing, and the total is
 * then the least that it comes to. Without a currency nothing is told in money.
 */
export function estimateJob({ plan, shop, worked }: EstimateInput): Estimate {
  const currency = shop.currency ?? null;
  const money: Money = {
    currency,
    decimals: currency === null ? 0 : decimalsOf(currency),
    book: new TraceBook(),
  };
  const { markup = null, tax = null, labour = null } = shop.estimate;
  const parts = estimateParts(plan, shop.prices, money);
  const hours = layerHours(plan.steps, worked, money);
  const estimatedMinutes = hours.reduce((sum, { minutes }) => sum + minutes, 0);
  const workedMinutes = Number(hours.reduce((sum, one) => sum + one.workedMinutes, 0).toFixed(3));
  const rate = currency === null ? null : labour;
  const sum =
    currency === null ? [] : sumLines({ parts, estimatedMinutes, shop: shop.estimate, money, currency });
  const totalMinor = currency === null ? null : sum.reduce((all, { minor }) => all + minor, 0);
  if (totalMinor !== null && currency !== null)
    note(money, 'total', totalMinor, {
      rule: 'estimate-total',
      formula: 'total = parts + markup + labour + tax',
      inputs: sum.map(({ of, minor }): Figure => [of, moneyText(minor, money.decimals), currency, of]),
    });
  return {
    job: plan.job.id,
    revision: plan.job.revision,
    isStopped: isStopped(plan),
    beside: plan.pickBeyond?.revision ?? null,
    currency,
    decimals: money.decimals,
    parts: [...parts],
    freeOfCost: [...freeOfCost(plan.pick, plan.items)],
    hours: [...hours],
    estimatedMinutes,
    workedMinutes,
    days: workedDays(worked),
    labour: rate && rateText(rate, money),
    workedMinor: rate && workedMinutes > 0 ? workedCost(workedMinutes, rate, money) : null,
    markup,
    tax,
    sum,
    totalMinor,
    isAtLeast: parts.some(({ costMinor }) => costMinor === null) || (rate === null && estimatedMinutes > 0),
    traces: money.book.traces,
  };
}

function rateText({ amountPerHour }: LabourRate, { decimals }: Pick<Money, 'decimals'>): string {
  return `${writtenAmount(amountPerHour, decimals)} per h`;
}

interface Summed {
  readonly parts: readonly EstimatePart[];
  readonly estimatedMinutes: number;
  readonly shop: Shop['estimate'];
  readonly money: Money;
  readonly currency: string;
}

/** The lines of the sum, as far as there is anything in them. */
function sumLines({ parts, estimatedMinutes, shop, money, currency }: Summed): SumLine[] {
  const { decimals } = money;
  const figure = (name: string, minor: number, trace: string): Figure => [
    name,
    moneyText(minor, decimals),
    currency,
    trace,
  ];
  const lines: SumLine[] = [];
  const line = (of: SumLine['of'], minor: number, working: Working) => {
    lines.push({ of, minor });
    note(money, of, minor, working);
  };
  const partsMinor = parts.reduce((sum, { costMinor }) => sum + (costMinor ?? 0), 0);
  line('parts', partsMinor, {
    rule: 'estimate-parts',
    formula: 'the sum of the parts that have a price',
    inputs: parts.flatMap(({ part, costMinor }) =>
      costMinor === null ? [] : [figure(part, costMinor, `parts.${part}`)],
    ),
  });
  if (shop.markup !== undefined)
    line('markup', shareMinor(partsMinor, shop.markup), {
      rule: 'estimate-share',
      formula: 'share * amount, up to the next smallest unit of the currency',
      inputs: [['share', shop.markup], figure('amount', partsMinor, 'parts')],
    });
  if (shop.labour !== undefined)
    line('labour', labourCostMinor(estimatedMinutes, shop.labour, decimals), {
      rule: 'estimate-labour',
      formula: 'cost = t / 60 * r, up to the next smallest unit of the currency',
      inputs: [
        ['t', estimatedMinutes, 'min'],
        ['r', rateText(shop.labour, money), currency],
      ],
    });
  if (shop.tax !== undefined) {
    const untaxed = lines.reduce((sum, { minor }) => sum + minor, 0);
    line('tax', shareMinor(untaxed, shop.tax), {
      rule: 'estimate-share',
      formula: 'share * amount, up to the next smallest unit of the currency',
      inputs: [['share', shop.tax], ...lines.map(({ of, minor }) => figure(of, minor, of))],
    });
  }
  return lines;
}

/** What the hours that were worked so far come to at the rate. */
function workedCost(workedMinutes: number, rate: LabourRate, money: Money): number {
  const minor = labourCostMinor(workedMinutes, rate, money.decimals);
  note(money, 'worked', minor, {
    rule: 'estimate-labour',
    formula: 'cost = t / 60 * r, up to the next smallest unit of the currency',
    inputs: [
      ['t', workedMinutes, 'min'],
      ['r', rateText(rate, money), money.currency ?? ''],
    ],
  });
  return minor;
}

interface Working {
  readonly rule: string;
  readonly formula: string;
  readonly inputs: readonly Figure[];
}

function note({ book, currency, decimals }: Money, id: string, minor: number, working: Working): void {
  book.add(
    id,
    traced(moneyText(minor, decimals), currency ?? '', {
      ...working,
      citation: "the shop's own prices, rate and shares",
    }),
  );
}
