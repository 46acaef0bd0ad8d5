import { nestJobs, type SheetPiece } from '../../board/cut/sheet-pieces.ts';
import type { CutTaken, PieceTaken, SheetTaken, ShelfTakes } from '../../model/content/promised.ts';
import type { BuildPlan, PlanCable, PlanItem, PlanRun, PlanWire } from '../../model/plan/index.ts';
import { sheetSubject } from '../../shelf/promising.ts';
import { coveringCuts } from '../wiring/runs/runs.ts';

/** What of a plan tells what is cut to length. */
interface CutPlan {
  readonly wires: readonly PlanWire[];
  readonly cables: readonly PlanCable[];
  readonly runs: readonly PlanRun[];
}

/** What of a plan tells what it takes from the shelf. */
export type TakingPlan = CutPlan &
  Pick<BuildPlan, 'pick' | 'pickBeyond' | 'boards' | 'rules' | 'offCuts' | 'items'> & {
    readonly job: Pick<BuildPlan['job'], 'id'>;
    readonly power: Pick<BuildPlan['power'], 'fuses'>;
  };

/**
 * Lengths that a plan cuts: of wires, of cable, of covering over each run, of heat-shrink over each lug.
 *
 * @param isOffReel Whether a cable is cut from a reel; one of a made length is a piece.
 */
export function cutsTaken(
  { wires, cables, runs }: CutPlan,
  isOffReel: (cable: string) => boolean,
): CutTaken[] {
  const own = wires.filter(({ origin }) => origin === 'job');
  const cut = (of: string, part: string | null, lengthM: number): CutTaken[] =>
    part === null || part === '' ? [] : [{ of, part, lengthM }];
  return [
    ...own.flatMap(({ id, part, lengthM }) => cut(`wire ${id}`, part, lengthM)),
    ...cables.flatMap(({ id, part, lengthM }) => (isOffReel(part) ? cut(`cable ${id}`, part, lengthM) : [])),
    ...runs.flatMap((run) =>
      coveringCuts(run).flatMap(([part, lengthM], at) => cut(`run ${run.id} ${at}`, part, lengthM)),
    ),
    ...own.flatMap(({ id, ends }) =>
      ends.flatMap(({ shrink }, at) =>
        shrink ? cut(`shrink ${id} ${at}`, shrink.part, shrink.lengthM) : [],
      ),
    ),
  ];
}

/** What a plan takes from the shelf, whether it is there or still to be ordered. */
export function shelfTakes(plan: TakingPlan): ShelfTakes {
  const offReel = new Set(plan.pick.filter(({ unit }) => unit === 'm').map(({ part }) => part));
  const pieces = plan.pick.filter(
    ({ unit, suppliedWith, broughtBy }) =>
      unit === 'piece' && suppliedWith === undefined && broughtBy === undefined,
  );
  const { sheets, pieces: cutOut } = nestJobs([plan]);
  return {
    pieces: Object.fromEntries(pieces.map(({ part, quantity }) => [part, quantity])),
    known: [...knownPieces(plan, offReel), ...knownSheets(plan, cutOut)],
    cuts: cutsTaken(plan, (part) => offReel.has(part)),
    ...(plan.pickBeyond !== undefined && { beyond: plan.pickBeyond.revision }),
    lengths: plan.pick.flatMap(({ part, reels = [] }) =>
      reels.map(({ offCut = null, lengthM, cutsM = [] }) => ({ part, offCut, lengthM, cutsM })),
    ),
    sheets: offCutsTaken(sheets.flatMap(({ stock }) => (stock.offCut === undefined ? [] : [stock]))),
  };
}

function offCutsTaken(
  all: readonly { readonly sheet: string; readonly offCut?: string }[],
): readonly SheetTaken[] {
  const taken = new Map<string, SheetTaken>();
  for (const { sheet, offCut = '' } of all) {
    const key = `${sheet} ${offCut}`;
    taken.set(key, { sheet, offCut, quantity: (taken.get(key)?.quantity ?? 0) + 1 });
  }
  return [...taken.values()];
}

/**
 * Devices, fuses, cables of a made length and what is crimped on ends. Two ends in one twin ferrule are not told apart, and
 * so not known.
 */
function knownPieces(
  { items, power, cables, wires }: TakingPlan,
  offReel: ReadonlySet<string>,
): PieceTaken[] {
  const piece = (of: string, part: string | null, as: string): PieceTaken[] =>
    part === null ? [] : [{ of, part, count: 1, as }];
  return [
    ...items.flatMap((item) => (item.origin === 'job' ? takenItem(item) : [])),
    ...power.fuses.flatMap(({ id, part }) => piece(`fuse ${id}`, part, '')),
    ...cables.flatMap(({ id, part }) => (offReel.has(part) ? [] : piece(`cable ${id}`, part, ''))),
    ...wires
      .filter(({ origin }) => origin === 'job')
      .flatMap((wire) =>
        wire.ends.flatMap(({ form, part }, at) =>
          form === undefined || form === 'twin-ferrule'
            ? []
            : piece(`end ${wire.id} ${at}`, part, endAs(wire)),
        ),
      ),
  ];
}

/** A device by its name. One that the customer brings is known as well, and takes nothing from the shelf. */
function takenItem({ id, part, broughtBy }: PlanItem): PieceTaken[] {
  if (part === null) return [];
  const isBrought = broughtBy !== undefined;
  return [{ of: `item ${id}`, part, count: isBrought ? 0 : 1, as: isBrought ? 'brought' : '' }];
}

/** An end is the one that is there as long as its wire is not cut anew. */
function endAs({ part, from, to, lengthM }: PlanWire): string {
  return `${part ?? ''} ${from} ${to} ${lengthM.toFixed(5)}`;
}

/** The whole sheets of a kind, made to all that is cut from it: any piece that is cut otherwise takes them anew. */
function knownSheets({ pick, boards }: TakingPlan, cutOut: readonly SheetPiece[]): PieceTaken[] {
  const sheets = new Set(boards.flatMap(({ sheet, ribs }) => [sheet, ...ribs.map((rib) => rib.sheet)]));
  return [...sheets].map((part) => ({
    of: sheetSubject(part),
    part,
    count: pick.find((one) => one.part === part)?.quantity ?? 0,
    as: JSON.stringify(
      cutOut
        .filter(({ sheet }) => sheet === part)
        .map(({ id, count = 1, loops, holes }) => [id, count, loops, holes]),
    ),
  }));
}
