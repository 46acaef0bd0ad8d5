import { type BoardRemark, phrase } from '../../../board/remark.ts';
import type { Board, Job } from '../../../model/content/resolved-job.ts';
import { measuresAt } from '../../../model/content/written-measures.ts';
import { listed } from '../../../model/printed/listed.ts';
import { tapeText } from '../../../model/quantity/tape-text.ts';
import { type BoltedSheet, boltedSheets } from './lift-bolts.ts';
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
 * least height in whole millimetres that the shelf makes, at which nothing is told of that obstacle, nothing new at all, and
 * bolts of the catalogue hold it; of another sheet where none of its own holds.
 */
export function withLift(
  job: Job,
  faults: readonly BoardRemark[],
  standing: Standing,
): readonly BoardRemark[] {
  const { board } = standing;
  if (!isOnOneHeight(board)) return faults;
  return faults.map((fault): BoardRemark => {
    if (fault.rule !== 'obstacle-in-the-way') return fault;
    const lift = clearLift(job, fault, faults, standing);
    if (lift === null) return fault;
    const { where, paths } = spacerSpots(job, board);
    const value = tapeText(lift.heightM, 'millimetre');
    const sheet = lift.sheet.id === board.sheetId ? [] : [lift.sheet.id];
    const told = listed([`spacer: ${value}`, ...sheet.map((id) => `sheet: ${id}`)]);
    return {
      ...fault,
      remedy: phrase`write ${told} at ${where}, which lifts it clear, and is made by what the shelf has${boltText(lift)}; or ${fault.remedy}`,
      advice: [
        [
          ...paths.map((path) => ({ path: `${path}/spacer`, value })),
          ...sheet.map((id) => ({ path: `${board.path}/sheet`, value: id })),
          ...writtenBolts(job, board, lift),
        ],
      ],
    };
  });
}

/** True for a board that has fixings, all on one height off the panel. */
export function isOnOneHeight({ given }: Board): boolean {
  return new Set(Object.values(given.fixings).map(({ spacer }) => spacer ?? 0)).size === 1;
}

/** The lines that other bolts ask for: a bolt that was proposed follows by itself. */
export function writtenBolts(job: Job, { id, path: at }: Board, { bolts }: Lift) {
  const isProposed = (fixing: string) =>
    job.proposals.some(({ path }) => path[1] === id && path[2] === 'fixings' && path[3] === fixing);
  return [...bolts]
    .filter(([fixing]) => !isProposed(fixing))
    .map(([fixing, bolt]) => ({ path: `${at}/fixings/${fixing}/fixing`, value: bolt }));
}

/** The bolts that hold it there, where they are others than now. */
function boltText({ bolts }: Lift): string {
  if (bolts.size === 0) return '';
  const names = [...new Set(bolts.values())];
  return `, with ${listed(names)} at ${bolts.size === 1 ? 'its fixing' : 'its fixings'} ${listed([...bolts.keys()])}`;
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

/** How high a board is lifted, and of which sheet and on which bolts it stands there. */
export interface Lift extends BoltedSheet {
  readonly heightM: number;
}

/** The least lift at which nothing is told of an obstacle, and nothing new at all. */
function clearLift(
  job: Job,
  { of }: BoardRemark,
  before: readonly BoardRemark[],
  { board, standoffM, faultsAt }: Standing,
): Lift | null {
  const keyOf = (one: BoardRemark) => `${one.rule} ${one.of.join(' ')}`;
  const known = new Set(before.map(keyOf));
  const [, obstacle] = of;
  return liftWhere(job, board, standoffM, (heightM) =>
    faultsAt(heightM).every(
      (one) => known.has(keyOf(one)) && (one.rule !== 'obstacle-in-the-way' || one.of[1] !== obstacle),
    ),
  );
}

/**
 * The least lift off where a board stands at which it is clear, in whole millimetres that the shelf makes, on the sheet that
 * it has; where no bolt holds on that, the least on another one. Null where none is.
 */
export function liftWhere(
  job: Job,
  board: Board,
  standoffM: number,
  isClear: (heightM: number) => boolean,
): Lift | null {
  const fromMm = Math.ceil(standoffM / millimetre + 1e-6);
  let other: Lift | null = null;
  for (let mm = fromMm; mm <= fromMm + mostMm; mm += 1) {
    const heightM = mm * millimetre;
    if (!isClear(heightM)) continue;
    // A thicker sheet brings its face, and what stands on it, as much further out as a higher spacer.
    const found = boltedSheets(job, board, heightM).find(
      ({ sheet: { id, part } }) =>
        standsAt(job, { ...board, sheetId: id, sheet: part }, heightM) &&
        isClear(heightM + Math.max(0, part.thickness - board.sheet.thickness)),
    );
    if (found?.sheet.id === board.sheetId) return { ...found, heightM };
    if (found) other ??= { ...found, heightM };
  }
  return other;
}
