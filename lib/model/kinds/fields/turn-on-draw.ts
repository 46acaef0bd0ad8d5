import type { HouseRules } from '../../house-rules.ts';
import type { Part } from '../index.ts';

/** What a turn-on terminal draws, and whether the part tells it or the house rules do. */
export interface TurnOnDraw {
  readonly currentA: number;
  readonly isAssumed: boolean;
}

/**
 * What the turn-on terminal of a device draws, the coil of a relay, or a fan, all of whose current comes through it (A). Where its maker is silent, the house rules
 * hold. Null for a part that has neither.
 */
export function turnOnDrawOf(part: Part | null, rules: Pick<HouseRules, 'turn-on-draw'>): TurnOnDraw | null {
  switch (part?.kind) {
    case 'relay':
    case 'isolating-relay':
      return part['coil-current'] === undefined ? null : told(part['coil-current']);
    case 'fan':
      return told(part.draw);
    case 'charger':
      return toldOr(part.input['turn-on-draw'], rules);
    case 'amplifier':
    case 'processor':
    case 'source-unit':
      return toldOr(part.supply['turn-on-draw'], rules);
    default:
      return null;
  }
}

function told(currentA: number): TurnOnDraw {
  return { currentA, isAssumed: false };
}

function toldOr(currentA: number | undefined, rules: Pick<HouseRules, 'turn-on-draw'>): TurnOnDraw {
  return currentA === undefined ? { currentA: rules['turn-on-draw'].value, isAssumed: true } : told(currentA);
}
