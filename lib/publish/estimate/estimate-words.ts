import { moneyText } from '../../model/estimate/currency.ts';
import type { Estimate, EstimatePart, FreeOfCost, SumLine } from '../../model/estimate/estimate.ts';
import type { BuildPlan } from '../../model/plan/index.ts';
import { handText } from '../../model/quantity/hand-text.ts';
import { hoursText } from '../words/hours-text.ts';
import { counted, spelled } from '../words/words.ts';
import { writerFor } from '../words/written.ts';

/** An amount of an estimate without its currency; a dash for none. */
export function amountText({ decimals }: Pick<Estimate, 'decimals'>, minor: number | null): string {
  return minor === null ? '—' : moneyText(minor, decimals);
}

/** The total with its currency: what it comes to, or the least that it does. */
export function totalText(estimate: Estimate): string {
  const { totalMinor, currency, isAtLeast } = estimate;
  if (totalMinor === null || currency === null) return 'no total: the shop states no currency';
  return `${isAtLeast ? 'at least ' : ''}${amountText(estimate, totalMinor)} ${currency}`;
}

/** How a quantity of a part is written: pieces, or a length as the shop measures. */
export function quantityWriter(
  shop: Pick<BuildPlan['shop'], 'units' | 'fraction'>,
): (part: Pick<EstimatePart, 'quantity' | 'unit'>) => string {
  const write = writerFor(shop);
  return ({ quantity, unit }) =>
    unit === 'm' ? write.wire('length-taken', quantity).text : String(quantity);
}

const linesOf = {
  parts: 'Parts',
  markup: 'Mark-up on parts',
  labour: 'Labour',
  tax: 'Tax',
} as const satisfies Record<SumLine['of'], string>;

/** What a line of the sum is called. */
export function lineName(of: SumLine['of']): string {
  return linesOf[of];
}

/** What a line of the sum is reckoned from. */
export function lineFrom(estimate: Estimate, of: SumLine['of']): string {
  const { parts, markup, tax, labour, estimatedMinutes } = estimate;
  if (of === 'parts') {
    const priced = parts.filter(({ costMinor }) => costMinor !== null).length;
    return priced === parts.length
      ? counted(priced, 'entry', 'entries')
      : `${priced} of ${counted(parts.length, 'entry', 'entries')} with a price`;
  }
  if (of === 'labour') return `${hoursText(estimatedMinutes)}, ${labour ?? ''}`;
  return shareText(of === 'markup' ? markup : tax);
}

/** A share as a shop writes it: `30 %`. */
function shareText(share: number | null): string {
  return share === null ? '' : handText(share, 'ratio', 'inch');
}

/** What keeps a total from being more than the least that it comes to; empty where it is all there. */
export function lacksOf({ parts, labour, currency, estimatedMinutes }: Estimate): string[] {
  const unpriced = parts.filter(({ costMinor }) => costMinor === null).length;
  return [
    ...(currency === null
      ? ['The shop states no currency: write currency: in shop.yaml.']
      : unpriced > 0
        ? [`${counted(unpriced, 'part has', 'parts have')} no price: not counted.`]
        : []),
    ...(currency !== null && labour === null && estimatedMinutes > 0
      ? ['The shop states no rate: the work is not counted.']
      : []),
  ];
}

/** What is to be known of an estimate before it is told to anybody. */
export function standingNotes({ isStopped, beside }: Estimate): string[] {
  return [
    ...(isStopped ? ['A finding stops this job: what it takes may still change.'] : []),
    ...(beside === null
      ? []
      : [
          `Parts are those beside what revision ${beside} has in place; hours are of the whole order of work.`,
        ]),
  ];
}

const whoHas = {
  customer: 'The customer brings',
  box: 'In the box of another part',
  vehicle: 'In the vehicle already',
} as const satisfies Record<FreeOfCost['from'], string>;

/** What costs nothing, by who has it, each group in a line. */
export function freeLines({ freeOfCost }: Pick<Estimate, 'freeOfCost'>): string[] {
  return (['customer', 'box', 'vehicle'] as const).flatMap((from) => {
    const own = freeOfCost.filter((one) => one.from === from);
    if (own.length === 0) return [];
    return [`${whoHas[from]}: ${own.map(({ quantity, title }) => `${quantity} x ${title}`).join('; ')}.`];
  });
}

/** What a layer of the hours is called. */
export function layerName(layer: string | null): string {
  return layer === null ? 'Whole job' : spelled(layer);
}

/** How far what was worked is beyond what was estimated, or below it; empty before anybody worked. */
export function differenceText(estimatedMinutes: number, workedMinutes: number): string {
  if (workedMinutes === 0) return '';
  const over = workedMinutes - estimatedMinutes;
  if (over === 0) return 'as estimated';
  return over > 0 ? `${hoursText(over)} over` : `${hoursText(-over)} under`;
}

/** When somebody worked, and what that comes to so far. */
export function workedText(estimate: Estimate): string {
  const { days, workedMinutes, workedMinor, currency } = estimate;
  if (days === null) return 'No hours are noted yet.';
  const when = days.count === 1 ? `on ${days.first}` : `on ${days.count} days, ${days.first} to ${days.last}`;
  const cost =
    workedMinor === null ? '' : `: ${amountText(estimate, workedMinor)} ${currency ?? ''} at the rate`;
  return `Worked so far ${hoursText(workedMinutes)} ${when}${cost}.`;
}
