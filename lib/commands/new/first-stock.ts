import { isOnReel, type KindName, type Part } from '../../model/kinds/index.ts';
import type { Units } from '../../model/vocabulary.ts';

/** Kinds that lie on a shelf before there is a job for them, with a count to begin with. Equipment is bought for a job. */
const pieces: Partial<Readonly<Record<KindName, number>>> = {
  terminal: 50,
  fixing: 50,
  grommet: 10,
  fuse: 5,
  'fuse-holder': 2,
  distribution: 1,
  relay: 2,
  cable: 2,
  'board-sheet': 2,
};
/** One reel, by the units of the shop. */
const reels = { inch: '50 ft', millimetre: '15 m' } as const;

/** The lines of `stock:` that a shop begins with: something of everything that is cut, crimped, fused and fastened. */
export function firstStock(parts: Readonly<Record<string, Part>>, units: Units): readonly string[] {
  return Object.entries(parts).flatMap(([id, part]) => {
    const count = pieces[part.kind];
    if (isOnReel(part)) return [`${id}: { reels: [${reels[units]}] }`];
    return count === undefined ? [] : [`${id}: { pieces: ${count} }`];
  });
}
