import type { InPlace } from '../../model/content/built.ts';
import type { PieceTaken, ShelfTakes } from '../../model/content/promised.ts';
import type { Job } from '../../model/content/resolved-job.ts';
import type { PlanPick } from '../../model/plan/index.ts';
import { countOf, isSamePiece, takesBeyond } from '../../shelf/promising.ts';
import { reelRow } from './pick-list.ts';
import { shelfTakes, type TakingPlan } from './shelf-takes.ts';

/**
 * The pick list of a revision beside what an earlier one has in place: devices, fuses, ends, cuts and sheets that are as
 * they are built are not fetched again, nor is as much of what is known by its part alone, such as ties and screws. What is
 * crimped on without being known by its end is fetched anew.
 */
export function pickBeside(job: Job, plan: TakingPlan, { takes: built }: InPlace): PlanPick[] {
  const takes = shelfTakes(plan);
  const { pieces, cuts } = takesBeyond(takes, built);
  const stillBrought = (part: string): number =>
    broughtOf(takes, part).filter((one) => !built.known.some((there) => isSamePiece(one, there))).length;
  return plan.pick.flatMap((row): PlanPick[] => {
    // It lies in the box of its device: what is fetched with that.
    if (row.suppliedWith !== undefined)
      return (pieces[row.suppliedWith] ?? 0) > 0 || stillBrought(row.suppliedWith) > 0 ? [row] : [];
    if (row.broughtBy !== undefined) {
      const quantity = stillBrought(row.part);
      return quantity > 0 ? [{ ...row, quantity }] : [];
    }
    // Wire without a reel in the catalogue is known by no part: it is told again, rather than forgotten.
    if (row.unit === 'm' && !Object.hasOwn(job.parts, row.part)) return [row];
    if (row.unit === 'm') {
      const own = cuts.filter(({ part }) => part === row.part).map(({ lengthM }) => lengthM);
      return own.length > 0 ? [reelRow(job, row.part, own)] : [];
    }
    const there = row.kind === 'terminal' ? 0 : Math.min(unknown(takes, row.part), unknown(built, row.part));
    const quantity = (pieces[row.part] ?? 0) - there;
    return quantity > 0 ? [{ ...row, quantity, short: Math.max(0, quantity - row.stockQuantity) }] : [];
  });
}

/** The devices of a part that the customer brings: they take nothing from the shelf. */
function broughtOf({ known }: ShelfTakes, part: string): readonly PieceTaken[] {
  return known.filter((one) => one.part === part && one.count === 0 && one.of.startsWith('item '));
}

/** Pieces of a part of which it is not known what each is for. */
function unknown({ pieces, known }: ShelfTakes, part: string): number {
  return Math.max(0, (pieces[part] ?? 0) - countOf(known, part));
}
