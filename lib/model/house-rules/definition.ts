import type { DimensionName } from '../quantity/quantity.ts';
import type { Mark } from '../trace.ts';

/** One house rule: what it sets, its default, where that comes from. */
export interface RuleDefinition {
  /** What the rule sets, as the worksheet prints it. */
  readonly says: string;
  /** Dimension of its value, or a plain count. */
  readonly dimension: DimensionName | 'count';
  /** Default in SI. */
  readonly value: number;
  /** What a shop sets must be above this, in SI: nothing can be computed from less. */
  readonly above?: number;
  /** What a shop sets must not be below this, or not above it, in SI: past it a figure would err to the unsafe side. */
  readonly least?: number;
  readonly most?: number;
  /**
   * The ends of the usual range, in SI: where the supply is weakest (the least volts at a device) and where it is
   * strongest. A value that the shop sets has none, unless it differs from vehicle to vehicle.
   */
  readonly spread?: { readonly weak: number; readonly strong: number; readonly byVehicle?: true };
  /** True for a voltage that is stated for a 12 V system and counts in proportion in a system of another voltage. */
  readonly bySystem?: true;
  readonly citation: string;
  readonly mark?: Mark;
}

/** The source line of what the trade does without a published source. */
export const cp = { citation: 'common practice, no source', mark: 'cp' } as const;

/** Metres. */
export const inch = 0.0254;
