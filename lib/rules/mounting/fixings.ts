import { threadM } from '../../board/strength/thread.ts';
import type { Board } from '../../model/content/resolved-job.ts';
import type { VehicleSpace } from '../../model/content/vehicle.ts';
import type { PartOf } from '../../model/kinds/index.ts';
import { pointer } from '../../model/place.ts';
import { mountingScrew } from '../../plan/board/board-shape.ts';
import { catalogueSpot, deviceOf, deviceSpot, partOf } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { houseRule } from '../source.ts';
import { lengthAskedIn, lengthIn } from '../words.ts';

/** A fixing of a board as written, with its part and its point looked up. */
interface BoardFixing {
  readonly board: Board;
  readonly id: string;
  readonly part: PartOf<'fixing'>;
  readonly point: string;
  readonly spot: VehicleSpace['sound-points'][string];
  readonly spacerM: number;
  readonly path: string;
}

function fixingsOf({ job }: Case): readonly BoardFixing[] {
  return job.boards.flatMap((board) =>
    Object.entries(board.given.fixings).flatMap(([id, { fixing, point, spacer }]): BoardFixing[] => {
      const part = partOf(job, fixing);
      const spot = board.space['sound-points'][point];
      if (part?.kind !== 'fixing' || !spot) return [];
      const path = pointer(['boards', board.id, 'fixings', id]);
      return [{ board, id, part, point, spot, spacerM: spacer ?? 0, path }];
    }),
  );
}

/** What a fixing lacks to go into the thread of its point, in words; null where nothing. */
function misfit({ part: { form, thread }, spot: { stud } }: BoardFixing): string | null {
  if (form === 'wood-screw') return 'is a wood screw, which has no hold in a thread';
  if (form !== 'bolt' && form !== 'machine-screw')
    return `is a ${form.replace('-', ' ')}, which does not go through a board into a thread`;
  if (thread === undefined) return 'does not tell its thread';
  return thread === stud ? null : `has the thread ${thread}`;
}

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

/** What stands between board and panel at a fixing, metres: the stack that is made for it, never less than was asked. */
function stackM({ plan }: Case, { board, id, spacerM }: BoardFixing): number {
  const pieces = plan.boards.find((one) => one.id === board.id)?.pieces ?? [];
  const made = pieces.filter(({ carries, form }) => carries === id && form === 'pad');
  return Math.max(spacerM, ...made.map(({ makesM, packM }) => makesM + packM));
}

const tooShort: Rule = {
  id: 'fixing-too-short',
  judge(about) {
    const good = houseRule(about.job, 'thread-engagement');
    const least = houseRule(about.job, 'thread-engagement-limit');
    return fixingsOf(about).flatMap((fixing): Verdict<'fixing-too-short'>[] => {
      const { board, id, part, point, spot, path } = fixing;
      const diameterM = threadM(spot.stud);
      if (part.length === undefined || diameterM === null || misfit(fixing) !== null) return [];
      const thicknessM =
        about.plan.boards.find((one) => one.id === board.id)?.thicknessM ?? board.sheet.thickness;
      const stack = stackM(about, fixing);
      const value = part.length - thicknessM - stack;
      if (value >= good.value * diameterM - 1e-9) return [];
      const stops = value < least.value * diameterM - 1e-9;
      const written = [
        { path },
        catalogueSpot(board.given.fixings[id]?.fixing ?? ''),
        catalogueSpot(board.sheetId),
      ];
      const length = lengthIn(about.job, ...written);
      const { value: diameters, from } = stops ? least : good;
      const limit = diameters * diameterM;
      const through = `${length(thicknessM)} of board${stack > 0 ? ` and ${length(stack)} of spacer` : ''}`;
      return [
        {
          level: stops ? 'stop' : 'caution',
          of: [id, point, board.id],
          message:
            value > 0
              ? `the fixing ${id} of ${board.id}, ${length(part.length)} long, has ${length(value)} left for its thread past ${through}; ${length(limit)} is ${stops ? 'the least' : 'good'} for ${spot.stud}`
              : `the fixing ${id} of ${board.id}, ${length(part.length)} long, does not reach ${point} through ${through}`,
          value,
          limit,
          unit: 'm',
          remedy: `use a fixing that is ${lengthAskedIn(about.job, ...written)(limit - value)} longer, or a lower spacer; free depth behind ${point} permitting`,
          ...from,
          path,
        },
      ];
    });
  },
};

/** What the head of a screw bears on, metres: as its part tells, else twice its thread; null where neither is known. */
function headOf({ 'bears-on': told, thread }: PartOf<'fixing'>): { faceM: number; told: boolean } | null {
  if (told !== undefined) return { faceM: told, told: true };
  const diameterM = thread === undefined ? null : threadM(thread);
  return diameterM === null ? null : { faceM: 2 * diameterM, told: false };
}

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
  return fixingsOf(about).flatMap(({ board, id, part, path }) => {
    const screw = { id: board.given.fixings[id]?.fixing ?? id, part };
    const holeM = part.clearance ?? 0;
    const what = { of: [id, board.id], hole: `its hole in ${board.id}`, holeM };
    return headVerdict(about, what, screw).map((verdict) => ({ ...verdict, path }));
  });
}

/** Screws of parts against the holes of their feet: one verdict a part, for its widest hole. */
function partHeads(about: Case): Verdict<'head-pulls-through'>[] {
  const { job, plan } = about;
  return plan.boards.flatMap(({ placements }) =>
    placements.flatMap(({ item }) => {
      const holes = deviceOf(job, item)?.facts.footprint?.holes ?? [];
      const holeM = Math.max(0, ...holes.map(({ diameterM }) => diameterM));
      const screw = mountingScrew(holeM, job.parts);
      if (!screw) return [];
      const what = { of: [item, screw.id], hole: `a mounting hole of ${item}`, holeM };
      return headVerdict(about, what, screw).map((verdict) => ({ ...verdict, ...deviceSpot(job, item) }));
    }),
  );
}

export const fixingRules: readonly Rule[] = [misfitsPoint, tooShort, pullsThrough];
