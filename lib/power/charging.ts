import { type RegimeName, regimeNames } from '../model/operating-points.ts';
import type { Mark, Traced } from '../model/trace.ts';
import { defaultPowerRules, type PowerRules } from './power-rules.ts';
import { commonPractice, negativeFault, type PowerFault, positiveFault, traced } from './traced.ts';

/** Chemistries with a Peukert exponent of their own. */
export type BatteryChemistry = 'flooded' | 'absorbed-glass-mat' | 'lithium';

/** Peukert exponents: common practice, no source. */
export const peukertExponents: Readonly<Record<BatteryChemistry, number>> = {
  flooded: 1.2,
  'absorbed-glass-mat': 1.1,
  lithium: 1.05,
};

/** The capacity of a battery. */
export interface Reserve {
  readonly capacityAh: number;
  /** The hours over which the capacity is rated; 20 unless the maker says otherwise. */
  readonly ratedHours?: number;
  readonly chemistry: BatteryChemistry;
  /** The part's own exponent: goes before that of its chemistry. */
  readonly exponent?: number;
}

/**
 * Minutes that a battery carries a current until the share of charge that the house rules leave (half): Peukert's
 * law, t = H * (C / (I * H))^k * (1 - share), exponent by chemistry (common practice); a current under C / H gains
 * nothing on the rated capacity (k counts as 1). Rounded down. Fault where current or capacity is not above zero.
 */
export function reserveMinutes(
  battery: Reserve,
  currentA: number,
  rules: PowerRules = defaultPowerRules,
): Traced<number> | PowerFault {
  const { capacityAh, ratedHours = 20, chemistry, exponent = peukertExponents[chemistry] } = battery;
  const bad = positiveFault({ current: currentA, capacity: capacityAh, 'rated hours': ratedHours, exponent });
  if (bad) return bad;
  const ratio = capacityAh / (currentA * ratedHours);
  const k = ratio > 1 ? 1 : Math.max(1, exponent);
  const minutes = 60 * ratedHours * ratio ** k * (1 - rules.reserveShare);
  return traced(Math.floor(minutes + 1e-9), 'min', {
    rule: 'charging-reserve',
    formula: 't = 60 * H * (C / (I * H))^k * (1 - s), rounded down',
    citation: "Peukert's law; exponent: common practice, no source",
    mark: 'cp',
    inputs: [
      ['C', capacityAh, 'Ah'],
      ['H', ratedHours, 'h'],
      ['I', currentA, 'A'],
      ['k', k, ''],
      ['s', rules.reserveShare, ''],
    ],
  });
}

/** What the charging balance is made of. Currents in A. */
export interface ChargingInput {
  /** The rating of each alternator by its name; for a converter in its place its limit, with both shares 1. */
  readonly alternatorsA: Readonly<Record<string, number>>;
  /** Hot output over rating, at idle and at cruise: by default the low ends, 0.35 and 0.80 (common practice). */
  readonly hotIdleShare?: number;
  readonly hotCruiseShare?: number;
  /** Current of the vehicle itself with the engine running; by default 60 A, the high end (common practice). */
  readonly vehicleA?: number;
  /** Current of the vehicle with the engine off. */
  readonly vehicleOffA: number;
  /** Current of all added devices with music. */
  readonly averageA: number;
  /** All batteries that are there with the engine off. */
  readonly batteries: readonly Reserve[];
}

/** The balance of one regime. */
export interface ChargingRegime {
  readonly name: RegimeName;
  readonly alternatorA: Traced<number>;
  readonly vehicleA: Traced<number>;
  readonly averageA: number;
  /** What the alternator has left; below zero the batteries pay. */
  readonly marginA: Traced<number>;
  /** Until half charge while the margin is below zero; null where it is not, or where there is no battery. */
  readonly reserveMinutes: Traced<number> | null;
  /** `upgrade`: demand above 80 % of the output. `over`: above all of it. With the engine off always `enough`. */
  readonly verdict: 'enough' | 'upgrade' | 'over';
}

/**
 * Alternator output less vehicle and average audio, at hot idle, at hot cruise and with the engine off, with the
 * minutes that the batteries last where the balance is negative. Batteries side by side share the current by their
 * capacity. Alternators side by side add up. Shares and vehicle load: common practice. Fault on a negative or missing
 * number, and where there is no alternator to balance.
 */
export function chargingRegimes(
  input: ChargingInput,
  rules: PowerRules = defaultPowerRules,
): readonly ChargingRegime[] | PowerFault {
  const { alternatorsA, hotIdleShare = 0.35, hotCruiseShare = 0.8, vehicleA = 60, vehicleOffA } = input;
  const { averageA, batteries } = input;
  const bad = negativeFault({
    ...alternatorsA,
    'hot idle share': hotIdleShare,
    'hot cruise share': hotCruiseShare,
    'vehicle current': vehicleA,
    'vehicle current with the engine off': vehicleOffA,
    'average current': averageA,
  });
  if (bad) return bad;
  if (Object.keys(alternatorsA).length === 0) return { fault: 'no alternator is known' };
  const ratedA = Object.values(alternatorsA).reduce((sum, ratingA) => sum + ratingA, 0);
  const shares = { idle: hotIdleShare, cruise: hotCruiseShare, 'engine-off': 0 };
  const regimes: ChargingRegime[] = [];
  for (const name of regimeNames) {
    const off = name === 'engine-off';
    const vehicle = off ? vehicleOffA : vehicleA;
    const outputA = ratedA * shares[name];
    const marginA = outputA - vehicle - averageA;
    const reserve = marginA < 0 ? sharedReserve(batteries, -marginA, rules) : null;
    if (reserve && 'fault' in reserve) return reserve;
    const demand = vehicle + averageA;
    const strained =
      demand > outputA ? 'over' : demand > rules.chargingShare * outputA ? 'upgrade' : 'enough';
    regimes.push({
      name,
      alternatorA: output(alternatorsA, ratedA, shares[name]),
      vehicleA: vehicleLoad(vehicle, !off && input.vehicleA === undefined),
      averageA,
      marginA: margin(outputA, vehicle, averageA),
      reserveMinutes: reserve,
      verdict: off ? 'enough' : strained,
    });
  }
  return regimes;
}

const practice = (rule: string): { rule: string; citation: string; mark: Mark } => ({
  rule,
  citation: commonPractice,
  mark: 'cp',
});

function output(
  alternatorsA: Readonly<Record<string, number>>,
  ratedA: number,
  share: number,
): Traced<number> {
  const all = Object.entries(alternatorsA);
  const ratings = all.length === 1 ? [['Ir', ratedA] as const] : all;
  const sum = ratings.map(([name]) => name).join(' + ');
  return traced(ratedA * share, 'A', {
    ...practice('charging-output'),
    formula: `Ia = ${all.length === 1 ? sum : `(${sum})`} * s`,
    inputs: [...ratings.map(([name, ratingA]) => [name, ratingA, 'A'] as const), ['s', share, '']],
  });
}

function vehicleLoad(currentA: number, assumed: boolean): Traced<number> {
  return traced(currentA, 'A', { ...practice('charging-vehicle'), origin: assumed ? 'assumed' : 'given' });
}

function margin(outputA: number, vehicleA: number, averageA: number): Traced<number> {
  return traced(outputA - vehicleA - averageA, 'A', {
    rule: 'charging-margin',
    formula: 'M = Ia - Iv - Im',
    citation: 'balance of currents',
    inputs: [
      ['Ia', outputA, 'A'],
      ['Iv', vehicleA, 'A'],
      ['Im', averageA, 'A'],
    ],
  });
}

/** The shortest reserve when batteries share a current by capacity; null where there is none. */
function sharedReserve(
  batteries: readonly Reserve[],
  currentA: number,
  rules: PowerRules,
): Traced<number> | PowerFault | null {
  const allAh = batteries.reduce((sum, { capacityAh }) => sum + capacityAh, 0);
  let least: Traced<number> | null = null;
  for (const battery of batteries) {
    const own = reserveMinutes(battery, (currentA * battery.capacityAh) / allAh, rules);
    if ('fault' in own) return own;
    if (!least || own.value < least.value) least = own;
  }
  return least;
}

/** Current drawn with everything switched off (A), as a sum by device, against the limit of the house rules (50 mA). */
export function keyOffDraw(
  drawsA: Readonly<Record<string, number>>,
  rules: PowerRules = defaultPowerRules,
): { readonly drawA: Traced<number>; readonly limitA: number; readonly over: boolean } | PowerFault {
  const bad = negativeFault(drawsA);
  if (bad) return bad;
  const drawA = traced(
    Object.values(drawsA).reduce((sum, drawn) => sum + drawn, 0),
    'A',
    {
      ...practice('charging-key-off'),
      formula: Object.keys(drawsA).join(' + ') || '0',
      inputs: Object.entries(drawsA).map(([name, drawn]) => [name, drawn, 'A'] as const),
    },
  );
  return { drawA, limitA: rules.keyOffA, over: drawA.value > rules.keyOffA + 1e-12 };
}
