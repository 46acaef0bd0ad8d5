import { isFault } from '../../model/fault.ts';
import { inSystem, systemVoltageOf } from '../../model/system-voltage.ts';
import { powerRules } from '../../power/house-power-rules.ts';
import { interruptNeedA } from '../../power/interrupting.ts';
import { alternatorsOf, varyingCharge } from '../../power/network/varying-charge.ts';
import type { Draft } from '../draft/draft.ts';
import type { DraftDevice } from '../draft/draft-device.ts';

/** What fuses at a lithium battery interrupt, where nobody states what it gives (A). */
const unknownShortA = 20_000;

/** What a battery gives into a dead short at its posts, by its maker (A); of one that nobody states, nothing is asked. */
export function statedShortA({ spec }: DraftDevice): number {
  if (spec.kind !== 'battery') return 0;
  return spec['short-circuit'] ?? (spec.chemistry === 'lithium' ? unknownShortA : 0);
}

/**
 * What a fuse at a battery should interrupt (A), before anything is placed: E / R with the highest voltage of the system
 * and the resistance that the battery's maker states, else the lowest of its chemistry by house rule, and what the
 * alternators give beside it; or what its cold-cranking current asks for, where that is more. As planning has it, but for
 * the resistance of the lead, which lets less through. Ohm's law; ABYC E-11 from memory.
 */
export function shortToInterruptA(draft: Draft, battery: DraftDevice): number {
  const stated = statedShortA(battery);
  const { spec } = battery;
  if (stated > 0 || spec.kind !== 'battery') return stated;
  const { rules, vehicle } = draft.around;
  const { chemistry, resistance = 0 } = spec;
  const alternators = alternatorsOf(draft.devices);
  const highestV = Math.max(
    rules['check-in-charging-most'].value,
    varyingCharge({ devices: draft.devices, rules, vehicle })?.highV ?? 0,
    ...alternators.flatMap((alternator) => alternator['set-point'] ?? []),
  );
  // A battery of 24 V is two of 12 V in series.
  const system = systemVoltageOf(spec.voltage);
  const lowest = chemistry === 'flooded' ? 'short-resistance-flooded' : 'short-resistance-agm';
  const ohm = resistance > 0 ? resistance : inSystem(rules[lowest].value, system);
  const emfV = highestV * (system / systemVoltageOf(vehicle['system-voltage']));
  const besideA = alternators.reduce((sum, { rating }) => sum + rating, 0);
  const faultA = emfV / ohm + besideA * rules['short-alternator-share'].value;
  const table = interruptNeedA(spec['cold-cranking'] ?? 0, powerRules(rules));
  return Math.max(faultA, isFault(table) || resistance > 0 ? 0 : table.value);
}
