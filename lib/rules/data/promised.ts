import type { PartPromise } from '../../model/content/promised.ts';
import type { Finding } from '../../model/finding.ts';
import { type Place, pointer } from '../../model/place.ts';
import type { LengthsJob } from '../../plan/as-written.ts';
import { piecesOf, promisedThere, shelfLengths } from '../../shelf/shelf-lengths.ts';
import { findingAt, type Rule, type Spot, type Verdict } from '../rule.ts';
import { counted, lengthIn, listed } from '../words.ts';

/** A shop whose stock is offered without what is promised of it. */
export type OfferingShop = LengthsJob & { readonly promised: Readonly<Record<string, PartPromise>> };

/** What lies on the shelf for others, in words: `; 8 ft promised to side-well revision B not counted`; nothing where none does. */
export function promisedText(
  { promised }: Pick<OfferingShop, 'promised'>,
  part: string,
  amount: (quantity: number) => string,
): string {
  const promise = promised[part];
  const there = promise ? promisedThere(promise) : 0;
  return promise && there > 0 ? `; ${amount(there)} promised to ${namesOf(promise.to)} not counted` : '';
}

function namesOf(to: PartPromise['to']): string {
  return listed(to.map(({ job, revision }) => `${job} revision ${revision}`));
}

const over: Rule = {
  id: 'stock-promised-over',
  judge: ({ job, plan }) => plan.pick.flatMap(({ part }) => promisedOver(job, part)),
};

function promisedOver(shop: OfferingShop, part: string): Verdict<'stock-promised-over'>[] {
  const promise = shop.promised[part];
  const stock = shop.shop.stock[part];
  // What was never on the shelf is ordered for its job.
  if (!promise || !stock || promise.over <= 0) return [];
  const spot: Spot = { path: pointer(['stock', part]), file: 'shop' };
  const isOnReel = 'reels' in stock;
  const length = lengthIn(shop, spot);
  const amount = (quantity: number) => (isOnReel ? length(quantity) : counted(quantity, 'piece'));
  const free = isOnReel ? shelfLengths(stock).reduce((sum, { freeM }) => sum + freeM, 0) : piecesOf(stock);
  const there = free + promisedThere(promise);
  const total = promise.to.reduce((sum, { quantity }) => sum + quantity, 0);
  return [
    {
      level: 'caution',
      of: [part],
      message: `the shelf has ${amount(there)} of ${part}, and ${amount(total)} ${isOnReel || total !== 1 ? 'are' : 'is'} promised to ${namesOf(promise.to)}: ${amount(promise.over)} ${isOnReel ? 'of that is on no single length' : 'too many'}`,
      value: there,
      limit: total,
      unit: isOnReel ? 'm' : 'piece',
      remedy:
        'order it; of a job that is built in write installed: with the day under its revision, and count the shelf',
      ...spot,
    },
  ];
}

/** What a shop has promised beyond what its shelf has, whatever jobs ask for it. */
export function promisedOverShelf(shop: OfferingShop, placeOf: (path: string) => Place): readonly Finding[] {
  return Object.keys(shop.promised).flatMap((part) =>
    promisedOver(shop, part).map(({ path, file: _, ...verdict }) =>
      findingAt({ rule: 'stock-promised-over', ...verdict }, placeOf(path)),
    ),
  );
}

export const promisedRules: readonly Rule[] = [over];
