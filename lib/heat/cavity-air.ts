import { type Traced, traced } from '../model/trace.ts';
import { airHeatCapacity, type Opening, openingFlow } from './air-flow.ts';

/** A cavity with what is on in it. */
export interface WarmCavity {
  /** Heat of everything in it, W. */
  readonly lossW: number;
  /** Air outside it, C. */
  readonly outsideC: number;
  /** Effective cooling surface, m2, and what a square metre of it passes, W/(m2 K). */
  readonly surfaceM2: number;
  readonly passesWM2K: number;
  /** What a fan moves through it, m3/s. */
  readonly fanM3S: number;
  readonly openings: readonly Opening[];
}

/** How warm the air of a cavity gets, and what of the heat leaves which way. */
export interface CavityAir {
  readonly airC: Traced<number>;
  readonly riseK: number;
  /** Through the walls, with the fan, through the openings, W; together the loss. */
  readonly wallsW: number;
  readonly fanW: number;
  readonly openingsW: number;
}

const source =
  'heat balance of an enclosure, P = k A dT (VDE 0660 part 500); air flow P = rho c V dT; openings: CIBSE Guide A, quoted from memory';

/** Heat that leaves a cavity at a rise over the air outside, W, by its three ways. */
function leaving(cavity: WarmCavity, riseK: number): Pick<CavityAir, 'wallsW' | 'fanW' | 'openingsW'> {
  const { outsideC, surfaceM2, passesWM2K, fanM3S, openings } = cavity;
  // Air leaves at the temperature inside; by its density there a fan carries least.
  const carries = airHeatCapacity(outsideC + riseK);
  const openM3S = openings.reduce((sum, opening) => sum + openingFlow(opening, riseK, outsideC), 0);
  return {
    wallsW: passesWM2K * surfaceM2 * riseK,
    fanW: carries * fanM3S * riseK,
    openingsW: carries * openM3S * riseK,
  };
}

/**
 * Temperature of the air in a cavity once nothing changes any more, C: all heat of the devices leaves through the walls,
 * with a fan and through openings, P = (k A + rho c (V_fan + V_openings)) dT. Solved by halving; the safe end counts.
 * Surface and what it passes must be above 0.
 */
export function cavityAir(cavity: WarmCavity): CavityAir {
  const { lossW, outsideC, surfaceM2, passesWM2K, fanM3S, openings } = cavity;
  let [low, high] = [0, lossW / (passesWM2K * surfaceM2)];
  for (let pass = 0; pass < 60; pass += 1) {
    const middle = (low + high) / 2;
    const { wallsW, fanW, openingsW } = leaving(cavity, middle);
    if (wallsW + fanW + openingsW < lossW) low = middle;
    else high = middle;
  }
  const value = outsideC + high;
  const openingsM3S = openings.reduce((sum, opening) => sum + openingFlow(opening, high, outsideC), 0);
  return {
    airC: traced(value, 'C', {
      rule: 'cavity-air',
      formula: 'Tout + dT, P = (k A + rho c (Vfan + Vopenings)) dT',
      citation: source,
      mark: 'mem',
      inputs: [
        ['P', lossW, 'W'],
        ['Tout', outsideC, 'C'],
        ['k', passesWM2K, 'W/(m2 K)'],
        ['A', surfaceM2, 'm2'],
        ['Vfan', fanM3S, 'm3/s'],
        ['Vopenings', openingsM3S, 'm3/s'],
        ['dT', high, 'K'],
      ],
    }),
    riseK: high,
    ...leaving(cavity, high),
  };
}

/** What a fan would have to move, m3/s, for a cavity to stay at a rise, beside its walls and openings; 0 for none. */
export function fanFor(cavity: WarmCavity, riseK: number): number {
  if (!(riseK > 0)) return Number.POSITIVE_INFINITY;
  const { wallsW, openingsW } = leaving({ ...cavity, fanM3S: 0 }, riseK);
  const leftW = Math.max(0, cavity.lossW - wallsW - openingsW);
  return leftW / (airHeatCapacity(cavity.outsideC + riseK) * riseK);
}
