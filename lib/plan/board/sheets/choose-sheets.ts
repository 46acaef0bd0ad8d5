import type { Board, Job } from '../../../model/content/resolved-job.ts';
import type { Keep } from '../../../model/keep.ts';
import { modeHertz } from '../../../model/printed/told.ts';
import { type Traced, traced } from '../../../model/trace.ts';
import { PlanBook } from '../../plan-book.ts';
import { buildCircuit } from '../../power/circuit/circuit.ts';
import { type KnownLinks, layOutBoards } from '../board-layout.ts';
import { modeLimits } from '../first-mode-limits.ts';
import type { LaidBoard } from '../laid-board.ts';
import { placeBoards } from '../place-boards.ts';
import { isOnShelf, type NamedSheet, type TriedSheet, trySheet } from './sheet-lacks.ts';

/**
 * The job with a sheet for every board that leaves it open: the lightest in stock that the board comes out of, that goes
 * into the space, takes its wet, holds the screws and is stiff enough with the ribs that the job writes. The plan never
 * adds a rib by itself: it proposes one where the board is too soft. Where no sheet in stock does, the job stops, says
 * what each lacks, and is planned with the one that lacks least.
 */
export function chooseSheets(job: Job, sized: KnownLinks['sized'], book: PlanBook, keep: Keep): Job {
  if (job.boards.every(({ given }) => given.sheet !== undefined)) return job;
  const boards = job.boards.map((board) =>
    board.given.sheet === undefined ? withSheet(job, board, { sized, keep }, book) : board,
  );
  return { ...job, boards };
}

/** Sheets by what a board of them weighs, the lightest first. */
function byWeight(sheets: readonly NamedSheet[]): NamedSheet[] {
  const perM2 = ({ part }: NamedSheet): number => part.thickness * part.density;
  return sheets.toSorted((a, b) => perM2(a) - perM2(b) || (a.id < b.id ? -1 : 1));
}

function withSheet(job: Job, board: Board, laying: LayingOut, book: PlanBook): Board {
  const all = Object.entries(job.parts).flatMap(([id, part]): NamedSheet[] =>
    part.kind === 'board-sheet' ? [{ id, part }] : [],
  );
  const stocked = byWeight(all.filter(({ id }) => isOnShelf(job, id)));
  const { tried, chosen } = choose(job, board, stocked.length > 0 ? stocked : byWeight(all), laying);
  const { id, part } = chosen?.sheet ?? { id: board.sheetId, part: board.sheet };
  book.trace(`boards.${board.id}.sheet`, reasonOf(id, tried, modeLimits(job, board).wantedHz));
  if (stocked.length === 0 || !chosen || !does(chosen, modeLimits(job, board).leastHz))
    noSheet(job, board, stocked.length === 0 ? [] : tried, book);
  return { ...board, sheetId: id, sheet: part };
}

/** What boards are laid out by, whatever their sheet. */
interface LayingOut {
  readonly sized: KnownLinks['sized'];
  readonly keep: Keep;
}

interface Choice {
  readonly tried: readonly TriedSheet[];
  /** Null where the board can't be laid out at all. */
  readonly chosen: TriedSheet | null;
}

/**
 * Lays the board out with a sheet, and looks with this layout for the lightest that does, from that sheet on: since
 * another thickness may raise parts otherwise, the layout is made anew with what was found, until that stays.
 */
function choose(job: Job, board: Board, sheets: readonly NamedSheet[], laying: LayingOut): Choice {
  const { wantedHz, leastHz } = modeLimits(job, board);
  const tried = new Map<string, TriedSheet>();
  let from = 0;
  for (;;) {
    const first = sheets[from];
    const laid = first ? layOut(job, { ...board, sheetId: first.id, sheet: first.part }, laying) : null;
    if (!laid) return { tried: [], chosen: null };
    const rest: TriedSheet[] = [];
    for (const sheet of sheets.slice(from)) {
      const one = trySheet(job, laid, sheet, laying.keep);
      tried.set(sheet.id, one);
      rest.push(one);
      if (does(one, wantedHz)) break;
    }
    const found = rest.findIndex((one) => does(one, wantedHz));
    if (found === 0) return { tried: [...tried.values()], chosen: rest[0] ?? null };
    if (found < 0)
      return { tried: [...tried.values()], chosen: leastLacking([...tried.values()], [wantedHz, leastHz]) };
    from += found;
  }
}

/** True where a sheet lacks nothing and is as stiff as asked; what no fixing holds is no fault of the sheet. */
function does(one: TriedSheet, limitHz: number): boolean {
  return ruledOutBy(one).length === 0 && doesButForFixings(one, limitHz);
}

/** The same, whatever fixings the job names for the board. */
function doesButForFixings({ lacks, stiffness }: TriedSheet, limitHz: number): boolean {
  return lacks.length === 0 && (stiffness === null || stiffness.firstModeHz.value >= limitHz);
}

/** The fixings that rule a sheet out. */
const ruledOutBy = ({ fixings: { short, long } }: TriedSheet): readonly string[] => [...short, ...long];

/**
 * The lightest that no job stops for; else the lightest that only other fixings are wanted for; else the stiffest of
 * those that lack fewest other things.
 */
function leastLacking(tried: readonly TriedSheet[], limits: readonly number[]): TriedSheet | null {
  const [, leastHz = 0] = limits;
  const enough =
    tried.find((one) => does(one, leastHz)) ??
    limits.flatMap((limitHz) => tried.find((one) => doesButForFixings(one, limitHz)) ?? [])[0];
  const lackCount = (one: TriedSheet): number => one.lacks.length + (ruledOutBy(one).length > 0 ? 1 : 0);
  const modeHz = ({ stiffness }: TriedSheet): number => stiffness?.firstModeHz.value ?? 0;
  const [best] = tried.toSorted((a, b) => lackCount(a) - lackCount(b) || modeHz(b) - modeHz(a));
  return enough ?? best ?? null;
}

/** The board on its place, with everything on it placed; null where its outline can't be drawn. */
function layOut(job: Job, board: Board, { sized, keep }: LayingOut): LaidBoard | null {
  const alone = placeBoards({ ...job, boards: [board] }, new PlanBook());
  const devices = new Map(alone.devices.map((device) => [device.id, device]));
  const { roles } = buildCircuit(alone, devices);
  return layOutBoards(alone, { roles, sized }, new PlanBook(), keep)[0] ?? null;
}

/** All that a sheet lacks but stiffness, in the words of a message. */
function lacksOf({ lacks, fixings: { short, long } }: TriedSheet): readonly string[] {
  return [
    ...lacks,
    ...(short.length > 0 ? [`leaves ${short.join(' and ')} too little thread behind it`] : []),
    ...(long.length > 0 ? [`lets ${long.join(' and ')} reach past what is free behind`] : []),
  ];
}

function saidOf(one: TriedSheet): string {
  const { stiffness } = one;
  const mode = stiffness ? [`first mode ${modeHertz(stiffness.firstModeHz.value)}`] : [];
  return [...lacksOf(one), ...mode].join(', ') || 'holds';
}

function reasonOf(id: string, tried: readonly TriedSheet[], wantedHz: number): Traced<string> {
  return traced(id, '', {
    rule: 'board-sheet',
    formula:
      'lightest sheet in stock that the board comes out of, that leaves its parts their depth, takes the wet of its space, is reached through by its fixings, gives its screws their bite and keeps the first mode',
    citation: 'common practice, no source',
    mark: 'cp',
    inputs: [
      ['first mode asked for', wantedHz, 'Hz'],
      ...tried.map((one) => [one.sheet.id, saidOf(one)] as const),
    ],
  });
}

function noSheet(job: Job, board: Board, tried: readonly TriedSheet[], book: PlanBook): void {
  const { leastHz } = modeLimits(job, board);
  const best = tried.find((one) => doesButForFixings(one, leastHz));
  if (best) {
    noSheetForFixings(board, best, book);
    return;
  }
  const each = tried.map((one) => {
    const lacks = lacksOf(one);
    return `${one.sheet.id} ${lacks.length > 0 ? lacks.join(', ') : `reaches ${saidOf(one)}`}`;
  });
  book.remark(
    {
      rule: 'no-sheet-for-board',
      level: 'stop',
      of: [board.id],
      message:
        each.length > 0
          ? `no sheet in stock does for ${board.id}, which asks for a first mode of ${leastHz} Hz: ${each.join('; ')}`
          : `${board.id} leaves its sheet open, and no board sheet is in stock`,
      limit: leastHz,
      unit: 'Hz',
      remedy: 'stock a stiffer sheet, add a fixing near the heaviest part or a rib, or write sheet: yourself',
    },
    { path: board.path },
  );
}

/** Says that the board's fixings alone rule out what would do; they are what has to change. */
function noSheetForFixings(board: Board, best: TriedSheet, book: PlanBook): void {
  book.remark(
    {
      rule: 'no-sheet-for-board',
      level: 'stop',
      of: [board.id, ...ruledOutBy(best)],
      message: `no sheet in stock does for ${board.id} with the fixings that it names: ${best.sheet.id} would, but ${lacksOf(best).join(', and ')}`,
      remedy: `name fixings or spacers that suit ${best.sheet.id}, or write sheet: yourself`,
    },
    { path: board.path },
  );
}
