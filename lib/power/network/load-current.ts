import { type Fault, faultOf, negativeFault, positiveFault } from '../../model/fault.ts';
import { commonPractice, type Mark, type Traced, traced } from '../../model/trace.ts';
import type { SupplyType } from '../../model/vocabulary.ts';
import type { Load } from './network-types.ts';

/** Output power over input power at full power and at one-eighth of it; idle current (A). */
export interface Efficiency {
  readonly full: number;
  readonly eighth: number;
  readonly idleA: number;
  /** What it draws at one-eighth of its rated output, at the voltage of its rating, where its maker tells it (A). */
  readonly eighthA?: number;
}

/** What the current of an amplifier depends on. */
export interface AmplifierSupply {
  /** The fuses on its own panel, or its maker's total (A). */
  readonly fusesA: readonly number[];
  /** Rated output of all channels together (W), at `ratedV`. */
  readonly ratedPowerW: number;
  /** Voltage of the rating (V). */
  readonly ratedV: number;
  readonly efficiency: Efficiency;
  readonly supply: SupplyType;
  /** Its average output with music, as a share of its rated output. */
  readonly musicDuty: number;
}

/** Current (A) of a device at the voltage asked for. */
export interface DeviceCurrents {
  readonly fullRatingA: Traced<number>;
  readonly ratedPowerA: Traced<number>;
  readonly musicA: Traced<number>;
}

/** The power that the supply still gives at a voltage, against that at its rating. */
export function powerShare(supply: SupplyType, voltageV: number, ratedV: number): number {
  const ratio = voltageV / ratedV;
  const shares: Record<SupplyType, number> = {
    regulated: 1,
    'constant-current': ratio,
    unregulated: ratio * ratio,
    resistance: ratio * ratio,
  };
  return shares[supply];
}

/**
 * Current of an amplifier (A) at a voltage at its terminals, three ways: at full rating, the sum of its fuses; at
 * rated power, I = P * k / (eta * V); with music, I = duty * P * k / (eta(duty) * V), never under the idle current.
 * k is the share of power left at V: 1 regulated, V/Vr constant current, (V/Vr)^2 unregulated. The efficiency lies
 * on a straight line between the figures at one-eighth and at full power; at one-eighth it follows from the maker's
 * current there where that is told, eta = P / 8 / (Vr * I), at most that at full power. Efficiencies and duties: common
 * practice.
 * Fault on a power, fuse or voltage below zero, or an efficiency outside 0 to 1.
 */
export function amplifierCurrents(amplifier: AmplifierSupply, voltageV: number): DeviceCurrents | Fault {
  const { ratedPowerW, fusesA, supply, musicDuty: duty, ratedV } = amplifier;
  const efficiency = measured(amplifier);
  const bad =
    positiveFault({
      voltage: voltageV,
      'rated voltage': ratedV,
      efficiency: efficiency.full,
      'efficiency at one-eighth': efficiency.eighth,
    }) ?? negativeFault({ 'rated power': ratedPowerW, 'fuse sum': fusesA.reduce((a, b) => a + b, 0) });
  if (bad) return bad;
  if (efficiency.full > 1 || efficiency.eighth > 1)
    return faultOf(
      'efficiency-above-one',
      ['efficiency'],
      'an efficiency is above 100 %',
      'correct the efficiency in the part, or in the house rules',
    );
  const share = powerShare(supply, voltageV, ratedV);
  const mark: Mark = 'cp';
  const common = { citation: commonPractice, mark };
  const at = (part: number, eta: number, rule: string): Traced<number> =>
    traced(Math.max((part * ratedPowerW * share) / (eta * voltageV), part < 1 ? efficiency.idleA : 0), 'A', {
      ...common,
      rule,
      formula: part < 1 ? 'I = d * P * k / (eta * V), at least Iidle' : 'I = d * P * k / (eta * V)',
      inputs: [
        ['d', part, ''],
        ['P', ratedPowerW, 'W'],
        ['k', share, ''],
        ['eta', eta, ''],
        ['V', voltageV, 'V'],
        ['Iidle', efficiency.idleA, 'A'],
      ],
    });
  return {
    fullRatingA: fuseSum(fusesA),
    ratedPowerA: at(1, efficiency.full, 'current-rated-power'),
    musicA: at(duty, efficiencyAt(efficiency, duty), 'current-music'),
  };
}

/** Its efficiencies, that at one-eighth by what its maker measured it to draw there. */
function measured({ ratedPowerW, ratedV, efficiency }: AmplifierSupply): Efficiency {
  const { full, eighthA } = efficiency;
  if (eighthA === undefined || !(eighthA > 0) || !(ratedPowerW > 0) || !(ratedV > 0)) return efficiency;
  return { ...efficiency, eighth: Math.min(full, ratedPowerW / 8 / (ratedV * eighthA)) };
}

/** The straight line through the efficiencies at one-eighth and at full power; level below one-eighth. */
function efficiencyAt({ full, eighth }: Efficiency, duty: number): number {
  return eighth + (full - eighth) * Math.max(0, (duty - 1 / 8) / (7 / 8));
}

/** Current at full rating (A): the sum of a device's fuses. Common practice, no source. */
export function fuseSum(fusesA: readonly number[]): Traced<number> {
  return traced(
    fusesA.reduce((sum, fuseA) => sum + fuseA, 0),
    'A',
    {
      rule: 'current-full-rating',
      formula: fusesA.map((_, k) => `F${k + 1}`).join(' + ') || '0',
      citation: commonPractice,
      mark: 'cp',
      inputs: fusesA.map((fuseA, k) => [`F${k + 1}`, fuseA, 'A'] as const),
    },
  );
}

/**
 * The network's load for a device that takes `currentA` at `voltageV`: constant power, square law, constant current
 * or resistance by its supply type, with its cut-out. A device that takes nothing has none: null.
 */
export function loadElement(device: {
  readonly id: string;
  readonly of?: string;
  readonly from: string;
  readonly to: string;
  readonly supply: SupplyType;
  readonly currentA: number;
  readonly voltageV: number;
  readonly cutoutV?: number;
}): Load | null {
  const { id, of, from, to, supply, currentA, voltageV, cutoutV } = device;
  if (!(currentA > 0) || !(voltageV > 0)) return null;
  const common = {
    id,
    from,
    to,
    kind: 'load',
    ...(of !== undefined && { of }),
    ...(cutoutV !== undefined && { cutoutV }),
  } as const;
  const powerW = currentA * voltageV;
  const loads: Record<SupplyType, Load> = {
    regulated: { ...common, model: 'power', powerW },
    unregulated: { ...common, model: 'square-law', powerW, ratedV: voltageV },
    'constant-current': { ...common, model: 'current', givenA: currentA },
    resistance: { ...common, model: 'resistance', ohm: voltageV / currentA },
  };
  return loads[supply];
}
