import type { Job } from '../../../model/content/resolved-job.ts';
import { continuousPoints, type NetworkInput, operatingPoints, solvePoint } from '../operating-points.ts';

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

/** How many attempts of each device came to nothing. */
export type Tried = Map<string, number>;

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
  const mayBuy = isLimitOwn(network.job) || dark().has(item);
  let at = (tried.get(item) ?? 0) + 1;
  for (let next = attempts[at]; next?.goal === 'limit' && next.offShelf && !mayBuy; next = attempts[at])
    at += 1;
  tried.set(item, at);
}

/** True where the shop wrote a limit of drops itself. */
export function isLimitOwn({ rules }: Pick<Job, 'rules'>): boolean {
  return rules['drop-limit'].given || rules['ground-drop-limit'].given;
}

/** The devices that drop out at their low-voltage cut-out, or can't be fed, at a point that music comes to. */
export function notRunning(network: NetworkInput): ReadonlySet<string> {
  const played = operatingPoints.filter(({ name }) => continuousPoints.includes(name));
  return new Set(
    played.flatMap((definition) => {
      const { state, elements } = solvePoint(network, definition);
      return elements
        .filter(({ kind }) => kind === 'load')
        .filter(({ dropV, cutoutV }) => state === 'no-solution' || (dropV ?? 0) < (cutoutV ?? 0))
        .map(({ of }) => of);
    }),
  );
}
