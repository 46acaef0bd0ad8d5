import { standardGravity } from '../model/quantity/gravity.ts';

/** An upright opening of a cavity to the air of its zone, metres. */
export interface Opening {
  readonly widthM: number;
  /** From its lower to its upper edge: the warm air leaves above, the cool comes in below. */
  readonly heightM: number;
}

/** Zero Celsius in kelvin, exact (ISO 80000-5). */
export const zeroCelsiusK = 273.15;
/** Discharge coefficient of a sharp-edged opening (CIBSE Guide A, natural ventilation; quoted from memory). */
const discharge = 0.6;

/**
 * Air that an opening exchanges by itself, m3/s, when the inside is warmer: V = Cd A / 3 sqrt(g h dT / T), T the mean of
 * both in kelvin (one opening, no wind: CIBSE Guide A, quoted from memory).
 */
export function openingFlow({ widthM, heightM }: Opening, riseK: number, outsideC: number): number {
  if (!(riseK > 0)) return 0;
  const meanK = zeroCelsiusK + outsideC + riseK / 2;
  return ((discharge * widthM * heightM) / 3) * Math.sqrt((standardGravity * heightM * riseK) / meanK);
}

/**
 * Heat that a cubic metre of dry air takes up per kelvin, J/(m3 K), at sea level: density 101,325 Pa / (287.05 T) by the
 * gas law, times 1,006 J/(kg K) (ISO 2533 standard atmosphere; textbooks of heat transfer).
 */
export function airHeatCapacity(atC: number): number {
  return (101_325 / (287.05 * (zeroCelsiusK + atC))) * 1006;
}
