import { moneyText, writtenAmount } from '../model/estimate/currency.ts';
import type { EstimatePart, FreeOfCost } from '../model/estimate/estimate.ts';
import { isKindName, kinds } from '../model/kinds/index.ts';
import type { BuildPlan, PlanItem, PlanPick } from '../model/plan/index.ts';
import { type Price, perText } from '../model/shelf/price.ts';
import { traced } from '../model/trace.ts';
import { cutsTaken } from '../plan/work/shelf-takes.ts';
import { partCostMinor } from './exact-cost.ts';
import type { Money } from './money.ts';

/** What of a plan its parts are counted by. */
export type PartsPlan = Pick<BuildPlan, 'pick' | 'pickBeyond' | 'wires' | 'cables' | 'runs'>;

/** How far a length on a pick list may be below what is cut, as it is told to the millimetre (m). */
const toldWithinM = 0.0005;

/**
 * The parts of a pick list with what they cost: pieces, sheets that are opened, fuses and fasteners by count, lengths by
 * what is cut. What the customer brings, and what lies in the box of another part, is none of them.
 */
export function estimateParts(
  plan: PartsPlan,
  prices: Readonly<Record<string, Price>>,
  money: Money,
): readonly EstimatePart[] {
  const lengthOf = lengthsTaken(plan);
  return plan.pick
    .filter(({ suppliedWith, broughtBy }) => suppliedWith === undefined && broughtBy === undefined)
    .map((pick) => {
      const quantity = pick.unit === 'm' ? lengthOf(pick) : pick.quantity;
      return estimatePart({ ...pick, quantity }, prices[pick.part] ?? null, money);
    });
}

function estimatePart(
  { part, title, kind, unit, quantity }: PlanPick,
  price: Price | null,
  { decimals, currency, book }: Money,
): EstimatePart {
  const costMinor = price && currency !== null ? partCostMinor({ quantity, unit }, price, decimals) : null;
  const row = { part, title, kind, isDevice: isDevice(kind), quantity, unit };
  if (price === null || currency === null || costMinor === null)
    return { ...row, price: null, costMinor: null };
  const per = perText(price.per);
  const text = `${writtenAmount(price.amount, decimals)} ${per === 'each' ? per : `per ${per}`}`;
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

/**
 * What is cut of a part (m): every cut of the plan. Where the list goes beside what is in place, what it tells of the cuts,
 * and never less than that.
 */
function lengthsTaken({ pick, pickBeyond, ...plan }: PartsPlan): (row: PlanPick) => number {
  if (pickBeyond !== undefined) return lengthBeside;
  const offReel = new Set(pick.filter(({ unit }) => unit === 'm').map(({ part }) => part));
  const taken = new Map<string, number>();
  for (const { part, lengthM } of cutsTaken(plan, (cable) => offReel.has(cable)))
    taken.set(part, (taken.get(part) ?? 0) + lengthM);
  return ({ part, quantity }) => taken.get(part) ?? quantity + toldWithinM;
}

function lengthBeside({ quantity, short, reels = [] }: PlanPick): number {
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
      // The screws in the box of a speaker are no thing that a customer is told of.
      picks.filter(({ suppliedWith, kind }) => suppliedWith !== undefined && kind !== 'fixing'),
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
