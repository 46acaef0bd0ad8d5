import { type Fault, isFault, negativeFault } from '../model/fault.ts';
import { commonPractice, type Mark, type Traced, traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';
import { type Recharge, recharges } from './recharge.ts';
import { type Reserve, reserveMinutes } from './reserve.ts';

/** A battery with the current that it takes up, below zero while it gives (A). */
export interface BatteryFlow extends Reserve {
  readonly id: string;
  readonly currentA: number;
  /** What it gives with the engine off and music; none of one that a contact or a charger spares. */
  readonly drainA: number;
  /** False for one behind a charger: it does not share in the balance of the alternator. */
  readonly shares: boolean;
}

/** What flows in one regime, as the network was solved there. Currents in A. */
export interface RegimeFlows {
  /** The limit of each alternator by its name: its rating and the share of it that it gives hot. None with the engine off. */
  readonly alternators: Readonly<Record<string, { readonly ratingA: number; readonly share: number }>>;
  readonly vehicleA: number;
  /** True where the load of the vehicle was not measured. */
  readonly vehicleAssumed: boolean;
  /** What each device draws with music at the voltage that it gets. */
  readonly devicesA: Readonly<Record<string, number>>;
  readonly batteries: readonly BatteryFlow[];
}

/** The balance of one regime. */
export interface ChargingRegime {
  readonly alternatorA: Traced<number>;
  readonly vehicleA: Traced<number>;
  readonly averageA: Traced<number>;
  /** What the alternator has left; below zero what the batteries give. */
  readonly marginA: Traced<number>;
  /** What the batteries take up together; below zero they give (A). */
  readonly batteryA: Traced<number>;
  /** Until the first battery is at half charge; null where none gives. */
  readonly reserveMinutes: Traced<number> | null;
  /** How long each battery that was drained with the engine off is charged again. */
  readonly recharges: readonly Recharge[];
  /** Until the last of them is; null where none was drained, or one takes nothing up. */
  readonly rechargeMinutes: Traced<number> | null;
}

/** A current under this is none. */
const noA = 1e-6;

/**
 * The balance of one regime from what flows in it: the hot output of all alternators less vehicle and devices, and what
 * each battery gives or takes up. While the batteries give, the margin is what they give: a regulator that holds less
 * than their own voltage leaves them to, whatever it could. Fault on a negative or missing number.
 */
export function chargingRegime(
  { alternators, vehicleA, vehicleAssumed, devicesA, batteries }: RegimeFlows,
  rules: PowerRules,
): ChargingRegime | Fault {
  const bad = flowFault(alternators, devicesA, vehicleA);
  if (bad) return bad;
  const outputA = Object.values(alternators).reduce((sum, { ratingA, share }) => sum + ratingA * share, 0);
  const averageA = Object.values(devicesA).reduce((sum, currentA) => sum + currentA, 0);
  const taken = takenUp(batteries);
  const reserve = reserveOf(batteries, rules);
  const again = recharges(batteries, rules);
  if (reserve && 'fault' in reserve) return reserve;
  if (isFault(again)) return again;
  return {
    alternatorA: output(alternators, outputA),
    vehicleA: vehicleLoad(vehicleA, vehicleAssumed),
    averageA: traced(averageA, 'A', {
      rule: 'charging-average',
      formula: 'the sum of what the devices draw with music, at the voltage that they get',
      citation: 'the solved network',
      inputs: Object.entries(devicesA).map(([id, currentA]) => [id, currentA, 'A'] as const),
    }),
    marginA: taken.valueA < -noA ? taken.as('charging-margin') : margin(outputA, vehicleA, averageA),
    batteryA: taken.as('charging-batteries'),
    reserveMinutes: reserve,
    recharges: again,
    rechargeMinutes: lastOf(again),
  };
}

/** The first number that is negative or missing. */
function flowFault(
  alternators: RegimeFlows['alternators'],
  devicesA: RegimeFlows['devicesA'],
  vehicleA: number,
): Fault | null {
  const limits = Object.entries(alternators).flatMap(([id, { ratingA, share }]) => [
    [id, ratingA],
    [`share of ${id}`, share],
  ]);
  return negativeFault({ ...Object.fromEntries(limits), ...devicesA, 'vehicle current': vehicleA });
}

/** What the batteries that share in the balance take up together, with its working under either name. */
function takenUp(batteries: readonly BatteryFlow[]) {
  const sharing = batteries.filter(({ shares }) => shares);
  const valueA = sharing.reduce((sum, { currentA }) => sum + currentA, 0);
  const as = (rule: string): Traced<number> =>
    traced(valueA, 'A', {
      rule,
      formula: 'the sum of what the batteries take up; below zero they give',
      citation: 'the solved network',
      inputs: sharing.map(({ id, currentA }) => [id, currentA, 'A'] as const),
    });
  return { valueA, as };
}

/** Until the first battery that gives is at the end of its reserve; null where none gives. */
function reserveOf(batteries: readonly BatteryFlow[], rules: PowerRules) {
  const giving = batteries.filter(({ currentA }) => currentA < -noA);
  return worst(
    giving.map((one) => reserveMinutes(one, -one.currentA, rules)),
    Math.min,
  );
}

/** Until the last battery that was drained is charged again; null where none was, or one takes nothing up. */
function lastOf(all: readonly Recharge[]): Traced<number> | null {
  return all.reduce<Traced<number> | null>((last, { minutes }, k) => {
    if (k === 0) return minutes;
    return last && minutes && (minutes.value > last.value ? minutes : last);
  }, null);
}

/** The first of times that is the one picked of all; null where there is none. */
function worst(
  all: readonly (Traced<number> | Fault)[],
  pick: (a: number, b: number) => number,
): Traced<number> | Fault | null {
  return all.reduce<Traced<number> | Fault | null>((found, one) => {
    if (!found || 'fault' in one) return one;
    return 'fault' in found || pick(found.value, one.value) === found.value ? found : one;
  }, null);
}

const practice = (rule: string): { rule: string; citation: string; mark: Mark } => ({
  rule,
  citation: commonPractice,
  mark: 'cp',
});

function output(alternators: RegimeFlows['alternators'], outputA: number): Traced<number> {
  const all = Object.entries(alternators);
  return traced(outputA, 'A', {
    ...practice('charging-output'),
    formula: all.map(([id]) => `${id} * share of ${id}`).join(' + ') || '0: the engine is off',
    inputs: all.flatMap(([id, { ratingA, share }]) => [
      [id, ratingA, 'A'] as const,
      [`share of ${id}`, share, ''] as const,
    ]),
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
