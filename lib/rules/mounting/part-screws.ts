import { pastFootM } from '../../board/cut/drill.ts';
import { mountingScrew, type ScrewHole, screwedInto } from '../../plan/board/screws/mounting-screw.ts';
import { catalogueSpot, deviceOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn, listed } from '../words.ts';

/** A screw that comes out of a board behind, by how much, and at which parts (m). */
interface Through {
  readonly screw: string;
  readonly outM: number;
  readonly items: readonly string[];
  /** The feet that it goes through. */
  readonly feetM: readonly number[];
}

/** A hole of a part on a board. */
interface PartHole {
  readonly item: string;
  readonly hole: ScrewHole;
}

function screwsThrough(
  { job }: Pick<Case, 'job'>,
  board: Case['job']['boards'][number],
  thicknessM: number,
  holes: readonly PartHole[],
): readonly Through[] {
  const into = screwedInto(board, thicknessM);
  const found = new Map<string, Through>();
  for (const { item, hole } of holes) {
    const screw = mountingScrew(hole, job, into);
    if (screw?.part.length === undefined) continue;
    const outM = pastFootM(screw.part.length, hole) - thicknessM;
    // What reaches past all that is free there is told as that.
    if (outM <= 1e-9 || outM > into.freeM + 1e-9) continue;
    const before = found.get(screw.id);
    found.set(screw.id, {
      screw: screw.id,
      outM: Math.max(outM, before?.outM ?? 0),
      items: [...new Set([...(before?.items ?? []), item])],
      feetM: [...(before?.feetM ?? []), hole.footM ?? 0],
    });
  }
  return [...found.values()];
}

/** Which length would bite and stay inside: whole millimetres, on the safe side at both ends. */
function lengthAsked({ job }: Pick<Case, 'job'>, thicknessM: number, { feetM }: Through): string {
  const leastMm = Math.ceil(1000 * (Math.max(...feetM) + job.rules['screw-bite'].value) - 1e-6);
  const mostMm = Math.floor(1000 * (Math.min(...feetM) + thicknessM - job.rules['screw-skin'].value) + 1e-6);
  if (leastMm > mostMm)
    return 'no one length bites and stays inside at each of these feet: take a thicker sheet, or lay washers below the heads';
  return `order screws of ${leastMm === mostMm ? `${leastMm} mm` : `${leastMm} to ${mostMm} mm`} below the head for it, and put them into the catalogue; or lay washers below the heads`;
}

/** A screw of a part that comes out behind the board, where that is free: nothing is hurt, and nothing may be led there. */
const partScrewThrough: Rule = {
  id: 'part-screw-through',
  judge: (about) =>
    about.plan.boards.flatMap(({ id, thicknessM, placements }) => {
      const board = about.job.boards.find((one) => one.id === id);
      if (!board) return [];
      const holes = placements.flatMap(({ item }) =>
        (deviceOf(about.job, item)?.facts.footprint?.holes ?? []).map((hole) => ({ item, hole })),
      );
      return screwsThrough(about, board, thicknessM, holes).map((one): Verdict<'part-screw-through'> => {
        const length = lengthIn(about.job, catalogueSpot(one.screw));
        return {
          level: 'note',
          of: [id, one.screw, ...one.items],
          message: `${one.screw} comes ${length(one.outM)} out of ${id} behind ${listed(one.items)}: no shorter one as thick, on the shelf, bites and stays inside`,
          value: one.outM,
          limit: 0,
          unit: 'm',
          remedy: `${lengthAsked(about, thicknessM, one)}; until then lead nothing behind the board there`,
          path: `/boards/${id}`,
        };
      });
    }),
};

export const partScrewRules: readonly Rule[] = [partScrewThrough];
