import { threadM } from '../../board/strength/screw-thread.ts';
import { piecesOf, stockWord } from '../../shelf/shelf-lengths.ts';
import { houseRule } from '../house-rule-of.ts';
import { catalogueSpot } from '../look-up.ts';
import type { Case, Rule, Verdict } from '../rule.ts';
import { lengthAskedIn, lengthIn, listed } from '../words.ts';
import { type BoardFixing, fixingsOf, misfit } from './board-fixings.ts';

/** Fixings of one board that are too short in one way: the same bolt through the same stack into the same thread. */
interface ShortFixings {
  /** At least one. */
  readonly all: readonly BoardFixing[];
  readonly first: BoardFixing;
  readonly lengthM: number;
  readonly thicknessM: number;
  readonly stackM: number;
  readonly level: 'stop' | 'caution';
}

/** What stands between board and panel at a fixing, metres: the stack that is made for it, never less than was asked. */
function stackM({ plan }: Case, { board, id, spacerM }: BoardFixing): number {
  const pieces = plan.boards.find((one) => one.id === board.id)?.pieces ?? [];
  const made = pieces.filter(({ carries, form }) => carries === id && form === 'pad');
  return Math.max(spacerM, ...made.map(({ makesM, packM }) => makesM + packM));
}

/** What a fixing keeps for its thread past board and stack, metres; negative where it does not come through. */
const leftM = ({ lengthM, thicknessM, stackM: stack }: Omit<ShortFixings, 'all' | 'first' | 'level'>) =>
  lengthM - thicknessM - stack;

/** The fixings that keep too little for their thread, those of one cause together. */
function shortFixings(about: Case, goodDiameters: number, leastDiameters: number): readonly ShortFixings[] {
  const found = fixingsOf(about).flatMap((fixing): ShortFixings[] => {
    const { board, part, spot } = fixing;
    const diameterM = threadM(spot.stud);
    if (part.length === undefined || diameterM === null || misfit(fixing) !== null) return [];
    const planned = about.plan.boards.find(({ id }) => id === board.id);
    const thicknessM = planned?.thicknessM ?? board.sheet.thickness;
    const stack = { lengthM: part.length, thicknessM, stackM: stackM(about, fixing) };
    const left = leftM(stack);
    if (left >= goodDiameters * diameterM - 1e-9) return [];
    const level = left < leastDiameters * diameterM - 1e-9 ? 'stop' : 'caution';
    return [{ all: [fixing], first: fixing, ...stack, level }];
  });
  const together = new Map<string, ShortFixings>();
  for (const one of found) {
    const { first, stackM: stack } = one;
    const cause = [first.board.id, first.partId, first.spot.stud, stack.toFixed(6)].join(' ');
    const before = together.get(cause);
    together.set(cause, before ? { ...before, all: [...before.all, ...one.all] } : one);
  }
  return [...together.values()];
}

/**
 * What to write for the shortest fixing of the catalogue of the same form and thread that keeps as much as is good and does not reach past
 * what is free behind the points; one on the shelf before one that is not. Null where there is none.
 */
function longEnough(about: Case, short: ShortFixings, goodM: number): string | null {
  const { form, thread } = short.first.part;
  const shelved = (id: string): number => piecesOf(about.job.shop.stock[id]);
  const freeM = Math.min(...short.all.map(({ spot }) => spot['free-depth'] ?? Number.POSITIVE_INFINITY));
  const fitting = Object.entries(about.job.parts).flatMap(([id, part]) => {
    if (part.kind !== 'fixing' || part.form !== form || part.thread !== thread) return [];
    if (part.length === undefined) return [];
    const left = leftM({ ...short, lengthM: part.length });
    return left >= goodM - 1e-9 && left <= freeM + 1e-9 ? [{ id, lengthM: part.length }] : [];
  });
  const enough = (id: string): number => (shelved(id) >= short.all.length ? 0 : 1);
  const [best] = fitting.toSorted((a, b) => enough(a.id) - enough(b.id) || a.lengthM - b.lengthM);
  return best ? `fixing: ${best.id} (${shelved(best.id)} ${stockWord(about.job.shop)})` : null;
}

/** Bolts that do not reach through board and spacer, or not deep enough into their thread. */
export const fixingTooShort: Rule = {
  id: 'fixing-too-short',
  judge(about) {
    const good = houseRule(about.job, 'thread-engagement');
    const least = houseRule(about.job, 'thread-engagement-limit');
    return shortFixings(about, good.value, least.value).map((short): Verdict<'fixing-too-short'> => {
      const { all, first, level } = short;
      const diameterM = threadM(first.spot.stud) ?? 0;
      const { value: diameters, from } = level === 'stop' ? least : good;
      const limit = diameters * diameterM;
      return {
        level,
        of: [...all.map(({ id }) => id), ...all.map(({ point }) => point), first.board.id],
        message: shortText(about, short, limit),
        value: leftM(short),
        limit,
        unit: 'm',
        remedy: longerText(about, short, good.value * diameterM),
        ...from,
        path: first.path,
      };
    });
  },
};

const lengthsOf = ({ first }: ShortFixings) => [
  { path: first.path },
  catalogueSpot(first.partId),
  catalogueSpot(first.board.sheetId),
];

function shortText(about: Case, short: ShortFixings, limit: number): string {
  const { all, first, level } = short;
  const { board, partId, spot } = first;
  const one = all.length === 1;
  const length = lengthIn(about.job, ...lengthsOf(short));
  const subject = `the ${one ? 'fixing' : 'fixings'} ${listed(all.map(({ id }) => id))} of ${board.id}, ${partId} ${length(short.lengthM)} long,`;
  const through = throughText(about, short, length);
  const left = leftM(short);
  return left > 0
    ? `${subject} ${one ? 'has' : 'have'} ${length(left)} left for ${one ? 'its' : 'their'} thread past ${through}; ${length(limit)} is ${level === 'stop' ? 'the least' : 'good'} for ${spot.stud}`
    : `${subject} ${one ? 'does' : 'do'} not reach ${listed(all.map(({ point }) => point))} through ${through}`;
}

/** Board and spacer that a fixing goes through; the sheet by its name where the plan chose it. */
function throughText(
  { plan }: Case,
  { first, thicknessM, stackM: stack }: ShortFixings,
  length: (lengthM: number) => string,
): string {
  const planned = plan.boards.find(({ id }) => id === first.board.id);
  const what = planned?.sheetChosen === 'computed' ? `the sheet ${planned.sheet}` : 'board';
  return `${length(thicknessM)} of ${what}${stack > 0 ? ` and ${length(stack)} of spacer` : ''}`;
}

/** What to write: a fixing of the catalogue that is long enough, else how long one has to be. */
function longerText(about: Case, short: ShortFixings, goodM: number): string {
  const { all, first } = short;
  const found = longEnough(about, short, goodM);
  const where = listed(all.map(({ id }) => id));
  if (found !== null) return `write ${found} for ${where}, or a lower spacer:`;
  const asked = lengthAskedIn(about.job, ...lengthsOf(short))(short.thicknessM + short.stackM + goodM);
  const behind = listed(all.map(({ point }) => point));
  return `no ${first.part.form.replace('-', ' ')} ${first.part.thread ?? ''} of the catalogue does: add one of ${asked} or more, free depth behind ${behind} permitting, or write a lower spacer: for ${where}`;
}
