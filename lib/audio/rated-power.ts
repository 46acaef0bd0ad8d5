import { type Fault, faultOf, isPositive } from '../model/fault.ts';
import { ohms, ohmsAtLeast } from '../model/printed/told.ts';
import { commonPractice, type Figure, type Mark, type Traced, traced, type Working } from '../model/trace.ts';

/** One line of the maker's ratings: power per channel (bridged: per pair) into a load. */
export interface RatedPower {
  readonly loadOhm: number;
  readonly powerW: number;
}

/**
 * `rated`: published for this load; `between`: bounded by the published loads beside it; `beyond`: bounded
 * from one side only.
 */
export type PowerBasis = 'rated' | 'between' | 'beyond';

export interface PowerAtLoad {
  readonly basis: PowerBasis;
  /** What the amplifier delivers for sure: for gain and level. */
  readonly powerW: Traced<number>;
  /** The most that its ratings allow for: to judge what a coil must bear. */
  readonly greatestPowerW: Traced<number>;
}

export type RatedPowerFault = Fault<
  'load-below-minimum' | 'no-rated-power' | 'rated-power-unclear' | 'load-unknown'
>;

interface Ratings {
  readonly minimumOhm: number;
  readonly rated: readonly RatedPower[];
}

function ratingsFault(
  channel: string,
  loadOhm: number,
  { minimumOhm, rated }: Ratings,
): RatedPowerFault | null {
  if (!isPositive(loadOhm))
    return faultOf(
      'load-unknown',
      [channel],
      `channel ${channel} has no load above 0 ohm`,
      'name its speakers and their wiring',
    );
  if (rated.length === 0)
    return faultOf(
      'no-rated-power',
      [channel],
      `no rated power is known for channel ${channel} in this mode`,
      "add the maker's rated powers to the part",
    );
  const loads = new Set(rated.map((line) => line.loadOhm));
  const clear =
    loads.size === rated.length && rated.every((line) => isPositive(line.loadOhm) && isPositive(line.powerW));
  if (!clear || !isPositive(minimumOhm))
    return faultOf(
      'rated-power-unclear',
      [channel],
      `the ratings for channel ${channel} name a load twice, or a load or power that is not above zero`,
      'write each load once, with the power that the maker publishes for it',
    );
  if (loadOhm < minimumOhm * (1 - 1e-9))
    return faultOf(
      'load-below-minimum',
      [channel],
      `channel ${channel} is loaded with ${ohms(loadOhm)}; the amplifier's minimum in this mode is ${ohmsAtLeast(minimumOhm)}`,
      'wire the coils for a higher load, or use another channel or amplifier',
    );
  return null;
}

const between =
  'for sure: P = max(Vmin^2 / R, Imin^2 * R); at most: P = min(Vmax^2 / R, Imax^2 * R), with V = sqrt(Pn * Rn) and I = sqrt(Pn / Rn) of the published loads on both sides';
const below =
  'for sure: P = P1 * R / R1 (the current of the lowest published load); at most: P = P1 * R1 / R (its voltage)';
const above = 'for sure: P = P2 * R2 / R (the voltage of the highest published load); at most: P = P2';

interface Bounds {
  readonly basis: PowerBasis;
  readonly leastW: number;
  readonly mostW: number;
  readonly formula: string;
  readonly lines: readonly RatedPower[];
}

function boundsBetween(loadOhm: number, low: RatedPower, high: RatedPower): Bounds {
  const voltsSquared = [low.powerW * low.loadOhm, high.powerW * high.loadOhm];
  const amperesSquared = [low.powerW / low.loadOhm, high.powerW / high.loadOhm];
  return {
    basis: 'between',
    leastW: Math.max(Math.min(...voltsSquared) / loadOhm, Math.min(...amperesSquared) * loadOhm),
    mostW: Math.min(Math.max(...voltsSquared) / loadOhm, Math.max(...amperesSquared) * loadOhm),
    formula: between,
    lines: [low, high],
  };
}

const quantityOf = {
  rated: 'power-at-load-rated',
  between: 'power-at-load-between',
  beyond: 'power-at-load-beyond',
} as const satisfies Record<Bounds['basis'], string>;

function bounds(loadOhm: number, rated: readonly RatedPower[]): Bounds | null {
  const exact = rated.find((line) => Math.abs(line.loadOhm - loadOhm) <= 1e-9 * loadOhm);
  if (exact)
    return {
      basis: 'rated',
      leastW: exact.powerW,
      mostW: exact.powerW,
      formula: 'P as published for R',
      lines: [exact],
    };
  const low = rated.findLast((line) => line.loadOhm < loadOhm);
  const high = rated.find((line) => line.loadOhm > loadOhm);
  if (low && high) return boundsBetween(loadOhm, low, high);
  if (high) {
    const [leastW, mostW] = [(high.powerW * loadOhm) / high.loadOhm, (high.powerW * high.loadOhm) / loadOhm];
    return { basis: 'beyond', leastW, mostW, formula: below, lines: [high] };
  }
  if (!low) return null;
  return {
    basis: 'beyond',
    leastW: (low.powerW * low.loadOhm) / loadOhm,
    mostW: low.powerW,
    formula: above,
    lines: [low],
  };
}

/**
 * Power in W of a channel into `loadOhm`, from the maker's ratings. A published load has its published power.
 * Elsewhere the power is bounded, never extrapolated: an amplifier reaches at least the lesser of the
 * voltages, and of the currents, that it reaches at the published loads on both sides, and at most the
 * greater ones. Below the lowest published load (still at or above the minimum) it is sure of that load's
 * current, above the highest of that load's voltage. Below the minimum there is no power:
 * `load-below-minimum`.
 */
export function powerAtLoad(
  channel: string,
  loadOhm: number,
  ratings: Ratings,
): PowerAtLoad | RatedPowerFault {
  const fault = ratingsFault(channel, loadOhm, ratings);
  if (fault) return fault;
  const found = bounds(
    loadOhm,
    ratings.rated.toSorted((a, b) => a.loadOhm - b.loadOhm),
  );
  if (!found) throw new Error('Ratings without a line have a fault.');
  const mark: Mark | undefined = found.basis === 'rated' ? undefined : 'cp';
  const inputs: readonly Figure[] = [
    ['R', loadOhm, 'ohm'],
    ...found.lines.flatMap((line): readonly Figure[] => [
      ['Rn', line.loadOhm, 'ohm'],
      ['Pn', line.powerW, 'W'],
    ]),
  ];
  const working: Working = {
    rule: quantityOf[found.basis],
    formula: found.formula,
    citation:
      found.basis === 'rated'
        ? "the amplifier's data"
        : `the amplifier's data, bounded by Ohm's law; ${commonPractice}`,
    inputs,
    ...(mark ? { mark } : {}),
  };
  return {
    basis: found.basis,
    powerW: traced(found.leastW, 'W', working),
    greatestPowerW: traced(found.mostW, 'W', working),
  };
}
