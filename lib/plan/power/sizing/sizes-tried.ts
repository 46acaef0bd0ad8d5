import type { OperatingPoint } from '../../../model/plan/index.ts';
import { type NetworkInput, operatingPoints, solvePoint } from '../operating-points.ts';
import { notRunning } from './growth-attempts.ts';
import type { LeastSizesHeld } from './least-sizes.ts';
import type { PowerSizing } from './power-sizing.ts';
import { type SizedPower, sizePower } from './size-power.ts';

/** What certain least sizes come to: the sizes, the network that they make, and what it gives at rated power. */
export interface Trial {
  readonly sized: SizedPower;
  readonly network: NetworkInput;
  readonly point: OperatingPoint;
  /** The devices that do not run with them. */
  readonly dark: () => ReadonlySet<string>;
}

/**
 * What each set of least sizes came to while conductors grow: each attempt begins with nothing grown and comes by what
 * those before it tried.
 */
export class SizesTried {
  readonly #known = new Map<string, { readonly trial: Trial; readonly held: LeastSizesHeld }>();

  /** Sizes from the least sizes of a sizing, which grow by it as `sizePower` has them grow. */
  at(sizing: PowerSizing): Trial {
    const key = keyOf(sizing.least.held());
    const known = this.#known.get(key);
    if (known) {
      sizing.least.adopt(known.held);
      return known.trial;
    }
    const sized = sizePower(sizing);
    const network: NetworkInput = { ...sizing, ...sized };
    const point = solvePoint(network, operatingPoints[0]);
    let dark: ReadonlySet<string> | null = null;
    const trial: Trial = {
      sized,
      network,
      point,
      dark: () => {
        dark ??= notRunning(network, point);
        return dark;
      },
    };
    this.#known.set(key, { trial, held: sizing.least.held() });
    return trial;
  }
}

function keyOf({ sizes, flowsA }: LeastSizesHeld): string {
  return JSON.stringify([[...sizes], [...flowsA]]);
}

/** The conductors that no reel on the shelf has in one piece. */
export function notOnShelf({ conductors }: SizedPower): ReadonlySet<string> {
  return new Set(
    [...conductors].flatMap(([id, { remarks }]) =>
      remarks.some(({ rule }) => rule === 'conductor-not-on-shelf') ? [id] : [],
    ),
  );
}

/** What each conductor drops at a point (V), by its id. */
export function conductorDrops({ elements }: OperatingPoint): (id: string) => number {
  const dropV = new Map(
    elements.map(({ of, kind, dropV: drop, ohm }) => [
      kind === 'conductor' ? of : '',
      Math.abs(drop ?? ohm ?? 0),
    ]),
  );
  return (id) => dropV.get(id) ?? 0;
}
