import type { HolePurpose } from '../model/outline.ts';
import { type BoardFault, geometry, mmText } from './fault.ts';
import { compare, type Fixing } from './fixing.ts';
import { type Item, onBoard, type Placement } from './item.ts';
import type { BoardShape } from './outline.ts';
import { distance, type Point } from './point.ts';

/** A hole to drill, before it has a number. */
export interface HoleToDrill extends Point {
  /** Built from names: `amp-front.m1`, `fixing-2`. */
  readonly id: string;
  readonly diameterM: number;
  readonly depthM: number;
  readonly purpose: HolePurpose;
}

/** A line of the drill table: numbers count from 1, from the left, and upwards in a column. */
export interface DrillLine extends HoleToDrill {
  readonly n: number;
}

/** Holes this near to one line across stand in one column, metres: what a fabricator can measure. */
const columnM = 0.0001;

/** Every hole of a board: those of the outline, for the fixings, and to mount the items by. Metres. */
export function holesToDrill(
  shape: BoardShape,
  items: readonly Item[],
  placements: readonly Placement[],
  fixings: readonly Fixing[],
  thicknessM: number,
): readonly HoleToDrill[] {
  const cut = shape.holes.map((hole) => ({ ...hole, depthM: thicknessM }));
  const fixed = fixings.map(({ id, xM, yM, diameterM }) => ({
    id,
    xM,
    yM,
    diameterM,
    depthM: thicknessM,
    purpose: 'fixing' as const,
  }));
  const mounts = placements.flatMap((at) => {
    const item = items.find(({ id }) => id === at.item);
    return (item?.mountingHoles ?? []).map((hole) => ({
      id: `${at.item}.${hole.id}`,
      ...(item ? onBoard(item, at, hole) : hole),
      diameterM: hole.diameterM,
      depthM: Math.min(hole.depthM ?? thicknessM, thicknessM),
      purpose: 'mounting' as const,
    }));
  });
  return [...cut, ...fixed, ...mounts];
}

/**
 * The drill table. Numbers follow position alone (left to right, then upwards; by id where two holes share a
 * place), so that the order in which parts were written or placed changes none.
 */
export function drillTable(holes: readonly HoleToDrill[]): readonly DrillLine[] {
  const column = ({ xM }: Point) => Math.round(xM / columnM);
  return holes
    .toSorted((a, b) => column(a) - column(b) || Math.round((a.yM - b.yM) / columnM) || compare(a.id, b.id))
    .map(({ id, xM, yM, diameterM, depthM, purpose }, at) => ({
      n: at + 1,
      id,
      xM,
      yM,
      diameterM,
      depthM,
      purpose,
    }));
}

/** Holes that run into each other. */
export function drillFaults(holes: readonly HoleToDrill[]): readonly BoardFault[] {
  const sorted = drillTable(holes);
  return sorted.flatMap((a, at) =>
    sorted.slice(at + 1).flatMap((b): BoardFault[] => {
      const byM = (a.diameterM + b.diameterM) / 2 - distance(a, b);
      if (byM <= 1e-9) return [];
      return [
        {
          rule: 'holes-run-together',
          level: 'stop',
          of: [a.id, b.id],
          message: `${a.id} and ${b.id} run ${mmText(byM)} into each other`,
          value: byM,
          limit: 0,
          unit: 'm',
          remedy: 'move one of the two',
          ...geometry,
        },
      ];
    }),
  );
}
