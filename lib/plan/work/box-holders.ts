import { partsOfKind } from '../../model/content/parts-of-kind.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanPick } from '../../model/plan/index.ts';
import { printedNumber } from '../../model/printed/index.ts';
import { standardGravity } from '../../model/quantity/gravity.ts';
import { shelvedFirst } from '../../shelf/shelf-lengths.ts';
import { type BoxHolding, boxesAtPlaces } from './boxes-at-places.ts';
import { strappedParts } from './loose-parts.ts';

/** How many hold a box at least, one at each end; common practice, no source. */
const leastHolders = 2;
/** Bolts through each leg of a bracket, one leg on the body and one on the box; common practice, no source. */
const boltsInLeg = 2;
const legs = 2;

/** What holds one box or other part: a part of the catalogue, or null where it has none, and how many of it hold. */
export interface BoxHolders {
  readonly by: BoxHolding | null;
  readonly part: string | null;
  readonly count: number;
  readonly forceN: number;
}

type Held = Pick<Job, 'parts' | 'shop' | 'devices' | 'links' | 'rules'>;

/**
 * The straps or brackets of each box, and the straps of each other part off the boards: of the shelf before others, the
 * weakest of which two hold its load forward, else as many of the strongest as do. A load in kilograms at rest is one of
 * m * g. A box of which the job does not say what holds it has no part, and two at least.
 */
export function boxHolders(job: Held): readonly BoxHolders[] {
  const boxes = boxesAtPlaces(job).filter(({ massKg }) => massKg > 0);
  const straps = strappedParts(job).map(({ forceN }) => ({ held: 'strap' as const, forceN }));
  return [...boxes, ...straps].map(({ held, forceN }): BoxHolders => {
    const best = held === null ? undefined : strongEnough(job, held, forceN);
    return { by: held, part: best?.id ?? null, count: best?.count ?? leastHolders, forceN };
  });
}

function strongEnough({ parts, shop }: Pick<Job, 'parts' | 'shop'>, form: BoxHolding, forceN: number) {
  const inOrder = shelvedFirst(shop);
  return partsOfKind(parts, 'fixing')
    .flatMap(([id, { form: own, holds = 0 }]) => {
      const holdsN = holds * standardGravity;
      return own === form && holds > 0
        ? [{ id, holdsN, count: Math.max(leastHolders, Math.ceil(forceN / holdsN - 1e-9)) }]
        : [];
    })
    .toSorted(
      (a, b) => inOrder(a.id, b.id) || a.count - b.count || a.holdsN - b.holdsN || (a.id < b.id ? -1 : 1),
    )[0];
}

/** What is to be bought where the catalogue has no part, by what holds the box. */
const lacking: readonly { readonly by: BoxHolding | null; readonly part: string; readonly what: string }[] = [
  { by: 'strap', part: 'box-strap', what: 'Strap' },
  { by: 'bracket', part: 'box-bracket', what: 'Bracket of a box' },
  { by: null, part: 'box-holder', what: 'Strap, or bracket with its bolts, by which a box is held' },
];

/**
 * Straps and brackets that the catalogue lacks, and what brackets are bolted with: they have no part, and are to be bought
 * all the same, for the load that is told. How long a bolt is follows from what it goes through at the vehicle.
 */
export function holdersToBuy(job: Held): PlanPick[] {
  const holders = boxHolders(job);
  const bought = lacking.flatMap(({ by, part, what }) =>
    row(
      { part, what },
      holders.filter((one) => one.by === by && one.part === null),
    ),
  );
  const bolts = { part: 'bracket-bolt', what: 'Bolt with nut and washers, bracket to body or box' };
  return [
    ...bought,
    ...row(
      bolts,
      holders.filter(({ by }) => by === 'bracket'),
      { each: boltsInLeg * legs, loaded: boltsInLeg },
    ),
  ];
}

/** Each of a count of holders, or each of what goes through one of them; what one leg carries the other does as well. */
function row(
  { part, what }: { readonly part: string; readonly what: string },
  holders: readonly BoxHolders[],
  { each, loaded } = { each: 1, loaded: 1 },
): PlanPick[] {
  const quantity = holders.reduce((sum, { count }) => sum + count * each, 0);
  if (quantity === 0) return [];
  const mostN = Math.max(...holders.map(({ forceN, count }) => forceN / (count * loaded)));
  return [
    {
      part,
      title: `${what}, for ${printedNumber('pull-newtons', mostN)} N each, not in the catalogue`,
      ...{ kind: 'fixing', quantity, unit: 'piece', stockQuantity: 0, short: quantity },
    },
  ];
}
