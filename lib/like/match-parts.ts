import type { Point } from '../board/shape/point.ts';
import { phrase } from '../model/phrase.ts';
import { counted } from '../rules/words.ts';
import type { Change } from './change.ts';
import { leastCost } from './least-cost.ts';
import {
  freeSpot,
  holesToDrill,
  type PlacedPart,
  placeOfOther,
  type Surface,
  surfaceOf,
} from './part-room.ts';
import type { PastBoard, PastItem } from './past-board.ts';
import type { LikeRules, WishedPart } from './wish.ts';

/** A part that would stand on the board, and where; null where no room is found for it. */
export interface ComingPart {
  /** The item of the past board whose place it takes; null for one that is added. */
  readonly item: string | null;
  readonly part: string;
  readonly placed: (PlacedPart & Pick<PastItem, 'keepClear'>) | null;
  /** What it draws at rated power (A). */
  readonly drawA: number;
  readonly lossW: number;
}

/** The parts of a past board held against those that are wanted. */
export interface MatchedParts {
  readonly coming: readonly ComingPart[];
  /** Parts in common, by the items of the past board. */
  readonly common: readonly string[];
  /** What stays since nobody asked for another: distribution, fuses, relays. */
  readonly kept: readonly string[];
  readonly replaced: readonly { readonly item: string; readonly part: string }[];
  readonly added: readonly string[];
  readonly leftOut: readonly string[];
  readonly changes: readonly Change[];
}

/** What serves the others: it stays as long as nobody asks for one of its kind. */
const serving: ReadonlySet<string> = new Set(['distribution', 'fuse-holder', 'relay']);

/**
 * Holds the parts of a past board against those that are wanted: the same part stays; one of the same kind takes the
 * place of another where that costs least work in all; what is left over on either side is added or left out.
 */
export function matchParts(
  board: PastBoard,
  wished: readonly WishedPart[] | null,
  rules: LikeRules,
): MatchedParts {
  if (!wished) return { ...nothing, coming: board.items.map(asItWas), kept: board.items.map(({ id }) => id) };
  const { same, open, free } = sameParts(board.items, wished);
  const kept = free.filter(({ kind }) => serving.has(kind) && !wished.some((one) => one.kind === kind));
  const left = free.filter((item) => !kept.includes(item));
  const pairs = open.map((part): { readonly part: WishedPart; item: PastItem | null } => ({
    part,
    item: null,
  }));
  for (const sort of new Set(open.map((part) => part.sort))) {
    const surface = surfaceOf(board, board.items, rules.partGapM);
    const parts = pairs.filter(({ part }) => part.sort === sort);
    const items = left.filter((item) => item.sort === sort);
    const chosen = cheapestPairs(
      parts.map(({ part }) => part),
      items,
      surface,
      rules,
    );
    for (const [at, pair] of parts.entries()) pair.item = items[chosen[at] ?? items.length] ?? null;
  }
  const taken = new Set(pairs.flatMap(({ item }) => item?.id ?? []));
  const leftOut = left.filter(({ id }) => !taken.has(id));
  const put = putOnBoard(board, pairs, leftOut, rules);
  const ids = (items: readonly PastItem[]): string[] => items.map(({ id }) => id);
  return {
    coming: [
      ...same.map(({ item, part }) => ({
        ...asItWas(item),
        drawA: part.plannedA ?? item.drawA ?? part.mostA,
      })),
      ...kept.map(asItWas),
      ...put.coming,
    ],
    common: same.map(({ item }) => item.id),
    kept: ids(kept),
    replaced: pairs.flatMap(({ part, item }) => (item ? [{ item: item.id, part: part.part }] : [])),
    added: pairs.flatMap(({ part, item }) => (item ? [] : [part.part])),
    leftOut: ids(leftOut),
    changes: [...put.changes, ...leftOut.map(leavingOut)],
  };
}

const nothing = { common: [], kept: [], replaced: [], added: [], leftOut: [], changes: [] } as const;

function asItWas(item: PastItem): ComingPart {
  const { id, part, drawA, lossW } = item;
  return { item: id, part, placed: item, drawA: drawA ?? 0, lossW };
}

/** The parts that a past board has already, and what is left on either side. */
function sameParts(items: readonly PastItem[], wished: readonly WishedPart[]) {
  const same: { readonly item: PastItem; readonly part: WishedPart }[] = [];
  const open: WishedPart[] = [];
  let free = items;
  for (const part of wished) {
    const item = free.find((one) => one.part === part.part);
    if (item) {
      same.push({ item, part });
      free = free.filter((one) => one !== item);
    } else open.push(part);
  }
  return { same, open, free };
}

/** Which item each part takes the place of; one past the last where it is added beside them. */
function cheapestPairs(
  parts: readonly WishedPart[],
  items: readonly PastItem[],
  surface: Surface,
  rules: LikeRules,
): number[] {
  const costs = parts.map((part) => [
    ...items.map((item) => {
      const placed = placeOfOther(part, item, surface);
      const own = wiringMinutes(part, rules);
      return placed ? own + drillMinutes(part, placed, item.holes, rules) : own + movingMinutes(part, rules);
    }),
    ...parts.map(() => wiringMinutes(part, rules) + movingMinutes(part, rules)),
  ]);
  return leastCost(costs);
}

function wiringMinutes(part: WishedPart, { minutes }: LikeRules): number {
  return part.wires * minutes['lay-wire'];
}

function drillMinutes(
  part: WishedPart,
  placed: PlacedPart,
  there: readonly Point[],
  { minutes }: LikeRules,
): number {
  return holesToDrill(part, placed, there) * minutes['drill-hole'];
}

function movingMinutes(part: WishedPart, { minutes }: LikeRules): number {
  return minutes['mount-item'] + part.holes.length * minutes['drill-hole'];
}

interface Pair {
  readonly part: WishedPart;
  readonly item: PastItem | null;
}

/** Puts what takes another's place there, then what has no place yet on free spots; what is left out makes room. */
function putOnBoard(
  board: PastBoard,
  pairs: readonly Pair[],
  leftOut: readonly PastItem[],
  rules: LikeRules,
): { readonly coming: readonly ComingPart[]; readonly changes: readonly Change[] } {
  let standing = board.items.filter((item) => !leftOut.includes(item));
  const coming: ComingPart[] = [];
  const changes: Change[] = [];
  const inPlace = pairs.map((pair) => {
    if (!pair.item) return { ...pair, placed: null };
    const placed = placeOfOther(pair.part, pair.item, surfaceOf(board, standing, rules.partGapM));
    const own = pair.item;
    standing = standing.flatMap((one) => (one !== own ? [one] : placed ? [{ ...one, ...placed }] : []));
    return { ...pair, placed };
  });
  for (const { part, item, placed } of inPlace) {
    const found = placed ?? freeSpot(part, surfaceOf(board, standing, rules.partGapM));
    const keepClear = item?.keepClear ?? [];
    if (!placed && found) standing = [...standing, standIn(part, found)];
    const drawA = part.plannedA ?? part.mostA;
    coming.push({
      ...{ item: item?.id ?? null, part: part.part, drawA, lossW: item?.lossW ?? 0 },
      placed: found && { ...found, keepClear },
    });
    changes.push(changeOf({ part, item, placed, spot: found }, standing.length, rules));
  }
  return { coming, changes };
}

/** A part on a free spot, as those that come after it see it. */
function standIn(part: WishedPart, placed: PlacedPart): PastItem {
  return {
    id: '',
    part: part.part,
    kind: part.kind,
    sort: part.sort,
    ...placed,
    keepClear: [],
    holes: [],
    drawA: null,
    lossW: 0,
  };
}

interface Put extends Pair {
  /** In the place of the other. */
  readonly placed: PlacedPart | null;
  /** There, or on a free spot. */
  readonly spot: PlacedPart | null;
}

function changeOf({ part, item, placed, spot }: Put, standing: number, rules: LikeRules): Change {
  const wiring = wiringMinutes(part, rules);
  const wires = phrase`${counted(part.wires, 'wire')} to lay anew`;
  if (item && placed) {
    const holes = holesToDrill(part, placed, item.holes);
    const drilling = holes === 0 ? 'its holes are those of the other' : `${counted(holes, 'hole')} to drill`;
    return {
      kind: 'other-part',
      of: [item.id],
      blocks: false,
      minutes: wiring + holes * rules.minutes['drill-hole'],
      told: phrase`put ${part.part} in the place of ${item.id} (${item.part}): it fits its room; ${drilling}, ${wires}`,
    };
  }
  const work = wiring + movingMinutes(part, rules);
  const all = spot ? 0 : standing * rules.minutes['mount-item'];
  const where = spot
    ? 'a free spot is there for it'
    : 'no spot is free for it: all parts are to be placed anew';
  const holes = `${counted(part.holes.length, 'hole')} to drill`;
  return {
    kind: item ? 'moved-part' : 'added-part',
    of: item ? [item.id] : [part.part],
    minutes: work + all,
    blocks: false,
    told: item
      ? phrase`put ${part.part} on instead of ${item.id} (${item.part}), whose room it does not fit: ${where}; ${holes}, ${wires}`
      : phrase`add ${part.part}: ${where}; ${holes}, ${wires}`,
  };
}

function leavingOut({ id, part }: PastItem): Change {
  return {
    kind: 'left-out',
    of: [id],
    minutes: 0,
    blocks: false,
    told: phrase`leave out ${id} (${part}): its room stays free`,
  };
}
