import { type BoardRemark, phrase } from '../../../board/remark.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { tapeText } from '../../keeping/tape-text.ts';
import { standsAt } from './spacer-stacks.ts';

/** How much further off its panel a board is tried, millimetre by millimetre. */
const mostMm = 40;
const millimetre = 0.001;

/** A board that stands on spacers of one height, and what does not fit where it stands at another one. */
export interface Standing {
  readonly board: Board;
  readonly standoffM: number;
  readonly faultsAt: (standoffM: number) => readonly BoardRemark[];
}

/**
 * The faults of a board in its space, with the spacer that lifts it clear of an obstacle, its parts too, where one does: the
 * least height in whole millimetres that the shelf makes, at which nothing is told of that obstacle and nothing new at all.
 */
export function withLift(
  job: Job,
  faults: readonly BoardRemark[],
  standing: Standing,
): readonly BoardRemark[] {
  const { board } = standing;
  const spacers = new Set(Object.values(board.given.fixings).map(({ spacer }) => spacer ?? 0));
  if (spacers.size !== 1) return faults;
  return faults.map((fault): BoardRemark => {
    if (fault.rule !== 'obstacle-in-the-way') return fault;
    const heightM = clearHeightM(job, fault, faults, standing);
    if (heightM === null) return fault;
    const value = tapeText(heightM, 'millimetre');
    return {
      ...fault,
      remedy: phrase`write spacer: ${value} at ${board.id}, which lifts it clear, and is made by what the shelf has; or ${fault.remedy}`,
      advice: [[{ path: `${board.path}/spacer`, value }]],
    };
  });
}

function clearHeightM(
  job: Job,
  { of }: BoardRemark,
  before: readonly BoardRemark[],
  { board, standoffM, faultsAt }: Standing,
): number | null {
  const keyOf = (one: BoardRemark) => `${one.rule} ${one.of.join(' ')}`;
  const known = new Set(before.map(keyOf));
  const [, obstacle] = of;
  const fromMm = Math.ceil(standoffM / millimetre + 1e-6);
  for (let mm = fromMm; mm <= fromMm + mostMm; mm += 1) {
    const heightM = mm * millimetre;
    const isClear = faultsAt(heightM).every(
      (one) => known.has(keyOf(one)) && (one.rule !== 'obstacle-in-the-way' || one.of[1] !== obstacle),
    );
    if (isClear && standsAt(job, board, heightM)) return heightM;
  }
  return null;
}
