import { type Fault, faultOf, isPositive } from '../model/fault.ts';
import { type Traced, traced } from '../model/trace.ts';

/** One input that a turn-on lead drives: a device, a relay coil, a fan, a lamp. */
export interface TurnOnLoad {
  readonly item: string;
  /** Null where the part doesn't tell. */
  readonly currentA: number | null;
  /** True where the house rules stand in for its maker. */
  readonly isAssumed?: boolean;
}

/** What drives a turn-on lead: a radio's or processor's output, a relay contact, an ignition feed. */
export interface TurnOnSource {
  readonly source: string;
  /** Null where the part doesn't tell. */
  readonly limitA: number | null;
}

export interface TurnOnSum {
  readonly source: string;
  readonly sumA: Traced<number>;
  readonly limitA: Traced<number>;
  /** Limit less sum; below zero where a relay is needed. */
  readonly marginA: Traced<number>;
  readonly within: boolean;
}

export type TurnOnFault = Fault<'turn-on-load-unknown' | 'turn-on-limit-unknown' | 'turn-on-drives-nothing'>;

function turnOnFault({ source, limitA }: TurnOnSource, loads: readonly TurnOnLoad[]): TurnOnFault | null {
  if (loads.length === 0)
    return faultOf(
      'turn-on-drives-nothing',
      [source],
      `the turn-on output ${source} drives nothing`,
      'connect it to the devices that need it, or leave it open with a reason',
    );
  if (limitA === null || !isPositive(limitA))
    return faultOf(
      'turn-on-limit-unknown',
      [source],
      `the greatest current of the turn-on output ${source} is not known`,
      `write current: of its terminal in its part, from its maker's data, or drive the devices through a fused relay`,
    );
  const unknown = loads.filter(
    ({ currentA }) => currentA === null || !(Number.isFinite(currentA) && currentA >= 0),
  );
  if (unknown.length === 0) return null;
  const items = unknown.map(({ item }) => item);
  return faultOf(
    'turn-on-load-unknown',
    [...items, source],
    `the turn-on current of ${items.join(', ')} is not known`,
    turnOnDrawRemedy,
  );
}

/** Where the draw of a turn-on terminal is written. */
export const turnOnDrawRemedy =
  "write turn-on-draw: under supply: of its part (of a charger under input:), from its maker's data or measured on the bench";

/**
 * Sum of the currents that a turn-on output drives (A) against the greatest it can give. An unknown current
 * or limit is a fault, never a guess. Where `within` is false the remedy is a fused relay with a suppression
 * diode: the relay's coil is then the source's only load, and its contact is a source of its own with the
 * devices as loads.
 */
export function turnOnSum(source: TurnOnSource, loads: readonly TurnOnLoad[]): TurnOnSum | TurnOnFault {
  const fault = turnOnFault(source, loads);
  if (fault) return fault;
  const limitA = source.limitA ?? 0;
  const sumA = loads.reduce((sum, { currentA }) => sum + (currentA ?? 0), 0);
  // Twelve digits: three loads of 0.1 A are 0.3 A.
  const sum = Number(sumA.toPrecision(12));
  return {
    source: source.source,
    sumA: traced(sum, 'A', {
      rule: 'turn-on-sum',
      formula: 'I = sum of the turn-on currents',
      citation: loads.some(({ isAssumed }) => isAssumed === true)
        ? "Kirchhoff's current law; the parts' data; house rule turn-on-draw"
        : "Kirchhoff's current law; the parts' data",
      inputs: loads.map(({ item, currentA }) => [item, currentA ?? 0, 'A']),
    }),
    limitA: traced(limitA, 'A', {
      origin: 'given',
      rule: 'turn-on-limit',
      formula: 'greatest current of the output',
      citation: "the source's data",
      inputs: [],
    }),
    marginA: traced(Number((limitA - sum).toPrecision(12)), 'A', {
      rule: 'turn-on-margin',
      formula: 'margin = limit - I',
      citation: "Kirchhoff's current law",
      inputs: [
        ['limit', limitA, 'A'],
        ['I', sum, 'A'],
      ],
    }),
    within: sum <= limitA,
  };
}
