import type { Job } from '../../../model/content/resolved-job.ts';
import type { OperatingPoint } from '../../../model/plan/index.ts';
import {
  continuousPoints,
  type NetworkInput,
  operatingPoints,
  type PointDefinition,
  solvePoint,
} from '../operating-points.ts';
import type { Tried } from './least-sizes.ts';

/** What the way of a device may grow by, and what for. */
export interface Attempt {
  /** Its drop limits, or that it runs at all: what it does not reach its limits by it may need for that. */
  readonly goal: 'limit' | 'run';
  /** True where sizes are taken that no reel on the shelf has in one piece. */
  readonly offShelf: boolean;
}

/** The attempts of every device in turn, sizes from the shelf first. Past the last of them nothing grows for it. */
export const attempts: readonly Attempt[] = (['limit', 'run'] as const).flatMap((goal) =>
  [false, true].map((offShelf) => ({ goal, offShelf })),
);

/** The attempt that a device is at; none once all came to nothing. */
export function attemptOf(tried: Tried, item: string): Attempt | undefined {
  return attempts[tried.get(item) ?? 0];
}

/**
 * Goes on to the next attempt of a device. A drop is a caution: for its limit nothing is bought that the shop does not
 * have, unless the device would not run otherwise or the shop wrote the limit itself.
 */
export function nextAttempt(
  tried: Tried,
  item: string,
  { network, dark }: { readonly network: NetworkInput; readonly dark: () => ReadonlySet<string> },
): void {
  const at = (tried.get(item) ?? 0) + 1;
  const buys = attempts[at]?.goal === 'limit' && attempts[at].offShelf;
  // Whether it runs is asked last: it takes solving every point that music comes to.
  const mayBuy = !buys || isLimitOwn(network.job) || dark().has(item);
  tried.set(item, mayBuy ? at : at + 1);
}

/** True where the shop wrote a limit of drops itself. */
export function isLimitOwn({ rules }: Pick<Job, 'rules'>): boolean {
  return rules['drop-limit'].given || rules['ground-drop-limit'].given;
}

/**
 * The devices that drop out at their low-voltage cut-out, or cannot be fed, at a point that music comes to. What the
 * network gives at rated power may be known already.
 */
export function notRunning(
  network: NetworkInput,
  rated: OperatingPoint = solvePoint(network, operatingPoints[0]),
): ReadonlySet<string> {
  const solved = hardestPoints(network).map((definition) =>
    definition.name === rated.name ? rated : solvePoint(network, definition),
  );
  return new Set(
    solved.flatMap(({ state, elements }) =>
      elements
        .filter(({ kind }) => kind === 'load')
        .filter(({ dropV, cutoutV }) => state === 'no-solution' || (dropV ?? 0) < (cutoutV ?? 0))
        .map(({ of }) => of),
    ),
  );
}

/**
 * The points that music comes to, without those at which the same alternator and a battery no weaker feed loads no
 * greater than at another: no voltage of the network is lower there. Of two that ask the same the earlier stays.
 */
export function hardestPoints({
  job,
  loads,
}: Pick<NetworkInput, 'job' | 'loads'>): readonly PointDefinition[] {
  const played: readonly PointDefinition[] = operatingPoints.filter(({ name }) =>
    continuousPoints.includes(name),
  );
  const isNoHarder = (point: PointDefinition, than: PointDefinition): boolean =>
    point.alternator === than.alternator &&
    job.rules[point.battery].value >= job.rules[than.battery].value &&
    loads.every((load) => point.currentA(load) <= than.currentA(load));
  return played.reduce<readonly PointDefinition[]>((hardest, point) => {
    if (hardest.some((than) => isNoHarder(point, than))) return hardest;
    return [...hardest.filter((one) => !isNoHarder(one, point)), point];
  }, []);
}
