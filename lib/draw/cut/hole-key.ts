import { type LetteredHoles, letteredHoles } from '../../board/cut/hole-letters.ts';
import type { PlanHole } from '../../model/plan/index.ts';
import { printedBit } from '../../model/printed/holes.ts';
import { printedDimension } from '../../model/printed/lengths.ts';
import type { LengthStyle } from '../../model/quantity/length-text.ts';

/** Letter and number of every hole, by its number: `A24`. */
export function holeNames(holes: readonly PlanHole[]): ReadonlyMap<number, string> {
  return new Map(
    letteredHoles(holes).flatMap(({ letter, holes: own }) =>
      own.map(({ n }) => [n, `${letter}${n}`] as const),
    ),
  );
}

/** What each letter means: `A: bit 17/64 in or 6.6 mm, through, 9 holes`. */
export function holeKeyTexts(holes: readonly PlanHole[], style: LengthStyle): string[] {
  return letteredHoles(holes).map(({ letter, setUp, holes: own }: LetteredHoles<PlanHole>) => {
    const { diameterM, depthM, pilotFor } = setUp;
    const bit = printedBit(diameterM, pilotFor === null ? 'clearance' : 'pilot', style.system);
    const reach = depthM === null ? 'through' : `${printedDimension('depth-drilled', depthM, style)} deep`;
    return `${letter}: bit ${bit}, ${reach}, ${own.length} ${own.length === 1 ? 'hole' : 'holes'}`;
  });
}
