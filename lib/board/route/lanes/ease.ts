import { type Evasion, evasionIn } from './evade.ts';
import { keptNowhere, type Lane, type LaneBoard, type LaneJam, type OwnLegs, roomBesideM } from './lane.ts';
import { endsOf } from './lane-wire.ts';
import type { Leg } from './leg.ts';
import { type Split, splitIn } from './split.ts';

/** The ends of a wire's legs are drawn back so often. */
const mostDrawnBack = 8;
/** A wire steps aside no more once it has so many legs. */
const mostLegs = 24;
/** How far the two parts of a leg that is split stand apart in rank, before it is halved for each of the wire's legs. */
const splitShift = 1e-3;

/**
 * Makes room in a jam: an end of a leg draws back from what it only just reaches; or a leg steps aside between what
 * holds it from below and from above. False where neither can be done.
 */
export function eased(board: LaneBoard, all: readonly OwnLegs[], jam: LaneJam): boolean {
  const evasion = evasionIn(
    jam,
    ({ wire }) => (all[wire] ? roomBesideM(board, all[wire]) : 0) + 1e-6,
    (lane, isLowEnd, toM) => mayDrawBack(board, all[lane.wire], lane, isLowEnd, toM),
  );
  if (evasion) {
    drawBack(board, all, evasion);
    return true;
  }
  const thickestM = Math.max(...jam.map(({ wire }) => all[wire]?.wire.diameterM ?? 0));
  const split = splitIn(jam, ({ wire }) => {
    const own = all[wire];
    return own && own.legs.length < mostLegs
      ? 2 * thickestM + 2 * own.share * own.wire.bendRadiusM
      : Infinity;
  });
  if (split) stepAside(board, all, split);
  return split !== null;
}

/** The leg at an end of a lane; -1: none that may move. */
function legAtEnd(board: LaneBoard, own: OwnLegs, { leg }: Lane, isLowEnd: boolean): number {
  const [a, b] = endsOf(own, leg.nth, board.walls);
  const nth = a < b === isLowEnd ? leg.nth - 1 : leg.nth + 1;
  const next = own.legs[nth];
  return next && Number.isNaN(next.fixedM) ? nth : -1;
}

function mayDrawBack(
  board: LaneBoard,
  own: OwnLegs | undefined,
  lane: Lane,
  isLowEnd: boolean,
  toM: number,
): boolean {
  const nth = own ? legAtEnd(board, own, lane, isLowEnd) : -1;
  if (!own || nth < 0 || own.drawnBack >= mostDrawnBack) return false;
  const restM = isLowEnd ? lane.span[1] - toM : toM - lane.span[0];
  const { lowM, highM } = own.kept[nth] ?? keptNowhere;
  return restM >= 2 * own.share * own.wire.bendRadiusM && toM >= lowM && toM <= highM;
}

/** Draws an end of a lane back: the leg that it runs into stays beyond there. */
function drawBack(board: LaneBoard, all: readonly OwnLegs[], { lane, isLowEnd, toM }: Evasion): void {
  const own = all[lane.wire];
  const nth = own ? legAtEnd(board, own, lane, isLowEnd) : -1;
  if (!own || nth < 0) return;
  own.drawnBack += 1;
  const { lowM, highM } = own.kept[nth] ?? keptNowhere;
  own.kept[nth] = isLowEnd ? { lowM: Math.max(lowM, toM), highM } : { lowM, highM: Math.min(highM, toM) };
  own.atM[nth] = toM;
}

/** A leg in two, with a piece across between them. */
function stepAside(board: LaneBoard, all: readonly OwnLegs[], { lane, alongM, firstIsHigher }: Split): void {
  const own = all[lane.wire];
  if (!own) return;
  const { leg } = lane;
  const [a, b] = endsOf(own, leg.nth, board.walls);
  const isLast = leg.nth === own.legs.length - 1;
  const shift = (splitShift / 2 ** own.legs.length) * (a < b === firstIsHigher ? 1 : -1);
  const before = { ...leg, rank: leg.rank + shift, fixedM: leg.nth === 0 ? leg.fixedM : Number.NaN };
  const after = { ...leg, rank: leg.rank - shift, fixedM: isLast ? leg.fixedM : Number.NaN };
  const across = legAcross(board, all, leg, alongM);
  own.legs = own.legs.toSpliced(leg.nth, 1, before, across, after).map((one, nth) => ({ ...one, nth }));
  const wasM = own.atM[leg.nth] ?? 0;
  own.atM.splice(leg.nth, 1, wasM, alongM, wasM);
  const kept = own.kept[leg.nth] ?? keptNowhere;
  own.kept.splice(leg.nth, 1, kept, keptNowhere, kept);
}

/** A leg across another, at a place among those that lie near there. */
function legAcross(board: LaneBoard, all: readonly OwnLegs[], { wire, level }: Leg, alongM: number): Leg {
  const lines = level ? board.xs : board.ys;
  const line = Math.max(
    0,
    Math.min(
      lines.length - 2,
      lines.findLastIndex((one) => one <= alongM),
    ),
  );
  let [low, high] = [line, line + 1];
  for (const own of all)
    for (const leg of own.legs) {
      if (leg.level === level || Math.floor(leg.rank) !== line) continue;
      if ((own.atM[leg.nth] ?? 0) <= alongM) low = Math.max(low, leg.rank);
      else high = Math.min(high, leg.rank);
    }
  const rank = low < high ? (low + high) / 2 : low + 1e-9;
  return { wire, nth: 0, level: !level, line, fixedM: Number.NaN, rank };
}
