import { isFault } from '../model/fault.ts';
import type { HouseRules } from '../model/house-rules.ts';
import type { Part } from '../model/kinds/index.ts';
import { supplyOf } from '../plan/power/device-loads.ts';
import { amplifierEfficiency } from '../power/network/amplifier-efficiency.ts';
import { chargerCurrents } from '../power/network/charger-draw.ts';
import { amplifierCurrents } from '../power/network/load-current.ts';
import { ratedSupplyV } from '../power/network/rated-voltage.ts';

/**
 * What a part of the catalogue draws at rated power (A), before any job tells what plays on it: of an amplifier with
 * the most that its maker publishes of every channel, bridged or not, at the house's voltage for sizing; its fuse where
 * its maker tells no draw. 0 for what draws nothing.
 */
export function ratedDrawA(part: Part, rules: HouseRules): number {
  const supply = supplyOf(part);
  if (!supply) return 0;
  const voltageV = rules['voltage-sizing'].value;
  if (part.kind === 'charger') return chargerCurrents(part, voltageV).ratedPowerA.value;
  if (part.kind !== 'amplifier') return supply.draw ?? supply.fuse;
  const currents = amplifierCurrents(
    {
      fusesA: [supply.fuse],
      ratedPowerW: mostPowerW(part),
      ratedV: ratedSupplyV(supply, rules),
      efficiency: amplifierEfficiency(supply, rules),
      supply: supply.type,
      musicDuty: 1,
    },
    voltageV,
  );
  return isFault(currents) ? supply.fuse : currents.ratedPowerA.value;
}

/** The most that all channels give together (W): each by itself, or bridged where that gives more. */
function mostPowerW({ channels, bridges }: Extract<Part, { kind: 'amplifier' }>): number {
  const most = (powers: readonly { readonly power: number }[]): number =>
    Math.max(0, ...powers.map(({ power }) => power));
  const sum = (all: readonly { readonly powers: readonly { readonly power: number }[] }[]): number =>
    all.reduce((together, { powers }) => together + most(powers), 0);
  return Math.max(sum(Object.values(channels)), sum(Object.values(bridges)));
}
