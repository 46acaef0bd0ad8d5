import type { HolePurpose } from '../../model/outline.ts';
import { type Item, type MountingHole, onBoard, type Placement } from '../layout/item.ts';
import { type BoardRemark, length, phrase } from '../remark.ts';
import type { BoardShape } from '../shape/outline.ts';
import { distance, type Point } from '../shape/point.ts';
import { compare } from '../strength/fixing.ts';

/** A hole to drill, before it has a number. Metres. */
export interface HoleToDrill extends Point {
  /** Built from names: `amp-front.hole-1`, `f2`. */
  readonly id: string;
  /** 0 where it is not known. */
  readonly diameterM: number;
  /** Null: right through. */
  readonly depthM: number | null;
  /** The part of the screw that it is the pilot of; null for any other hole. */
  readonly pilotFor: string | null;
  readonly purpose: HolePurpose;
  /** What it is for: an item, a fixing, a cut. */
  readonly of: string;
  /** What lies behind it in the vehicle; null where it ends in the board, or nobody said. */
  readonly behind: string | null;
}

/** A line of the drill table: numbers count from 1, row by row from the datum, each row from the left. */
export interface DrillLine extends HoleToDrill {
  readonly n: number;
}

/** A screw that an item is mounted by, metres. */
export interface MountingScrew {
  readonly part: string;
  readonly pilotM: number;
  /** Below its head; 0 where it is not known. */
  readonly lengthM: number;
}

/** A fixing that passes through the board, metres; of diameter 0 where its clearance is not known. */
export interface FixingHole extends Point {
  readonly id: string;
  readonly diameterM: number;
  readonly behind: string;
}

/** What holes a board gets, beside those of its outline. */
export interface Drilled {
  readonly items: readonly Item[];
  readonly placements: readonly Placement[];
  readonly fixings: readonly FixingHole[];
  readonly thicknessM: number;
  /** The screw that goes through a hole of an item and the foot round it; null where the shop has none. */
  readonly screwFor: (hole: Pick<MountingHole, 'diameterM' | 'footM'>) => MountingScrew | null;
}

/** What of a screw is left past the foot that it goes through, metres. */
export function pastFootM(lengthM: number, { footM = 0 }: Pick<MountingHole, 'footM'>): number {
  return Math.max(0, lengthM - footM);
}

/** What is drilled for a mounting hole of an item, metres: the pilot of its screw, or without one the hole as it is. */
export function drilledM(holeM: number, screw: MountingScrew | null): number {
  return screw?.pilotM ?? holeM;
}

/**
 * Every hole of a board: those of the outline, for the fixings, and the pilots of the screws that hold the items.
 * A pilot is as deep as its screw is long past the foot of the item, and right through where that reaches through the
 * board. Where the shop has no screw for it, the hole of the item is taken as it is, right through.
 */
export function holesToDrill(
  shape: BoardShape,
  { items, placements, fixings, thicknessM, screwFor }: Drilled,
): readonly HoleToDrill[] {
  const through = { depthM: null, pilotFor: null } as const;
  const cut = shape.holes.map(({ id, xM, yM, diameterM, purpose }): HoleToDrill => {
    return { id, xM, yM, diameterM, ...through, purpose, of: id, behind: null };
  });
  const fixed = fixings.map(({ id, xM, yM, diameterM, behind }): HoleToDrill => {
    return { id, xM, yM, diameterM, ...through, purpose: 'fixing', of: id, behind };
  });
  const mounts = placements.flatMap((at) => {
    const item = items.find(({ id }) => id === at.item);
    if (!item) return [];
    return (item.mountingHoles ?? []).map((hole): HoleToDrill => {
      const screw = screwFor(hole);
      const lengthM = pastFootM(screw?.lengthM ?? 0, hole);
      return {
        id: hole.id,
        ...onBoard(item, at, hole),
        diameterM: drilledM(hole.diameterM, screw),
        depthM: lengthM === 0 || lengthM >= thicknessM ? null : lengthM,
        pilotFor: screw?.part ?? null,
        purpose: 'mounting',
        of: item.id,
        behind: null,
      };
    });
  });
  return [...cut, ...fixed, ...mounts];
}

/** Holes this near to one line across stand in one row, metres: what a fabricator can measure. */
const rowM = 0.001;

/**
 * The drill table. Numbers follow position alone (row by row from the datum; by id where two holes share a place),
 * so that the order in which parts were written or placed changes none.
 */
export function drillTable(holes: readonly HoleToDrill[]): readonly DrillLine[] {
  const row = ({ yM }: Point) => Math.round(yM / rowM);
  return holes
    .toSorted((a, b) => row(a) - row(b) || a.xM - b.xM || compare(a.id, b.id))
    .map((hole, at) => ({ n: at + 1, ...hole }));
}

/** Holes that run into each other. */
export function drillFaults(holes: readonly HoleToDrill[]): readonly BoardRemark[] {
  const sorted = drillTable(holes);
  return sorted.flatMap((a, at) =>
    sorted.slice(at + 1).flatMap((b): BoardRemark[] => {
      const byM = (a.diameterM + b.diameterM) / 2 - distance(a, b);
      if (byM <= 1e-9) return [];
      return [
        {
          rule: 'holes-run-together',
          level: 'stop',
          of: a.of === b.of ? [a.of] : [a.of, b.of],
          message: phrase`holes ${a.n} (${a.id}) and ${b.n} (${b.id}) run ${length('overlap', byM)} into each other`,
          value: byM,
          limit: 0,
          unit: 'm',
          remedy: 'move one of the two',
        },
      ];
    }),
  );
}
