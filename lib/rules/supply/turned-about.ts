import type { BuildPlan, PlanWire } from '../../model/plan/index.ts';
import { deviceIdOf, endsOf } from '../look-up.ts';

/** A device that stands turned about: the turn to write, and how long a wire then is at least. */
export interface TurnedAbout {
  readonly device: string;
  readonly turnDeg: number;
  readonly lengthM: number;
}

/**
 * How long a wire that leaves its board is at least with its device turned about where it stands: from its terminal, half
 * a turn round the middle of the footprint, straight to the edge by which it leaves. Null where nothing turns, or where
 * that is no shorter.
 */
export function turnedAbout({ boards }: Pick<BuildPlan, 'boards'>, wire: PlanWire): TurnedAbout | null {
  for (const { routes, exits, placements } of boards) {
    const route = routes.find((one) => one.wire === wire.id || one.along?.includes(wire.id));
    const exit = exits.find((one) => one.wire === route?.wire);
    const at = placements.find(({ item }) => endsOf(wire).some((end) => deviceIdOf(end) === item));
    const [first, last] = [route?.points[0], route?.points.at(-1)];
    if (!route || !exit || !at || !first || !last) continue;
    const terminal = first.xM === exit.xM && first.yM === exit.yM ? last : first;
    const across = exit.edge === 'left' || exit.edge === 'right';
    const turnedM = across
      ? 2 * at.xM + at.widthM - terminal.xM - exit.xM
      : 2 * at.yM + at.depthM - terminal.yM - exit.yM;
    const lengthM = wire.lengthM - route.lengthM + Math.abs(turnedM);
    if (lengthM >= wire.lengthM) return null;
    return { device: at.item, turnDeg: (at.turnDeg + 180) % 360, lengthM };
  }
  return null;
}
