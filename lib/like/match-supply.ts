import { phrase } from '../model/phrase.ts';
import { printed } from '../model/printed/index.ts';
import type { Change } from './change.ts';
import type { ComingPart } from './match-parts.ts';
import type { PastBoard, PastFeed } from './past-board.ts';
import type { LikeRules } from './wish.ts';

/** Rounding of the currents of a plan (A). */
const hairA = 0.1;

/** What a past board drew, and what another like it draws with the parts that are wanted, at rated power (A). */
export interface SupplyMatch {
  readonly hadA: number;
  readonly needsA: number;
  readonly changes: readonly Change[];
}

/**
 * Whether the feeds of a past board carry what is wanted of it. Each feed carries what it fed; what is added comes to the
 * feed that has most to spare. A fuse is enough for a current up to what it carried, else up to its rating over the
 * house's margin; a conductor for the fuse that is asked for.
 */
export function matchSupply(board: PastBoard, coming: readonly ComingPart[], rules: LikeRules): SupplyMatch {
  const hadA = board.items.reduce((sum, { drawA }) => sum + (drawA ?? 0), 0);
  const needsA = coming.reduce((sum, { drawA }) => sum + drawA, 0);
  const feeds = board.feeds.map((feed) => ({ feed, needA: ofFeed(feed, coming) }));
  const fed = new Set(board.feeds.flatMap(({ items }) => items));
  const unfed = (item: string | null): boolean => item === null || !fed.has(item);
  const beforeA = board.items.reduce((sum, { id, drawA }) => sum + (unfed(id) ? (drawA ?? 0) : 0), 0);
  const laterA = coming.reduce((sum, { item, drawA }) => sum + (unfed(item) ? drawA : 0), 0);
  // What no feed is told of was fed somehow: only more than that asks for something.
  const addedA = laterA > beforeA + hairA ? laterA - beforeA : 0;
  const [most] = feeds.toSorted((a, b) => spareA(b.feed, b.needA, rules) - spareA(a.feed, a.needA, rules));
  if (!most) return { hadA, needsA, changes: addedA > 0 ? [noFeed(addedA, rules)] : [] };
  const changes = feeds.flatMap(({ feed, needA }) =>
    changeOf(feed, needA + (feed === most.feed ? addedA : 0), rules),
  );
  return { hadA, needsA, changes };
}

function ofFeed({ items }: PastFeed, coming: readonly ComingPart[]): number {
  return coming
    .filter(({ item }) => item !== null && items.includes(item))
    .reduce((sum, { drawA }) => sum + drawA, 0);
}

function spareA({ fuse, ampacityA }: PastFeed, needA: number, { fuseMargin }: LikeRules): number {
  return (fuse?.ratingA ?? ampacityA) / fuseMargin - needA;
}

function changeOf({ wire, sizeLabel, ampacityA, fuse }: PastFeed, needA: number, rules: LikeRules): Change[] {
  const { fuseMargin, minutes } = rules;
  const askedA = needA * fuseMargin;
  if (needA <= (fuse?.ratedA ?? 0) + hairA || askedA <= (fuse?.ratingA ?? ampacityA)) return [];
  const need = `${printed('current-carried', needA)} at rated power ask for a fuse of ${printed('current-carried', askedA)}`;
  const fitting = fuse && fuse.holderA !== null && fuse.holderA < askedA ? minutes['mount-item'] : 0;
  const holder = fitting > 0 ? phrase` and the holder of ${fuse?.id ?? wire}` : '';
  if (askedA > ampacityA)
    return [
      {
        kind: 'feed',
        of: [wire],
        blocks: false,
        minutes: minutes['pull-wire'] + minutes['connect-wire'] + minutes['fit-fuse'] + fitting,
        told: phrase`take a larger size for ${wire}, another fuse${holder}: ${need}, and ${sizeLabel} carries ${printed('current-allowed', ampacityA)}`,
      },
    ];
  return [
    {
      kind: 'fuse',
      of: [fuse?.id ?? wire],
      blocks: false,
      minutes: minutes['fit-fuse'] + fitting,
      told: phrase`take a larger fuse${holder} before ${wire}: ${need}, and ${printed('current-allowed', fuse?.ratingA)} is there`,
    },
  ];
}

function noFeed(addedA: number, { minutes }: LikeRules): Change {
  return {
    kind: 'feed',
    of: [],
    blocks: false,
    minutes: minutes['pull-wire'] + minutes['connect-wire'] + minutes['fit-fuse'],
    told: phrase`lay a feed with its fuse: ${printed('current-carried', addedA)} more at rated power, and the board has none`,
  };
}
