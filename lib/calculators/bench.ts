import type { HouseRules } from '../model/house-rules.ts';
import { type LengthStyle, lengthStyle } from '../model/quantity/length-text.ts';
import type { ConductorRole, Units } from '../model/vocabulary.ts';
import type { CableCandidate } from '../power/conductor/conductor-choice.ts';
import type { StockedFuse, StockedHolder } from '../power/fuse-choice.ts';
import { powerRules } from '../power/house-power-rules.ts';
import type { PowerRules } from '../power/power-rules.ts';
import { readHouseRules } from '../read/read-house-rules.ts';

/** A reel of the shop, with what it is used for. */
export interface Reel {
  readonly cable: CableCandidate;
  readonly uses: readonly ConductorRole[];
}

/** What calculators know of a shop: plain data, so that it can lie in a page. No price, no private value. */
export interface BenchShop {
  readonly units: Units;
  readonly fraction: 16 | 32;
  /** House rules that the shop sets itself, in SI. */
  readonly rules: Readonly<Record<string, number>>;
  readonly reels: readonly Reel[];
  readonly fuses: readonly StockedFuse[];
  readonly holders: readonly StockedHolder[];
  /** Sampling rate of the first processor of the catalogue that states one (Hz). */
  readonly sampleRateHz?: number;
}

/** The same with every house rule, as the computations ask for it. */
export interface Bench {
  readonly shop: BenchShop;
  readonly rules: HouseRules;
  readonly power: PowerRules;
  readonly style: LengthStyle;
}

/** Completes what a page holds of a shop by the defaults of the house rules. */
export function openBench(shop: BenchShop): Bench {
  const rules = readHouseRules(shop.rules);
  return {
    shop,
    rules,
    power: powerRules(rules),
    style: lengthStyle(shop),
  };
}
