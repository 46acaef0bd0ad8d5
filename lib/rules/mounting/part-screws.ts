import { type ScrewThrough, screwsThrough } from '../../plan/board/screws/screws-through.ts';
import { catalogueSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';

/** Which length would bite and stay inside: whole millimetres, on the safe side at both ends. */
function lengthAsked({ job }: Pick<Case, 'job'>, thicknessM: number, { feetM }: ScrewThrough): string {
  const leastMm = Math.ceil(1000 * (Math.max(...feetM) + job.rules['screw-bite'].value) - 1e-6);
  const mostMm = Math.floor(1000 * (Math.min(...feetM) + thicknessM - job.rules['screw-skin'].value) + 1e-6);
  if (leastMm > mostMm)
    return 'no one length bites and stays inside at each of these feet: take a thicker sheet, or lay washers below the heads';
  return `order screws of ${leastMm === mostMm ? `${leastMm} mm` : `${leastMm} to ${mostMm} mm`} below the head for it, and put them into the catalogue; or lay washers below the heads`;
}

/** A screw of a part that comes out behind the board: where that is free nothing is hurt, and nothing may be led there. */
const partScrewThrough: Rule = {
  id: 'part-screw-through',
  judge: (about) =>
    about.plan.boards.flatMap((planned) => {
      const { id, thicknessM } = planned;
      const board = about.job.boards.find((one) => one.id === id);
      if (!board) return [];
      // A screw that the job names, and that reaches too far, is told as that.
      const isNamed = board.given.screw !== undefined;
      return screwsThrough(about.job, board, planned).flatMap((one): Verdict<'part-screw-through'>[] => {
        const length = lengthIn(about.job, catalogueSpot(one.screw));
        const isFree = one.outM <= one.freeM + 1e-9;
        if (!isFree && isNamed) return [];
        const behind = isFree
          ? ''
          : `, where ${one.freeM > 0 ? `${length(one.freeM)} is` : 'nothing is'} free`;
        return [
          {
            level: isFree ? 'note' : 'caution',
            of: [id, one.screw, ...one.items],
            message: `${one.screw} comes ${length(one.outM)} out of ${id} behind ${listed(one.items)}${behind}: no shorter one as thick, on the shelf, bites and stays inside`,
            value: one.outM,
            limit: isFree ? 0 : one.freeM,
            unit: 'm',
            remedy: `${lengthAsked(about, thicknessM, one)}${isFree ? '; until then lead nothing behind the board there' : '; or stand the board on spacers'}`,
            path: `/boards/${id}`,
          },
        ];
      });
    }),
};

export const partScrewRules: readonly Rule[] = [partScrewThrough];
