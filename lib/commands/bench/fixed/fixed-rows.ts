import { routeWires } from '../../../board/route/routing.ts';
import { atMost, type BenchRow } from '../timing.ts';
import { openAvoid } from './avoid-routes.ts';
import { type BoardFigures, berthsOf, boardFigures } from './board-figures.ts';
import { type FixedBoard, fixedBoards } from './fixed-boards.ts';
import { leastCrossings } from './least-crossings.ts';
import { leastFound } from './least-found.ts';

/** What is counted, its unit, and what is the most that is wanted of it, where that is the same on every board. */
const counted = [
  ['crossings', 'crossings'],
  ['bends', 'bends'],
  ['wireM', 'm'],
  ['partedPairs', 'pairs', 0],
  ['bundles', 'bundles', 2],
  ['tooNear', 'pairs', 0],
  ['tight', 'wires', 0],
  ['missing', 'wires', 0],
] as const satisfies readonly (readonly [keyof BoardFigures, BenchRow['unit'], number?])[];

const says: Readonly<Record<keyof BoardFigures, string>> = {
  crossings: 'crossings',
  bends: 'bends',
  wireM: 'wire',
  partedPairs: 'pairs parted',
  bundles: 'bundles of a run over one side, at most',
  tooNear: 'wires nearer than they are thick',
  tight: 'wires bent too tightly',
  missing: 'wires without a way',
};

/** The most crossings and bends that are wanted of each board. */
const wanted: Readonly<Record<string, Partial<Record<keyof BoardFigures, number>>>> = {
  'van-three-amps': { crossings: 60, bends: 90 },
  'estate-side-well': { crossings: 15, bends: 42 },
  'under-seat-five': { crossings: 5, bends: 6 },
};

/**
 * The wires of the fixed boards by one counting code: as they are laid, as libavoid lays them where it is installed, the
 * proved bound of their crossings, and the least that long searches found with all room kept.
 */
export async function fixedRows(root: string, longest: boolean): Promise<BenchRow[]> {
  const avoid = await openAvoid();
  return (await fixedBoards(root)).flatMap((board) => {
    const { job, task, routing } = board;
    const theirs = avoid && boardFigures(task, avoid(task, routing.routes));
    const found = longest ? longestSearch(board) : leastFound[job];
    return [
      ...figureRows(job, '', boardFigures(task, routing.routes), true),
      ...(theirs ? figureRows(job, ' by libavoid', theirs, false) : []),
      {
        id: `${job}-crossings-bound`,
        what: `${job}: crossings, proved bound from below`,
        value: leastCrossings(berthsOf(task)),
        unit: 'crossings',
      } as const,
      ...(found ? figureRows(job, ' of the least found', found, false) : []),
    ];
  });
}

function figureRows(job: string, by: string, figures: BoardFigures, isOwn: boolean): BenchRow[] {
  return counted.flatMap(([name, unit, most]): BenchRow[] => {
    const value = figures[name];
    const goal = wanted[job]?.[name] ?? most;
    const row = {
      id: `${job}-${name}${by.replaceAll(' ', '-')}`,
      what: `${job}: ${says[name]}${by}`,
      value,
      unit,
    };
    return [isOwn && goal !== undefined ? { ...row, goal: atMost(value, goal) } : row];
  });
}

/** From each of these seeds it is searched, so many path searches a wire, with crossings at such a price (m). */
const longSeeds = [1, 2, 3];
const [longSearchesEach, longCrossingM] = [200, 2];

/** The laying with the fewest crossings of a long search from each of some seeds: of equal ones, with the fewest bends. */
function longestSearch({ task, house }: FixedBoard): BoardFigures | undefined {
  const dressPrices = { ...house.dressPrices, crossingM: longCrossingM };
  const found = longSeeds.map((seed) =>
    boardFigures(
      task,
      routeWires(task, { ...house, dressPrices, searchesEach: longSearchesEach, seed }).routes,
    ),
  );
  const [least] = found.toSorted(
    (a, b) => a.missing - b.missing || a.tight - b.tight || a.crossings - b.crossings || a.bends - b.bends,
  );
  return least;
}
