import { quantity } from './fields.ts';

/** Nominal voltages of vehicle systems (V): cars, vans and boats, and trucks and buses. */
export const systemVoltages = [12, 24] as const;
export type SystemVoltage = (typeof systemVoltages)[number];

/** The system that the house rules are stated for, and that a part or a vehicle without a word of it is made for (V). */
export const usualSystemV: SystemVoltage = 12;

const written = systemVoltages.map((voltage) => `${voltage} V`).join(' or ');

/** A nominal system voltage as written. */
export const systemVoltageField = quantity('voltage').refine(
  isSystemVoltage,
  `is no system voltage that is planned here; write ${written}`,
);

/** The system that a vehicle has, or a battery is made for (V). */
export function systemVoltageOf(written: SystemVoltage | undefined): SystemVoltage {
  return written ?? usualSystemV;
}

export function isSystemVoltage(voltage: number): voltage is SystemVoltage {
  return systemVoltages.some((one) => one === voltage);
}

/** The system that a voltage in service belongs to (V): the nearest by ratio, so that 13.8 V is a 12 V system's. */
export function systemOf(voltageV: number): SystemVoltage {
  const away = (nominalV: number) => Math.abs(Math.log(voltageV / nominalV));
  return systemVoltages.reduce((near, one) => (away(one) < away(near) ? one : near));
}

/** What a voltage that is stated for the usual system is in another: as many times as there are cells more. */
export function inSystem(voltageV: number, system: SystemVoltage): number {
  // The ratio first: it is a whole number, so that 14.8 V stay 14.8 V in a system of 12 V.
  return voltageV * (system / usualSystemV);
}
