import { type Fault, positiveFault } from '../model/fault.ts';
import type { Traced } from '../model/trace.ts';
import { traced } from '../model/trace.ts';
import type { PowerRules } from './power-rules.ts';

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
): Traced<number> | Fault {
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
