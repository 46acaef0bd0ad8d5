import { z } from 'zod';
import { faultBy, faultless, quantity, quantityAbove } from '../fields.ts';

const watts = quantityAbove('power');
const ohms = quantityAbove('resistance');
const volts = quantity('voltage');

/** A power into a load as it is typed, `75 W at 4 ohm`; null for another text. */
export function powerAt(text: string): readonly [load: string, power: string] | null {
  const [, power, load] = /^(.+?)\s+(?:at|into)\s+(.+)$/.exec(text.trim()) ?? [];
  return power !== undefined && load !== undefined ? [load, power] : null;
}

/**
 * The voltage across a load at a power into it, as a file has it: of `18 W at 4 ohm` the root of 18 times 4, by Ohm's law.
 * RMS, rounded up: it is held against what an input takes. Null for a text that is no power into a load.
 */
export function voltageOfPower(written: string): string | null {
  const [load, power] = powerAt(written) ?? [];
  const [powerW, loadOhm] = [watts.safeParse(power), ohms.safeParse(load)];
  if (!powerW.success || !loadOhm.success) return null;
  return `${Math.ceil(100 * Math.sqrt(powerW.data * loadOhm.data) - 1e-9) / 100} V`;
}

/** A voltage, or a power into a load from which it follows. */
export const voltageOrPower = z
  .string()
  .check(faultless((written) => (powerAt(written) === null ? faultBy(volts, written) : powerFault(written))));

/** What is wrong with a power into a load; null where nothing is. */
export function powerFault(written: string): string | null {
  return voltageOfPower(written) === null
    ? 'is no power into a load: write both with their units, such as 18 W at 4 ohm'
    : null;
}
