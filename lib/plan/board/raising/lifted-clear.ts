import { type BoardRemark, phrase } from '../../../board/remark.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { measuresAt } from '../../../model/content/written-measures.ts';
import { listed } from '../../../model/printed/listed.ts';
import { tapeText } from '../../../model/quantity/tape-text.ts';
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
    const { where, paths } = spacerSpots(job, board);
    return {
      ...fault,
      remedy: phrase`write spacer: ${value} at ${where}, which lifts it clear, and is made by what the shelf has; or ${fault.remedy}`,
      advice: [paths.map((path) => ({ path: `${path}/spacer`, value }))],
    };
  });
}

/** Where the spacers of a board are written: at each fixing that says its own, at the board for all others. */
function spacerSpots(job: Job, { id, path, given }: Board) {
  const fixings = Object.keys(given.fixings);
  const own = fixings.filter(
    (name) => measuresAt(job, { path: `${path}/fixings/${name}/spacer` }).length > 0,
  );
  const atBoard = own.length < fixings.length;
  const named =
    own.length === 0 ? [] : [`the ${own.length === 1 ? 'fixing' : 'fixings'} ${listed(own)} of ${id}`];
  return {
    where: listed([...(atBoard ? [id] : []), ...named]),
    paths: [...(atBoard ? [path] : []), ...own.map((name) => `${path}/fixings/${name}`)],
  };
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
