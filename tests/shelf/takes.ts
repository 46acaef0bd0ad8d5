import type { PromisedTo, ShelfTakes } from '../../lib/model/content/promised.ts';
import type { Stock } from '../../lib/model/content/shop.ts';
import { isQuantity, type Quantity } from '../../lib/model/quantity/quantity.ts';

export const ft = 0.3048;

/** A length as a shop file holds it. */
export function metres(lengthM: number): Quantity<'m'> {
  if (!isQuantity<'m'>(lengthM)) throw new Error(`${lengthM} is no length.`);
  return lengthM;
}

export function reelStock(reels: readonly number[], offCuts: Readonly<Record<string, number>> = {}): Stock {
  return {
    reels: reels.map(metres),
    'off-cuts': Object.fromEntries(Object.entries(offCuts).map(([name, one]) => [name, metres(one)])),
  };
}

/** What takes nothing but what is said. */
export function takes(said: Partial<ShelfTakes>): ShelfTakes {
  return { pieces: {}, known: [], cuts: [], lengths: [], sheets: [], ...said };
}

/** Cuts of one part, by what they are for. */
export function cuts(part: string, lengths: Readonly<Record<string, number>>): ShelfTakes['cuts'] {
  return Object.entries(lengths).map(([of, lengthM]) => ({ of, part, lengthM }));
}

export function promisedTo(job: string, said: Partial<ShelfTakes>): PromisedTo {
  return { job, revision: 'A', ...takes(said) };
}
