import type { Mark, Traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';
import { commonPractice, negativeFault, type PowerFault, positiveFault, traced } from './traced.ts';

/** The capacity of a battery. */
export interface Reserve {
  readonly capacityAh: number;
  /** The hours over which the capacity is rated; 20 unless the maker says otherwise. */
  readonly ratedHours?: number;
  /** Peukert exponent, by its chemistry. */
  readonly exponent: number;
  /** Charge at which its reserve ends, as a share; that of the house rules where left out. */
  readonly reserveEnd?: number;
}

/**
 * Minutes that a battery carries a current until the share of charge at which its reserve ends: Peukert's
 * law, t = H * (C / (I * H))^k * (1 - share), exponent by chemistry (common practice); a current under C / H gains
 * nothing on the rated capacity (k counts as 1). Rounded down. Fault where current or capacity is not above zero.
 */
export function reserveMinutes(
  battery: Reserve,
  currentA: number,
  rules: PowerRules,
): Traced<number> | PowerFault {
  const { capacityAh, ratedHours = 20, exponent } = battery;
  const bad = positiveFault({ current: currentA, capacity: capacityAh, 'rated hours': ratedHours, exponent });
  if (bad) return bad;
  const ratio = capacityAh / (currentA * ratedHours);
  const k = ratio > 1 ? 1 : Math.max(1, exponent);
  const share = battery.reserveEnd ?? rules.reserveShare;
  const minutes = 60 * ratedHours * ratio ** k * (1 - share);
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
      ['s', share, ''],
    ],
  });
}

/**
 * Minutes until a battery that gave its reserve is charged again at a current that it takes up: t = 60 * C * (1 - s) /
 * (e * I), e the charge that it gives back of what it takes up (common practice). A battery that is run down takes up
 * more than this at first, so that it is the longest that it takes. Rounded up. Fault where a number is not above zero.
 */
export function rechargeMinutes(
  { capacityAh, reserveEnd }: Pick<Reserve, 'capacityAh' | 'reserveEnd'>,
  currentA: number,
  rules: PowerRules,
): Traced<number> | PowerFault {
  const { chargeEfficiency } = rules;
  const share = reserveEnd ?? rules.reserveShare;
  const bad = positiveFault({
    current: currentA,
    capacity: capacityAh,
    'charge efficiency': chargeEfficiency,
  });
  if (bad) return bad;
  const minutes = (60 * capacityAh * (1 - share)) / (chargeEfficiency * currentA);
  return traced(Math.ceil(minutes - 1e-9), 'min', {
    ...practice('charging-recharge'),
    formula: 't = 60 * C * (1 - s) / (e * I), rounded up',
    inputs: [
      ['C', capacityAh, 'Ah'],
      ['s', share, ''],
      ['e', chargeEfficiency, ''],
      ['I', currentA, 'A'],
    ],
  });
}

/** A battery with the current that it takes up, below zero while it gives (A). */
export interface BatteryFlow extends Reserve {
  readonly id: string;
  readonly currentA: number;
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
  /** Until all batteries are charged again after their reserve; null where one of them takes nothing up. */
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
): ChargingRegime | PowerFault {
  const bad = flowFault(alternators, devicesA, vehicleA);
  if (bad) return bad;
  const outputA = Object.values(alternators).reduce((sum, { ratingA, share }) => sum + ratingA * share, 0);
  const averageA = Object.values(devicesA).reduce((sum, currentA) => sum + currentA, 0);
  const taken = takenUp(batteries);
  const reserve = reserveOf(batteries, rules);
  const recharge = rechargeOf(batteries, rules);
  if (reserve && 'fault' in reserve) return reserve;
  if (recharge && 'fault' in recharge) return recharge;
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
    rechargeMinutes: recharge,
  };
}

/** The first number that is negative or missing. */
function flowFault(
  alternators: RegimeFlows['alternators'],
  devicesA: RegimeFlows['devicesA'],
  vehicleA: number,
): PowerFault | null {
  const limits = Object.entries(alternators).flatMap(([id, { ratingA, share }]) => [
    [id, ratingA],
    [`share of ${id}`, share],
  ]);
  return negativeFault({ ...Object.fromEntries(limits), ...devicesA, 'vehicle current': vehicleA });
}

/** What the batteries that share in the balance take up together, with its working under either name. */
function takenUp(batteries: readonly BatteryFlow[]) {
  const valueA = batteries.reduce((sum, { currentA, shares }) => (shares ? sum + currentA : sum), 0);
  const as = (rule: string): Traced<number> =>
    traced(valueA, 'A', {
      rule,
      formula: 'the sum of what the batteries take up; below zero they give',
      citation: 'the solved network',
      inputs: batteries.map(({ id, currentA }) => [id, currentA, 'A'] as const),
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

/** Until the last battery is charged again; null where one takes nothing up. */
function rechargeOf(batteries: readonly BatteryFlow[], rules: PowerRules) {
  if (batteries.length === 0 || batteries.some(({ currentA }) => currentA <= noA)) return null;
  return worst(
    batteries.map((one) => rechargeMinutes(one, one.currentA, rules)),
    Math.max,
  );
}

/** The first of times that is the one picked of all; null where there is none. */
function worst(
  all: readonly (Traced<number> | PowerFault)[],
  pick: (a: number, b: number) => number,
): Traced<number> | PowerFault | null {
  return all.reduce<Traced<number> | PowerFault | null>((found, one) => {
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

/** Current drawn with everything switched off (A), as a sum by device, against the limit of the house rules (50 mA). */
export function keyOffDraw(
  drawsA: Readonly<Record<string, number>>,
  rules: PowerRules,
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
