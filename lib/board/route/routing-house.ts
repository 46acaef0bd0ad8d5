import type { HouseRuleName } from '../../model/house-rules.ts';
import type { DressPrices } from './dress/dressed.ts';
import type { RouteCosts } from './route-search.ts';

/** The house's judgement of ways: what they keep apart, and what each thing counts for, in metres of wire. */
export interface RoutingHouse extends RouteCosts {
  /** Power and signal side by side keep this apart where there is a way, metres. */
  readonly powerToSignalM: number;
  /** What dressed wires are judged by. */
  readonly dressPrices: DressPrices;
}

/** The judgement of a house by its rules. */
export function routingHouse(figure: (name: HouseRuleName) => number): RoutingHouse {
  const nearness = figure('routing-near-signal');
  return {
    powerToSignalM: figure('power-signal-distance'),
    crossingM: figure('routing-crossing-few'),
    bendM: figure('routing-bend-few'),
    nearness,
    dressPrices: {
      crossingM: figure('routing-crossing'),
      bendM: figure('routing-bend'),
      bendRadii: figure('routing-bend-radius'),
      perDiameter: 1 / figure('routing-thick'),
      nearness,
      stray: figure('routing-pair'),
      roundM: figure('routing-round'),
      bundleM: figure('routing-bundle'),
    },
  };
}
