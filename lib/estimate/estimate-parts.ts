import { moneyText } from '../model/estimate/currency.ts';
import type { EstimatePart, FreeOfCost } from '../model/estimate/estimate.ts';
import { isKindName, kinds } from '../model/kinds/index.ts';
import type { PlanItem, PlanPick } from '../model/plan/index.ts';
import { type Price, priceText } from '../model/shelf/price.ts';
import { traced } from '../model/trace.ts';
import { partCostMinor } from './exact-cost.ts';
import type { Money } from './money.ts';

/** How far a length on a pick list may be below what is cut, as it is told to the millimetre (m). */
const toldWithinM = 0.0005;

/**
 * The parts of a pick list with what they cost: pieces, sheets that are opened, fuses and fasteners by count, lengths by
 * what is cut. What the customer brings, and what lies in the box of another part, is none of them.
 */
export function estimateParts(
  picks: readonly PlanPick[],
  prices: Readonly<Record<string, Price>>,
  money: Money,
): readonly EstimatePart[] {
  return picks
    .filter(({ suppliedWith, broughtBy }) => suppliedWith === undefined && broughtBy === undefined)
    .map((pick) => estimatePart(pick, prices[pick.part] ?? null, money));
}

function estimatePart(
  pick: PlanPick,
  price: Price | null,
  { decimals, currency, book }: Money,
): EstimatePart {
  const { part, title, kind, unit } = pick;
  const quantity = unit === 'm' ? lengthTakenM(pick) : pick.quantity;
  const costMinor = price && currency !== null ? partCostMinor({ quantity, unit }, price, decimals) : null;
  const row = { part, title, kind, isDevice: isDevice(kind), quantity, unit };
  if (price === null || currency === null || costMinor === null)
    return { ...row, price: null, costMinor: null };
  const text = priceText(price);
  book.add(
    `parts.${part}`,
    traced(moneyText(costMinor, decimals), currency, {
      rule: 'estimate-part-cost',
      formula: 'cost = q * p, up to the next smallest unit of the currency',
      citation: "the shop's own prices",
      inputs: [
        ['q', quantity, unit === 'm' ? 'm' : ''],
        ['p', text, currency],
      ],
    }),
  );
  return { ...row, price: text, costMinor };
}

/** What is cut of a part (m); never less than that, where its list tells it to the millimetre alone. */
function lengthTakenM({ quantity, short, reels = [] }: PlanPick): number {
  const cuts = reels.map(({ cutsM }) => cutsM);
  if (cuts.some((own) => own === undefined)) return quantity + toldWithinM;
  const cutM = cuts.reduce((sum, own = []) => own.reduce((all, one) => all + one, sum), 0);
  return short > 0 ? cutM + short + toldWithinM : cutM;
}

function isDevice(kind: string): boolean {
  return isKindName(kind) && kinds[kind].isMounted;
}

/** What costs nothing, and who has it. */
export function freeOfCost(picks: readonly PlanPick[], items: readonly PlanItem[]): readonly FreeOfCost[] {
  const free = (from: FreeOfCost['from'], own: readonly PlanPick[]): FreeOfCost[] =>
    own.map(({ part, title, quantity }) => ({ title, part, quantity, from }));
  return [
    ...free(
      'customer',
      picks.filter(({ broughtBy }) => broughtBy !== undefined),
    ),
    ...free(
      'box',
      picks.filter(({ suppliedWith }) => suppliedWith !== undefined),
    ),
    ...inVehicle(items),
  ];
}

/** What the vehicle came with and the job uses, alike ones together; its body is no part. */
function inVehicle(items: readonly PlanItem[]): readonly FreeOfCost[] {
  const found = new Map<string, FreeOfCost>();
  for (const { origin, part, partTitle } of items) {
    if (origin !== 'vehicle' || part === null) continue;
    const before = found.get(part);
    found.set(part, { title: partTitle, part, quantity: (before?.quantity ?? 0) + 1, from: 'vehicle' });
  }
  return [...found.values()];
}
