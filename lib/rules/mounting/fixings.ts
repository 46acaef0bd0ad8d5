import { pastFootM } from '../../board/cut/drill.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { headOf, mountingScrew, screwedInto } from '../../plan/board/screws/mounting-screw.ts';
import { houseRule } from '../house-rule-of.ts';
import { catalogueSpot, deviceOf, deviceSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthIn } from '../words.ts';
import { fixingsOf, misfit } from './board-fixings.ts';
import { fixingTooShort } from './fixing-length.ts';

const misfitsPoint: Rule = {
  id: 'fixing-misfits-point',
  judge(about) {
    return fixingsOf(about).flatMap((fixing): Verdict<'fixing-misfits-point'>[] => {
      const { board, id, part, point, spot, path } = fixing;
      const what = misfit(fixing);
      if (what === null) return [];
      return [
        {
          level: 'stop',
          of: [id, point, board.id],
          message: `the fixing ${id} of ${board.id} ${what}, and ${point} takes a bolt ${spot.stud}`,
          value: part.thread ?? part.form,
          limit: spot.stud,
          remedy: `name a bolt ${spot.stud} as its fixing:, or correct stud: of ${point} in the vehicle's file`,
          path,
        },
      ];
    });
  },
};

const pullsThrough: Rule = {
  id: 'head-pulls-through',
  judge(about) {
    return [...boardHeads(about), ...partHeads(about)];
  },
};

/** A screw whose head is no wider than its hole. */
function headVerdict(
  { job }: Case,
  what: { readonly of: readonly string[]; readonly hole: string; readonly holeM: number },
  screw: { readonly id: string; readonly part: PartOf<'fixing'> },
): Omit<Verdict<'head-pulls-through'>, 'path'>[] {
  const head = headOf(screw.part);
  if (!head || what.holeM < head.faceM - 1e-9) return [];
  const length = lengthIn(job, catalogueSpot(screw.id));
  return [
    {
      level: head.told ? 'stop' : 'caution',
      of: what.of,
      message: `the head of ${screw.id} is ${length(head.faceM)} across${head.told ? '' : ' as an ordinary one'}, and ${what.hole} is ${length(what.holeM)} wide: it pulls through`,
      value: what.holeM,
      limit: head.faceM,
      unit: 'm',
      remedy: `put a washer under it, or use a larger screw${head.told ? '' : `; write bears-on: in ${screw.id} where its head is wider`}`,
    },
  ];
}

/** Fixings against their clearance holes in the board. */
function boardHeads(about: Case): Verdict<'head-pulls-through'>[] {
  return fixingsOf(about).flatMap(({ board, id, partId, part, path }) => {
    const screw = { id: partId, part };
    const holeM = part.clearance ?? 0;
    const what = { of: [id, board.id], hole: `its hole in ${board.id}`, holeM };
    return headVerdict(about, what, screw).map((verdict) => ({ ...verdict, path }));
  });
}

/** Screws of parts against the holes of their feet: one verdict a part, for its widest hole. */
function partHeads(about: Case): Verdict<'head-pulls-through'>[] {
  const { job, plan } = about;
  return plan.boards.flatMap(({ id, thicknessM, placements }) =>
    placements.flatMap(({ item }) => {
      const board = job.boards.find((one) => one.id === id);
      if (!board) return [];
      const holes = deviceOf(job, item)?.facts.footprint?.holes ?? [];
      const [hole] = holes.toSorted((a, b) => b.diameterM - a.diameterM);
      const screw = hole ? mountingScrew(hole, job, screwedInto(board, thicknessM)) : null;
      if (!hole || !screw) return [];
      const holeM = hole.diameterM;
      const what = { of: [item, screw.id], hole: `a mounting hole of ${item}`, holeM };
      return headVerdict(about, what, screw).map((verdict) => ({ ...verdict, ...deviceSpot(job, item) }));
    }),
  );
}

/** A screw that the job names for the parts of a board, against the board and what is free behind it. */
const partScrewUnfit: Rule = {
  id: 'part-screw-unfit',
  judge({ job, plan }) {
    return plan.boards.flatMap(({ id, thicknessM, placements }): Verdict<'part-screw-unfit'>[] => {
      const board = job.boards.find((one) => one.id === id);
      const named = board?.given.screw;
      if (!board || named === undefined) return [];
      const into = screwedInto(board, thicknessM);
      const bite = houseRule(job, 'screw-bite');
      const holes = placements.flatMap(({ item }) => deviceOf(job, item)?.facts.footprint?.holes ?? []);
      const lengths = holes.flatMap((hole) => {
        const lengthM = mountingScrew(hole, job, into)?.part.length;
        return lengthM === undefined ? [] : [pastFootM(lengthM, hole)];
      });
      if (lengths.length === 0) return [];
      const bitesM = Math.min(...lengths, thicknessM);
      const outM = Math.max(...lengths) - thicknessM - into.freeM;
      const length = lengthIn(job, catalogueSpot(named));
      const verdict = {
        level: 'caution' as const,
        of: [id],
        unit: 'm' as const,
        path: `/boards/${id}/screw`,
      };
      const remedy = 'name a screw of another length, or leave screw: out: one is chosen for each hole';
      if (bitesM < bite.value - 1e-9)
        return [
          {
            ...verdict,
            message: `${named} bites ${length(bitesM)} in ${id}, and ${length(bite.value)} are asked for`,
            value: bitesM,
            limit: bite.value,
            remedy,
          },
        ];
      if (outM <= 1e-9) return [];
      return [
        {
          ...verdict,
          message: `${named} comes out of ${id} and reaches ${length(outM)} past what is free behind it`,
          value: Math.max(...lengths),
          limit: thicknessM + into.freeM,
          remedy,
        },
      ];
    });
  },
};

export const fixingRules: readonly Rule[] = [misfitsPoint, fixingTooShort, pullsThrough, partScrewUnfit];
