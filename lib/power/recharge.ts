import { type Fault, isFault, positiveFault } from '../model/fault.ts';
import type { Traced } from '../model/trace.ts';
import { commonPractice, traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';
import { type Reserve, reserveMinutes } from './reserve.ts';

/** A current under this is none (A). */
const noA = 1e-6;

/**
 * Minutes until a battery that gave a part of its reserve is charged again at a current that it takes up:
 * t = 60 * C * (1 - s) * d / (e * I), d the part of its reserve that it gave, e the charge that it gives back of what it
 * takes up (common practice). A battery that is run down takes up more than this at first, so that it is the longest
 * that it takes. Rounded up. Fault where a number is not above zero.
 */
export function rechargeMinutes(
  { capacityAh, reserveEnd }: Pick<Reserve, 'capacityAh' | 'reserveEnd'>,
  currentA: number,
  rules: PowerRules,
  given = 1,
): Traced<number> | Fault {
  const { chargeEfficiency } = rules;
  const share = reserveEnd ?? rules.reserveShare;
  const bad = positiveFault({
    current: currentA,
    capacity: capacityAh,
    'charge efficiency': chargeEfficiency,
    'part of the reserve': given,
  });
  if (bad) return bad;
  const minutes = (60 * capacityAh * (1 - share) * given) / (chargeEfficiency * currentA);
  return traced(Math.ceil(minutes - 1e-9), 'min', {
    rule: 'charging-recharge',
    citation: commonPractice,
    mark: 'cp',
    formula: 't = 60 * C * (1 - s) * d / (e * I), rounded up',
    inputs: [
      ['C', capacityAh, 'Ah'],
      ['s', share, ''],
      ['d', given, ''],
      ['e', chargeEfficiency, ''],
      ['I', currentA, 'A'],
    ],
  });
}

/** A battery as it is drained with the engine off, and charged in a regime. */
export interface DrainedBattery extends Reserve {
  readonly id: string;
  /** What it takes up in the regime, below zero while it gives (A). */
  readonly currentA: number;
  /** What it gives with the engine off and music (A); none of one that a contact or a charger spares. */
  readonly drainA: number;
}

/** How long one battery is charged after the reserve; null where it takes nothing up in the regime. */
export interface Recharge {
  readonly id: string;
  readonly minutes: Traced<number> | null;
}

/**
 * How long each battery is charged again that was drained with the engine off, until the first of them was at the end of
 * its reserve: that one gave all of it, any other the part that its own time allows. One that gave nothing is not told.
 */
export function recharges(batteries: readonly DrainedBattery[], rules: PowerRules): Recharge[] | Fault {
  const drained = batteries.filter(({ drainA }) => drainA > noA);
  const times: number[] = [];
  for (const battery of drained) {
    const time = reserveMinutes(battery, battery.drainA, rules);
    if (isFault(time)) return time;
    times.push(time.value);
  }
  const firstMin = Math.min(...times);
  const all: Recharge[] = [];
  for (const [k, battery] of drained.entries()) {
    const ownMin = times[k] ?? 0;
    const given = ownMin > 0 ? Math.min(1, firstMin / ownMin) : 1;
    const { id, currentA } = battery;
    if (given <= 0) continue;
    if (currentA <= noA) {
      all.push({ id, minutes: null });
      continue;
    }
    const minutes = rechargeMinutes(battery, currentA, rules, given);
    if (isFault(minutes)) return minutes;
    all.push({ id, minutes });
  }
  return all;
}
