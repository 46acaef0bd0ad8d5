import type { DeviceDrop, OperatingPoint } from '../../model/plan/index.ts';
import { deviceDrops } from './feed-and-ground-drop.ts';
import { type NetworkInput, operatingPoints } from './operating-points.ts';
import type { SolvedPoints } from './solved-points.ts';

type Band = { readonly from: number; readonly to: number } | null;

/**
 * The drops of each device at every point, with the current that it draws there. At a point that can be held beside a
 * meter also between which values each lies: the point is solved again with the supply at its weakest and at its
 * strongest by what the house rules leave open.
 */
export function bandedDrops(
  network: NetworkInput,
  points: readonly OperatingPoint[],
  solved: SolvedPoints,
): DeviceDrop[] {
  return points.flatMap((point) => {
    const drops = deviceDrops(network, point);
    const definition = operatingPoints.find(({ name, ...more }) => name === point.name && 'reach' in more);
    const ends = definition ? (['weak', 'strong'] as const).map((end) => solved(definition, end)) : [];
    const atEnds = ends.map((end) => (end.state === 'no-solution' ? null : deviceDrops(network, end)));
    return drops.map((drop): DeviceDrop => {
      const load = point.elements.find(({ kind, of }) => kind === 'load' && of === drop.item);
      const others = atEnds.map((all) => all?.find(({ item }) => item === drop.item));
      return {
        ...drop,
        ...(load?.currentA !== undefined && { currentA: load.currentA }),
        ...(others.length > 0 &&
          others.every((one) => one !== undefined) && { bands: bandsOf([drop, ...others]) }),
      };
    });
  });
}

function bandsOf(drops: readonly (DeviceDrop | undefined)[]): NonNullable<DeviceDrop['bands']> {
  const band = (read: (drop: DeviceDrop) => number | null): Band => {
    const values = drops.flatMap((drop) => (drop ? (read(drop) ?? []) : []));
    return values.length === 0 ? null : { from: Math.min(...values), to: Math.max(...values) };
  };
  return {
    voltageV: band(({ voltageV }) => voltageV),
    feedDropV: band(({ feedDropV }) => feedDropV),
    groundDropV: band(({ groundDropV }) => groundDropV),
  };
}
